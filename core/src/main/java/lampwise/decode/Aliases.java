package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * Sees to it that a fast blink, sampled slowly, is not decoded as the slow one that its samples
 * show: how long a sensor averages is not in its file, so that a state that was found is compared
 * with others at the times that were sampled, whatever the averaging.
 */
final class Aliases {
  /** Faster blinks of no listed state are not looked for (chosen). */
  private static final double FASTEST_PER_SECOND = 20;

  /** More samples, or seconds, add nothing to what tells a pace from its alias. */
  private static final int MOST_SAMPLES = 600;

  private static final double MOST_SECONDS = 120;

  /** Unlisted blinks slower than this are not called fast, seconds. */
  private static final double SLOWEST_SECONDS = 1;

  private static final double MOST_WORK = 2e8;

  /** Paces as near as this to that of a state are the state's own. */
  private static final double OWN = 0.04;

  /** Slower than this part of the samples' rate nothing is an alias. */
  private static final double FOLDED = 0.51;

  /** What the best of so many paces explains of noise alone, in squares of its deviation. */
  private static final double SEARCHED = 15;

  /** Blinks that explain less, in the same squares, are too faint to be compared (chosen). */
  private static final double LEAST_EXPLAINED = 30;

  private static final int PER_BLINK = 5;

  private final CodeSheet sheet;
  private final LightCurve curve;
  private final double zeroSeconds;
  private final SampleRate rate;
  private final TooFast states;

  private Aliases(TooFast states, LightCurve curve, double zeroSeconds) {
    this.states = states;
    this.sheet = states.sheet();
    this.rate = states.rate();
    this.curve = curve;
    this.zeroSeconds = zeroSeconds;
  }

  /**
   * Makes what looks like another rhythm undecided.
   *
   * @param states the sheet's states at the curve's rate
   * @param found what was found in the curve
   * @param zeroSeconds where its times are counted from, in the curve's own
   */
  static Stretches checked(TooFast states, LightCurve curve, double zeroSeconds, Stretches found) {
    if (!(states.rate().seconds() > 0)) {
      return found;
    }
    Aliases aliases = new Aliases(states, curve, zeroSeconds);
    List<Segment> segments = new ArrayList<>();
    Segment main = found.main();
    for (Segment segment : found.segments()) {
      Segment checked = aliases.checked(segment, found.blinks());
      main = segment.equals(found.main()) ? checked : main;
      segments.add(checked);
    }
    return new Stretches(segments, main, found.blinks());
  }

  private Segment checked(Segment segment, List<SeenBlink> blinks) {
    if (!(segment.verdict() instanceof Verdict.Decoded decoded)) {
      return segment;
    }
    int state = Posterior.number(sheet, decoded.state());
    boolean blinking = sheet.states().get(state).rhythm() instanceof Rhythm.Blinking;
    Alike alike = blinking ? blinking(state, segment.stretch(), blinks) : level(state);
    if (alike.states().isEmpty() && alike.unlisted().isEmpty()) {
      return segment;
    }
    List<Candidate> candidates = raised(segment.candidates(), decoded.state(), alike);
    Verdict verdict =
        Verdicts.of(sheet, candidates, segment.observed(), segment.stretch(), curve.marks(), true);
    if (verdict instanceof Verdict.Undecided undecided) {
      verdict = undecided(undecided, state, alike);
    }
    return new Segment(
        segment.recording(), segment.stretch(), verdict, candidates, segment.observed());
  }

  /**
   * What leaves the same samples.
   *
   * @param states the numbers of listed states
   * @param unlisted the rate of a blink that is not listed, per second
   */
  private record Alike(List<Integer> states, OptionalDouble unlisted) {}

  /** Of a lamp that seems not to change, the states that averaging may hide. */
  private Alike level(int found) {
    List<Integer> alike = new ArrayList<>();
    for (int i = 0; i < sheet.states().size(); i++) {
      if (i != found && states.mayBeLevel(i)) {
        alike.add(i);
      }
    }
    return new Alike(alike, OptionalDouble.empty());
  }

  private Alike blinking(int found, Window stretch, List<SeenBlink> blinks) {
    boolean fast = states.isPace(found);
    List<Integer> tried = new ArrayList<>();
    for (int i = 0; i < sheet.states().size(); i++) {
      boolean pair = fast || states.isPace(i);
      if (i != found && pair && !states.trains(i).isEmpty()) {
        tried.add(i);
      }
    }
    double least = 1 / FASTEST_PER_SECOND;
    double most = Math.min(SLOWEST_SECONDS, rate.seconds() / FOLDED);
    List<Integer> alike = new ArrayList<>();
    OptionalDouble unlisted = OptionalDouble.empty();
    if (tried.isEmpty() && !(least < most)) {
      return new Alike(alike, unlisted);
    }
    AliasFit fit = samples(stretch, blinks);
    double explained = fit.explained(blinks);
    if (fast) {
      explained = Math.max(explained, fit.best(states.trains(found)).squares());
    }
    if (!(explained > LEAST_EXPLAINED * fit.noiseSquare())) {
      return new Alike(alike, unlisted);
    }
    double enough = TooFast.ALIKE * explained;
    AliasFit.Pace pace = new AliasFit.Pace(0, 1);
    double from = least;
    for (Window own : own(found)) {
      pace = pace.better(fit.best(from, Math.min(most, own.fromSeconds()), shortest()));
      from = Math.max(from, own.toSeconds());
    }
    pace = pace.better(fit.best(from, most, shortest()));
    if (pace.squares() > enough + SEARCHED * fit.noiseSquare()) {
      unlisted = OptionalDouble.of(1 / pace.cycleSeconds());
    }
    for (int i : tried) {
      List<Train> trains = states.isPace(i) ? states.fastTrains(i) : states.trains(i);
      if (fit.best(trains).squares() > enough) {
        alike.add(i);
      }
    }
    return new Alike(alike, unlisted);
  }

  private static double shortest() {
    return Limits.BLINK_LEAST_SECONDS;
  }

  /** The cycles of a state that are those of a single blink, from the shortest on. */
  private List<Window> own(int state) {
    List<Window> own = new ArrayList<>();
    for (Train train : states.trains(state)) {
      if (train.repeats() && train.perCycle() == 1) {
        double from = train.cycleSeconds() * train.low() / (1 + OWN);
        own.add(new Window(from, train.cycleSeconds() * train.high() * (1 + OWN)));
      }
    }
    own.sort((a, b) -> Double.compare(a.fromSeconds(), b.fromSeconds()));
    return own;
  }

  /** The samples of a stretch on its own times: above a local baseline if blinks are short. */
  private AliasFit samples(Window stretch, List<SeenBlink> blinks) {
    AliasFit.Work work = new AliasFit.Work(MOST_WORK);
    double from = stretch.fromSeconds() + zeroSeconds;
    double most = Math.min(MOST_SECONDS, MOST_SAMPLES * rate.seconds());
    double to = Math.min(stretch.toSeconds() + zeroSeconds, from + most);
    Window part = new Window(from, Math.max(from, to));
    boolean isShort =
        blinks.stream()
            .map(SeenBlink::blink)
            .allMatch(b -> b.hasOff() && b.offSeconds() - b.onSeconds() < LightFolds.LONGEST_BLINK);
    if (isShort && curve.marks().covered().isEmpty()) {
      LightSamples prepared = LightSamples.of(curve, part, LitSpans.isHeld(curve));
      if (prepared.noise() > 0) {
        double[] own = Arrays.stream(prepared.seconds()).map(t -> t - zeroSeconds).toArray();
        return AliasFit.of(own, prepared.above(), rate.seconds(), work);
      }
    }
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    int count = 0;
    for (int i = 0; i < curve.size() && count < MOST_SAMPLES; i++) {
      double own = curve.seconds(i) - zeroSeconds;
      if (part.contains(curve.seconds(i))
          && curve.marks().covered().stream().noneMatch(covered -> covered.contains(own))) {
        seconds[count] = own;
        levels[count++] = curve.lit() == LightCurve.Lit.DARKER ? -curve.level(i) : curve.level(i);
      }
    }
    return AliasFit.of(
        Arrays.copyOf(seconds, count), Arrays.copyOf(levels, count), rate.seconds(), work);
  }

  /** What is alike is as likely. */
  private List<Candidate> raised(List<Candidate> candidates, String found, Alike alike) {
    int count = sheet.states().size();
    double[] logs = new double[count + 2];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      String name = Posterior.name(sheet, i);
      for (Candidate candidate : candidates) {
        logs[i] = candidate.state().equals(name) ? candidate.logLikelihood() : logs[i];
      }
      most = name.equals(found) ? logs[i] : most;
    }
    for (int i : alike.states()) {
      logs[i] = Math.max(logs[i], most);
    }
    if (alike.unlisted().isPresent()) {
      logs[count] = Math.max(logs[count], most);
    }
    return Posterior.candidates(sheet, logs);
  }

  private Verdict undecided(Verdict.Undecided undecided, int found, Alike alike) {
    List<LampState> all = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (int i : alike.states()) {
      all.add(sheet.states().get(i));
      names.add(sheet.states().get(i).name());
    }
    double perSecond = alike.unlisted().orElse(0);
    if (names.isEmpty()) {
      names.add(SampleRate.number(perSecond) + " blinks a second");
    }
    all.add(sheet.states().get(found));
    String name = sheet.states().get(found).name();
    Next.Watch usual = Advice.record(sheet, all, true);
    double hz = Math.max(usual.rateHz().orElse(0), Math.ceil(PER_BLINK * perSecond));
    return new Verdict.Undecided(
        undecided.candidates(),
        "at " + rate.words() + ", " + TooFast.list(names) + " would look like " + name,
        new Next.Watch(
            usual.seconds(),
            OptionalDouble.of(hz),
            usual.target(),
            "sampled faster, " + TooFast.list(names) + " would no longer look like " + name));
  }
}

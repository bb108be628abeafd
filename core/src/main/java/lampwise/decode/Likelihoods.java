package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** The likelihood of one recording, or of a stretch of it, under each candidate. */
final class Likelihoods {
  /** Chance that a person who watches a steady lamp writes down nothing at all. */
  private static final double STEADY_UNNOTED = 0.01;

  /** Chance that a unit at rest does not show that it sees a target. */
  private static final double UNANSWERED = 0.1;

  /** A light that begins or ends this near to the border of a stretch fills it. */
  private static final double LATE_SECONDS = 1;

  /** Rates of blinks without rhythm, per second: even in the logarithm between these. */
  private static final double LEAST_RATE = 0.05;

  private static final double MOST_RATE = 3;
  private static final int RATES = 24;

  /** A few of these rates, for a stretch among others. */
  private static final double[] RANDOM_RATES = {0.1, 0.3, 1, 2.5};

  /** Recordings with more blinks than this are tried on their beginning first. */
  static final int MANY_BLINKS = 100;

  /** Blinks of a cycle that lie as near as this are at the same place. */
  private static final double SAME_SECONDS = 0.02;

  private static final double SAME_FRACTION = 0.02;

  /** Unlisted rhythms this far below the best of them are left out. */
  private static final double UNLIKELY = 8;

  private static final double NO_FLOOR = Double.NEGATIVE_INFINITY;

  /** The part of unlisted rhythms that are a listed one with other numbers of blinks. */
  private static final double VARIANTS = 0.5;

  /** A constant rate leaves out beats less often than a code has another number of blinks. */
  private static final double RATES_VARIED = 0.3;

  /** A rate that takes more trains is too wide to leave out beats that could be told. */
  private static final int MOST_RATE_TRAINS = 3;

  /** How many states' variants are looked at. */
  private static final int MOST_VARIED = 2;

  private final CodeSheet sheet;
  private final Evidence evidence;
  private final List<List<Train>> trains;
  private final List<List<Visibility>> ways;
  private final List<List<FreeRhythms>> variants;
  private final boolean answers;

  /** Prepares the likelihoods of a recording: a unit at rest shows that it sees a target. */
  Likelihoods(CodeSheet sheet, Evidence evidence, Marks marks) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.trains = new ArrayList<>();
    this.ways = new ArrayList<>();
    this.variants = new ArrayList<>();
    this.answers = true;
    for (LampState state : sheet.states()) {
      trains.add(
          state.rhythm() instanceof Rhythm.Blinking blinking
              ? Templates.of(blinking, sheet.blinkSeconds(), sheet.clockTolerance(), evidence)
              : List.of());
      ways.add(Visibility.of(state.seen(), marks, evidence.window()));
    }
    List<List<List<Train>>> others = new ArrayList<>();
    for (int i = 0; i < trains.size(); i++) {
      others.add(others(sheet.states().get(i).rhythm(), i));
    }
    double all = 0;
    for (int i = 0; i < others.size(); i++) {
      all += others.get(i).isEmpty() ? 0 : varied(i);
    }
    for (int i = 0; i < others.size(); i++) {
      List<List<Train>> list = others.get(i);
      double logShare = Math.log(VARIANTS * varied(i) / all) - Math.log(list.size());
      variants.add(
          list.stream()
              .flatMap(List::stream)
              .map(train -> new FreeRhythms(train.weighed(logShare), 0, 0, 1))
              .toList());
    }
  }

  /** How common the variants of a state are, relative to those of other states. */
  private double varied(int state) {
    return isRate(sheet.states().get(state).rhythm()) ? RATES_VARIED : 1;
  }

  private static boolean isRate(Rhythm rhythm) {
    return rhythm instanceof Rhythm.Blinking blinking
        && blinking.prelude().isEmpty()
        && blinking.cycle() instanceof Cycle.Rated;
  }

  /** The variants of a state, each as its trains. */
  private List<List<Train>> others(Rhythm rhythm, int state) {
    if (isRate(rhythm)) {
      if (trains.get(state).size() > MOST_RATE_TRAINS) {
        return List.of();
      }
      return Variants.leavingOut(trains.get(state));
    }
    return Variants.of(sheet, sheet.states().get(state)).stream()
        .map(r -> Templates.of(r, sheet.blinkSeconds(), sheet.clockTolerance(), evidence))
        .toList();
  }

  private Likelihoods(Likelihoods other, boolean answers) {
    this.sheet = other.sheet;
    this.evidence = other.evidence;
    this.trains = other.trains;
    this.ways = other.ways;
    this.variants = other.variants;
    this.answers = answers;
  }

  /** The same, on the same pulse trains, for a unit that is dark while it sees a target. */
  Likelihoods unanswered() {
    return new Likelihoods(this, false);
  }

  /** The pulse trains of a state; none if it is dark or steady. */
  List<Train> trains(int state) {
    return trains.get(state);
  }

  /**
   * All that the lamp may show in a stretch, each with its share of the prior, but for unlisted
   * rhythms and a steady lamp; none where a state can be seen in a part of the stretch only.
   */
  List<Way> shows(Window stretch) {
    double[] priors = Posterior.priors(sheet);
    List<Way> shows = new ArrayList<>();
    for (int i = 0; i < sheet.states().size(); i++) {
      for (Visibility way : ways.get(i)) {
        double log = Math.log(priors[i] * way.probability());
        boolean seen = way.stretches().stream().anyMatch(w -> overlap(w, stretch) > 0);
        boolean part = way.stretches().stream().noneMatch(w -> covers(w, stretch));
        if (seen && part) {
          return List.of();
        }
        if (!seen || sheet.states().get(i).rhythm() instanceof Rhythm.Dark) {
          shows.add(Way.dark(i, log));
        } else {
          for (Train train : trains.get(i)) {
            shows.add(Way.of(i, train, log + train.logWeight()));
          }
        }
      }
    }
    for (double perSecond : RANDOM_RATES) {
      double log = Math.log(Posterior.NO_RHYTHM / RANDOM_RATES.length);
      shows.add(Way.random(sheet.states().size() + 1, perSecond, log));
    }
    return shows;
  }

  /** For how many seconds two stretches are one; 0 or less if they do not meet. */
  static double overlap(Window a, Window b) {
    return Math.min(a.toSeconds(), b.toSeconds()) - Math.max(a.fromSeconds(), b.fromSeconds());
  }

  private static boolean covers(Window whole, Window part) {
    return whole.fromSeconds() <= part.fromSeconds() && whole.toSeconds() >= part.toSeconds();
  }

  /** When a state's lamp can be seen, in each of the ways that the marks leave open. */
  List<Visibility> ways(int state) {
    return ways.get(state);
  }

  /**
   * The unlisted rhythms that a recording proposes, and the variants of the states that fit best.
   *
   * @param logs logarithms of the states' likelihoods
   */
  List<FreeRhythms> unlisted(Evidence stretch, double[] logs) {
    List<FreeRhythms> all = proposed(stretch);
    // Folding a light curve is dear, and a rate's variants are many.
    all.addAll(
        nearVariants(state -> !isRate(sheet.states().get(state).rhythm()), state -> logs[state]));
    return all;
  }

  private List<FreeRhythms> proposed(Evidence stretch) {
    List<FreeRhythms> all = new ArrayList<>(FreeRhythms.propose(stretch));
    all.removeIf(free -> isListed(free.train()));
    return all;
  }

  /** Logarithms of the likelihoods of the whole recording, in the order of the priors. */
  double[] whole() {
    return of(evidence);
  }

  /**
   * Logarithms of the likelihoods of a stretch, in the order of the priors, noise summed over. A
   * few noise settings tell which candidates are hopeless; the others see them all.
   */
  double[] of(Evidence stretch) {
    int states = sheet.states().size();
    List<Noise> settings = stretch.settings();
    Evidence head = stretch.beginning(MANY_BLINKS);
    boolean all = stretch.notes().size() <= MANY_BLINKS;
    int step = stretch.stepOfFew();
    Sums probes = new Sums(states + 1, noRhythm(head));
    for (int k = 0; k < settings.size(); k += step) {
      for (int i : probes.bestFirst(states)) {
        Noise noise = settings.get(k);
        probes.add(i, noise, ofState(i, head, noise, probes.floor()));
      }
    }
    List<FreeRhythms> near = nearVariants(probes::isHopeful, probes::mean);
    List<FreeRhythms> free =
        unlisted(head, near, settings.get(probes.bestSetting() * step), probes.floor());
    for (int k = 0; k < settings.size(); k += step) {
      Noise noise = settings.get(k);
      probes.add(states, noise, ofUnlisted(free, head, noise, probes.floor()));
    }
    Sums sums = all ? probes.copy() : new Sums(states + 1, noRhythm(stretch));
    free =
        all
            ? free
            : unlisted(stretch, near, settings.get(probes.bestSetting() * step), sums.floor());
    for (int k = 0; k < settings.size(); k++) {
      for (int i : probes.bestFirst(states + 1)) {
        if (probes.isHopeful(i) && (!all || k % step != 0)) {
          Noise noise = settings.get(k);
          sums.add(
              i,
              noise,
              i < states
                  ? ofState(i, stretch, noise, sums.floor())
                  : ofUnlisted(free, stretch, noise, sums.floor()));
        }
      }
    }
    double[] logs = new double[states + 2];
    logs[states + 1] = noRhythm(stretch);
    double best = logs[states + 1];
    for (int i = 0; i <= states; i++) {
      logs[i] = probes.isHopeful(i) ? sums.mean(i) : Double.NEGATIVE_INFINITY;
      best = Math.max(best, logs[i]);
    }
    for (int i = 0; i <= states; i++) {
      if (!(logs[i] > best - Sums.HOPELESS)) {
        // No longer looked at: at least as far behind as this.
        double behind = Math.max(0, probes.best() - probes.mean(i));
        logs[i] = best - Sums.HOPELESS - Math.min(Sums.HOPELESS, behind);
      }
    }
    return logs;
  }

  /** The unlisted rhythms that matter, by how they fit under one setting of the noise. */
  private List<FreeRhythms> unlisted(
      Evidence stretch, List<FreeRhythms> near, Noise noise, double floor) {
    List<FreeRhythms> all = proposed(stretch);
    all.addAll(near);
    double[] logs = new double[all.size()];
    double best = floor;
    for (int i = 0; i < logs.length; i++) {
      FreeRhythms free = all.get(i);
      double least = best - UNLIKELY - free.logWeight(noise);
      logs[i] =
          free.logWeight(noise) + Fit.logLikelihood(free.train(), stretch, noise, false, least);
      best = Math.max(best, logs[i]);
    }
    List<FreeRhythms> kept = new ArrayList<>();
    for (int i = 0; i < logs.length; i++) {
      if (logs[i] >= best - UNLIKELY) {
        kept.add(all.get(i));
      }
    }
    return kept;
  }

  /** Whether a listed state shows the same lamp, its clock or range included. */
  private boolean isListed(Train free) {
    return free.repeats()
        && trains.stream().flatMap(List::stream).anyMatch(train -> sameLamp(free, train));
  }

  private static boolean sameLamp(Train free, Train listed) {
    double ratio = free.cycleSeconds() / listed.cycleSeconds();
    boolean same =
        listed.repeats()
            && listed.prelude() == 0
            && listed.size() == free.size()
            && ratio >= listed.low()
            && ratio <= listed.high();
    for (int i = 1; same && i < free.size(); i++) {
      double on = listed.on(i) - listed.on(0);
      same = Math.abs(free.on(i) / ratio - on) <= SAME_SECONDS + SAME_FRACTION * on;
    }
    return same;
  }

  /** The variants of the states that fit best so far, of those that may matter. */
  private List<FreeRhythms> nearVariants(IntPredicate matters, IntToDoubleFunction fit) {
    List<Integer> states = new ArrayList<>();
    for (int i = 0; i < variants.size(); i++) {
      if (!variants.get(i).isEmpty() && matters.test(i)) {
        states.add(i);
      }
    }
    states.sort((a, b) -> Double.compare(fit.applyAsDouble(b), fit.applyAsDouble(a)));
    int count = Math.min(MOST_VARIED, states.size());
    // Of states that fit alike all, so that their order in the sheet says nothing.
    while (count > 0
        && count < states.size()
        && fit.applyAsDouble(states.get(count)) == fit.applyAsDouble(states.get(count - 1))
        && fit.applyAsDouble(states.get(count)) > Double.NEGATIVE_INFINITY) {
      count++;
    }
    List<FreeRhythms> near = new ArrayList<>();
    for (int state : states.subList(0, count)) {
      near.addAll(variants.get(state));
    }
    return near;
  }

  /**
   * A state under one setting of the noise.
   *
   * @param floor below this logarithm the answer does not matter and may come out lower
   */
  private double ofState(int number, Evidence stretch, Noise noise, double floor) {
    LampState state = sheet.states().get(number);
    double sum = Double.NEGATIVE_INFINITY;
    for (Visibility way : ways.get(number)) {
      if (way.probability() > 0) {
        double log = Math.log(way.probability());
        double shown = way(state, trains.get(number), way, stretch, noise, floor - log);
        sum = Gauss.logAdd(sum, log + shown);
      }
    }
    return sum;
  }

  /** The recording with the lamp visible in these stretches only. */
  private double way(
      LampState state,
      List<Train> trains,
      Visibility way,
      Evidence stretch,
      Noise noise,
      double floor) {
    if (way.stretches().size() == 1 && covers(way.stretches().get(0), stretch.window())) {
      boolean begins =
          way.triggered() && way.stretches().get(0).fromSeconds() == stretch.window().fromSeconds();
      return shown(state.rhythm(), trains, stretch, noise, begins, floor);
    }
    double sum = 0;
    List<Window> shown = new ArrayList<>();
    for (Window visible : way.stretches()) {
      double from = Math.max(visible.fromSeconds(), stretch.window().fromSeconds());
      double to = Math.min(visible.toSeconds(), stretch.window().toSeconds());
      if (to > from || (to == from && stretch.window().lengthSeconds() == 0)) {
        Window inside = new Window(from, to);
        shown.add(inside);
        boolean triggered = way.triggered() && from == visible.fromSeconds();
        Evidence part = stretch.within(from, to);
        sum += shown(state.rhythm(), trains, part, noise, triggered, NO_FLOOR);
      }
    }
    for (Window hidden : Visibility.between(shown, stretch.window())) {
      Evidence rest = stretch.within(hidden.fromSeconds(), hidden.toSeconds());
      // Known targets are all that hides the lamp of a state that is seen while idle.
      boolean target = answers && state.seen() == Seen.IDLE && !way.stretches().isEmpty();
      sum += target ? answering(rest, noise) : dark(rest, noise);
    }
    return sum;
  }

  /**
   * A stretch with a target before a unit that waits for one: it shows what the sheet says of a
   * target, or, now and then, nothing.
   */
  private double answering(Evidence stretch, Noise noise) {
    double weights = 0;
    double sum = Double.NEGATIVE_INFINITY;
    boolean came = stretch.window().fromSeconds() > evidence.window().fromSeconds();
    for (int i = 0; i < sheet.states().size(); i++) {
      LampState state = sheet.states().get(i);
      if (state.seen() == Seen.TARGET) {
        weights += state.weight();
        double log = shown(state.rhythm(), trains.get(i), stretch, noise, came, NO_FLOOR);
        sum = Gauss.logAdd(sum, Math.log(state.weight()) + log);
      }
    }
    double dark = dark(stretch, noise);
    return weights > 0
        ? Gauss.logAdd(Math.log(UNANSWERED) + dark, Math.log((1 - UNANSWERED) / weights) + sum)
        : dark;
  }

  private static double shown(
      Rhythm rhythm,
      List<Train> trains,
      Evidence stretch,
      Noise noise,
      boolean triggered,
      double floor) {
    if (rhythm instanceof Rhythm.Dark) {
      return dark(stretch, noise);
    }
    if (rhythm instanceof Rhythm.Steady) {
      return steady(stretch, noise);
    }
    double sum = Double.NEGATIVE_INFINITY;
    for (Train train : trains) {
      double logWeight = train.logWeight(noise);
      double least = floor - logWeight - Math.log(trains.size());
      double log = Fit.logLikelihood(train, stretch, noise, triggered, least);
      sum = Gauss.logAdd(sum, logWeight + log);
    }
    return sum;
  }

  private static double dark(Evidence stretch, Noise noise) {
    return Chain.strays(stretch, noise);
  }

  private static double steady(Evidence stretch, Noise noise) {
    double none = -noise.strays() * stretch.watchedSeconds();
    if (stretch.notes().isEmpty()) {
      return none + (stretch.level() ? 0 : Math.log(STEADY_UNNOTED));
    }
    if (stretch.litThroughout() || litNearly(stretch)) {
      return none;
    }
    return Chain.strays(stretch, noise) + Math.log(STEADY_UNNOTED);
  }

  /** One light over the whole stretch, but for how late people and targets are. */
  private static boolean litNearly(Evidence stretch) {
    if (stretch.notes().size() != 1 || !stretch.notes().get(0).hasOff()) {
      return false;
    }
    Evidence.Note note = stretch.notes().get(0);
    double late = Math.min(LATE_SECONDS, 0.1 * stretch.window().lengthSeconds());
    return note.on() <= stretch.window().fromSeconds() + late
        && note.off() >= stretch.window().toSeconds() - late;
  }

  /** A rhythm that no sheet lists. */
  private static double ofUnlisted(
      List<FreeRhythms> proposals, Evidence stretch, Noise noise, double floor) {
    double sum = Double.NEGATIVE_INFINITY;
    for (FreeRhythms free : proposals) {
      double least = floor - free.logWeight(noise) - Math.log(proposals.size());
      double log = Fit.logLikelihood(free.train(), stretch, noise, false, least);
      sum = Gauss.logAdd(sum, free.logWeight(noise) + log);
    }
    return sum;
  }

  /** Logarithm of the likelihood of blinks that come at random, their rate summed over. */
  static double noRhythm(Evidence stretch) {
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < RATES; i++) {
      double rate = LEAST_RATE * Math.pow(MOST_RATE / LEAST_RATE, (i + 0.5) / RATES);
      Noise random = new Noise(1, 0, rate, 0, 1, 0, 1);
      sum = Gauss.logAdd(sum, Chain.strays(stretch, random) - Math.log(RATES));
    }
    return sum;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Rhythms;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sheet.TellApart;

/**
 * How long to record so that the states of a sheet can be told apart: for each pair the shortest
 * recording that tells one from the other in {@value #SURE} of all cases, whichever of the two it
 * is, at any phase and on any clock that the sheet allows. Found by rehearsal: recordings of both
 * states, always the same ones, are judged as the decoder judges them, which is not told the noise.
 * So that chance does not decide, the length that is named tells as much more than that as seven
 * tenths of it tell less.
 */
public final class RecordingPlan {
  /** What share of the recordings is to be told right. */
  public static final double SURE = 0.99;

  /** Longer than this nobody watches, seconds. */
  public static final double MOST_SECONDS = 600;

  /** Less than this nobody looks at a lamp, seconds. Chosen. */
  public static final double LEAST_SECONDS = 0.5;

  /** A length is named in tenths below this, in whole seconds from it on. */
  private static final double WHOLE_FROM_SECONDS = 10;

  /** For a rough answer: recordings of each state, and the lengths that are advised, seconds. */
  private static final int FEW = 10;

  private static final double ADVISED_LEAST_SECONDS = 10;
  private static final double ADVISED_SECONDS = 180;

  /** Lengths that are tried grow by this. */
  private static final double GROWTH = 1.3;

  private static final int HALVINGS = 4;

  /** A dark of this length is not missed, seconds. Chosen. */
  private static final double PLAIN_DARK_SECONDS = 1;

  private static final String ONE_SHOW =
      "a single show is missed too often, so bring it about twice";

  private final CodeSheet sheet;
  private final Watching watching;
  private final Map<Asked, Answer> answers = new HashMap<>();

  /**
   * Prepares the plan of a sheet.
   *
   * @param sheet the code sheet
   * @param watching how is recorded
   */
  public RecordingPlan(CodeSheet sheet, Watching watching) {
    this.sheet = sheet;
    this.watching = watching;
  }

  /** What rehearsals depend on. */
  private record Asked(Set<Rhythm> rhythms, boolean triggered) {}

  /** What they say, once somebody has rehearsed. */
  private static final class Answer {
    private Optional<OptionalDouble> seconds = Optional.empty();

    synchronized OptionalDouble orElseGet(Supplier<OptionalDouble> rehearsals) {
      if (seconds.isEmpty()) {
        seconds = Optional.of(rehearsals.get());
      }
      return seconds.get();
    }
  }

  /**
   * What it takes to tell two states apart.
   *
   * @param first one state's name
   * @param second the other's
   * @param seconds the shortest recording that does, from {@value #LEAST_SECONDS} on, in tenths of
   *     a second below 10 and whole ones above; empty if none of up to {@value #MOST_SECONDS} does
   * @param provoke what to do at the unit before or while it is recorded; empty if nothing, out of
   *     the sensor's range
   * @param otherwise where no recording does: what else does, or why not
   */
  public record Pair(
      String first,
      String second,
      OptionalDouble seconds,
      Optional<String> provoke,
      Optional<String> otherwise) {}

  /**
   * The pair of two states.
   *
   * @param first one state of the sheet
   * @param second another
   * @return what it takes
   */
  public Pair between(LampState first, LampState second) {
    Seen shared = shared(first, second);
    Rhythm one = shown(first, shared);
    Rhythm two = shown(second, shared);
    Optional<String> provoke = TellApart.provoke(shared == Seen.IDLE ? Seen.ALWAYS : shared);
    if (Rhythms.sameLamp(one, two)) {
      return without(first, second, "the lamp is the same", provoke);
    }
    if (isTooFast(one) || isTooFast(two)) {
      return without(first, second, tooFast(), provoke);
    }
    OptionalDouble seconds = seconds(one, two, shared);
    if (seconds.isEmpty() && provoke.isEmpty()) {
      return without(first, second, "too much alike", provoke);
    }
    Optional<String> otherwise = seconds.isPresent() ? Optional.empty() : Optional.of(ONE_SHOW);
    return new Pair(first.name(), second.name(), seconds, provoke, otherwise);
  }

  private String tooFast() {
    if (watching.rateHz().isEmpty()) {
      return "too fast to tap: say \"fast blinks\", or film it";
    }
    return "too fast: so many samples follow up to "
        + shown(watching.rateHz().getAsDouble() / 2)
        + " blinks a second, and faster ones look slower than they are; sample faster";
  }

  /** A number without decimals that say nothing. */
  private static String shown(double number) {
    double rounded = Math.rint(10 * number) / 10;
    return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
  }

  private static Pair without(
      LampState first, LampState second, String why, Optional<String> provoke) {
    Optional<String> check = TellApart.check(first, second);
    return new Pair(
        first.name(),
        second.name(),
        OptionalDouble.empty(),
        provoke,
        Optional.of(check.map(c -> why + "; " + c).orElse(why)));
  }

  /** When the two look different, if ever: while nobody is there before anything is provoked. */
  private static Seen shared(LampState first, LampState second) {
    if (first.seen() == Seen.ALWAYS && second.seen() == Seen.ALWAYS) {
      return Seen.ALWAYS;
    }
    for (Seen seen : List.of(Seen.IDLE, first.seen(), second.seen())) {
      if (seen != Seen.ALWAYS && !Rhythms.sameLamp(shown(first, seen), shown(second, seen))) {
        return seen;
      }
    }
    return Seen.IDLE;
  }

  private static Rhythm shown(LampState state, Seen shared) {
    boolean seen = state.seen() == Seen.ALWAYS || state.seen() == shared;
    return seen ? state.rhythm() : new Rhythm.Dark();
  }

  /**
   * Whether a rhythm is nothing but blinks faster than this way of recording follows.
   *
   * @param rhythm the rhythm
   * @return true for over four blinks a second by hand, or light and dark shorter than a sample
   */
  public boolean isTooFast(Rhythm rhythm) {
    if (!(rhythm instanceof Rhythm.Blinking blinking)) {
      return false;
    }
    double fastest =
        watching.rateHz().isPresent()
            ? watching.rateHz().getAsDouble() / 2
            : Watching.FASTEST_TAPS_PER_SECOND;
    for (Train train : trains(blinking)) {
      double cycle = train.cycleSeconds();
      if (!train.repeats() || !(train.perCycle() / cycle > fastest)) {
        return false;
      }
    }
    return true;
  }

  private List<Train> trains(Rhythm.Blinking rhythm) {
    return Templates.of(rhythm, sheet.blinkSeconds(), sheet.clockTolerance());
  }

  /**
   * About how long it takes to tell two states apart, from a few rehearsals only.
   *
   * @param first one state of the sheet
   * @param second another
   * @return seconds; empty if recordings of up to {@value #ADVISED_SECONDS} seconds do not, or only
   *     such as something must be done for
   */
  OptionalDouble roughly(LampState first, LampState second) {
    Seen shared = shared(first, second);
    Rhythm one = shown(first, shared);
    Rhythm two = shown(second, shared);
    if (triggered(shared) || Rhythms.sameLamp(one, two) || isTooFast(one) || isTooFast(two)) {
      return OptionalDouble.empty();
    }
    if (one instanceof Rhythm.Steady || two instanceof Rhythm.Steady) {
      return fromSteady(one instanceof Rhythm.Steady ? two : one, shared);
    }
    double growth = GROWTH * GROWTH;
    Bout bout = bout(one, two, shared, List.of(watching.noise()));
    double told =
        first(ADVISED_LEAST_SECONDS, growth, ADVISED_SECONDS, tried -> bout.areTold(tried, FEW));
    return told > ADVISED_SECONDS ? OptionalDouble.empty() : OptionalDouble.of(GROWTH * told);
  }

  private static boolean triggered(Seen shared) {
    return shared != Seen.ALWAYS && shared != Seen.IDLE;
  }

  private Bout bout(Rhythm one, Rhythm two, Seen shared, List<Noise> supposed) {
    return new Bout(sides(one), sides(two), watching, triggered(shared), supposed);
  }

  private OptionalDouble seconds(Rhythm one, Rhythm two, Seen shared) {
    if (one instanceof Rhythm.Steady || two instanceof Rhythm.Steady) {
      return fromSteady(one instanceof Rhythm.Steady ? two : one, shared);
    }
    // States that look alike have the same answers: those that are dark at rest, say.
    return answer(new Asked(Set.of(one, two), triggered(shared)))
        .orElseGet(() -> rehearse(one, two, shared));
  }

  private Answer answer(Asked asked) {
    synchronized (answers) {
      return answers.computeIfAbsent(asked, question -> new Answer());
    }
  }

  private OptionalDouble rehearse(Rhythm one, Rhythm two, Seen shared) {
    Bout bout = bout(one, two, shared, watching.supposed());
    double longest = GROWTH * Bout.SHORT * MOST_SECONDS;
    double told = first(LEAST_SECONDS, GROWTH, longest, bout::isTold);
    if (told > longest) {
      return OptionalDouble.empty();
    }
    double low = Math.max(told / GROWTH, LEAST_SECONDS);
    double high = told / Bout.SHORT;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = Math.sqrt(low * high);
      if (bout.isAmple(middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return OptionalDouble.of(Math.min(named(Math.sqrt(low * high)), MOST_SECONDS));
  }

  /** The first of growing lengths that tells; if none does, one beyond the longest. */
  private static double first(double least, double growth, double longest, DoublePredicate tells) {
    double seconds = least;
    while (seconds <= longest && !tells.test(seconds)) {
      seconds *= growth;
    }
    return seconds;
  }

  /** A length as it is named. */
  private static double named(double seconds) {
    return seconds < WHOLE_FROM_SECONDS ? Math.ceil(10 * seconds) / 10 : Math.rint(seconds);
  }

  /**
   * How long it takes to see that a lamp is not steady: until it is dark, and as often as it takes
   * if the dark is so short that it can be missed.
   */
  private OptionalDouble fromSteady(Rhythm other, Seen shared) {
    double longest = LEAST_SECONDS;
    for (Train train : sides(other)) {
      double begins = triggered(shared) || !train.repeats() ? Fit.TRIGGER_SECONDS : 0;
      longest = Math.max(longest, begins + train.high() * litSeconds(train));
    }
    double seconds = named(longest);
    return seconds > MOST_SECONDS ? OptionalDouble.empty() : OptionalDouble.of(seconds);
  }

  /** For how long a train may show light, darks that are missed included. */
  private double litSeconds(Train train) {
    double lit = 0;
    double dark = Double.POSITIVE_INFINITY;
    boolean goesOn = train.repeats() && train.perCycle() > 0;
    int last = train.size() - 1;
    for (int pulse = 0; pulse <= last; pulse++) {
      boolean ends = !goesOn && pulse == last;
      double next = ends ? Double.POSITIVE_INFINITY : train.on(pulse + 1);
      double length = train.length(pulse);
      double known = Double.isNaN(length) ? Limits.BLINK_MOST_SECONDS : length;
      lit = Math.max(lit, Math.min(known, next - train.on(pulse)));
      dark = Math.min(dark, Math.max(0, next - train.on(pulse) - known));
    }
    if (dark >= PLAIN_DARK_SECONDS) {
      return lit;
    }
    double missed = watching.noise().miss();
    double shows = Math.ceil(Math.log(1 - SURE) / Math.log(missed));
    return lit + Math.max(0, shows - 1) * train.cycleSeconds();
  }

  private List<Train> sides(Rhythm rhythm) {
    return rhythm instanceof Rhythm.Blinking blinking ? trains(blinking) : List.of();
  }

  /**
   * How many pairs the sheet has.
   *
   * @return the number
   */
  public int count() {
    int states = sheet.states().size();
    return states * (states - 1) / 2;
  }

  /**
   * All pairs of the sheet.
   *
   * @param done called once for each pair that is finished, by any thread
   * @return the pairs in the sheet's order
   */
  public List<Pair> pairs(Runnable done) {
    List<LampState> states = sheet.states();
    List<int[]> all = new ArrayList<>();
    for (int i = 0; i < states.size(); i++) {
      for (int k = i + 1; k < states.size(); k++) {
        all.add(new int[] {i, k});
      }
    }
    return IntStream.range(0, all.size())
        .parallel()
        .mapToObj(
            n -> {
              Pair pair = between(states.get(all.get(n)[0]), states.get(all.get(n)[1]));
              done.run();
              return pair;
            })
        .toList();
  }
}

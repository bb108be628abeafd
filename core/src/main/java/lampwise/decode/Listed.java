package lampwise.decode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** What the states of a sheet may show in one recording: their pulse trains, and when. */
final class Listed {
  /** A few rates of blinks without rhythm, per second, for a stretch among others. */
  private static final double[] RANDOM_RATES = {0.1, 0.3, 1, 2.5};

  /** Blinks of a cycle that lie as near as this are at the same place. */
  private static final double SAME_SECONDS = 0.02;

  private static final double SAME_FRACTION = 0.02;

  /** A narrower part of a stretch is none. */
  private static final double LEAST_STRETCH = 1e-3;

  private final CodeSheet sheet;
  private final List<List<Train>> trains = new ArrayList<>();
  private final List<List<Visibility>> ways = new ArrayList<>();

  Listed(CodeSheet sheet, Evidence evidence, Marks marks) {
    this.sheet = sheet;
    for (LampState state : sheet.states()) {
      trains.add(
          state.rhythm() instanceof Rhythm.Blinking blinking
              ? Templates.of(blinking, sheet.blinkSeconds(), sheet.clockTolerance(), evidence)
              : List.of());
      ways.add(Visibility.of(state.seen(), marks, evidence.window()));
    }
  }

  CodeSheet sheet() {
    return sheet;
  }

  /** How many states there are. */
  int size() {
    return sheet.states().size();
  }

  LampState state(int number) {
    return sheet.states().get(number);
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
        boolean seen = way.stretches().stream().anyMatch(w -> Showing.overlap(w, stretch) > 0);
        boolean part = way.stretches().stream().noneMatch(w -> Showing.covers(w, stretch));
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

  /** When a state's lamp can be seen, in each of the ways that the marks leave open. */
  List<Visibility> ways(int state) {
    return ways.get(state);
  }

  /** Whether a state is a constant rate. */
  boolean isRate(int number) {
    return state(number).rhythm() instanceof Rhythm.Blinking blinking
        && blinking.prelude().isEmpty()
        && blinking.cycle() instanceof Cycle.Rated;
  }

  /** Those of some rhythms that no listed state shows, its clock or range included. */
  List<FreeRhythms> without(List<FreeRhythms> rhythms) {
    List<FreeRhythms> left = new ArrayList<>();
    for (FreeRhythms free : rhythms) {
      for (Train train : without(free.train())) {
        left.add(new FreeRhythms(train, free.logDensity(), free.durations(), free.repeats()));
      }
    }
    return left;
  }

  /** The parts of a train's stretch in which it is not what a listed state shows. */
  private List<Train> without(Train free) {
    List<Train> left = List.of(free);
    for (List<Train> state : trains) {
      for (Train listed : state) {
        if (isSame(free, listed)) {
          double ratio = listed.cycleSeconds() / free.cycleSeconds();
          left =
              left.stream()
                  .flatMap(part -> outside(part, ratio * listed.low(), ratio * listed.high()))
                  .toList();
        }
      }
    }
    return left;
  }

  /** What is left of a train if a part of its stretch is cut out. */
  private static Stream<Train> outside(Train train, double low, double high) {
    if (low >= train.high() || high <= train.low()) {
      return Stream.of(train);
    }
    Stream.Builder<Train> parts = Stream.builder();
    if (low - train.low() > LEAST_STRETCH) {
      parts.add(train.within(train.low(), low));
    }
    if (train.high() - high > LEAST_STRETCH) {
      parts.add(train.within(high, train.high()));
    }
    return parts.build();
  }

  /** The other states that one may be taken for where first blinks are noted late. */
  List<Integer> alike(int state) {
    return alike(other -> other != state, trains.get(state));
  }

  /** The states that one of these rhythms may be where first blinks are noted late. */
  List<Integer> alike(List<FreeRhythms> rhythms) {
    return alike(any -> true, rhythms.stream().map(FreeRhythms::train).toList());
  }

  private List<Integer> alike(IntPredicate which, List<Train> like) {
    return IntStream.range(0, size())
        .filter(which)
        .filter(i -> trains.get(i).stream().anyMatch(t -> like.stream().anyMatch(t::mayLookLike)))
        .boxed()
        .toList();
  }

  /**
   * All states, those first that are like one of these rhythms; else in an order that hangs on
   * their trains alone, so that the sheet's order says nothing.
   */
  List<Integer> likeFirst(List<FreeRhythms> rhythms) {
    Comparator<Integer> unlike =
        Comparator.comparing(
            state ->
                trains.get(state).stream()
                    .noneMatch(t -> rhythms.stream().anyMatch(free -> isLike(free.train(), t))));
    return IntStream.range(0, size())
        .boxed()
        .sorted(
            unlike
                .thenComparing(state -> first(state, Train::cycleSeconds))
                .thenComparing(state -> first(state, train -> train.on(train.size() - 1)))
                .thenComparing(state -> first(state, train -> train.on(train.size() / 2))))
        .toList();
  }

  /** A value of a state's first train; 0 if it has none. */
  private double first(int state, ToDoubleFunction<Train> value) {
    return trains.get(state).stream().limit(1).mapToDouble(value).sum();
  }

  /** Whether the cycle is as long, the clock or range included, and has as many blinks. */
  private static boolean isLike(Train free, Train listed) {
    double ratio = free.cycleSeconds() / listed.cycleSeconds();
    return hasAsMany(free, listed) && ratio >= listed.low() && ratio <= listed.high();
  }

  /** Whether both repeat, with as many blinks in a cycle. */
  private static boolean hasAsMany(Train free, Train listed) {
    return free.repeats()
        && listed.repeats()
        && listed.prelude() == 0
        && listed.size() == free.size();
  }

  /** Whether both show the same, but for how fast they run. */
  private static boolean isSame(Train free, Train listed) {
    double ratio = free.cycleSeconds() / listed.cycleSeconds();
    boolean same = hasAsMany(free, listed);
    for (int i = 1; same && i < free.size(); i++) {
      double on = listed.on(i) - listed.on(0);
      same = Math.abs(free.on(i) / ratio - on) <= SAME_SECONDS + SAME_FRACTION * on;
    }
    return same;
  }
}

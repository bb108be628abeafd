package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;

/**
 * The states of a sheet that blink faster than a light curve can show, and what its samples cannot
 * tell them from: at the times that were sampled, a fast blink can look like a slower one (an
 * alias), or like a level that does not change.
 */
final class TooFast {
  /** From this part of what another explains on a rhythm looks like it (chosen). */
  static final double ALIKE = 0.7;

  /** Of blinks this much of the samples' rate or faster averaging can leave a level. */
  private static final double AVERAGED_OUT = 0.75;

  /** So many blinks in a cycle keep a pace (chosen). */
  private static final int LEAST_PACE = 8;

  /** So many samples show what an alias is. */
  private static final int SAMPLES = 200;

  /** What the sensor of these made-up samples averages over, as a part of their time apart. */
  private static final double AVERAGED = 0.35;

  /** Where a made-up rhythm begins, as a part of its cycle. */
  private static final double PHASE = 0.3;

  private static final double MOST_WORK = 5e7;
  private static final double MOST_SECONDS = 60;

  private static final int MOST_NOTES = 3;
  private static final int MOST_NAMED = 3;

  private final CodeSheet sheet;
  private final SampleRate rate;
  private final Map<Integer, List<Train>> trains = new HashMap<>();

  TooFast(CodeSheet sheet, SampleRate rate) {
    this.sheet = sheet;
    this.rate = rate;
  }

  CodeSheet sheet() {
    return sheet;
  }

  SampleRate rate() {
    return rate;
  }

  /** What a state shows; none if it does not blink. */
  List<Train> trains(int state) {
    return trains.computeIfAbsent(
        state,
        number ->
            sheet.states().get(number).rhythm() instanceof Rhythm.Blinking blinking
                ? Templates.of(blinking, sheet.blinkSeconds(), sheet.clockTolerance())
                : List.of());
  }

  /**
   * Whether blinks of a state come faster than the samples can show. Its trains are laid out only
   * where its phrase does not say so by itself.
   */
  boolean isTooFast(int state) {
    double clock = Math.sqrt(1 - sheet.clockTolerance() * sheet.clockTolerance());
    return sheet.states().get(state).rhythm() instanceof Rhythm.Blinking blinking
        && clock * LeastApart.seconds(blinking, sheet.blinkSeconds()) < rate.leastApartSeconds()
        && apartSeconds(state) < rate.leastApartSeconds();
  }

  /**
   * Whether a state is too fast and keeps its pace, so that it can look like another. A few blinks
   * in a burst cannot: they run together, but the burst is seen.
   */
  boolean isPace(int state) {
    return isTooFast(state)
        && trains(state).stream()
            .allMatch(t -> t.repeats() && (t.perCycle() == 1 || t.perCycle() >= LEAST_PACE));
  }

  /** What a state may show that is too fast. */
  List<Train> fastTrains(int state) {
    return trains(state).stream().filter(t -> apartSeconds(t) < rate.leastApartSeconds()).toList();
  }

  /** Whether a state may look like a level that does not change. */
  boolean mayBeLevel(int state) {
    return isPace(state)
        && apartSeconds(state) * AVERAGED_OUT < rate.seconds()
        && trains(state).stream().allMatch(train -> train.perCycle() == 1);
  }

  /** The least time from the start of one blink to the next, at the middle of what it may be. */
  private double apartSeconds(int state) {
    return trains(state).stream()
        .mapToDouble(TooFast::apartSeconds)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  static double apartSeconds(Train train) {
    double apart = Double.POSITIVE_INFINITY;
    int last = train.repeats() ? train.size() : train.size() - 1;
    for (int pulse = 0; pulse < last; pulse++) {
      apart = Math.min(apart, train.on(pulse + 1) - train.on(pulse));
    }
    return Math.sqrt(train.low() * train.high()) * apart;
  }

  /**
   * What to say of a light curve: a sentence for each state that cannot be told for this reason.
   */
  List<String> notes(LightCurve curve) {
    if (!(rate.seconds() > 0)) {
      return List.of();
    }
    List<String> notes = new ArrayList<>();
    List<String> joined = new ArrayList<>();
    Optional<double[]> times = Optional.empty();
    AliasFit.Work work = new AliasFit.Work(MOST_WORK);
    for (int i = 0; i < sheet.states().size(); i++) {
      if (!isTooFast(i)) {
        continue;
      }
      double[] seconds = times.isPresent() ? times.get() : times(curve);
      times = Optional.of(seconds);
      List<String> others = new ArrayList<>();
      for (int k = 0; k < sheet.states().size(); k++) {
        boolean level = !(sheet.states().get(k).rhythm() instanceof Rhythm.Blinking);
        if (k != i && isPace(i) && (level ? mayBeLevel(i) : looksLike(i, k, seconds, work))) {
          others.add(sheet.states().get(k).name());
        }
      }
      String name = sheet.states().get(i).name();
      if (others.isEmpty() || notes.size() == MOST_NOTES) {
        joined.add(name);
      } else {
        notes.add("at " + rate.words() + ", " + name + " cannot be told from " + list(others));
      }
    }
    if (!joined.isEmpty()) {
      notes.add("at " + rate.words() + ", the blinks of " + list(joined) + " run together");
    }
    return notes;
  }

  /** Names in a row: {@code a, b or c}. */
  static String list(List<String> names) {
    StringBuilder text = new StringBuilder();
    int named = Math.min(names.size(), MOST_NAMED);
    for (int i = 0; i < named; i++) {
      text.append(i == 0 ? "" : i == names.size() - 1 ? " or " : ", ").append(names.get(i));
    }
    int more = names.size() - named;
    return more > 0 ? text + " and " + more + " more" : text.toString();
  }

  private static double[] times(LightCurve curve) {
    double[] seconds = new double[SAMPLES];
    int count = 0;
    while (count < Math.min(SAMPLES, curve.size())
        && curve.seconds(count) <= curve.seconds(0) + MOST_SECONDS) {
      seconds[count] = curve.seconds(count);
      count++;
    }
    return Arrays.copyOf(seconds, count);
  }

  /** Whether a lamp of one state may leave the samples that another state would leave. */
  private boolean looksLike(int fast, int other, double[] seconds, AliasFit.Work work) {
    for (Train train : trains(other)) {
      if (train.repeats() && train.prelude() == 0) {
        AliasFit fit = AliasFit.of(seconds, lit(train, seconds), rate.seconds(), work);
        double own = fit.best(List.of(train)).squares();
        return own > 0 && fit.best(fastTrains(fast)).squares() > ALIKE * own;
      }
    }
    return false;
  }

  /** The part of each sample that a train lights. */
  private double[] lit(Train train, double[] seconds) {
    double cycle = train.cycleSeconds();
    double averaging = AVERAGED * rate.seconds();
    double[] lit = new double[seconds.length];
    for (int i = 0; i < lit.length; i++) {
      double end = seconds[i] - seconds[0] + PHASE * cycle;
      for (int pulse = 0; pulse < train.size(); pulse++) {
        double known = train.length(pulse);
        double length = Double.isNaN(known) ? TrainBuilder.USUAL_BLINK : known;
        double on = train.on(pulse) + Math.floor((end - train.on(pulse)) / cycle) * cycle;
        lit[i] += Math.max(0, Math.min(end, on + length) - Math.max(end - averaging, on));
      }
    }
    return lit;
  }
}

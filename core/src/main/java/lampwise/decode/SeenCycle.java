package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A cycle that a recording repeats, some of its blinks missed and others noted by mistake, found by
 * laying the recording over itself at a period (epoch folding: Leahy et al., Astrophysical Journal
 * 266, 1983): blinks of the lamp gather at their places in the cycle, mistakes do not.
 */
final class SeenCycle {
  /** Times between two blinks are periods worth a try if this many blinks apart or fewer. */
  private static final int MOST_LAG = 12;

  /** Times between blinks that differ by less are of one period. */
  private static final double SAME_SECONDS = 0.12;

  /** This many blinks show what repeats. */
  private static final int MOST_FOLDED = 100;

  /** How many periods are tried. */
  private static final int MOST_PERIODS = 24;

  /** A period is tuned until the cycles at both ends of the recording agree to this. */
  private static final double AGREE_SECONDS = 0.1;

  private static final int MOST_STEPS = 48;

  /** Periods this near to each other, as a fraction, are one. */
  private static final double SAME_FRACTION = 0.02;

  /** Gaps that differ by less, in seconds, are the same. */
  private static final double SAME_GAP = 0.06;

  private final double seconds;
  private final double[] gaps;
  private final double[] lengths;
  private final int repeats;

  /**
   * A cycle, of arrays that nobody changes afterwards.
   *
   * @param seconds how long it lasts
   * @param gaps from the start of each blink to that of the next; the largest is the last
   * @param lengths the usual length of each, NaN where none was noted
   * @param repeats how often a blink was seen again, on average
   */
  SeenCycle(double seconds, double[] gaps, double[] lengths, int repeats) {
    this.seconds = seconds;
    this.gaps = gaps;
    this.lengths = lengths;
    this.repeats = repeats;
  }

  double seconds() {
    return seconds;
  }

  double[] gaps() {
    return gaps.clone();
  }

  double[] lengths() {
    return lengths.clone();
  }

  int repeats() {
    return repeats;
  }

  /**
   * The cycles that a recording repeats best.
   *
   * @param all the recording; of a long one the beginning is looked at
   * @param mostBlinks how many blinks a cycle can have
   * @param most how many cycles at the most
   */
  static List<SeenCycle> of(Evidence all, int mostBlinks, int most) {
    Evidence evidence = all.beginning(MOST_FOLDED);
    double[] starts = evidence.starts();
    List<PhaseFold> folds = new ArrayList<>();
    for (double period : periods(starts, evidence.window().lengthSeconds())) {
      tuned(starts, evidence, period, mostBlinks).ifPresent(folds::add);
    }
    folds.sort((a, b) -> Double.compare(b.worth(), a.worth()));
    List<SeenCycle> best = new ArrayList<>();
    for (PhaseFold fold : folds) {
      boolean known = best.stream().anyMatch(b -> b.repeats(fold.period(), fold.places().size()));
      if (best.size() < most && !known && fold.worth() > 0) {
        best.add(fold.cycle(evidence));
      }
    }
    return best;
  }

  /** Whether another one is about the same. */
  boolean isLike(SeenCycle other) {
    boolean like =
        gaps.length == other.gaps.length
            && Math.abs(seconds - other.seconds) < 2 * SAME_FRACTION * seconds;
    for (int i = 0; like && i + 1 < gaps.length; i++) {
      like = Math.abs(gaps[i] - other.gaps[i]) < SAME_GAP;
    }
    return like;
  }

  /** Whether a cycle is this one, or this one several times over. */
  private boolean repeats(double period, int blinks) {
    double times = Math.rint(period / seconds);
    boolean same = Math.abs(times * seconds - period) < SAME_FRACTION * period;
    return same && (times == 1 || (times > 1 && blinks == times * gaps.length));
  }

  /** Times between blinks that occur more than once: the most regular, then the commonest. */
  private static List<Double> periods(double[] starts, double windowSeconds) {
    int count = 0;
    double[] all = new double[starts.length * MOST_LAG];
    for (int i = 0; i < starts.length; i++) {
      for (int k = i + 1; k < starts.length && k <= i + MOST_LAG; k++) {
        double apart = starts[k] - starts[i];
        if (apart > SAME_SECONDS && apart < windowSeconds) {
          all[count++] = apart;
        }
      }
    }
    double[] sorted = Arrays.copyOf(all, count);
    Arrays.sort(sorted);
    double[] shares = new double[count];
    double[] often = new double[count];
    double[] middles = new double[count];
    int to = 0;
    double sum = 0;
    for (int from = 0; from < count; from++) {
      while (to < count && sorted[to] <= sorted[from] + SAME_SECONDS) {
        sum += sorted[to++];
      }
      middles[from] = sum / (to - from);
      sum -= sorted[from];
      often[from] = to - from >= 2 ? to - from : 0;
      // Of all times that fit into the recording, this part is about as long.
      shares[from] = often[from] / Math.max(1, windowSeconds / middles[from] - 1);
    }
    List<Double> periods = new ArrayList<>();
    addFirst(shares, shares, often, middles, periods);
    addFirst(often, shares, often, middles, periods);
    return periods;
  }

  /**
   * Adds a few times, none near another one: those with the largest numbers, of equal ones those
   * with the largest shares.
   */
  private static void addFirst(
      double[] by, double[] shares, double[] often, double[] middles, List<Double> periods) {
    for (int more = 0; more < MOST_PERIODS / 2; more++) {
      int first = -1;
      for (int i = 0; i < by.length; i++) {
        if (often[i] > 0
            && (first < 0
                || by[i] > by[first]
                || (by[i] == by[first] && shares[i] > shares[first]))) {
          first = i;
        }
      }
      if (first < 0) {
        return;
      }
      double period = middles[first];
      periods.add(period);
      for (int i = 0; i < by.length; i++) {
        often[i] = Math.abs(middles[i] - period) < SAME_SECONDS / 2 ? 0 : often[i];
      }
    }
  }

  /**
   * The best fold at about a period: where the fullest place has most blinks. Empty if none has
   * enough of them to be one.
   */
  private static Optional<PhaseFold> tuned(
      double[] starts, Evidence evidence, double about, int mostBlinks) {
    double cycles = evidence.window().lengthSeconds() / about;
    double step = AGREE_SECONDS / Math.max(1, cycles);
    int steps = (int) Math.min(MOST_STEPS / 2.0, Math.ceil(SAME_SECONDS / 2 / step));
    double width = PhaseFold.width(about);
    double[] ordered = starts.clone();
    double[] phases = new double[starts.length];
    double sum = 0;
    int equal = 0;
    double longest = about + steps * step;
    int most = (int) Math.ceil(PhaseFold.least(evidence.watchedSeconds() / longest));
    // From the middle out, so that soon most of what lies beside it is known to be no better.
    for (int i = 0; i <= 2 * steps; i++) {
      double period = about + (i <= steps ? i : steps - i) * step;
      if (PhaseFold.mostAtPlace(starts, period, width) < most) {
        continue;
      }
      PhaseFold.lay(ordered, phases, starts[0], period);
      int fullest = PhaseFold.fullest(phases, period, width);
      if (fullest > most) {
        most = fullest;
        sum = 0;
        equal = 0;
      }
      if (fullest == most) {
        sum += period;
        equal++;
      }
    }
    return equal == 0
        ? Optional.empty()
        : Optional.of(PhaseFold.of(starts, evidence, sum / equal, mostBlinks));
  }
}

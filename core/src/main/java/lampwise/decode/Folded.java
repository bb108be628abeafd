package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.rhythm.Limits;

/**
 * A cycle that a recording repeats, some of its blinks missed and others noted by mistake, found by
 * laying the recording over itself at a period (epoch folding: Leahy et al., Astrophysical Journal
 * 266, 1983): blinks of the lamp gather at their places in the cycle, mistakes do not.
 *
 * @param seconds how long the cycle lasts
 * @param gaps from the start of each blink to that of the next; the largest is the last
 * @param lengths the usual length of each, NaN where none was noted
 * @param repeats how often a blink was seen again, on average
 */
record Folded(double seconds, double[] gaps, double[] lengths, int repeats) {
  /** Times between two blinks are periods worth a try if this many blinks apart or fewer. */
  private static final int MOST_LAG = 12;

  /** Times between blinks that differ by less are of one period. */
  private static final double SAME_SECONDS = 0.12;

  /** How many periods are tried. */
  private static final int MOST_PERIODS = 24;

  /** A period is tuned until the cycles at both ends of the recording agree to this. */
  private static final double AGREE_SECONDS = 0.1;

  private static final int MOST_STEPS = 48;

  /** Blinks within this of a place in the cycle belong to it. */
  private static final double PLACE_SECONDS = 0.2;

  private static final double PLACE_FRACTION = 0.3;

  /** A place at which fewer of the cycles than this show a blink is none. */
  private static final double LEAST_SEEN = 0.55;

  /** A place that shows two blinks in this part of the cycles has two. */
  private static final double OFTEN_TWICE = 0.3;

  /** What a blink at its place, one missed, and a place more are worth (natural logarithm). */
  private static final double HIT = 4;

  private static final double MISSED = -2;
  private static final double PLACE = -4;

  /** Periods this near to each other, as a fraction, are one. */
  private static final double SAME_FRACTION = 0.02;

  /**
   * The cycles that a recording repeats best.
   *
   * @param mostBlinks how many blinks a cycle can have
   * @param most how many cycles at the most
   */
  static List<Folded> of(Evidence evidence, int mostBlinks, int most) {
    double[] starts = evidence.starts();
    List<Fold> folds = new ArrayList<>();
    for (double period : periods(starts, evidence.window().lengthSeconds())) {
      folds.add(tuned(starts, evidence, period, mostBlinks));
    }
    folds.sort((a, b) -> Double.compare(b.worth, a.worth));
    List<Folded> best = new ArrayList<>();
    for (Fold fold : folds) {
      boolean known =
          best.stream()
              .anyMatch(b -> Math.abs(b.seconds - fold.period) < SAME_FRACTION * fold.period);
      if (best.size() < most && !known && fold.worth > 0) {
        best.add(fold.cycle(evidence));
      }
    }
    return best;
  }

  /** Times between blinks that occur more than once, the commonest first. */
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
    List<double[]> ranked = new ArrayList<>();
    int to = 0;
    for (int from = 0; from < count; from++) {
      while (to < count && sorted[to] <= sorted[from] + SAME_SECONDS) {
        to++;
      }
      if (to - from >= 2) {
        double middle = Arrays.stream(sorted, from, to).average().orElseThrow();
        // Of all times that fit into the recording, this part is about as long.
        double share = (to - from) / Math.max(1, windowSeconds / middle - 1);
        ranked.add(new double[] {share, middle});
      }
    }
    ranked.sort((a, b) -> Double.compare(b[0], a[0]));
    List<Double> periods = new ArrayList<>();
    for (double[] rank : ranked) {
      boolean known = periods.stream().anyMatch(p -> Math.abs(p - rank[1]) < SAME_SECONDS / 2);
      if (periods.size() < MOST_PERIODS && !known) {
        periods.add(rank[1]);
      }
    }
    return periods;
  }

  /** The best fold at about a period: where the fullest place has most blinks. */
  private static Fold tuned(double[] starts, Evidence evidence, double about, int mostBlinks) {
    double cycles = evidence.window().lengthSeconds() / about;
    double step = AGREE_SECONDS / Math.max(1, cycles);
    int steps = (int) Math.min(MOST_STEPS / 2.0, Math.ceil(SAME_SECONDS / 2 / step));
    double width = Fold.width(about);
    double sum = 0;
    int equal = 0;
    int most = 0;
    for (int i = -steps; i <= steps; i++) {
      double period = about + i * step;
      int fullest = Fold.fullest(Fold.phases(starts, period), period, width);
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
    return Fold.of(starts, evidence, sum / equal, mostBlinks);
  }

  /** A recording laid over itself at one period. */
  private record Fold(double period, List<Double> places, double worth, double seen) {
    static Fold of(double[] starts, Evidence evidence, double period, int mostBlinks) {
      double[] phases = phases(starts, period);
      double width = width(period);
      double cycles = evidence.watchedSeconds() / period;
      List<Double> places = new ArrayList<>();
      boolean[] taken = new boolean[phases.length];
      double worth = PLACE;
      double hits = 0;
      while (places.size() < mostBlinks) {
        double[] densest = densest(phases, taken, period, width);
        double gain = densest[0] * HIT + Math.max(0, cycles - densest[0]) * MISSED + PLACE;
        if (!(densest[0] >= 2 && densest[0] >= LEAST_SEEN * Math.floor(cycles) && gain > 0)) {
          break;
        }
        for (int i = 0; i < phases.length; i++) {
          taken[i] |= Math.abs(apart(phases[i], densest[1], period)) <= 0.6 * width;
        }
        places.add(densest[1]);
        worth += gain;
        hits += densest[0];
      }
      for (int i = places.size() - 1; i >= 0 && places.size() < mostBlinks; i--) {
        double apart = twice(starts, places.get(i), period, width);
        if (apart > 0) {
          places.set(i, places.get(i) - apart / 2);
          places.add(places.get(i) + apart);
        }
      }
      places.sort(Double::compare);
      return new Fold(period, places, worth, hits / Math.max(1, places.size()));
    }

    static double width(double period) {
      return Math.min(PLACE_SECONDS, PLACE_FRACTION * period);
    }

    /** Where in the cycle each blink lies, rising. */
    static double[] phases(double[] starts, double period) {
      double[] phases = new double[starts.length];
      for (int i = 0; i < phases.length; i++) {
        phases[i] = (starts[i] - starts[0]) % period;
      }
      Arrays.sort(phases);
      return phases;
    }

    /** How many blinks the fullest place has. */
    static int fullest(double[] phases, double period, double width) {
      int count = phases.length;
      int most = 0;
      int to = 0;
      for (int from = 0; from < count; from++) {
        while (to < from + count
            && phases[to % count] + (to < count ? 0 : period) - phases[from] <= width) {
          to++;
        }
        most = Math.max(most, to - from);
      }
      return most;
    }

    /** How far apart two blinks at a place are, if it often has two in one cycle; else 0. */
    private static double twice(double[] starts, double place, double period, double width) {
      double apart = 0;
      int pairs = 0;
      int cycles = 0;
      double last = Double.NEGATIVE_INFINITY;
      boolean first = true;
      for (double start : starts) {
        if (Math.abs(apart(start - starts[0], place, period)) > width) {
          continue;
        }
        boolean again = start - last < 2 * width;
        if (again && first) {
          apart += start - last;
          pairs++;
          first = false;
        } else if (!again) {
          cycles++;
          first = true;
        }
        last = start;
      }
      return pairs >= 2 && pairs >= OFTEN_TWICE * cycles
          ? Math.max(apart / pairs, Limits.APART_LEAST_SECONDS)
          : 0;
    }

    /** How many of the blinks that are left the fullest place has, and where it is. */
    private static double[] densest(double[] phases, boolean[] taken, double period, double width) {
      double most = 0;
      double place = 0;
      for (int i = 0; i < phases.length; i++) {
        double sum = 0;
        int count = 0;
        for (int k = i; !taken[i] && k < i + phases.length; k++) {
          int at = k % phases.length;
          double after = phases[at] - phases[i] + (k >= phases.length ? period : 0);
          if (after > width) {
            break;
          }
          if (!taken[at]) {
            sum += after;
            count++;
          }
        }
        if (count > most) {
          most = count;
          place = phases[i] + sum / count;
        }
      }
      return new double[] {most, place % period};
    }

    private static double apart(double a, double b, double period) {
      double apart = a - b;
      return apart - period * Math.rint(apart / period);
    }

    /** The cycle, turned so that its largest gap is the last. */
    Folded cycle(Evidence evidence) {
      int count = places.size();
      int largest = 0;
      double[] around = new double[count];
      for (int i = 0; i < count; i++) {
        double next = i + 1 < count ? places.get(i + 1) : places.get(0) + period;
        around[i] = next - places.get(i);
        largest = around[i] > around[largest] ? i : largest;
      }
      double[] gaps = new double[count];
      double[] lengths = new double[count];
      for (int i = 0; i < count; i++) {
        int from = (largest + 1 + i) % count;
        gaps[i] = around[from];
        lengths[i] = length(evidence, places.get(from));
      }
      return new Folded(period, gaps, lengths, Math.max(1, (int) Math.rint(seen) - 1));
    }

    private double length(Evidence evidence, double place) {
      double first = evidence.notes().get(0).on();
      double[] lengths =
          evidence.notes().stream()
              .filter(n -> Math.abs(apart(n.on() - first, place, period)) < PLACE_SECONDS)
              .mapToDouble(Evidence.Note::length)
              .filter(l -> !Double.isNaN(l))
              .sorted()
              .toArray();
      return SeenLengths.median(lengths);
    }
  }
}

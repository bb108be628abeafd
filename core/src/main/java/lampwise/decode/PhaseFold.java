package lampwise.decode;

import java.util.ArrayList;
import java.util.List;

/**
 * A recording laid over itself at one period.
 *
 * @param period the period
 * @param places where in it blinks gather, rising
 * @param worth how much this explains (natural logarithm, rough)
 * @param seen how many blinks a place has, on average
 */
record PhaseFold(double period, List<Double> places, double worth, double seen) {
  /** Blinks within this of a place in the cycle belong to it. */
  private static final double PLACE_SECONDS = 0.2;

  private static final double PLACE_FRACTION = 0.3;

  /** A cycle of more parts than this is not looked at part by part. */
  private static final int MOST_PARTS = 1000;

  /** A place at which fewer of the cycles than this show a blink is none. */
  private static final double LEAST_SEEN = 0.55;

  /** What a blink at its place, one missed, and a place more are worth (natural logarithm). */
  private static final double HIT = 4;

  private static final double MISSED = -2;
  private static final double PLACE = -4;

  static PhaseFold of(double[] starts, Evidence evidence, double period, int mostBlinks) {
    double[] left = phases(starts, period);
    int count = left.length;
    double width = width(period);
    double cycles = evidence.watchedSeconds() / period;
    List<Double> places = new ArrayList<>();
    double worth = PLACE;
    double hits = 0;
    while (places.size() < mostBlinks) {
      double[] densest = densest(left, count, period, width);
      double gain = densest[0] * HIT + Math.max(0, cycles - densest[0]) * MISSED + PLACE;
      if (densest[0] < least(cycles) || !(gain > 0)) {
        break;
      }
      int kept = 0;
      for (int i = 0; i < count; i++) {
        if (!(Math.abs(apart(left[i], densest[1], period)) <= 0.6 * width)) {
          left[kept++] = left[i];
        }
      }
      count = kept;
      places.add(densest[1]);
      worth += gain;
      hits += densest[0];
    }
    places.sort(Double::compare);
    return new PhaseFold(period, places, worth, hits / Math.max(1, places.size()));
  }

  /** With fewer blinks than this a place is none. */
  static double least(double cycles) {
    return Math.max(2, LEAST_SEEN * Math.floor(cycles));
  }

  static double width(double period) {
    return Math.min(PLACE_SECONDS, PLACE_FRACTION * period);
  }

  /** Where in the cycle each blink lies, rising. */
  private static double[] phases(double[] starts, double period) {
    double[] phases = new double[starts.length];
    lay(starts.clone(), phases, starts[0], period);
    return phases;
  }

  /**
   * Lays times over each other: puts them in the order of their places in the cycle, and tells the
   * places. Times that were laid at nearly the same period before are soon in order.
   */
  static void lay(double[] times, double[] phases, double first, double period) {
    for (int i = 0; i < times.length; i++) {
      double time = times[i];
      double since = time - first;
      double phase = since - period * Math.floor(since / period);
      int at = i;
      for (; at > 0 && phases[at - 1] > phase; at--) {
        times[at] = times[at - 1];
        phases[at] = phases[at - 1];
      }
      times[at] = time;
      phases[at] = phase;
    }
  }

  /**
   * At least as many blinks as the fullest place has, without laying them in order: a place lies in
   * three neighbours of parts that are half as wide or wider.
   */
  static int mostAtPlace(double[] starts, double period, double width) {
    int parts = (int) (1.99 * period / width);
    if (parts > MOST_PARTS) {
      return starts.length;
    }
    int[] counts = new int[parts];
    double cyclesPerSecond = 1 / period;
    for (double start : starts) {
      double cycles = (start - starts[0]) * cyclesPerSecond;
      counts[Math.min(parts - 1, (int) ((cycles - Math.floor(cycles)) * parts))]++;
    }
    int most = 0;
    int last = counts[parts - 2];
    int here = counts[parts - 1];
    for (int next : counts) {
      most = Math.max(most, last + here + next);
      last = here;
      here = next;
    }
    return most;
  }

  /** How many blinks the fullest place has. */
  static int fullest(double[] phases, double period, double width) {
    int count = phases.length;
    int most = 0;
    int to = 0;
    for (int from = 0; from < count; from++) {
      while (to < from + count
          && (to < count ? phases[to] : phases[to - count] + period) - phases[from] <= width) {
        to++;
      }
      most = Math.max(most, to - from);
    }
    return most;
  }

  /** How many of the blinks that are left the fullest place has, and where it is. */
  private static double[] densest(double[] left, int count, double period, double width) {
    int most = 0;
    int fullest = 0;
    int to = 0;
    for (int from = 0; from < count; from++) {
      while (to < from + count && after(left, count, from, to, period) <= width) {
        to++;
      }
      if (to - from > most) {
        most = to - from;
        fullest = from;
      }
    }
    double sum = 0;
    for (int k = fullest; k < fullest + most; k++) {
      sum += after(left, count, fullest, k, period);
    }
    return new double[] {most, (left[fullest] + sum / most) % period};
  }

  /** How long after a blink another one comes in the cycle, or in the next one. */
  private static double after(double[] left, int count, int from, int to, double period) {
    return to < count ? left[to] - left[from] : left[to - count] - left[from] + period;
  }

  private static double apart(double a, double b, double period) {
    double apart = a - b;
    return apart - period * Math.rint(apart / period);
  }

  /** The cycle, turned so that its largest gap is the last. */
  SeenCycle cycle(Evidence evidence) {
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
    return new SeenCycle(period, gaps, lengths, Math.max(1, (int) Math.rint(seen) - 1));
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

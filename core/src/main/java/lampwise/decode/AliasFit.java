package lampwise.decode;

import java.util.Arrays;
import java.util.List;

/**
 * How much of the changes of light levels blinks of a pace would explain, whatever the sensor's
 * averaging is: the samples are put in order of their phase in a cycle, and those of one stretch of
 * phases count as lit (box fitting: Kovacs, Zucker and Mazeh 2002). A stretch is at least as long
 * as a blink; averaging makes it longer.
 */
final class AliasFit {
  /** Bins of phase in a blink, and the fewest and most of a cycle. */
  private static final double BINS_IN_BLINK = 3;

  private static final int LEAST_BINS = 12;
  private static final int MOST_BINS = 400;

  /** A train may drift by this part of a blink from end to end between two paces. */
  private static final double DRIFT = 0.3;

  /** The most of a cycle that can be lit. */
  private static final double MOST_LIT = 0.8;

  /** Each width that is tried is so many times the one before. */
  private static final double WIDER = 1.4;

  /** So many widths are tried, about. */
  private static final double WIDTHS = 6;

  /** What may be spent on all paces that are tried, in additions; then no more are tried. */
  static final class Work {
    private double left;

    Work(double additions) {
      this.left = additions;
    }

    private boolean take(double additions) {
      left -= additions;
      return left >= 0;
    }
  }

  private final double[] seconds;
  private final double[] values;
  private final double periodSeconds;
  private final Work work;

  private AliasFit(double[] seconds, double[] values, double periodSeconds, Work work) {
    this.seconds = seconds;
    this.values = values;
    this.periodSeconds = periodSeconds;
    this.work = work;
  }

  /**
   * Takes samples.
   *
   * @param seconds when each ended, rising
   * @param values their levels; those that are NaN are left out
   * @param periodSeconds the usual time from sample to sample
   * @param work what may be spent on them
   */
  static AliasFit of(double[] seconds, double[] values, double periodSeconds, Work work) {
    double[] times = new double[seconds.length];
    double[] levels = new double[seconds.length];
    int count = 0;
    for (int i = 0; i < seconds.length; i++) {
      if (!Double.isNaN(values[i])) {
        times[count] = seconds[i];
        levels[count++] = values[i];
      }
    }
    levels = Arrays.copyOf(levels, count);
    double mean = Arrays.stream(levels).average().orElse(0);
    for (int i = 0; i < count; i++) {
      levels[i] -= mean;
    }
    return new AliasFit(Arrays.copyOf(times, count), levels, periodSeconds, work);
  }

  /**
   * The squares that blinks take away, less what noise takes: each may light the samples that end
   * while it lasts or a sample later. 0 or less if they explain nothing.
   */
  double explained(List<SeenBlink> blinks) {
    boolean[] lit = new boolean[seconds.length];
    for (SeenBlink seen : blinks) {
      double on = seen.blink().onSeconds();
      double off = seen.blink().hasOff() ? seen.blink().offSeconds() : on;
      int first = Arrays.binarySearch(seconds, on);
      for (int i = first < 0 ? -first - 1 : first;
          i < seconds.length && seconds[i] <= off + periodSeconds;
          i++) {
        lit[i] = true;
      }
    }
    double sum = 0;
    int dark = 0;
    for (int i = 0; i < lit.length; i++) {
      sum += lit[i] ? 0 : values[i];
      dark += lit[i] ? 0 : 1;
    }
    if (dark < 2 || dark == lit.length) {
      return 0;
    }
    double squares = 0;
    double all = 0;
    for (int i = 0; i < lit.length; i++) {
      double above = values[i] - sum / dark;
      squares += lit[i] ? 0 : above * above;
      all += values[i] * values[i];
    }
    double usual = Math.min(squares / (dark - 1), noiseSquare());
    return all - squares - usual * (lit.length - dark);
  }

  /** The usual square of a sample without a lamp, by the median distance from the median. */
  double noiseSquare() {
    double off = Spread.of(values).deviation();
    return off * off;
  }

  /**
   * A pace and what it explains.
   *
   * @param squares the squares it takes away
   * @param cycleSeconds its cycle
   */
  record Pace(double squares, double cycleSeconds) {
    Pace better(Pace other) {
      return other.squares() > squares ? other : this;
    }
  }

  /** The best pace of one blink of at least a length, of all between two. */
  Pace best(double leastSeconds, double mostSeconds, double blink) {
    return best(new double[] {0}, leastSeconds, mostSeconds, blink);
  }

  /** The best pace of trains that repeat; blinks of unknown length have the usual one. */
  Pace best(List<Train> trains) {
    Pace best = new Pace(0, 0);
    for (Train each : trains) {
      if (each.repeats()) {
        best = best.better(best(each.withoutPrelude()));
      }
    }
    return best;
  }

  private Pace best(Train train) {
    double cycle = train.cycleSeconds();
    double[] on = new double[train.size()];
    double shortest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < on.length; i++) {
      on[i] = (train.on(i) - train.on(0)) / cycle;
      double length = train.length(i);
      shortest = Math.min(shortest, Double.isNaN(length) ? TrainBuilder.USUAL_BLINK : length);
    }
    return best(on, cycle * train.low(), cycle * train.high(), shortest);
  }

  private Pace best(double[] on, double leastCycle, double mostCycle, double blink) {
    Pace best = new Pace(0, leastCycle);
    double length = seconds.length == 0 ? 0 : seconds[seconds.length - 1] - seconds[0];
    double whole = Math.max(length, mostCycle);
    double cycle = leastCycle;
    while (cycle <= mostCycle) {
      double lasts = Math.min(blink, 0.5 * cycle / on.length);
      if (!work.take(seconds.length + WIDTHS * on.length * bins(cycle, lasts))) {
        break;
      }
      best = best.better(new Pace(at(on, cycle, lasts), cycle));
      cycle += DRIFT * lasts * cycle / whole;
    }
    return best;
  }

  private static int bins(double cycle, double blink) {
    double bins = Math.ceil(BINS_IN_BLINK * cycle / blink);
    return (int) Math.max(LEAST_BINS, Math.min(MOST_BINS, bins));
  }

  /** The squares that blinks at these parts of a cycle take away, at the best phase and width. */
  private double at(double[] on, double cycle, double blink) {
    int bins = bins(cycle, blink);
    // Running sums over two cycles.
    double[] sums = new double[2 * bins + 1];
    int[] counts = new int[2 * bins + 1];
    for (int i = 0; i < seconds.length; i++) {
      double phase = seconds[i] / cycle;
      int bin = Math.min(bins - 1, (int) ((phase - Math.floor(phase)) * bins));
      sums[bin + 1] += values[i];
      counts[bin + 1]++;
    }
    for (int k = 0; k < bins; k++) {
      sums[k + bins + 1] = sums[k + 1];
      counts[k + bins + 1] = counts[k + 1];
    }
    for (int k = 0; k < 2 * bins; k++) {
      sums[k + 1] += sums[k];
      counts[k + 1] += counts[k];
    }
    int[] starts = new int[on.length];
    double apart = MOST_LIT * bins;
    for (int i = 0; i < on.length; i++) {
      starts[i] = (int) Math.rint(on[i] * bins) % bins;
      // Blinks that averaging joins are one light, none is counted twice.
      apart = Math.min(apart, i > 0 ? Math.floor((on[i] - on[i - 1]) * bins) : apart);
    }
    double least = Math.max(1, blink / cycle * bins);
    double most = Math.min(apart, (blink + periodSeconds) / cycle * bins);
    double best = 0;
    int last = 0;
    for (double width = least; width <= Math.max(most, least); width *= WIDER) {
      int wide = (int) Math.rint(width);
      if (wide > last) {
        best = Math.max(best, best(sums, counts, starts, wide));
      }
      last = wide;
    }
    return best;
  }

  private double best(double[] sums, int[] counts, int[] starts, int wide) {
    int bins = sums.length / 2;
    int all = seconds.length;
    double best = 0;
    for (int phase = 0; phase < bins; phase++) {
      double sum = 0;
      int count = 0;
      for (int start : starts) {
        int at = (start + phase) % bins;
        sum += sums[at + wide] - sums[at];
        count += counts[at + wide] - counts[at];
      }
      if (sum > 0 && count > 0 && count < all) {
        // The mean of all is 0.
        best = Math.max(best, sum * sum * all / ((double) count * (all - count)));
      }
    }
    return best;
  }
}

package lampwise.decode;

import java.util.Arrays;

/**
 * The evidence of lamps of several brightnesses folded on a pulse train: the logarithm of the mean,
 * over every brightness, phase and stretch, of how much likelier the samples are with its blinks
 * than without any; and where it is greatest.
 *
 * @param logMean logarithm of the mean
 * @param best logarithm of the greatest
 * @param start the grid's place of the start of the train there
 * @param stretch the stretch there
 * @param lamp the number of the brightness there
 */
record Folded(double logMean, double best, int start, double stretch, int lamp) {
  /** What is this far below the greatest is not summed. */
  private static final double NEGLIGIBLE = 14;

  /** Most of the time of folding is spent on exponentials, which come from a table. */
  private static final double TABLE_STEPS = 64;

  private static final double[] TABLE = table();

  /** The grid's steps that a train may drift from end to end between two stretches. */
  private static final double DRIFT_STEPS = 2.5;

  /**
   * How many additions folding a train on so many places of the grid takes; a cycle that is longer
   * than the grid has phases at which nothing is added.
   */
  static double work(Train train, double places, double stepSeconds) {
    double phases = train.cycleSeconds() * train.high() / stepSeconds;
    return stretches(train, places) * (train.size() * places + phases);
  }

  private static double stretches(Train train, double places) {
    double each = DRIFT_STEPS / Math.max(1, places);
    return Math.max(1, Math.ceil((train.high() - train.low()) / each));
  }

  /**
   * Folds the evidence of several lamps at once, which have the same pulses at the same places.
   *
   * @param logRatios the evidence along the grid, at each place that of every lamp
   * @param lamps how many
   * @param from the first place of the grid at which the lamp can be seen
   * @param to the place after the last
   */
  static Folded of(
      Train train, float[] logRatios, int lamps, double stepSeconds, int from, int to) {
    int stretches = (int) stretches(train, to - from);
    Sum sum = new Sum(lamps);
    float[] logs = new float[lamps * most(train, stepSeconds)];
    for (int s = 0; s < stretches; s++) {
      double stretch = train.low() + (s + 0.5) / stretches * (train.high() - train.low());
      double cycle = train.cycleSeconds() * stretch / stepSeconds;
      int phases = Math.max(1, (int) cycle);
      Arrays.fill(logs, 0, lamps * phases, 0f);
      for (int pulse = 0; pulse < train.size(); pulse++) {
        double offset = train.on(pulse) * stretch / stepSeconds;
        for (int k = (int) Math.floor(-offset / cycle) - 1; ; k++) {
          int at = from + (int) Math.rint(offset + k * cycle);
          if (at >= to) {
            break;
          }
          int first = lamps * Math.max(0, from - at);
          int last = lamps * Math.min(phases, to - at);
          for (int i = first; i < last; i++) {
            logs[i] += logRatios[lamps * at + i];
          }
        }
      }
      sum.add(logs, lamps * phases, stretch);
    }
    return sum.folded();
  }

  private static int most(Train train, double stepSeconds) {
    return 1 + (int) (train.cycleSeconds() * train.high() / stepSeconds);
  }

  /**
   * The exponential of a number from -{@value #NEGLIGIBLE} to {@value #NEGLIGIBLE}: of the nearest
   * number of the table, and two terms of its series for the rest; wrong by a part in 10 million at
   * the most.
   */
  static double exp(double x) {
    double at = (x + NEGLIGIBLE) * TABLE_STEPS;
    int nearest = (int) (at + 0.5);
    double rest = (at - nearest) / TABLE_STEPS;
    return TABLE[nearest] * (1 + rest * (1 + rest / 2));
  }

  private static double[] table() {
    double[] table = new double[1 + (int) (2 * NEGLIGIBLE * TABLE_STEPS)];
    for (int i = 0; i < table.length; i++) {
      table[i] = Math.exp(i / TABLE_STEPS - NEGLIGIBLE);
    }
    return table;
  }

  /** The sum over lamps, phases and stretches, as it grows. */
  private static final class Sum {
    private final int lamps;
    private double best = Double.NEGATIVE_INFINITY;
    private int bestPlace;
    private double bestStretch = 1;
    private double sum;
    private double scale;
    private long terms;
    private long empty;

    Sum(int lamps) {
      this.lamps = lamps;
    }

    /** Lamp by lamp, for what one lamp says of neighbouring phases is much alike. */
    void add(float[] logs, int size, double stretch) {
      terms += size;
      for (int lamp = 0; lamp < lamps; lamp++) {
        double more = 0;
        for (int i = lamp; i < size; i += lamps) {
          double log = logs[i];
          if (log > best) {
            best = log;
            bestPlace = i;
            bestStretch = stretch;
          }
          if (log == 0) {
            empty++;
            continue;
          }
          if (log > scale + NEGLIGIBLE) {
            sum = (sum + more) * Math.exp(scale - log);
            more = 0;
            scale = log;
          }
          if (log > scale - NEGLIGIBLE) {
            more += exp(log - scale);
          }
        }
        sum += more;
      }
    }

    Folded folded() {
      double all = sum + empty * Math.exp(-scale);
      double logMean = all > 0 ? scale + Math.log(all / terms) : -NEGLIGIBLE;
      return new Folded(logMean, best, bestPlace / lamps, bestStretch, bestPlace % lamps);
    }
  }
}

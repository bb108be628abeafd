package lampwise.decode;

/**
 * The evidence of one lamp folded on a pulse train: the logarithm of the mean, over every phase and
 * stretch, of how much likelier the samples are with its blinks than without any; and where it is
 * greatest.
 *
 * @param logMean logarithm of the mean
 * @param best logarithm of the greatest
 * @param startSeconds the start of the train there
 * @param stretch the stretch there
 */
record Folded(double logMean, double best, double startSeconds, double stretch) {
  /** What is this far below the greatest is not summed. */
  private static final double NEGLIGIBLE = 14;

  /** Most of the time of folding went into exponentials, which are taken from a table. */
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
   * Folds.
   *
   * @param logRatios the evidence along the grid
   * @param from the first place of the grid at which the lamp can be seen
   * @param to the place after the last
   */
  static Folded of(Train train, float[] logRatios, double stepSeconds, int from, int to) {
    int stretches = (int) stretches(train, to - from);
    double best = Double.NEGATIVE_INFINITY;
    double sum = 0;
    double scale = 0;
    double start = 0;
    double bestStretch = 1;
    long places = 0;
    long empty = 0;
    float[] sums = new float[1 + (int) (train.cycleSeconds() * train.high() / stepSeconds)];
    for (int s = 0; s < stretches; s++) {
      double stretch = train.low() + (s + 0.5) / stretches * (train.high() - train.low());
      double cycle = train.cycleSeconds() * stretch / stepSeconds;
      int phases = Math.max(1, (int) cycle);
      java.util.Arrays.fill(sums, 0, phases, 0f);
      for (int pulse = 0; pulse < train.size(); pulse++) {
        double offset = train.on(pulse) * stretch / stepSeconds;
        for (int k = (int) Math.floor(-offset / cycle) - 1; ; k++) {
          int at = from + (int) Math.rint(offset + k * cycle);
          if (at >= to) {
            break;
          }
          int first = Math.max(0, from - at);
          int last = Math.min(phases, to - at);
          for (int p = first; p < last; p++) {
            sums[p] += logRatios[at + p];
          }
        }
      }
      places += phases;
      for (int p = 0; p < phases; p++) {
        double log = sums[p];
        if (log > best) {
          best = log;
          start = p;
          bestStretch = stretch;
        }
        if (log == 0) {
          empty++;
          continue;
        }
        if (log > scale + NEGLIGIBLE) {
          sum *= Math.exp(scale - log);
          scale = log;
        }
        if (log > scale - NEGLIGIBLE) {
          sum += exp(log - scale);
        }
      }
    }
    sum += empty * Math.exp(-scale);
    double logMean = sum > 0 ? scale + Math.log(sum / places) : -NEGLIGIBLE;
    return new Folded(logMean, best, start, bestStretch);
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
}

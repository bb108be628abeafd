package lampwise.decode;

/**
 * The density of times on a line over a train's own times, under one timing error: its height is
 * uniform, its slope uniform between the train's borders.
 */
final class Density {
  /** A slope this many standard deviations beyond the borders is impossible. */
  private static final double HOPELESS = 6;

  /** A slope this many standard deviations inside of the borders does not feel them. */
  private static final double INSIDE = 7;

  /** Times are looked for this many standard deviations off the line. */
  static final double GATE = 4.5;

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private final double low;
  private final double high;
  private final double sd;
  private final double logError;
  private final double logBorders;

  /**
   * Prepares.
   *
   * @param sd standard deviation of the errors, seconds
   */
  Density(Train train, double sd) {
    this.low = train.low();
    this.high = train.high();
    this.sd = sd;
    this.logError = Math.log(sd * ROOT_TWO_PI);
    this.logBorders = Math.log(high - low);
  }

  /** Logarithm of the density of one more time without an error. */
  double logHighest() {
    return -logError;
  }

  /** Logarithm of the density of the times: the normal errors summed over height and slope. */
  double log(Line line) {
    int points = line.points();
    double varTrain = line.varTrain();
    if (!(varTrain > 0)) {
      return -(points - 1) * logError - 0.5 * Math.log(points) - 0.5 * line.varTime() / (sd * sd);
    }
    double mean = line.covariance() / varTrain;
    double sharpness = Math.sqrt(varTrain) / sd;
    double rest = Math.max(0, line.varTime() - line.covariance() * mean);
    double a = (low - mean) * sharpness;
    double b = (high - mean) * sharpness;
    if (a > HOPELESS || b < -HOPELESS) {
      return Double.NEGATIVE_INFINITY;
    }
    double mass = a < -INSIDE && b > INSIDE ? 0 : Gauss.logBetween(a, b);
    return -(points - 2) * logError
        - 0.5 * Math.log(points * varTrain)
        - 0.5 * rest / (sd * sd)
        - logBorders
        + mass;
  }

  /** The least slope that a line can still have, which may be off by {@link #reach}. */
  double lowSlope(Line line, double reach) {
    double slope = line.covariance() / line.varTrain();
    double from = Math.max(low, slope - reach);
    return from < Math.min(high, slope + reach) ? from : low;
  }

  /** The greatest slope that a line can still have, which may be off by {@link #reach}. */
  double highSlope(Line line, double reach) {
    double slope = line.covariance() / line.varTrain();
    double to = Math.min(high, slope + reach);
    return Math.max(low, slope - reach) < to ? to : high;
  }

  /** How far the slope of a line may be off. */
  double reach(Line line) {
    return GATE * sd / Math.sqrt(line.varTrain());
  }
}

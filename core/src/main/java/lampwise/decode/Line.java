package lampwise.decode;

/**
 * The straight line through the times of a chain over the train's own times, as the sums that give
 * it (updated point by point, Welford 1962). Its height is the train's phase, its slope the
 * stretch.
 *
 * @param points how many points it goes through, at least one
 * @param meanTime the mean of their times
 * @param meanTrain the mean of their times in the train
 * @param varTime sum of the squared distances of the times from their mean
 * @param covariance sum of the products of both distances
 * @param varTrain sum of the squared distances of the times in the train from their mean
 */
record Line(
    int points,
    double meanTime,
    double meanTrain,
    double varTime,
    double covariance,
    double varTrain) {
  /** A slope this many standard deviations beyond the borders is impossible. */
  private static final double HOPELESS = 6;

  /** The line of one point, whose slope is open. */
  static Line through(double time, double inTrain) {
    return new Line(1, time, inTrain, 0, 0, 0);
  }

  /** The line through one more point. */
  Line and(double time, double inTrain) {
    int more = points + 1;
    double fromTime = time - meanTime;
    double fromTrain = inTrain - meanTrain;
    double newTime = meanTime + fromTime / more;
    double newTrain = meanTrain + fromTrain / more;
    return new Line(
        more,
        newTime,
        newTrain,
        varTime + fromTime * (time - newTime),
        covariance + fromTrain * (time - newTime),
        varTrain + fromTrain * (inTrain - newTrain));
  }

  /**
   * Whether another line goes on as this one does, as far as their points can tell.
   *
   * @param inTrain a time in the train at which both are looked at
   * @param reach how far one point may be off
   */
  boolean isNear(Line other, double inTrain, double reach) {
    int fewer = Math.min(points, other.points);
    if (!(varTrain > 0) || !(other.varTrain > 0)) {
      return points == other.points
          && Math.abs(meanTime - other.meanTime) * Math.sqrt(fewer) < reach;
    }
    double slope = covariance / varTrain;
    double otherSlope = other.covariance / other.varTrain;
    double height = meanTime + slope * (inTrain - meanTrain);
    double otherHeight = other.meanTime + otherSlope * (inTrain - other.meanTrain);
    return Math.abs(height - otherHeight) * Math.sqrt(fewer) < reach
        && Math.abs(slope - otherSlope) * Math.sqrt(Math.min(varTrain, other.varTrain)) < reach;
  }

  /** The most probable stretch, or the middle of the borders where one point cannot tell. */
  double stretch(Train train) {
    double slope = varTrain > 0 ? covariance / varTrain : 0.5 * (train.low() + train.high());
    return Math.max(train.low(), Math.min(train.high(), slope));
  }

  /**
   * Where the slope can still lie, least and most.
   *
   * @param reach how far a point may be off the line
   */
  double[] slopes(Train train, double reach) {
    if (!(varTrain > 0)) {
      return new double[] {train.low(), train.high()};
    }
    double mean = covariance / varTrain;
    double spread = reach / Math.sqrt(varTrain);
    double low = Math.max(train.low(), mean - spread);
    double high = Math.min(train.high(), mean + spread);
    return low < high ? new double[] {low, high} : new double[] {train.low(), train.high()};
  }

  /**
   * Logarithm of the density of the times, given the train: the normal errors summed over the
   * line's height (uniform) and its slope (uniform between the train's borders).
   *
   * @param sd standard deviation of the errors
   */
  double logDensity(Train train, double sd) {
    double sum = -(points - 1) * Math.log(sd * Math.sqrt(2 * Math.PI)) - 0.5 * Math.log(points);
    if (!(varTrain > 0)) {
      return sum - 0.5 * varTime / (sd * sd);
    }
    double mean = covariance / varTrain;
    double spread = sd / Math.sqrt(varTrain);
    double rest = Math.max(0, varTime - covariance * mean);
    double a = (train.low() - mean) / spread;
    double b = (train.high() - mean) / spread;
    if (a > HOPELESS || b < -HOPELESS) {
      return Double.NEGATIVE_INFINITY;
    }
    double mass = a < -7 && b > 7 ? 0 : Gauss.logBetween(a, b);
    return sum
        - 0.5 * rest / (sd * sd)
        + Math.log(spread * Math.sqrt(2 * Math.PI) / (train.high() - train.low()))
        + mass;
  }
}

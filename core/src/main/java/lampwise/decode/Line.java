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
      return points == other.points && isBelow(meanTime - other.meanTime, fewer, reach);
    }
    double slope = covariance / varTrain;
    double otherSlope = other.covariance / other.varTrain;
    double height = meanTime + slope * (inTrain - meanTrain);
    double otherHeight = other.meanTime + otherSlope * (inTrain - other.meanTrain);
    return isBelow(height - otherHeight, fewer, reach)
        && isBelow(slope - otherSlope, Math.min(varTrain, other.varTrain), reach);
  }

  /** Whether a distance times the root of a weight is below the reach, without the root. */
  private static boolean isBelow(double apart, double weight, double reach) {
    return apart * apart * weight < reach * reach;
  }

  /** The most probable stretch, or the middle of the borders where one point cannot tell. */
  double stretch(Train train) {
    double slope = varTrain > 0 ? covariance / varTrain : 0.5 * (train.low() + train.high());
    return Math.max(train.low(), Math.min(train.high(), slope));
  }
}

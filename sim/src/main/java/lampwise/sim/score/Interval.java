package lampwise.sim.score;

import java.util.List;

/**
 * An estimate with its 95 % interval.
 *
 * @param value the estimate; NaN if there was nothing to count
 * @param low the interval's lower end
 * @param high its upper end
 */
public record Interval(double value, double low, double high) {
  /** The 97.5 % point of the normal distribution. */
  private static final double Z = 1.959963984540054;

  /**
   * A share, with Wilson's score interval (E. B. Wilson, Journal of the American Statistical
   * Association 22, 1927).
   *
   * @param hits how many, 0 or more
   * @param all of how many
   * @return the share and its interval, within 0 to 1; all NaN if {@code all} is 0
   */
  public static Interval share(long hits, long all) {
    if (all == 0) {
      return new Interval(Double.NaN, Double.NaN, Double.NaN);
    }
    double n = all;
    double share = hits / n;
    double middle = (share + Z * Z / (2 * n)) / (1 + Z * Z / n);
    double half = Z / (1 + Z * Z / n) * Math.sqrt(share * (1 - share) / n + Z * Z / (4 * n * n));
    return new Interval(
        share,
        hits == 0 ? 0 : Math.max(0, middle - half),
        hits == all ? 1 : Math.min(1, middle + half));
  }

  /**
   * By how much the share of right answers of one decoder is above that of another on the same
   * recordings. The interval is the adjusted one of D. G. Bonett and R. M. Price (Journal of
   * Educational and Behavioral Statistics 37, 2012; from memory): one pair is added to each of the
   * two kinds that differ, so that it has a length even if none does.
   *
   * @param one the outcomes of one decoder
   * @param other the other's, of the same recordings in the same order
   * @return the difference, -1 to 1, and its interval; all NaN if there are none
   */
  public static Interval difference(List<Outcome> one, List<Outcome> other) {
    if (one.isEmpty()) {
      return new Interval(Double.NaN, Double.NaN, Double.NaN);
    }
    int better = 0;
    int worse = 0;
    for (int i = 0; i < one.size(); i++) {
      if (one.get(i).isRight() != other.get(i).isRight()) {
        better += one.get(i).isRight() ? 1 : 0;
        worse += one.get(i).isRight() ? 0 : 1;
      }
    }
    double n = one.size() + 2.0;
    double up = (better + 1) / n;
    double down = (worse + 1) / n;
    double half = Z * Math.sqrt((up + down - (up - down) * (up - down)) / n);
    return new Interval(
        (double) (better - worse) / one.size(),
        Math.max(-1, up - down - half),
        Math.min(1, up - down + half));
  }

  /**
   * The mean of values, with the interval of the normal approximation; one value has an interval
   * without an end.
   *
   * @param values the values
   * @return the mean and its interval; all NaN if there are none
   */
  public static Interval mean(double... values) {
    if (values.length == 0) {
      return new Interval(Double.NaN, Double.NaN, Double.NaN);
    }
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    double mean = sum / values.length;
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    double half =
        values.length > 1
            ? Z * Math.sqrt(squares / (values.length - 1.0) / values.length)
            : Double.POSITIVE_INFINITY;
    return new Interval(mean, mean - half, mean + half);
  }
}

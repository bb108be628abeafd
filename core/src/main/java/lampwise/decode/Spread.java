package lampwise.decode;

import java.util.Arrays;

/**
 * Where values lie and how far they spread, whatever a few of them do.
 *
 * @param middle their median, the greater of two; 0 if there are none
 * @param deviation their standard deviation if they are normal: 1.4826 times the median distance
 *     from the middle
 */
record Spread(double middle, double deviation) {
  private static final double NORMAL = 1.4826;

  /** Of values that stay as they are. */
  static Spread of(double[] values) {
    if (values.length == 0) {
      return new Spread(0, 0);
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double middle = sorted[sorted.length / 2];
    for (int i = 0; i < sorted.length; i++) {
      sorted[i] = Math.abs(sorted[i] - middle);
    }
    return new Spread(middle, deviation(sorted));
  }

  /**
   * The standard deviation of normal values by how far they are from where they should be.
   *
   * @param distances at least one, none below 0; they are sorted
   */
  static double deviation(double[] distances) {
    Arrays.sort(distances);
    return NORMAL * distances[distances.length / 2];
  }
}

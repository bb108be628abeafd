package lampwise.sim;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Times from one thing to the next, as somebody sees them who does not measure. */
final class Gaps {
  /** How far from the middle one a gap may be to pass for the same. */
  private static final double NEAR = 0.3;

  private Gaps() {}

  /** The times from each to the next. */
  static double[] of(double[] seconds) {
    double[] gaps = new double[Math.max(0, seconds.length - 1)];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = seconds[i + 1] - seconds[i];
    }
    return gaps;
  }

  /** The middle one, the lower of two; 0 of none. */
  static double middle(double[] values) {
    if (values.length == 0) {
      return 0;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[(sorted.length - 1) / 2];
  }

  /**
   * The mean of those near the middle one; empty if these are less than a share of all, or none.
   */
  static OptionalDouble even(double[] gaps, double share) {
    double middle = middle(gaps);
    double sum = 0;
    int near = 0;
    for (double gap : gaps) {
      if (Math.abs(gap - middle) <= NEAR * middle) {
        sum += gap;
        near++;
      }
    }
    return near > 0 && near >= share * gaps.length
        ? OptionalDouble.of(sum / near)
        : OptionalDouble.empty();
  }
}

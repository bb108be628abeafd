package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The times between blinks of a recording, gathered into clusters of like ones. */
final class Intervals {
  /** Times this near to each other, as a fraction, belong together. */
  private static final double NEAR = 0.12;

  private Intervals() {}

  /**
   * The commonest times from a blink to the one {@code lag} blinks later.
   *
   * @param starts the blinks' starts, rising
   * @param most how many clusters at the most
   * @return means of the clusters, the commonest first
   */
  static List<Double> common(double[] starts, int lag, int most) {
    return clusters(gaps(starts, lag), most);
  }

  /** The times from each blink to the one {@code lag} blinks later; none if there are too few. */
  static double[] gaps(double[] starts, int lag) {
    double[] gaps = new double[Math.max(0, starts.length - lag)];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = starts[i + lag] - starts[i];
    }
    return gaps;
  }

  /** The means of clusters of like values, the largest cluster first. */
  static List<Double> clusters(double[] values, int most) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    List<double[]> found = new ArrayList<>();
    int from = 0;
    while (from < sorted.length) {
      int to = from;
      double sum = 0;
      double border = sorted[from] * (1 + NEAR) + 0.06;
      while (to < sorted.length && sorted[to] <= border) {
        sum += sorted[to++];
      }
      if (sum > 0) {
        found.add(new double[] {to - from, sum / (to - from)});
      }
      from = to;
    }
    found.sort((a, b) -> Double.compare(b[0], a[0]));
    List<Double> means = new ArrayList<>();
    for (double[] cluster : found) {
      if (means.size() < most) {
        means.add(cluster[1]);
      }
    }
    return means;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The times between blinks of a recording, gathered into clusters of like ones. */
final class Intervals {
  /** Times this near to each other, as a fraction, belong together. */
  private static final double NEAR = 0.12;

  /** How often gaps are counted in the mean that they gave before. */
  private static final int ROUNDS = 3;

  private Intervals() {}

  /**
   * The commonest times from a blink to the one {@code lag} blinks later.
   *
   * @param starts the blinks' starts, rising
   * @param most how many clusters at the most
   * @return means of the clusters, the commonest first
   */
  static List<Double> common(double[] starts, int lag, int most) {
    int count = Math.max(0, starts.length - lag);
    double[] gaps = new double[count];
    for (int i = 0; i < count; i++) {
      gaps[i] = starts[i + lag] - starts[i];
    }
    return clusters(gaps, most);
  }

  /**
   * The mean time from blink to blink, if each gap is a whole number of times about so long; blinks
   * that are much nearer are left out.
   *
   * @param starts the blinks' starts, rising
   * @param about seconds, over 0; it comes back where no gap is as long
   */
  static double mean(double[] starts, double about) {
    double mean = about;
    for (int round = 0; round < ROUNDS; round++) {
      double seconds = 0;
      double cycles = 0;
      for (int i = 1; i < starts.length; i++) {
        double gap = starts[i] - starts[i - 1];
        double times = Math.rint(gap / mean);
        seconds += times > 0 ? gap : 0;
        cycles += times;
      }
      mean = cycles > 0 ? seconds / cycles : mean;
    }
    return mean;
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

package lampwise.sim.score;

import java.util.Arrays;

/**
 * Bounds above what a blink can be worth whose borders are not known exactly. With the worth of a
 * light that ends at t, C(t), and that of one that begins there counted as D(t) = C(t) less q x (A
 * - x) for each value of which x seconds of its averaging A lie before t (q its bend), a blink is
 * worth at most C(off) - D(on), and exactly that where no value holds both borders.
 *
 * <p>Between the moments where values begin and end both are parabolas.
 */
final class LightBounds {
  private final double[] at;
  private final double[] ends;
  private final double[] endsSlope;
  private final double[] begins;
  private final double[] beginsSlope;
  private final double[] bend;

  LightBounds(LightValues values) {
    int size = values.size();
    double[] borders = new double[2 * size + 1];
    borders[2 * size] = -Double.MAX_VALUE;
    for (int i = 0; i < size; i++) {
      borders[2 * i] = values.begin(i);
      borders[2 * i + 1] = values.end(i);
    }
    at = Arrays.stream(borders).sorted().distinct().toArray();
    ends = new double[at.length];
    endsSlope = new double[at.length];
    begins = new double[at.length];
    beginsSlope = new double[at.length];
    bend = new double[at.length];
    double over = 0;
    int first = 0;
    for (int k = 1; k < at.length; k++) {
      for (; first < size && values.end(first) <= at[k]; first++) {
        over += values.worth(first, values.end(first) - values.begin(first));
      }
      ends[k] = over;
      begins[k] = over;
      for (int i = first; i < size && values.begin(i) <= at[k]; i++) {
        double averaging = values.end(i) - values.begin(i);
        double x = at[k] - values.begin(i);
        double q = values.bend(i);
        ends[k] += values.worth(i, x);
        begins[k] += values.worth(i, x) - q * x * (averaging - x);
        endsSlope[k] += values.slope(i) - q * x;
        beginsSlope[k] += values.slope(i) - q * (averaging - x);
        bend[k] += q;
      }
    }
  }

  /**
   * The most that a blink is worth.
   *
   * @param leastOn when it begins at the earliest
   * @param mostOn at the latest
   * @param leastOff when it ends at the earliest
   * @param mostOff at the latest
   */
  double most(double leastOn, double mostOn, double leastOff, double mostOff) {
    return mostOfEnds(leastOff, mostOff) - leastOfBegins(leastOn, mostOn);
  }

  private double mostOfEnds(double from, double to) {
    double most = Double.NEGATIVE_INFINITY;
    for (int k = piece(from); k < at.length && at[k] <= to; k++) {
      double low = Math.max(0, from - at[k]);
      double high = Math.max(low, Math.min(to, k + 1 < at.length ? at[k + 1] : to) - at[k]);
      double x = bend[k] > 0 ? Math.max(low, Math.min(high, endsSlope[k] / bend[k])) : low;
      most = Math.max(most, ends[k] + x * (endsSlope[k] - bend[k] * x / 2));
    }
    return most;
  }

  private double leastOfBegins(double from, double to) {
    double least = Double.POSITIVE_INFINITY;
    for (int k = piece(from); k < at.length && at[k] <= to; k++) {
      double low = Math.max(0, from - at[k]);
      double high = Math.max(low, Math.min(to, k + 1 < at.length ? at[k + 1] : to) - at[k]);
      double x = bend[k] > 0 ? Math.max(low, Math.min(high, -beginsSlope[k] / bend[k])) : low;
      least = Math.min(least, begins[k] + x * (beginsSlope[k] + bend[k] * x / 2));
    }
    return least;
  }

  /** The piece in which a time lies. */
  private int piece(double seconds) {
    int found = Arrays.binarySearch(at, seconds);
    return found >= 0 ? found : Math.max(0, -found - 2);
  }
}

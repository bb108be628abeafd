package lampwise.decode;

import java.util.Arrays;
import lampwise.light.LightCurve;
import lampwise.light.Window;

/**
 * The samples of a light curve, evened out for matched filtering: silences of an on-change file are
 * filled with the level that held, and a local baseline is taken off.
 *
 * @param seconds when each sample ended, rising
 * @param above the level above the local baseline, brighter where the lamp is lit; NaN where a step
 *     of the room's light hides the lamp
 * @param noise standard deviation of the noise, in the unit of the levels; 0 if there is none
 * @param periodSeconds the usual time from sample to sample
 */
@SuppressWarnings("ArrayRecordComponent") // Long and read in inner loops, inside the package.
record LightSamples(double[] seconds, double[] above, double noise, double periodSeconds) {
  /**
   * The baseline is taken over this time (chosen): shorter than shadows of people, which it
   * follows, and more than twice as long as a blink and its averaging, which it leaves.
   */
  static final double BASELINE_SECONDS = 0.9;

  /** The fewest samples of a baseline, itself included. */
  private static final int LEAST_BASELINE = 7;

  /** The baseline's quantile, and how far below the middle it lies, in deviations. */
  private static final double QUANTILE = 0.35;

  private static final double BELOW = 0.385;

  /** The lower quantile that tells the noise, and the same of it. */
  private static final double LOWEST = 0.05;

  private static final double BELOW_LOWEST = 1.645;

  /** The room's light counts as changing where a baseline's length changes it by so much noise. */
  private static final double LEAST_SLOPE = 2;

  /** How many lengths of a baseline to either side tell the slope (chosen). */
  private static final int SLOPE_LENGTHS = 3;

  /** A step of the baseline by this many deviations is an edge (chosen). */
  private static final double EDGE = 5;

  /** The same near a border, where the baseline looks to one side only (chosen). */
  private static final double BORDER_EDGE = 2.5;

  /** What lies as near to an edge as this is left out. */
  private static final double EDGE_SECONDS = 0.35;

  /** A curve with more edges than this share is left as it is. */
  private static final double MOST_EDGES = 0.3;

  /** A light of this many seconds is longer than what is folded, and of this many samples. */
  private static final double LONG_SECONDS = 0.7;

  private static final int LEAST_LONG = 4;

  /** A curve with more long lights than this share is left as it is. */
  private static final double MOST_LONG = 0.15;

  /** The middle of the steps between neighbours, in deviations of the noise: 0.6745 sqrt(2). */
  private static final double MIDDLE_STEP = 0.9539;

  /** Two estimates of the noise that differ by this factor do not speak of the same. */
  private static final double MOST_APART = 1.6;

  /** More samples, or nearer ones (seconds), are not prepared: their noise is given as 0. */
  static final int MOST_SAMPLES = 60_000;

  private static final double LEAST_PERIOD = 0.002;

  static LightSamples of(LightCurve curve, Window window, boolean held) {
    int size = curve.size();
    double[] seconds = new double[size];
    double[] levels = new double[size];
    int count = 0;
    for (int i = 0; i < size; i++) {
      if (window.contains(curve.seconds(i)) && !Double.isNaN(curve.level(i))) {
        seconds[count] = curve.seconds(i);
        levels[count++] = curve.lit() == LightCurve.Lit.DARKER ? -curve.level(i) : curve.level(i);
      }
    }
    seconds = Arrays.copyOf(seconds, count);
    levels = Arrays.copyOf(levels, count);
    double period = LitSpans.usualStep(seconds);
    if (count < LEAST_BASELINE || count > MOST_SAMPLES || !(period > LEAST_PERIOD)) {
      return new LightSamples(seconds, new double[count], 0, period);
    }
    if (held) {
      double[][] filled = filled(seconds, levels, period, window.toSeconds());
      seconds = filled[0];
      levels = filled[1];
    }
    int half = Math.max(LEAST_BASELINE / 2, (int) Math.rint(BASELINE_SECONDS / 2 / period));
    double[] slopes = slopes(levels, 2 * half + 1);
    double[] baseline = baseline(levels, half, slopes);
    double[] above = new double[levels.length];
    for (int i = 0; i < above.length; i++) {
      above[i] = levels[i] - baseline[i];
    }
    double noise = noise(above, stepNoise(levels, slopes));
    double middle = quantile(above, QUANTILE) + BELOW * noise;
    for (int i = 0; i < above.length; i++) {
      above[i] -= middle;
    }
    int near = Math.max(1, (int) Math.rint(EDGE_SECONDS / period));
    leaveEdges(above, baseline, half, near, noise, slopes);
    leaveLong(above, Math.max(LEAST_LONG, (int) Math.rint(LONG_SECONDS / period)), noise);
    return new LightSamples(seconds, above, noise, period);
  }

  /** Rows where a level held for longer than a sample, up to an end. */
  private static double[][] filled(double[] seconds, double[] levels, double period, double end) {
    int most = seconds.length + (int) ((end - seconds[0]) / period) + 2;
    double[] times = new double[most];
    double[] values = new double[most];
    int count = 0;
    for (int i = 0; i < seconds.length; i++) {
      double next = i + 1 < seconds.length ? seconds[i + 1] : end;
      int steps = Math.max(1, (int) Math.rint((next - seconds[i]) / period));
      for (int k = 0; k < steps && count < most; k++) {
        times[count] = seconds[i] + k * (next - seconds[i]) / steps;
        values[count++] = levels[i];
      }
    }
    return new double[][] {Arrays.copyOf(times, count), Arrays.copyOf(values, count)};
  }

  /**
   * How fast the room's light changes by itself at each sample, in levels a sample: the middle of
   * the slopes over a baseline's length nearby, where more than half of them are alike: blinks are
   * not, nor is a shadow that comes or goes. A change that is lost in the noise counts as none.
   *
   * @param length so many samples have one baseline
   */
  private static double[] slopes(double[] levels, int length) {
    double[] slopes = new double[levels.length];
    double least = LEAST_SLOPE * stepNoise(levels, slopes) / length;
    int half = length / 2;
    for (int i = 0; i < slopes.length; i += half) {
      int from = Math.max(0, Math.min(i - SLOPE_LENGTHS * length, levels.length - 1 - 2 * length));
      int to = Math.min(levels.length, i + SLOPE_LENGTHS * length + 1);
      double[] near = new double[Math.max(1, to - from - length)];
      for (int k = 0; from + k + length < to; k++) {
        near[k] = (levels[from + k + length] - levels[from + k]) / length;
      }
      Arrays.sort(near);
      double low = near[near.length / 4];
      double high = near[near.length * 3 / 4];
      boolean alike = low > least || high < -least;
      double slope = alike ? near[near.length / 2] : 0;
      Arrays.fill(slopes, i, Math.min(slopes.length, i + half), slope);
    }
    return slopes;
  }

  /**
   * A low quantile nearby, which half-lit stretches do not move as they would a median, raised by
   * what it lies below the middle of the noise; of levels that rise and fall with the room's light.
   */
  private static double[] baseline(double[] levels, int half, double[] slopes) {
    double[] baseline = new double[levels.length];
    double[] inside = new double[2 * half + 1];
    for (int i = 0; i < levels.length; i++) {
      int from = Math.max(0, Math.min(i - half, levels.length - 2 * half - 1));
      int to = Math.min(levels.length, from + 2 * half + 1);
      for (int k = from; k < to; k++) {
        inside[k - from] = levels[k] - slopes[i] * (k - i);
      }
      Arrays.sort(inside, 0, to - from);
      baseline[i] = inside[(int) (QUANTILE * (to - from))];
    }
    return baseline;
  }

  /**
   * Leaves out, as NaN, what lies where the baseline itself steps: a shadow comes or goes. Samples
   * near a border share the baseline of the first or last whole window, and what steps beside it.
   */
  private static void leaveEdges(
      double[] above, double[] baseline, int half, int near, double noise, double[] slopes) {
    boolean[] edge = new boolean[above.length];
    int edges = 0;
    for (int i = 0; i < above.length; i++) {
      double least = baseline[i];
      double most = baseline[i];
      int from = Math.max(0, Math.min(i, above.length - 1 - half) - near);
      int to = Math.min(above.length - 1, Math.max(i, half) + near);
      for (int k = from; k <= to; k++) {
        double level = baseline[k] - slopes[i] * (k - i);
        least = Math.min(least, level);
        most = Math.max(most, level);
      }
      boolean border = i < half || i >= above.length - half;
      edge[i] = most - least > (border ? BORDER_EDGE : EDGE) * noise;
      edges += edge[i] ? 1 : 0;
    }
    for (int i = 0; i < above.length && edges < MOST_EDGES * above.length; i++) {
      above[i] = edge[i] ? Double.NaN : above[i];
    }
  }

  /**
   * Leaves out, as NaN, lights that are longer than what is folded, and what the window's borders
   * cut: the room between two shadows, or beside one that the baseline has followed.
   *
   * @param longest so many samples are no blink
   */
  private static void leaveLong(double[] above, int longest, double noise) {
    boolean[] lit = new boolean[above.length];
    int left = 0;
    for (int from = 0; from < above.length; from++) {
      int to = from;
      while (to < above.length && above[to] > EDGE * noise) {
        to++;
      }
      boolean cut = to - from > 1 && (from == 0 || to == above.length);
      if (cut || to - from >= longest) {
        Arrays.fill(lit, from, to, true);
        left += to - from;
      }
      from = to;
    }
    for (int i = 0; i < above.length && left < MOST_LONG * above.length; i++) {
      above[i] = lit[i] ? Double.NaN : above[i];
    }
  }

  /**
   * From two low quantiles, which the lamp hardly touches, and from the steps between neighbours,
   * which are the surer but grow with a lamp that is often lit: where both agree as well as they
   * can, their mean.
   */
  private static double noise(double[] above, double near) {
    double apart = quantile(above, QUANTILE) - quantile(above, LOWEST);
    double low = apart / (BELOW_LOWEST - BELOW);
    return near < MOST_APART * low && low < MOST_APART * near ? Math.sqrt(low * near) : low;
  }

  /** The noise as the steps between neighbours tell it, of levels that change by themselves. */
  private static double stepNoise(double[] levels, double[] slopes) {
    double[] steps = new double[levels.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = Math.abs(levels[i + 1] - levels[i] - slopes[i]);
    }
    return quantile(steps, 0.5) / MIDDLE_STEP;
  }

  /**
   * A quantile of values that may be rounded: those that are equal count as spread evenly between
   * the middles to their neighbours, so that the step of rounding is not the noise's own step. A
   * value that most samples have stays what it is: its neighbours say nothing of the noise.
   */
  private static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int size = sorted.length;
    double place = share * size;
    int at = (int) Math.min(size - 1, place);
    double value = sorted[at];
    int from = at;
    int to = at + 1;
    while (from > 0 && sorted[from - 1] == value) {
      from--;
    }
    while (to < size && sorted[to] == value) {
      to++;
    }
    if (to - from > size / 2) {
      return value;
    }
    double low = from > 0 ? (sorted[from - 1] + value) / 2 : value;
    double high = to < size ? (sorted[to] + value) / 2 : value;
    return low + (high - low) * (place - from) / (to - from);
  }
}

package lampwise.decode;

import java.util.Arrays;
import lampwise.light.LightCurve;
import lampwise.light.Window;

/**
 * The samples of a light curve, evened out for matched filtering: silences of an on-change file are
 * filled with the level that held, and a local baseline is taken off.
 *
 * @param seconds when each sample ended, rising
 * @param above the level above the local baseline, brighter where the lamp is lit
 * @param noise standard deviation of the noise, in the unit of the levels; 0 if there is none
 * @param periodSeconds the usual time from sample to sample
 */
record LightSamples(double[] seconds, double[] above, double noise, double periodSeconds) {
  /**
   * The baseline is the median over this time (chosen): shorter than shadows of people, which it
   * follows, and more than twice as long as a blink and its averaging, which it leaves.
   */
  private static final double BASELINE_SECONDS = 0.9;

  /** The fewest samples of a baseline, itself included. */
  private static final int LEAST_BASELINE = 7;

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
    if (held && period > 0) {
      double[][] filled = filled(seconds, levels, period, window.toSeconds());
      seconds = filled[0];
      levels = filled[1];
    }
    double[] above = above(levels, period);
    return new LightSamples(seconds, above, noise(above), period);
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

  private static double[] above(double[] levels, double period) {
    int half = Math.max(LEAST_BASELINE / 2, (int) Math.rint(BASELINE_SECONDS / 2 / period));
    double[] above = new double[levels.length];
    double[] inside = new double[2 * half + 1];
    for (int i = 0; i < levels.length; i++) {
      int from = Math.max(0, Math.min(i - half, levels.length - 2 * half - 1));
      int to = Math.min(levels.length, from + 2 * half + 1);
      System.arraycopy(levels, from, inside, 0, to - from);
      Arrays.sort(inside, 0, to - from);
      above[i] = levels[i] - inside[(to - from) / 2];
    }
    return above;
  }

  /** From the samples below the baseline, which the lamp does not touch. */
  private static double noise(double[] above) {
    double[] below = Arrays.stream(above).filter(v -> v < 0).map(v -> -v).toArray();
    if (below.length < 4) {
      return 0;
    }
    Arrays.sort(below);
    return 1.4826 * below[below.length / 2];
  }
}

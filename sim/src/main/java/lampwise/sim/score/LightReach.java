package lampwise.sim.score;

import lampwise.light.Window;

/**
 * What a blink of a length from a range is worth at the most, wherever between two moments it
 * begins: the greatest over steps of time, kept for runs of 1, 2, 4, 8 and so on of them.
 */
final class LightReach {
  private final double origin;
  private final double step;
  private final double[][] most;

  /**
   * Looks at all starts with which a blink lights the window.
   *
   * @param shortest the least length of a blink
   * @param longest the most
   * @param step the step, seconds
   */
  LightReach(LightBounds bounds, Window window, double shortest, double longest, double step) {
    this.step = step;
    this.origin = window.fromSeconds() - longest - step;
    int count = (int) Math.ceil((window.toSeconds() - origin) / step) + 1;
    int levels = 32 - Integer.numberOfLeadingZeros(count);
    most = new double[levels][];
    most[0] = new double[count];
    for (int i = 0; i < count; i++) {
      double on = origin + i * step;
      most[0][i] = bounds.most(on, on + step, on + shortest, on + step + longest);
    }
    for (int level = 1; level < levels; level++) {
      int run = 1 << (level - 1);
      double[] below = most[level - 1];
      most[level] = new double[below.length - run];
      for (int i = 0; i < most[level].length; i++) {
        most[level][i] = Math.max(below[i], below[i + run]);
      }
    }
  }

  /** The most for a start between two moments. */
  double most(double from, double to) {
    int first = (int) Math.floor((from - origin) / step);
    int last = (int) Math.floor((to - origin) / step);
    boolean beyond = first < 0 || last >= most[0].length;
    first = Math.max(0, first);
    last = Math.min(most[0].length - 1, last);
    if (last < first) {
      return 0;
    }
    int level = 31 - Integer.numberOfLeadingZeros(last - first + 1);
    double within = Math.max(most[level][first], most[level][last - (1 << level) + 1]);
    // Beyond the window a blink is worth nothing.
    return beyond ? Math.max(0, within) : within;
  }
}

package lampwise.sim.score;

import lampwise.light.Window;

/**
 * What a blink of one length is worth, by when it begins: worked out at even steps, straight
 * between.
 */
final class LightTable {
  private final double origin;
  private final double step;
  private final double[] worth;

  /**
   * Works out all starts with which a blink lights the window.
   *
   * @param lit how long it is lit, seconds
   * @param step the step, seconds
   */
  LightTable(LightValues values, Window window, double lit, double step) {
    this.step = step;
    this.origin = window.fromSeconds() - lit - step;
    this.worth = new double[(int) Math.ceil((window.toSeconds() - origin) / step) + 2];
    for (int i = 0; i < worth.length; i++) {
      double on = origin + i * step;
      worth[i] = values.log(on, on + lit);
    }
  }

  /** What a blink is worth that begins at a time; nothing where it does not light the window. */
  double worth(double on) {
    double place = (on - origin) / step;
    int node = (int) place;
    if (place < 0 || node >= worth.length - 1) {
      return 0;
    }
    return worth[node] + (worth[node + 1] - worth[node]) * (place - node);
  }
}

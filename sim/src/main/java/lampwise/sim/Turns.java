package lampwise.sim;

/** A sine that is fast and the same on every machine: only sums and products. */
final class Turns {
  private static final double TURN = 2 * Math.PI;

  private Turns() {}

  /**
   * The sine of an angle in whole turns, to better than 1e-9: the power series within a quarter
   * turn.
   *
   * @param turns the angle, below 2<sup>50</sup> in size
   * @return from -1 to 1
   */
  static double sine(double turns) {
    double part = turns - Math.rint(turns);
    if (part > 0.25) {
      part = 0.5 - part;
    } else if (part < -0.25) {
      part = -0.5 - part;
    }
    double x = part * TURN;
    double y = x * x;
    double series = 1 - y / 156 * (1 - y / 210);
    series = 1 - y / 110 * series;
    series = 1 - y / 72 * series;
    series = 1 - y / 42 * series;
    series = 1 - y / 20 * series;
    series = 1 - y / 6 * series;
    return x * series;
  }

  /**
   * What averaging leaves of a sine: sin(pi x) / (pi x), where {@code x} is how many of its periods
   * the averaging takes.
   *
   * @param periods zero or more
   * @return from below zero to 1
   */
  static double averaged(double periods) {
    double angle = Math.PI * periods;
    return angle < 1e-9 ? 1 : StrictMath.sin(angle) / angle;
  }
}

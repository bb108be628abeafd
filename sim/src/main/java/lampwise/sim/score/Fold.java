package lampwise.sim.score;

import lampwise.sim.DrawnRhythm;

/**
 * One cycle of a rhythm whose printed times are all known, and how far it may be stretched: by the
 * unit's clock, or by the clock and a range of rates together.
 */
final class Fold {
  private final double[] on;
  private final double[] end;
  private final double cycle;
  private final Stretch stretch;

  /**
   * A cycle.
   *
   * @param on when the blinks of a cycle begin
   * @param end when they end
   * @param cycle the cycle, start to start
   * @param stretch how the stretch is spread
   */
  Fold(double[] on, double[] end, double cycle, Stretch stretch) {
    this.on = on.clone();
    this.end = end.clone();
    this.cycle = cycle;
    this.stretch = stretch;
  }

  int blinks() {
    return on.length;
  }

  /** When a blink of the cycle begins. */
  double on(int blink) {
    return on[blink];
  }

  /** When it ends. */
  double end(int blink) {
    return end[blink];
  }

  double cycle() {
    return cycle;
  }

  Stretch stretch() {
    return stretch;
  }

  /**
   * How a stretch is spread.
   *
   * @param clock how far the clock may run either way, evenly, as a fraction
   * @param slowest the lowest rate, cycles a second; 0 where the cycle has one length
   * @param fastest the highest rate, evenly spread above the lowest
   */
  record Stretch(double clock, double slowest, double fastest) {
    double least() {
      return (1 - clock) / (slowest > 0 ? fastest : 1);
    }

    double most() {
      return (1 + clock) / (slowest > 0 ? slowest : 1);
    }

    /**
     * The density at a stretch s. With a rate r and a clock c, both even, s = c / r, so that the
     * density is the integral over c of c / s^2, times the two even densities.
     */
    double density(double s) {
      if (!(slowest > 0)) {
        return 1 / (most() - least());
      }
      double low = Math.max(1 - clock, slowest * s);
      double high = Math.min(1 + clock, fastest * s);
      return high > low
          ? (high * high - low * low) / 2 / (s * s * 2 * clock * (fastest - slowest))
          : 0;
    }
  }

  /** A rhythm with every duration known. */
  static Fold of(DrawnRhythm rhythm, double clock) {
    int count = rhythm.cycle().size();
    double[] on = new double[count];
    double[] end = new double[count];
    for (int i = 0; i < count; i++) {
      on[i] = rhythm.cycle().get(i).onSeconds();
      end[i] = on[i] + rhythm.cycle().get(i).lengthSeconds();
    }
    return new Fold(on, end, rhythm.cycleSeconds(), new Stretch(clock, 0, 0));
  }

  /** Single blinks at a rate from a range. */
  static Fold ofRate(double slowest, double fastest, double blink, double clock) {
    return new Fold(
        new double[] {0}, new double[] {blink}, 1, new Stretch(clock, slowest, fastest));
  }
}

package lampwise.sim.score;

import lampwise.rhythm.Limits;
import lampwise.sim.Chance;

/**
 * How long the cycle of a free rhythm lasts, between two borders: in eight of ten half a second to
 * twenty, in the others anything up to a minute, both even in the logarithm.
 *
 * @param least the shortest that is possible
 * @param most the longest
 */
record FreeCycle(double least, double most) {
  private static final double USUAL = 0.8;
  private static final double USUAL_LEAST = 0.5;
  private static final double USUAL_MOST = 20;

  boolean isPossible() {
    return least < Math.min(most, Limits.CYCLE_MOST_SECONDS);
  }

  /** From where usual cycles count: blinks that take long do not crowd them together. */
  private double usualLeast() {
    return Math.max(USUAL_LEAST, Math.min(least, USUAL_MOST / 2));
  }

  /** The density in the logarithm of the cycle, before what is outside the borders is cut off. */
  private double usual() {
    return USUAL / Math.log(USUAL_MOST / usualLeast());
  }

  private double any() {
    return (1 - USUAL) / Math.log(Limits.CYCLE_MOST_SECONDS / least);
  }

  private double usualShare() {
    double from = Math.max(least, usualLeast());
    double to = Math.min(most, USUAL_MOST);
    return to > from ? usual() * Math.log(to / from) : 0;
  }

  private double anyShare() {
    return any() * Math.log(Math.min(most, Limits.CYCLE_MOST_SECONDS) / least);
  }

  double draw(Chance chance) {
    double share = chance.uniform() * (usualShare() + anyShare());
    return share < usualShare()
        ? chance.logUniform(Math.max(least, usualLeast()), Math.min(most, USUAL_MOST))
        : chance.logUniform(least, Math.min(most, Limits.CYCLE_MOST_SECONDS));
  }

  /** Logarithm of the density, per second; negative infinity outside the borders. */
  double logDensity(double cycle) {
    if (!(cycle >= least && cycle <= Math.min(most, Limits.CYCLE_MOST_SECONDS) && isPossible())) {
      return Double.NEGATIVE_INFINITY;
    }
    boolean isUsual = cycle >= usualLeast() && cycle <= USUAL_MOST;
    double density = any() + (isUsual ? usual() : 0);
    return Math.log(density / (usualShare() + anyShare()) / cycle);
  }
}

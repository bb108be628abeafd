package lampwise.decode;

import lampwise.rhythm.Limits;

/** How common rhythms are that no sheet lists: the shares of their broad prior. */
final class FreeShares {
  /** A group that shows alone has so many blinks at the most. */
  static final int MOST_BLINKS = 10;

  /** The shortest cycle, seconds; the longest is that of every rhythm. */
  static final double LEAST_CYCLE = 0.1;

  /** So many beats are left out at the most where a group keeps to a beat. */
  static final int MOST_LEFT_OUT = 4;

  /** Share of one group of any count. */
  private static final double ONE_GROUP = 0.7;

  /**
   * The part of even groups whose pause is a whole number of their spacings too, as a lamp has that
   * leaves out beats of a constant rate.
   */
  private static final double BEATS = 0.2;

  /** Logarithm of the part of even groups with a given number of beats left out. */
  static final double ON_BEAT = Math.log(BEATS / MOST_LEFT_OUT);

  /** Logarithm of the part of even groups that keep to no beat. */
  static final double OFF_BEAT = Math.log(1 - BEATS);

  /**
   * Logarithm of the share of two groups of given counts: three in ten, one to five blinks in each.
   */
  static final double TWO_GROUPS = Math.log(0.3 / 25);

  /** The part of unlisted rhythms that show once. */
  private static final double ONCE = 0.05;

  /** Eight in ten cycles last from half a second to twenty, the others anything. */
  private static final double USUAL_CYCLES = 0.8;

  private static final double USUAL_LEAST = 0.5;
  private static final double USUAL_MOST = 20;

  private static final double LOG_APARTS =
      Math.log(Limits.APART_MOST_SECONDS / Limits.APART_LEAST_SECONDS);

  /** A pause between groups is 1.5 to 8 times the spacing inside them, even in the logarithm. */
  private static final double LOG_PAUSES = Math.log(8 / Limits.PAUSE_RATIO_LEAST);

  private FreeShares() {}

  /**
   * Logarithm of the share of one group of a count: the more blinks, the rarer, as one over their
   * number.
   */
  static double logOneGroup(int count) {
    return Math.log(ONE_GROUP) + logCount(count);
  }

  private static double logCount(int count) {
    double sum = 0;
    for (int i = 1; i <= MOST_BLINKS; i++) {
      sum += 1.0 / i;
    }
    return -Math.log(count * sum);
  }

  /**
   * Share of the cycle's prior in a cell around it, even in the logarithm.
   *
   * @param blinksSeconds how long the blinks of a cycle take; it cannot be shorter
   * @param width the cell's width in the logarithm
   */
  static double logCycle(double cycle, double blinksSeconds, double width) {
    double least = Math.max(LEAST_CYCLE, Math.min(blinksSeconds, Limits.CYCLE_MOST_SECONDS / 2));
    double usualLeast = Math.max(USUAL_LEAST, Math.min(least, USUAL_MOST / 2));
    double any = (1 - USUAL_CYCLES) / Math.log(Limits.CYCLE_MOST_SECONDS / least);
    boolean usual = cycle >= usualLeast && cycle <= USUAL_MOST;
    double density = any + (usual ? USUAL_CYCLES / Math.log(USUAL_MOST / usualLeast) : 0);
    return Math.log(density * width);
  }

  /** Logarithm of the density of a spacing, per second: even in the logarithm. */
  static double logSpacing(double seconds) {
    return -Math.log(Math.max(seconds, 0.01) * LOG_APARTS);
  }

  /** Logarithm of the density of a pause between two groups, per second. */
  static double logPause(double seconds) {
    return -Math.log(seconds * LOG_PAUSES);
  }

  /** Logarithm of the share of so many blinks that show once. */
  static double logOnce(int count) {
    return Math.log(ONCE) + logCount(count);
  }
}

package lampwise.sim;

import lampwise.rhythm.Length;

/** A duration that is being drawn, with the borders between which it may lie. */
final class Amount {
  /** How far over its own border a duration said by its least may go where no limit does. */
  private static final double OVER_RATIO = 2;

  /** How far under its own border a duration said by its most may go where no limit does. */
  private static final double UNDER_RATIO = 4;

  private final boolean said;

  /** Whether it was said by its least alone, so that it may lie over the most of a draw, too. */
  private final boolean endless;

  private final double least;
  private final double most;
  private double value;

  private Amount(boolean said, boolean endless, double least, double most, double value) {
    this.said = said;
    this.endless = endless;
    this.least = least;
    this.most = most;
    this.value = value;
  }

  /**
   * A duration that was said.
   *
   * @param length how it was said
   * @param least the least that limits allow, for one said by its most
   * @param most the most that limits allow, for one said by its least
   * @param squeeze 0 to draw from the whole range, up to 1 for its lower end alone
   * @param chance where numbers come from
   */
  static Amount said(Length length, double least, double most, double squeeze, Chance chance) {
    double from = length.leastSeconds();
    double to = length.mostSeconds();
    return switch (length.form()) {
      case EXACT -> fixed(from);
      case ABOUT, RANGE, ABOUT_RANGE -> within(from, to, squeeze, chance);
      case OVER -> {
        double upper = Math.max(most, OVER_RATIO * from);
        double value = drawn(true, from, upper, squeeze, chance).value;
        yield new Amount(true, true, from, upper, value);
      }
      case UNDER -> {
        double lower = least < to ? least : Math.max(Double.MIN_VALUE, to / UNDER_RATIO);
        yield drawn(true, lower, to, squeeze, chance);
      }
    };
  }

  /** A duration of one value. */
  static Amount fixed(double seconds) {
    return new Amount(true, false, seconds, seconds, seconds);
  }

  /** A duration said as a range: each value as likely. */
  static Amount within(double least, double most, double squeeze, Chance chance) {
    double upper = least + (most - least) * (1 - squeeze);
    return new Amount(true, false, least, most, Math.min(most, chance.uniform(least, upper)));
  }

  /** A duration that was not said: each ratio as likely. */
  static Amount unsaid(double least, double most, double squeeze, Chance chance) {
    double from = Math.max(Double.MIN_VALUE, least);
    return drawn(false, from, Math.max(from, most), squeeze, chance);
  }

  private static Amount drawn(
      boolean said, double least, double most, double squeeze, Chance chance) {
    double upper = squeeze == 0 ? most : least * StrictMath.pow(most / least, 1 - squeeze);
    double value = chance.logUniform(least, Math.max(least, upper));
    return new Amount(said, false, least, most, value);
  }

  double value() {
    return value;
  }

  boolean isSaid() {
    return said;
  }

  boolean isEndless() {
    return endless;
  }

  /** The same value between narrower borders. */
  Amount between(double low, double high) {
    return new Amount(
        said,
        endless && high == Double.POSITIVE_INFINITY,
        Math.min(value, Math.max(least, low)),
        Math.max(value, Math.min(most, high)),
        value);
  }

  double least() {
    return least;
  }

  double most() {
    return most;
  }

  /** Sets the value, whatever the borders are. */
  void set(double seconds) {
    value = seconds;
  }

  /** Moves the value a share of the way, 0 to 1, to a border. */
  void approach(double border, double share) {
    value = Math.min(most, Math.max(least, value + (border - value) * share));
  }
}

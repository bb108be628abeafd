package lampwise.rhythm;

import java.math.BigDecimal;
import java.util.Optional;

/** The units of durations. */
enum Unit {
  MS("ms", new BigDecimal("0.001")),
  S("s", BigDecimal.ONE),
  MIN("min", BigDecimal.valueOf(60)),
  H("h", BigDecimal.valueOf(3600));

  /** Durations below this many seconds are printed in milliseconds. */
  private static final double MS_BELOW_SECONDS = 0.1;

  /** Minutes and hours are printed from this many on. */
  private static final BigDecimal WHOLE_FROM = BigDecimal.valueOf(2);

  private final String word;
  private final BigDecimal seconds;

  Unit(String word, BigDecimal seconds) {
    this.word = word;
    this.seconds = seconds;
  }

  String word() {
    return word;
  }

  static Optional<Unit> of(String word) {
    for (Unit unit : values()) {
      if (unit.word.equals(word)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  BigDecimal toSeconds(BigDecimal number) {
    return number.multiply(seconds);
  }

  /** A finite number of seconds as a plain number of this unit, exactly. */
  String number(double inSeconds) {
    BigDecimal value = Decimals.of(inSeconds);
    return switch (this) {
      case MS -> Decimals.plain(value.movePointRight(3));
      case S -> Decimals.plain(value);
      case MIN, H -> Decimals.plain(value.divideToIntegralValue(seconds));
    };
  }

  /**
   * The unit to print a range in, by its upper border; both borders of a single value are equal.
   */
  static Unit toPrint(double fromSeconds, double toSeconds) {
    if (toSeconds < MS_BELOW_SECONDS) {
      return toSeconds > 0 ? MS : S;
    }
    if (H.fits(fromSeconds, toSeconds)) {
      return H;
    }
    return MIN.fits(fromSeconds, toSeconds) ? MIN : S;
  }

  private boolean fits(double fromSeconds, double toSeconds) {
    BigDecimal to = Decimals.of(toSeconds);
    return to.compareTo(seconds.multiply(WHOLE_FROM)) >= 0
        && to.remainder(seconds).signum() == 0
        && Decimals.of(fromSeconds).remainder(seconds).signum() == 0;
  }
}

package lampwise.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers with fixed decimals, the same on every machine and Java version. */
final class Fixed {
  private Fixed() {}

  /**
   * A number in plain digits, rounded half even, zeros at the end cut.
   *
   * @param value a finite number
   * @param most how many decimals at most
   * @param least how many decimals stay even if they are zero, at most {@code most}
   * @return the digits, never with an exponent, never {@code -0}
   */
  static String of(double value, int most, int least) {
    BigDecimal rounded = new BigDecimal(value).setScale(most, RoundingMode.HALF_EVEN);
    BigDecimal cut = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    return (cut.scale() < least ? cut.setScale(least) : cut).toPlainString();
  }
}

package lampwise.file;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers with fixed decimals, the same on every machine. */
final class JsonNumber {
  private static final long[] TENS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

  private JsonNumber() {}

  /**
   * A number in plain digits, rounded half up, zeros at the end cut.
   *
   * @param value a finite number
   * @param most how many decimals at most, 0 to 6
   * @param least how many decimals stay even if they are zero, at most {@code most}
   * @return the digits, never with an exponent, never {@code -0}
   */
  static String of(double value, int most, int least) {
    if (Math.abs(value) >= 1e9) {
      return large(value, most, least);
    }
    long tens = TENS[most];
    long units = Math.round(Math.abs(value) * tens);
    int decimals = most;
    while (decimals > least && units % 10 == 0) {
      units /= 10;
      decimals--;
    }
    StringBuilder text = new StringBuilder();
    if (value < 0 && units > 0) {
      text.append('-');
    }
    text.append(units / TENS[decimals]);
    if (decimals > 0) {
      String digits = Long.toString(units % TENS[decimals]);
      text.append('.');
      for (int i = digits.length(); i < decimals; i++) {
        text.append('0');
      }
      text.append(digits);
    }
    return text.toString();
  }

  private static String large(double value, int most, int least) {
    BigDecimal rounded =
        new BigDecimal(value).setScale(most, RoundingMode.HALF_UP).stripTrailingZeros();
    return (rounded.scale() < least ? rounded.setScale(least) : rounded).toPlainString();
  }
}

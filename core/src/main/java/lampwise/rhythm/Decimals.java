package lampwise.rhythm;

import java.math.BigDecimal;
import java.util.Locale;

/** Numbers as they are written: plain decimals that read back to the same double. */
final class Decimals {
  private Decimals() {}

  /** The shortest decimal that reads back to the number. The number is finite. */
  static BigDecimal of(double number) {
    return new BigDecimal(Double.toString(number));
  }

  static String plain(double number) {
    return plain(of(number));
  }

  /** Without an exponent and without closing zeros. */
  static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  /** The sum as a person would write it: 0.1 and 0.2 give 0.3. */
  static double sum(double a, double b) {
    return of(a).add(of(b)).doubleValue();
  }

  /** A character as a message shows it. */
  static String shown(int codePoint) {
    boolean plain = (codePoint > 0x20 && codePoint < 0x7f) || Character.isLetter(codePoint);
    return plain ? Character.toString(codePoint) : String.format(Locale.ROOT, "U+%04X", codePoint);
  }
}

package lampwise.file;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as files write them. */
final class Numbers {
  /** Above this a double cannot carry nanoseconds, so that tidying would not help. */
  private static final double TIDY_LIMIT = 4e6;

  private Numbers() {}

  /**
   * Reads a plain decimal number: digits, sign, point, exponent.
   *
   * @return the number, which may be infinite if it is too large; NaN if it is not a number
   */
  static double parse(String word) {
    if (word.isEmpty() || word.length() > 400) {
      return Double.NaN;
    }
    boolean digits = false;
    for (int i = 0; i < word.length(); i++) {
      char c = word.charAt(i);
      digits |= isDigit(c);
      if (!isDigit(c) && c != '.' && c != '-' && c != '+' && c != 'e' && c != 'E') {
        return Double.NaN;
      }
    }
    if (!digits) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(word);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /**
   * Whether a word says that there is no value: nothing, {@code NaN}, {@code null} and the like.
   */
  static boolean isMissing(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "", "nan", "null", "none", "na", "n/a", "-", "--" -> true;
      default -> isInfinite(word);
    };
  }

  /** Whether a word says infinity. */
  static boolean isInfinite(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "inf", "+inf", "-inf", "infinity", "+infinity", "-infinity" -> true;
      default -> false;
    };
  }

  /** Whether a character is one of 0 to 9. */
  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** Takes off the dust that adding and subtracting leaves below a nanosecond. */
  static double tidy(double seconds) {
    return Math.abs(seconds) < TIDY_LIMIT ? Math.rint(seconds * 1e9) / 1e9 : seconds;
  }

  /** A number for a message: at most six decimals, no exponent. */
  static String text(double value) {
    if (!(Math.abs(value) < 1e15)) {
      return Double.toString(value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(6, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A word of a file for a message: quoted, cut where it is long, without control characters. */
  static String quote(String word) {
    StringBuilder quoted = new StringBuilder("\"");
    int length = Math.min(word.length(), 40);
    for (int i = 0; i < length; i++) {
      char c = word.charAt(i);
      quoted.append(Character.isISOControl(c) ? '?' : c);
    }
    return quoted.append(length < word.length() ? "...\"" : "\"").toString();
  }
}

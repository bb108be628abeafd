package lampwise.cli;

import java.math.BigDecimal;

/** Numbers as the values of options. */
final class NumberOption {
  private NumberOption() {}

  /**
   * A decimal number.
   *
   * @param option the option's name, for the message
   * @param text its value
   * @throws UsageException if it is no number, or too large for a double
   */
  static double of(String option, String text) throws UsageException {
    try {
      double value = new BigDecimal(text.strip()).doubleValue();
      if (Math.abs(value) <= Double.MAX_VALUE) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw new UsageException(option + " takes a number, not " + said(text));
  }

  /**
   * A whole number within borders.
   *
   * @param option the option's name, for the message
   * @param text its value
   * @param least the least that it may be
   * @param most the most
   * @throws UsageException if it is no such number
   */
  static long whole(String option, String text, long least, long most) throws UsageException {
    try {
      long value = Long.parseLong(text.strip());
      if (value >= least && value <= most) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw new UsageException(
        option + " takes a whole number from " + least + " to " + most + ", not " + said(text));
  }

  private static String said(String text) {
    String clean = Layout.clean(text);
    return clean.isEmpty() ? "\"\"" : clean;
  }
}

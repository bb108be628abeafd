package lampwise.service;

/** Local dates and times as visits carry them: {@code 2026-11-25T09:40}, seconds optional. */
final class LocalTime {
  private static final int[] DAYS = {31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  private static final String SHAPE = "dddd-dd-ddTdd:dd";
  private static final String SECONDS = ":dd";

  private LocalTime() {}

  static boolean isOne(String text) {
    if (!hasShape(text, SHAPE) && !hasShape(text, SHAPE + SECONDS)) {
      return false;
    }
    int month = number(text, 5);
    return month >= 1
        && month <= 12
        && number(text, 8) >= 1
        && number(text, 8) <= days(number(text, 0) * 100 + number(text, 2), month)
        && number(text, 11) <= 23
        && number(text, 14) <= 59
        && (text.length() == SHAPE.length() || number(text, 17) <= 59);
  }

  private static int days(int year, int month) {
    boolean leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    return month == 2 && !leap ? 28 : DAYS[month - 1];
  }

  /**
   * Days since the first of March of the year 0, in the Gregorian calendar carried backwards.
   *
   * <p>With years that begin in March the days before a month are (153 m + 2) / 5, rounded down, m
   * counted from 0: the months' lengths repeat every five.
   *
   * @param when a time for which {@link #isOne} holds
   * @return the count; the difference of two is the days between them
   */
  static long day(String when) {
    int month = number(when, 5);
    long year = number(when, 0) * 100L + number(when, 2) - (month <= 2 ? 1 : 0);
    long inYear = (153L * ((month + 9) % 12) + 2) / 5 + number(when, 8) - 1;
    return 365 * year
        + Math.floorDiv(year, 4)
        - Math.floorDiv(year, 100)
        + Math.floorDiv(year, 400)
        + inYear;
  }

  private static boolean hasShape(String text, String shape) {
    if (text.length() != shape.length()) {
      return false;
    }
    for (int i = 0; i < shape.length(); i++) {
      boolean digit = text.charAt(i) >= '0' && text.charAt(i) <= '9';
      if (shape.charAt(i) == 'd' ? !digit : text.charAt(i) != shape.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static int number(String text, int at) {
    return (text.charAt(at) - '0') * 10 + text.charAt(at + 1) - '0';
  }
}

package lampwise.file;

/**
 * One time as it is written.
 *
 * @param writing how it is written
 * @param value a plain number as it stands; seconds for the other writings
 * @param gap whether it is written with a plus sign: the time since the one before
 */
record TimeText(Writing writing, double value, boolean gap) {
  /** What a time may look like, for messages. */
  static final String EXPECTED = "seconds, m:ss.s or h:mm:ss.s";

  /** The longest run of digits before a colon. */
  private static final int MAX_DIGITS = 6;

  /** How a time can be written. */
  enum Writing {
    /** A plain number. */
    NUMBER,
    /** {@code m:ss.s}. */
    MINUTES,
    /** {@code h:mm:ss.s}. */
    HOURS
  }

  /** A word is no time. */
  static final class Fault extends Exception {
    private static final long serialVersionUID = 1L;

    Fault(String message) {
      super(message);
    }
  }

  /** Whether it is written with colons. */
  boolean isClock() {
    return writing != Writing.NUMBER;
  }

  /**
   * Reads a time.
   *
   * @throws Fault if the word is no time, or one that is not finite, or a negative clock time
   */
  static TimeText parse(String word) throws Fault {
    boolean gap = word.startsWith("+");
    if (word.indexOf(':') >= 0) {
      return clock(word, gap ? word.substring(1) : word, gap);
    }
    double value = Numbers.parse(word);
    if (Double.isFinite(value)) {
      return new TimeText(Writing.NUMBER, value, gap);
    }
    if (Double.isInfinite(value) || Numbers.isInfinite(word) || word.equalsIgnoreCase("nan")) {
      throw new Fault(Numbers.quote(word) + " is not a finite time; expected " + EXPECTED);
    }
    throw notATime(word);
  }

  private static TimeText clock(String word, String digits, boolean gap) throws Fault {
    if (digits.startsWith("-")) {
      throw new Fault(Numbers.quote(word) + " is negative; a clock time cannot be");
    }
    int first = digits.indexOf(':');
    int second = digits.indexOf(':', first + 1);
    int last = second < 0 ? first : second;
    double head = whole(word, digits.substring(0, first));
    double minutes = second < 0 ? head : whole(word, digits.substring(first + 1, second));
    double seconds = secondsPart(word, digits.substring(last + 1));
    if (!(seconds < 60) || (second >= 0 && !(minutes < 60))) {
      throw new Fault(Numbers.quote(word) + " has more than 59 in a place for minutes or seconds");
    }
    return second < 0
        ? new TimeText(Writing.MINUTES, minutes * 60 + seconds, gap)
        : new TimeText(Writing.HOURS, head * 3600 + minutes * 60 + seconds, gap);
  }

  private static double whole(String word, String digits) throws Fault {
    if (digits.isEmpty() || digits.length() > MAX_DIGITS) {
      throw notATime(word);
    }
    int value = 0;
    for (int i = 0; i < digits.length(); i++) {
      if (!Numbers.isDigit(digits.charAt(i))) {
        throw notATime(word);
      }
      value = value * 10 + digits.charAt(i) - '0';
    }
    return value;
  }

  private static double secondsPart(String word, String digits) throws Fault {
    for (int i = 0; i < digits.length(); i++) {
      if (!Numbers.isDigit(digits.charAt(i)) && digits.charAt(i) != '.') {
        throw notATime(word);
      }
    }
    double seconds = Numbers.parse(digits);
    if (!Double.isFinite(seconds)) {
      throw notATime(word);
    }
    return seconds;
  }

  private static Fault notATime(String word) {
    return new Fault(Numbers.quote(word) + " is not a time; expected " + EXPECTED);
  }
}

package lampwise.file;

import lampwise.file.TimeText.Writing;

/**
 * How a recording's own writing of times becomes its seconds, for the options.
 *
 * @param writing how the file writes times
 * @param perSecond how many of a plain number's unit make a second
 * @param zeroSeconds which of the file's times, in seconds, is 0
 * @param firstSeconds the first time of the recording; NaN if it has none
 * @param lastSeconds the last time of the recording; NaN if it has none
 */
record RecordingClock(
    Writing writing,
    double perSecond,
    double zeroSeconds,
    double firstSeconds,
    double lastSeconds) {
  /** Seconds in a day. */
  static final double DAY = 86_400;

  /** A numeric time column that starts below this keeps its own zero. */
  static final double OWN_ZERO_BELOW_SECONDS = 10_000;

  /** Times beyond this many seconds are no times. */
  static final double MAX_SECONDS = 1e12;

  /** How far outside the recording a plain number may lie before its other meaning is tried. */
  private static final double NEAR_SECONDS = 600;

  /** Seconds from 0 and nothing recorded. */
  static RecordingClock empty() {
    return new RecordingClock(Writing.NUMBER, 1, 0, Double.NaN, Double.NaN);
  }

  /** An empty recording whose time 0 is a clock time. */
  static RecordingClock emptyFrom(TimeText zero) {
    return new RecordingClock(zero.writing(), 1, zero.value(), Double.NaN, Double.NaN);
  }

  /** Whether the recording has no times. */
  boolean isEmpty() {
    return Double.isNaN(firstSeconds);
  }

  /**
   * Reads the time of an option: seconds of the recording, or the file's own writing. A plain
   * number means seconds, unless only the file's own unit and zero bring it near the recording.
   *
   * @param option the option's name, for messages
   * @param word what the user gave
   * @throws OptionException if it is no time, or a clock time for a file that has none
   */
  double seconds(String option, String word) throws OptionException {
    TimeText time;
    try {
      time = TimeText.parse(word.trim());
    } catch (TimeText.Fault e) {
      throw new OptionException(option + ": " + e.getMessage());
    }
    double seconds = time.isClock() ? ofClock(option, word, time) : ofNumber(time.value());
    if (!(Math.abs(seconds) <= MAX_SECONDS)) {
      throw new OptionException(option + ": " + Numbers.quote(word) + " is too large for a time");
    }
    return seconds;
  }

  private double ofNumber(double value) {
    double own = Numbers.tidy(value / perSecond - zeroSeconds);
    boolean ownOnly = writing == Writing.NUMBER && !isEmpty() && !isNear(value) && isNear(own);
    return ownOnly ? own : value;
  }

  private boolean isNear(double seconds) {
    return seconds >= firstSeconds - NEAR_SECONDS && seconds <= lastSeconds + NEAR_SECONDS;
  }

  private double ofClock(String option, String word, TimeText time) throws OptionException {
    if ((time.writing() == Writing.HOURS) != (writing == Writing.HOURS)
        && !(time.writing() == Writing.HOURS && writing == Writing.MINUTES)) {
      throw new OptionException(
          option
              + ": "
              + Numbers.quote(word)
              + (writing == Writing.HOURS
                  ? " is not written like the file's times; expected seconds or h:mm:ss.s"
                  : " is a clock time and the file has none; expected seconds"));
    }
    double seconds = Numbers.tidy(time.value() - (writing == Writing.NUMBER ? 0 : zeroSeconds));
    return writing == Writing.HOURS && seconds < -DAY / 2 ? Numbers.tidy(seconds + DAY) : seconds;
  }
}

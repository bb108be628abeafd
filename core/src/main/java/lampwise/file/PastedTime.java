package lampwise.file;

/**
 * One time of a pasted list and where it stands.
 *
 * @param role whether it starts or ends a blink
 * @param time the time
 * @param style what it carries beside its digits
 * @param line its line, from 1
 * @param column its column, from 1
 * @param word how it is written
 */
record PastedTime(Role role, TimeText time, Style style, int line, int column, String word) {
  /** What a time is the time of. */
  enum Role {
    /** No word says it. */
    UNSAID,
    /** The lamp came on. */
    ON,
    /** The lamp went off. */
    OFF
  }

  /** What a time carries beside its digits. */
  enum Style {
    /** Nothing. */
    BARE,
    /** A unit; the time is in seconds. */
    UNIT,
    /** The half of the day, with seconds. */
    HALF_DAY,
    /** The half of the day, to the minute. */
    HALF_DAY_MINUTES,
    /** Nothing; the list shows that it is a clock time to the minute. */
    TO_THE_MINUTE
  }

  /** Whether it says its half of the day. */
  boolean hasHalfDay() {
    return style == Style.HALF_DAY || style == Style.HALF_DAY_MINUTES;
  }

  /** Whether it is the time since the one before. */
  boolean isGap() {
    return time.gap();
  }

  PastedTime as(Role newRole) {
    return new PastedTime(newRole, time, style, line, column, word);
  }

  PastedTime asGap() {
    return with(new TimeText(time.writing(), time.value(), true));
  }

  PastedTime with(TimeText newTime) {
    return new PastedTime(role, newTime, style, line, column, word);
  }
}

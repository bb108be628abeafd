package lampwise.rhythm;

/**
 * A duration as it was said: one value, a value about which it lies, a range, or one border.
 *
 * @param form how it was said
 * @param fromSeconds the value itself ({@code EXACT}, {@code ABOUT}), the lower border ({@code
 *     RANGE}, {@code OVER}) or zero ({@code UNDER})
 * @param toSeconds the value itself ({@code EXACT}, {@code ABOUT}), the upper border ({@code
 *     RANGE}, {@code UNDER}) or positive infinity ({@code OVER})
 */
public record Length(Form form, double fromSeconds, double toSeconds) {
  /** How far {@code about} reaches to either side. */
  public static final double ABOUT_FRACTION = 0.2;

  /** The longest duration that can be said, a week. */
  public static final double MOST_SECONDS = 7 * 86400.0;

  /** How a duration can be said. */
  public enum Form {
    /** {@code 3 s}. */
    EXACT,
    /** {@code about 3 s}: within 20 % of it either way. */
    ABOUT,
    /** {@code 3 to 4 s}: both borders included. */
    RANGE,
    /** {@code about 3 to 4 s}: 20 % beyond either border. */
    ABOUT_RANGE,
    /** {@code over 3 s}. */
    OVER,
    /** {@code under 3 s}. */
    UNDER
  }

  /**
   * Checks the values.
   *
   * @throws RhythmException if a value is NaN, zero or less, longer than a week, or a range does
   *     not run upwards
   */
  public Length {
    // One zero, so that equal durations are equal.
    fromSeconds += 0.0;
    boolean fromFits = form == Form.UNDER ? fromSeconds == 0 : inside(fromSeconds);
    boolean toFits = form == Form.OVER ? toSeconds == Double.POSITIVE_INFINITY : inside(toSeconds);
    boolean single = form == Form.EXACT || form == Form.ABOUT;
    boolean ordered = single ? fromSeconds == toSeconds : fromSeconds < toSeconds;
    if (!fromFits || !toFits || !ordered) {
      throw new RhythmException(
          "a duration must be over 0 s, at most a week, and a range must run upwards: "
              + fromSeconds
              + " to "
              + toSeconds
              + " s");
    }
  }

  private static boolean inside(double seconds) {
    return seconds > 0 && seconds <= MOST_SECONDS;
  }

  /**
   * One value.
   *
   * @param seconds over zero
   * @return the duration
   */
  public static Length exactly(double seconds) {
    return new Length(Form.EXACT, seconds, seconds);
  }

  /**
   * A range.
   *
   * @param fromSeconds over zero
   * @param toSeconds above {@code fromSeconds}
   * @return the duration
   */
  public static Length between(double fromSeconds, double toSeconds) {
    return new Length(Form.RANGE, fromSeconds, toSeconds);
  }

  /**
   * The least it can be.
   *
   * @return seconds, zero or more
   */
  public double leastSeconds() {
    return form == Form.ABOUT || form == Form.ABOUT_RANGE
        ? fromSeconds * (1 - ABOUT_FRACTION)
        : fromSeconds;
  }

  /**
   * The most it can be.
   *
   * @return seconds; positive infinity for {@code OVER}
   */
  public double mostSeconds() {
    return form == Form.ABOUT || form == Form.ABOUT_RANGE
        ? toSeconds * (1 + ABOUT_FRACTION)
        : toSeconds;
  }
}

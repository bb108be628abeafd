package lampwise.rhythm;

/**
 * How often single blinks come, start to start.
 *
 * @param form how it was said
 * @param from the number itself or the lower one of a range; NaN for a rate in words
 * @param to the number itself or the upper one of a range; NaN for a rate in words
 * @param per the unit of the numbers; {@code SECOND} for a rate in words
 */
public record Rate(Form form, double from, double to, Per per) {
  /** The highest rate that can be said, blinks per second. */
  public static final double MOST_PER_SECOND = 1000;

  /** How a rate can be said. */
  public enum Form {
    /** {@code 3 blinks per second}. */
    EXACT,
    /** {@code about 3 blinks per second}: within 20 % of it either way. */
    ABOUT,
    /** {@code 2 to 3 blinks per second}: both borders included. */
    RANGE,
    /** {@code about 2 to 3 blinks per second}: 20 % beyond either border. */
    ABOUT_RANGE,
    /** {@code blinks}: 0.1 to 10 per second. */
    ANY,
    /** {@code slow blinks}: 0.1 to 1 per second. */
    SLOW,
    /** {@code fast blinks}: 1.5 to 10 per second. */
    FAST;

    /**
     * Whether it is said without a number.
     *
     * @return true for {@code ANY}, {@code SLOW}, {@code FAST}
     */
    public boolean inWords() {
      return this == ANY || this == SLOW || this == FAST;
    }
  }

  /** The unit of a rate. */
  public enum Per {
    /** Blinks per second. */
    SECOND(1),
    /** Blinks per minute. */
    MINUTE(60);

    private final int seconds;

    Per(int seconds) {
      this.seconds = seconds;
    }

    /** How many seconds it has. */
    int seconds() {
      return seconds;
    }
  }

  /**
   * Checks the numbers.
   *
   * @throws RhythmException if a number is NaN, zero or less, above {@value #MOST_PER_SECOND} per
   *     second, or a range does not run upwards; or if a rate in words has numbers
   */
  public Rate {
    if (form.inWords()) {
      if (!Double.isNaN(from) || !Double.isNaN(to) || per != Per.SECOND) {
        throw new RhythmException("a rate in words has no numbers");
      }
      // One NaN, so that equal rates are equal.
      from = Double.NaN;
      to = Double.NaN;
    } else {
      boolean single = form == Form.EXACT || form == Form.ABOUT;
      if (!(from > 0)
          || !(to / per.seconds <= MOST_PER_SECOND)
          || !(single ? from == to : from < to)) {
        throw new RhythmException(
            "a rate must be over 0, at most "
                + MOST_PER_SECOND
                + " per second, and a range must run upwards: "
                + from
                + " to "
                + to);
      }
    }
  }

  /**
   * A rate in words.
   *
   * @param form {@code ANY}, {@code SLOW} or {@code FAST}
   * @return the rate
   */
  public static Rate inWords(Form form) {
    return new Rate(form, Double.NaN, Double.NaN, Per.SECOND);
  }

  /**
   * The lowest it can be.
   *
   * @return blinks per second
   */
  public double leastPerSecond() {
    return switch (form) {
      case ANY, SLOW -> 0.1;
      case FAST -> 1.5;
      case ABOUT, ABOUT_RANGE -> from * (1 - Length.ABOUT_FRACTION) / per.seconds;
      case EXACT, RANGE -> from / per.seconds;
    };
  }

  /**
   * The highest it can be.
   *
   * @return blinks per second
   */
  public double mostPerSecond() {
    return switch (form) {
      case SLOW -> 1;
      case ANY, FAST -> 10;
      case ABOUT, ABOUT_RANGE -> to * (1 + Length.ABOUT_FRACTION) / per.seconds;
      case EXACT, RANGE -> to / per.seconds;
    };
  }
}

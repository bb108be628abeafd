package lampwise.rhythm;

/**
 * How many blinks.
 *
 * @param min the least, one or more
 * @param max the most, not below the least; equal to it where one number was said
 */
public record Count(int min, int max) {
  /** The most blinks that one part may have. */
  public static final int MOST = 100;

  /**
   * Checks the numbers.
   *
   * @throws RhythmException unless 1 &lt;= min &lt;= max &lt;= {@value #MOST}
   */
  public Count {
    if (min < 1 || max < min || max > MOST) {
      throw new RhythmException(
          "a count must be 1 to " + MOST + " and must not run downwards: " + min + " to " + max);
    }
  }

  /**
   * One number.
   *
   * @param number how many
   * @return the count
   */
  public static Count of(int number) {
    return new Count(number, number);
  }
}

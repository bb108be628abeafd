package lampwise.light;

/**
 * The lamp on once.
 *
 * @param onSeconds when it came on, finite
 * @param offSeconds when it went off, after {@code onSeconds}; NaN where only the start is known
 */
public record Blink(double onSeconds, double offSeconds) {
  /**
   * Checks the times.
   *
   * @throws RecordingException if the start is not finite, or the end is known and not after it
   */
  public Blink {
    RecordingException.finite(onSeconds, "the start of a blink");
    if (!Double.isNaN(offSeconds)) {
      RecordingException.finite(offSeconds, "the end of a blink");
      if (!(offSeconds > onSeconds)) {
        throw new RecordingException(
            "a blink must end after it starts: on " + onSeconds + ", off " + offSeconds);
      }
    }
  }

  /**
   * A blink of which only the start is known, as a tap gives it.
   *
   * @param onSeconds when it came on, finite
   * @return the blink
   */
  public static Blink startingAt(double onSeconds) {
    return new Blink(onSeconds, Double.NaN);
  }

  /**
   * Whether the end is known.
   *
   * @return false if {@code offSeconds} is NaN
   */
  public boolean hasOff() {
    return !Double.isNaN(offSeconds);
  }
}

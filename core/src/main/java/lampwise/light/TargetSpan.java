package lampwise.light;

/**
 * A stretch of time with a target in the sensor's range.
 *
 * @param fromSeconds when it came; negative infinity if it was there from the start
 * @param toSeconds when it left, after it came; positive infinity if it stayed to the end
 */
public record TargetSpan(double fromSeconds, double toSeconds) {
  /**
   * Checks the times.
   *
   * @throws RecordingException if a time is NaN or the span does not end after it starts
   */
  public TargetSpan {
    if (!(toSeconds > fromSeconds)) {
      throw new RecordingException(
          "a target must leave after it comes: " + fromSeconds + " to " + toSeconds + " s");
    }
  }

  /**
   * A target that was there all the time.
   *
   * @return the span without borders
   */
  public static TargetSpan always() {
    return new TargetSpan(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  }
}

package lampwise.light;

/**
 * A stretch of time, both borders included.
 *
 * @param fromSeconds where it starts, finite
 * @param toSeconds where it ends, finite and not before the start; equal to it for a moment
 */
public record Window(double fromSeconds, double toSeconds) {
  /**
   * Checks the borders.
   *
   * @throws RecordingException if a border is not finite or the end lies before the start
   */
  public Window {
    RecordingException.finite(fromSeconds, "the start of a window");
    RecordingException.finite(toSeconds, "the end of a window");
    if (toSeconds < fromSeconds) {
      throw new RecordingException(
          "a window must not end before it starts: " + fromSeconds + " to " + toSeconds + " s");
    }
  }

  /**
   * How long it is.
   *
   * @return seconds, zero or more
   */
  public double lengthSeconds() {
    return toSeconds - fromSeconds;
  }

  /**
   * Whether a time lies inside, borders included.
   *
   * @param seconds the time; NaN is never inside
   * @return true if inside
   */
  public boolean contains(double seconds) {
    return seconds >= fromSeconds && seconds <= toSeconds;
  }

  // Written out: a record's own is put together when it is first called, which would cost every
  // cold start of decode a seventh of its time.

  @Override
  public boolean equals(Object other) {
    return other instanceof Window window
        && Double.compare(fromSeconds, window.fromSeconds) == 0
        && Double.compare(toSeconds, window.toSeconds) == 0;
  }

  @Override
  public int hashCode() {
    return 31 * Double.hashCode(fromSeconds) + Double.hashCode(toSeconds);
  }
}

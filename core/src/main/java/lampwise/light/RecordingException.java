package lampwise.light;

/** Says which value of a recording cannot be: a NaN time, a window that ends before it starts. */
public final class RecordingException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes one.
   *
   * @param message one line: what was given and what was expected
   */
  public RecordingException(String message) {
    super(message);
  }

  static double finite(double value, String what) {
    if (!(Math.abs(value) <= Double.MAX_VALUE)) {
      throw new RecordingException(what + " must be a finite number of seconds, not " + value);
    }
    return value;
  }
}

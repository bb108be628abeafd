package lampwise.rhythm;

/** Says why a rhythm cannot be: a count of zero, a cycle shorter than its parts. */
public final class RhythmException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes one.
   *
   * @param message one line: what was given and what was expected
   */
  public RhythmException(String message) {
    super(message);
  }
}

package lampwise.sheet;

/** Says why a code sheet cannot be: two states of one name, a tolerance out of range. */
public final class SheetException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes one.
   *
   * @param message one line: what was given and what was expected
   */
  public SheetException(String message) {
    super(message);
  }
}

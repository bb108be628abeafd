package lampwise.service;

/** Says why a guide or one of its parts cannot be: a doubled name, chances that do not add up. */
public final class GuideException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes one.
   *
   * @param message one line: what was given and what was expected
   */
  public GuideException(String message) {
    super(message);
  }
}

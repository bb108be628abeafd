package lampwise.file;

/** An option of the user cannot be understood: {@code --target 9..4}. */
public final class OptionException extends Exception {
  private static final long serialVersionUID = 1L;

  /**
   * Makes one.
   *
   * @param message which option, what was given and what was expected, one line
   */
  public OptionException(String message) {
    super(message);
  }
}

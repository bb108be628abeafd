package lampwise.sheet;

/** Says why a label's words give no state, and what could be typed instead. */
public final class LabelException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String suggestion;

  /**
   * Makes one.
   *
   * @param reason why, one line
   * @param suggestion a phrase or words that may be meant; empty for none
   */
  public LabelException(String reason, String suggestion) {
    super(reason);
    this.suggestion = suggestion;
  }

  /**
   * Why the words give no state.
   *
   * @return one line
   */
  public String reason() {
    return String.valueOf(getMessage());
  }

  /**
   * What may be meant.
   *
   * @return a whole phrase; empty for none
   */
  public String suggestion() {
    return suggestion;
  }
}

package lampwise.service;

/** How a visit ends. */
public enum Outcome {
  /** It works, and that was proven. */
  FIXED("fixed"),
  /** It works again, but the fault may come back. */
  RESET_WATCH("reset, watch"),
  /** It does not work, nor can it do harm; somebody else goes on. */
  MADE_SAFE("made safe"),
  /** Somebody else goes on. */
  HANDED_OVER("handed over");

  private final String word;

  Outcome(String word) {
    this.word = word;
  }

  /**
   * The word for it in files and output.
   *
   * @return the word, lower case
   */
  public String word() {
    return word;
  }
}

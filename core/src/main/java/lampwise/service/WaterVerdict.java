package lampwise.service;

/** What a figure says against a limit. */
public enum WaterVerdict {
  /** It is right, beyond its uncertainty. */
  PASS("pass"),
  /** It is wrong, beyond its uncertainty. */
  FAIL("fail"),
  /** Its uncertainty reaches over the limit. */
  NOT_DECIDED("not decided");

  private final String word;

  WaterVerdict(String word) {
    this.word = word;
  }

  /**
   * The word for it.
   *
   * @return the word, lower case
   */
  public String word() {
    return word;
  }
}

package lampwise.service;

import java.util.Optional;

/** What a piece of work opens, so that it can hurt. */
public enum Opening {
  /** A part that holds water pressure, or that water will run from. */
  WATER("water"),
  /** Wiring or a supply beyond the unit's own cells. */
  ELECTRICS("electrics"),
  /** The unit's housing or its cell holder. */
  UNIT("unit");

  private final String word;

  Opening(String word) {
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

  /**
   * Finds one by its word.
   *
   * @param word the word, exactly
   * @return the value, or empty for any other word
   */
  public static Optional<Opening> of(String word) {
    for (Opening value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

package lampwise.sheet;

import java.util.Optional;

/** What the unit runs on. */
public enum Power {
  /** Cells in the unit. */
  CELLS("cells"),
  /** A turbine in the water. */
  GENERATOR("generator"),
  /** The building's supply. */
  MAINS("mains");

  private final String word;

  Power(String word) {
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
  public static Optional<Power> of(String word) {
    for (Power value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

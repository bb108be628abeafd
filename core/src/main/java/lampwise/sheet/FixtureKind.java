package lampwise.sheet;

import java.util.Optional;

/** What the unit works. */
public enum FixtureKind {
  /** A water closet. */
  WATER_CLOSET("water-closet"),
  /** A urinal. */
  URINAL("urinal"),
  /** A faucet. */
  FAUCET("faucet");

  private final String word;

  FixtureKind(String word) {
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
  public static Optional<FixtureKind> of(String word) {
    for (FixtureKind value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

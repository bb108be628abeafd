package lampwise.sheet;

import java.util.Optional;

/** Where a sheet's entries come from. */
public enum Basis {
  /** The label on the unit. */
  LABEL("label"),
  /** The unit's own papers. */
  MANUAL("manual"),
  /** Lamps that were watched. */
  OBSERVED("observed"),
  /** Made up, for trying and teaching. */
  INVENTED("invented");

  private final String word;

  Basis(String word) {
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
  public static Optional<Basis> of(String word) {
    for (Basis value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

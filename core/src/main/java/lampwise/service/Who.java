package lampwise.service;

import java.util.Optional;

/** Who may do a piece of work. A site may say otherwise; local law always does. */
public enum Who {
  /** Anybody of the site's staff. */
  ANYONE("anyone"),
  /** Somebody trained for such units. */
  TECHNICIAN("technician"),
  /** A licensed plumber. */
  PLUMBER("plumber"),
  /** A licensed electrician. */
  ELECTRICIAN("electrician"),
  /** Whoever decides for the site, such as the owner of its water-management plan. */
  OWNER("owner");

  private final String word;

  Who(String word) {
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
  public static Optional<Who> of(String word) {
    for (Who value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

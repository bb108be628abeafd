package lampwise.sheet;

import java.util.Optional;

/** When a state's lamp can be seen; outside these times it is dark. */
public enum Seen {
  /** At any time. */
  ALWAYS("always"),
  /** While no target is in range. */
  IDLE("idle"),
  /** While a target is in range. */
  TARGET("target"),
  /** After a target has left. */
  AFTER_TARGET("after-target"),
  /** After a flush. */
  AFTER_FLUSH("after-flush"),
  /** While water runs. */
  WHILE_RUNNING("while-running"),
  /** After power came back. */
  AFTER_POWER_UP("after-power-up"),
  /** After the manual override or a setting was pressed. */
  AFTER_BUTTON("after-button"),
  /** While the unit is being set. */
  SET_UP("set-up");

  private final String word;

  Seen(String word) {
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
  public static Optional<Seen> of(String word) {
    for (Seen value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

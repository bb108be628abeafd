package lampwise.light;

import java.util.Optional;

/**
 * A moment that was noted.
 *
 * @param kind what happened
 * @param atSeconds when, finite
 */
public record Event(Kind kind, double atSeconds) {
  /** What can happen. */
  public enum Kind {
    /** Cells went in or power came back. */
    POWER_UP("power-up"),
    /** The manual override or a setting was pressed. */
    BUTTON("button"),
    /** Water ran. */
    FLUSH("flush"),
    /** A door moved. */
    DOOR("door");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /**
     * The word for it in files and options.
     *
     * @return the word, lower case
     */
    public String word() {
      return word;
    }

    /**
     * Finds a kind by its word.
     *
     * @param word the word, exactly
     * @return the kind, or empty for any other word
     */
    public static Optional<Kind> of(String word) {
      for (Kind kind : values()) {
        if (kind.word.equals(word)) {
          return Optional.of(kind);
        }
      }
      return Optional.empty();
    }
  }

  /**
   * Checks the time.
   *
   * @throws RecordingException if the time is not finite
   */
  public Event {
    RecordingException.finite(atSeconds, "the time of an event");
  }
}

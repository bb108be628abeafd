package lampwise.service;

import java.util.List;
import java.util.Optional;

/** What a site can set a limit to. */
public enum Measure {
  /** The pressure at rest, with nothing running nearby. */
  STATIC_PRESSURE("static-pressure"),
  /** The pressure while the fixture runs. */
  FLOWING_PRESSURE("flowing-pressure"),
  /** The volume of one flush or run. */
  FLUSH_VOLUME("flush-volume"),
  /** The flow of a faucet. */
  FLOW("flow"),
  /** The temperature at the spout. */
  TEMPERATURE("temperature"),
  /** How long a faucet runs. */
  RUNNING_TIME("running-time");

  private final String word;

  Measure(String word) {
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
   * The units in which it may be written.
   *
   * @return at least one unit
   */
  public List<String> units() {
    return switch (this) {
      case STATIC_PRESSURE, FLOWING_PRESSURE -> List.of("psi", "kPa", "bar");
      case FLUSH_VOLUME -> List.of("gal", "L");
      case FLOW -> List.of("gpm", "L/min", "L/s");
      case TEMPERATURE -> List.of("F", "C");
      case RUNNING_TIME -> List.of("s");
    };
  }

  /**
   * Finds one by its word.
   *
   * @param word the word, exactly
   * @return the value, or empty for any other word
   */
  public static Optional<Measure> of(String word) {
    for (Measure value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

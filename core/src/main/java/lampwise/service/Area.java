package lampwise.service;

import java.util.Optional;

/** Where a cause sits. */
public enum Area {
  /** A danger that comes before any repair. */
  SAFETY("safety"),
  /** Bowl, trap or drain. */
  DRAIN("drain"),
  /** Stop, strainer, pressure at this fixture. */
  SUPPLY("supply"),
  /** Something that touches more than one fixture. */
  SITE("site"),
  /** Window, sensor, or what it sees. */
  SENSING("sensing"),
  /** Cells, generator or mains supply. */
  POWER("power"),
  /** Leads, plugs, coil. */
  WIRING("wiring"),
  /** Diaphragm, piston, seat, plunger. */
  VALVE("valve"),
  /** The vacuum breaker. */
  VACUUM_BREAKER("vacuum-breaker"),
  /** A setting of the unit. */
  SETTING("setting"),
  /** The mixer of hot and cold. */
  MIXER("mixer"),
  /** A fault left by earlier work. */
  ASSEMBLY("assembly"),
  /** Parts whose rated volumes do not match. */
  RATING("rating"),
  /** A flush by the clock that is taken for a fault. */
  HYGIENE("hygiene"),
  /** Spout, aerator, flow regulator. */
  OUTLET("outlet"),
  /** Anything else. */
  OTHER("other");

  private final String word;

  Area(String word) {
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
  public static Optional<Area> of(String word) {
    for (Area value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

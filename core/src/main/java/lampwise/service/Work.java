package lampwise.service;

import java.util.Optional;

/** What was done lately at a fixture or around it; such work raises the odds of some causes. */
public enum Work {
  /** Cells were changed. */
  CELLS("cells"),
  /** The supply of power was off. */
  POWER_CUT("power-cut"),
  /** The valve was opened: a diaphragm, a piston, a coil. */
  VALVE("valve"),
  /** The stop was turned or repaired. */
  STOP("stop"),
  /** The water was off in the building or on this riser. */
  WATER_OFF("water-off"),
  /** The sensor unit was changed or set. */
  UNIT("unit"),
  /** The mixer or its supplies were worked on. */
  MIXER("mixer"),
  /** The trap or the drain was worked on. */
  DRAIN("drain"),
  /** The room was cleaned thoroughly. */
  CLEANING("cleaning"),
  /** The room was changed: doors, mirrors, lights, facing units. */
  ROOM("room");

  private final String word;

  Work(String word) {
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
  public static Optional<Work> of(String word) {
    for (Work value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

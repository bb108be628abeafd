package lampwise.sheet;

import java.util.Optional;

/** What a state says about the unit in general terms; it ties any sheet to the guide. */
public enum Condition {
  /** Waits for a user, nothing is wrong. */
  READY("ready"),
  /** The sensor sees a target. */
  TARGET_SEEN("target-seen"),
  /** Water runs. */
  RUNNING("running"),
  /** The sensor reaches less far than it should. */
  RANGE_SHORT("range-short"),
  /** The sensor reaches farther than it should. */
  RANGE_LONG("range-long"),
  /** Something covers or dazzles the sensor. */
  SENSOR_BLOCKED("sensor-blocked"),
  /** Cells or supply are running down. */
  POWER_LOW("power-low"),
  /** No power reaches the unit. */
  POWER_MISSING("power-missing"),
  /** The valve's coil or its wiring is at fault. */
  VALVE_CIRCUIT("valve-circuit"),
  /** The unit is being set or learns its surroundings. */
  SETTING_UP("setting-up"),
  /** The unit is switched off for cleaning or store. */
  HELD_OFF("held-off"),
  /** A flush by the clock. */
  HYGIENE_FLUSH("hygiene-flush"),
  /** The lamp itself does not work or is switched off. */
  NO_LAMP("no-lamp"),
  /** Anything else. */
  OTHER("other");

  private final String word;

  Condition(String word) {
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
  public static Optional<Condition> of(String word) {
    for (Condition value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}

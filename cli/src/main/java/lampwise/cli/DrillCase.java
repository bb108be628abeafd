package lampwise.cli;

/**
 * One unit whose state has to be told.
 *
 * @param number its number, from 1
 * @param unit the unit
 * @param need how long one has to watch it
 */
record DrillCase(int number, DrillUnit unit, DrillNeed need) {
  /** Whether its lamp can flash more than three times in one second. */
  boolean isFast() {
    return unit.lights().stream().anyMatch(DrillLight::isFast);
  }
}

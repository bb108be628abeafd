package lampwise.cli;

/**
 * Something that is done to a unit while its lamp is watched.
 *
 * @param kind what
 * @param atSeconds when, on the watch's clock
 */
record DrillAct(Kind kind, double atSeconds) {
  /** What can be done. */
  enum Kind {
    HAND_IN("hand-in"),
    HAND_OUT("hand-out"),
    POWER_OFF("power-off"),
    POWER_ON("power-on"),
    /** The unit's button, which makes it flush too. */
    BUTTON("button");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The word for it in the page's JSON. */
    String word() {
      return word;
    }
  }
}

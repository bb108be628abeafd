package lampwise.sim;

/** Turns a scene into light. */
public final class Lamp {
  private Lamp() {}

  /**
   * When a lamp is on in a scene: what a phrase leaves open is drawn within its limits and kept for
   * the recording, the clock is drawn within its tolerance, the phase at random.
   *
   * @param scene what happens
   * @param chance where numbers come from
   * @return the light and how the clock ran
   */
  public static Shown shine(Scene scene, Chance chance) {
    throw new UnsupportedOperationException();
  }
}

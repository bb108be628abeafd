package lampwise.sim;

/** Makes labelled recordings: a pure function of scene, observer and seed. */
public final class Simulator {
  private Simulator() {}

  /**
   * One recording. The lamp's part of the numbers depends on the seed alone, so that several
   * observers given the same seed and scene watch the same lamp, unless they change the scene.
   *
   * @param scene what happens
   * @param observer who watches
   * @param seed the seed
   * @return the recording and what is true of it
   * @throws SimulationException if scene and observer do not go together
   */
  public static Labelled record(Scene scene, Observer observer, long seed) {
    return record(scene, observer, Chance.of(seed));
  }

  /**
   * One recording with numbers of a source that is given.
   *
   * @param scene what happens
   * @param observer who watches
   * @param chance where numbers come from; only branches of it are used
   * @return the recording and what is true of it
   * @throws SimulationException if scene and observer do not go together
   */
  public static Labelled record(Scene scene, Observer observer, Chance chance) {
    return observer.observe(shown(scene, observer, chance), watching(chance));
  }

  /**
   * What a light sensor measures while it makes the recording that {@link #record(Scene, Observer,
   * Chance)} gives for the same arguments.
   *
   * @param scene what happens
   * @param sensor what watches
   * @param chance where numbers come from; only branches of it are used
   * @return the values, written or not, and what is true of them
   * @throws SimulationException if scene and sensor do not go together
   */
  public static Measured measured(Scene scene, LightSensor sensor, Chance chance) {
    return sensor.measured(shown(scene, sensor, chance), watching(chance));
  }

  private static Shown shown(Scene scene, Observer observer, Chance chance) {
    Scene joined = observer.joining(scene, watching(chance).branch("joining"));
    return Lamp.shine(joined, chance.branch("lamp"));
  }

  private static Chance watching(Chance chance) {
    return chance.branch("observer");
  }
}

package lampwise.sim;

import java.util.Map;

/** Who or what watches a lamp and records it. */
public sealed interface Observer permits Person, LightSensor {
  /**
   * The settings by their names, in a fixed order; the unit is in the name or said in the class.
   *
   * @return name and value of each
   */
  Map<String, Double> settings();

  /**
   * The same observer with one setting changed.
   *
   * @param setting a name from {@link #settings()}
   * @param value its new value
   * @return a new observer
   * @throws SimulationException if there is no such setting, or the value is out of its range
   */
  Observer with(String setting, double value);

  /**
   * The scene as it is once the observer is there: a phone held to the lamp is itself a target.
   *
   * @param scene the scene without the observer
   * @param chance where numbers come from
   * @return the scene with it
   */
  Scene joining(Scene scene, Chance chance);

  /**
   * Records what a lamp shows.
   *
   * @param shown what the lamp shows
   * @param chance where numbers come from
   * @return the recording and what is true of it
   * @throws SimulationException if the settings do not fit the scene
   */
  Labelled observe(Shown shown, Chance chance);
}

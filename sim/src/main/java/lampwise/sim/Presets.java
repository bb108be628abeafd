package lampwise.sim;

import java.util.List;

/** The observers of the project's bench by their names. */
public final class Presets {
  private static final List<String> NAMES =
      List.of(
          "exact", "careful", "hurried", "careless", "fast", "camera", "meter", "slow", "faint");

  private Presets() {}

  /**
   * The names: people from the most exact to the least, then light sensors.
   *
   * @return the names
   */
  public static List<String> names() {
    return NAMES;
  }

  /**
   * An observer by its name.
   *
   * @param name one of {@link #names()}, exactly
   * @return the observer; a person taps
   * @throws SimulationException if there is none of that name; the message lists the near ones and
   *     all
   */
  public static Observer named(String name) {
    return switch (name) {
      case "exact" -> Person.exact();
      case "careful" -> Person.careful();
      case "hurried" -> Person.hurried();
      case "careless" -> Person.careless();
      case "fast" -> LightSensor.fast();
      case "camera" -> LightSensor.camera();
      case "meter" -> LightSensor.meter();
      case "slow" -> LightSensor.slow();
      case "faint" -> LightSensor.faint();
      default -> throw new SimulationException(Near.unknown("no observer named", name, NAMES));
    };
  }
}

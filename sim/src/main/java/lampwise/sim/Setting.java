package lampwise.sim;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A setting of an observer: name, range and the value that leaves an effect out. */
interface Setting {
  /** Its name. */
  String label();

  /** The least it can be. */
  double least();

  /** The most it can be. */
  double most();

  /** Its value where none is given. */
  double usual();

  /** A number as it stands in a message. */
  String said(double value);

  /** Its value among the settings of an observer. */
  default double in(Map<String, Double> settings) {
    return settings.getOrDefault(label(), usual());
  }

  /** Refuses a value that cannot be. */
  default void check(double value) {
    if (!(value >= least() && value <= most())) {
      throw new SimulationException(
          label() + " must be " + said(least()) + " to " + said(most()) + ", not " + said(value));
    }
  }

  /**
   * All settings in the fixed order, those not given as usual; throws where one cannot be.
   *
   * @param whose whose settings they are, for a message
   * @param settings all there are
   * @param given name and value of some
   */
  static Map<String, Double> complete(String whose, Setting[] settings, Map<String, Double> given) {
    given.forEach((name, value) -> named(whose, settings, name).check(value));
    Map<String, Double> all = new LinkedHashMap<>();
    for (Setting setting : settings) {
      // Adding zero makes a negative zero a plain one.
      all.put(setting.label(), setting.in(given) + 0.0);
    }
    return Collections.unmodifiableMap(all);
  }

  private static Setting named(String whose, Setting[] settings, String name) {
    for (Setting setting : settings) {
      if (setting.label().equals(name)) {
        return setting;
      }
    }
    List<String> names = Arrays.stream(settings).map(Setting::label).toList();
    throw new SimulationException(Near.unknown("no setting of a " + whose + " named", name, names));
  }
}

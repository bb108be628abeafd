package lampwise.sim;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The settings of a light sensor: name, range and the value that leaves an effect out. */
enum SensorSetting {
  RATE_HZ("rate-hz", 0.01, 1000, 50),
  JITTER("jitter", 0, 0.3, 0),
  AVERAGING_S("averaging-s", 0.0001, 2, 0.01),
  DEAD_S("dead-s", 0, 2, 0),
  DROPOUT("dropout", 0, 0.9, 0),
  LAMP_LUX("lamp-lux", 0, 100_000, 20),
  ROOM_LUX("room-lux", 0, 100_000, 150),
  NOISE_LUX("noise-lux", 0, 10_000, 0),
  STEP_LUX("step-lux", 0.001, 1000, 0.1),
  FULL_SCALE_LUX("full-scale-lux", 0, 1_000_000, 0),
  AUTO_RANGE_LUX("auto-range-lux", 0, 1_000_000, 0),
  ON_CHANGE("on-change", 0, 1, 0),
  CHANGE_THRESHOLD("change-threshold", 0, 0.9, 0),
  CHANGE_LUX("change-lux", 0, 1000, 0),
  DRIFT_LUX("drift-lux", 0, 10_000, 0),
  FLICKER_HZ("flicker-hz", 1, 1000, 120),
  FLICKER_OFF_HZ("flicker-off-hz", 0, 0.5, 0.1),
  FLICKER_LUX("flicker-lux", 0, 100_000, 0),
  SHADOWS("shadows", 0, 30, 0),
  HANDS("hands", 0, 30, 0),
  ROOM_SWITCH("room-switch", 0, 1, 0),
  PHONE_TARGET("phone-target", 0, 1, 0);

  private final String label;
  private final double least;
  private final double most;
  private final double usual;

  SensorSetting(String label, double least, double most, double usual) {
    this.label = label;
    this.least = least;
    this.most = most;
    this.usual = usual;
  }

  /** Its value among the settings of a sensor. */
  double in(Map<String, Double> settings) {
    return settings.getOrDefault(label, usual);
  }

  /** All settings in the fixed order, those not given as usual; throws where one cannot be. */
  static Map<String, Double> complete(Map<String, Double> given) {
    given.forEach((name, value) -> named(name).check(value));
    Map<String, Double> all = new LinkedHashMap<>();
    for (SensorSetting setting : values()) {
      // Adding zero makes a negative zero a plain one.
      all.put(setting.label, setting.in(given) + 0.0);
    }
    return Collections.unmodifiableMap(all);
  }

  private static SensorSetting named(String name) {
    for (SensorSetting setting : values()) {
      if (setting.label.equals(name)) {
        return setting;
      }
    }
    throw new SimulationException(
        Near.unknown("no setting of a light sensor named", name, names()));
  }

  private static List<String> names() {
    return Arrays.stream(values()).map(setting -> setting.label).toList();
  }

  private void check(double value) {
    boolean within = value >= least && value <= most;
    if (this == ON_CHANGE && within && value != 0 && value != 1) {
      throw new SimulationException(label + " must be 0 or 1, not " + plain(value));
    }
    if (!within) {
      throw new SimulationException(
          label + " must be " + plain(least) + " to " + plain(most) + ", not " + plain(value));
    }
  }

  /** A number for a message: whole ones without a point. */
  static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}

package lampwise.sim;

import java.util.Map;

/** The settings of a light sensor: name, range and the value that leaves an effect out. */
enum SensorSetting implements Setting {
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

  @Override
  public String label() {
    return label;
  }

  @Override
  public double least() {
    return least;
  }

  @Override
  public double most() {
    return most;
  }

  @Override
  public double usual() {
    return usual;
  }

  @Override
  public String said(double value) {
    return plain(value);
  }

  /** All settings in the fixed order, those not given as usual; throws where one cannot be. */
  static Map<String, Double> complete(Map<String, Double> given) {
    return Setting.complete("light sensor", values(), given);
  }

  @Override
  public void check(double value) {
    Setting.super.check(value);
    if (this == ON_CHANGE && value != 0 && value != 1) {
      throw new SimulationException(label + " must be 0 or 1, not " + plain(value));
    }
  }

  /** A number for a message: whole ones without a point. */
  static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}

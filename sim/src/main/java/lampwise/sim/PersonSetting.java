package lampwise.sim;

import java.math.BigDecimal;
import java.util.Map;

/** The settings of a person: name, range and the value that leaves an effect out. */
enum PersonSetting implements Setting {
  TIMING_SD_S("timing-sd-s", 0, 5, 0),
  FIRST_LATE_S("first-late-s", 0, 5, 0),
  SLOWEST_BURST_GAP_S("slowest-burst-gap-s", 0, 60, 1),
  MISSED("missed", 0, 1, 0),
  STRAYS_PER_MINUTE("strays-per-minute", 0, 600, 0),
  ROUNDING_S("rounding-s", 0, 60, 0.001),
  LAPSE("lapse", 0, 1, 0),
  DOUBLE_TAP("double-tap", 0, 1, 0),
  FASTEST_TAPS_PER_S("fastest-taps-per-s", 0, 20, 0),
  RELEASE_LATE_S("release-late-s", 0, 5, 0),
  RELEASE_SD_S("release-sd-s", 0, 5, 0),
  TAPS_APART_S("taps-apart-s", 0, 1, 0.05),
  COUNT_ERROR("count-error", 0, 1, 0),
  SECONDS_ERROR("seconds-error", 0, 1, 0);

  private final String label;
  private final double least;
  private final double most;
  private final double usual;

  PersonSetting(String label, double least, double most, double usual) {
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
    return Setting.complete("person", values(), given);
  }

  private static String plain(double value) {
    return Math.abs(value) <= 1e15
        ? new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString()
        : Double.toString(value);
  }
}

package lampwise.sim;

import java.util.Map;

/** Turns light into one value after another: averaging, noise, ranges, saturation, steps. */
final class Converter {
  /** The range comes down when the light is below this share of the next lower one. */
  private static final double COMES_DOWN = 0.8;

  private final LitTime lit;
  private final Surroundings room;
  private final Chance noise;
  private final double lampLux;
  private final double noiseLux;
  private final double step;
  private final double perUnit;
  private final double fullScale;
  private final double lowestRange;

  private double range;
  private double from;
  private double to;
  private double clean;
  private double roomPart;
  private double value;
  private double lampPart;
  private int first;

  Converter(Map<String, Double> settings, LitTime lit, Surroundings room, Chance noise) {
    this.lit = lit;
    this.room = room;
    this.noise = noise;
    lampLux = SensorSetting.LAMP_LUX.in(settings);
    noiseLux = SensorSetting.NOISE_LUX.in(settings);
    step = SensorSetting.STEP_LUX.in(settings);
    double parts = Math.rint(1 / step);
    // Steps of a tenth or a hundredth are divided by: 3 / 10 is nearer to 0.3 than 3 * 0.1.
    perUnit = Math.abs(1 / step - parts) < 1e-9 ? parts : Double.NaN;
    double full = SensorSetting.FULL_SCALE_LUX.in(settings);
    fullScale = full > 0 ? full : Double.POSITIVE_INFINITY;
    lowestRange = SensorSetting.AUTO_RANGE_LUX.in(settings);
    range = Double.NaN;
  }

  /**
   * Converts the light between two times, which must not go back from call to call.
   *
   * @param start the first time, from the window's start
   * @param end the second, after the first
   * @return false if the light was above the range, so that the conversion was thrown away
   */
  boolean convert(double start, double end) {
    double lamp = lampLux * (lit.within(start, end) / (end - start));
    double without = room.mean(start, end);
    double light = Math.max(0, without + lamp);
    double level = noiseLux == 0 ? light : Math.max(0, light + noiseLux * noise.normal());
    if (lowestRange > 0 && !fits(level)) {
      return false;
    }
    from = start;
    to = end;
    clean = light;
    roomPart = without;
    lampPart = lamp;
    first = lit.first();
    value = stepped(Math.min(level, fullScale));
    return true;
  }

  private boolean fits(double level) {
    if (Double.isNaN(range)) {
      // The first value is found by trying ranges before the first row.
      range = lowestRange;
      while (range < level && range < fullScale) {
        range *= 2;
      }
      return true;
    }
    if (level > range && range < fullScale) {
      range *= 2;
      return false;
    }
    if (range > lowestRange && level < COMES_DOWN * range / 2) {
      range /= 2;
    }
    return true;
  }

  private double stepped(double level) {
    return Double.isNaN(perUnit)
        ? Math.rint(level / step) * step
        : Math.rint(level * perUnit) / perUnit;
  }

  /** The last value that was not thrown away. */
  double value() {
    return value;
  }

  /** The last value that was not thrown away, with its times counted from another origin. */
  Measured.Value measured(double originSeconds) {
    return new Measured.Value(originSeconds + from, originSeconds + to, value, roomPart);
  }

  /** Marks the blinks that moved the last value by half a step or more. */
  void mark(boolean[] seen) {
    if (lampPart == 0) {
      return;
    }
    double shown = Math.min(clean, fullScale);
    for (int i = first; i < lit.size(); i++) {
      double overlap = lit.overlap(i, from, to);
      if (!(overlap > 0)) {
        return;
      }
      double part = lampLux * overlap / (to - from);
      if (shown - Math.min(clean - part, fullScale) >= step / 2) {
        seen[lit.blink(i)] = true;
      }
    }
  }
}

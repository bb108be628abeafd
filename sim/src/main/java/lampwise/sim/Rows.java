package lampwise.sim;

import java.util.Arrays;
import java.util.Map;

/** The rows that a sensor writes. */
final class Rows {
  private final double originSeconds;
  private final boolean onChange;
  private final double threshold;
  private final double leastChange;

  private double[] seconds;
  private double[] levels;
  private int size;

  Rows(Map<String, Double> settings, double originSeconds, int expected) {
    this.originSeconds = originSeconds;
    onChange = SensorSetting.ON_CHANGE.in(settings) == 1;
    threshold = SensorSetting.CHANGE_THRESHOLD.in(settings);
    leastChange = SensorSetting.CHANGE_LUX.in(settings);
    int room = onChange ? 64 : Math.max(2, expected);
    seconds = new double[room];
    levels = new double[room];
  }

  /**
   * Writes a row unless the level has not changed enough for one.
   *
   * @param at the time, from the window's start, after that of the call before
   * @param level the level
   * @return whether there is a row for it
   */
  boolean offer(double at, double level) {
    double time = Math.rint((originSeconds + at) * 1e6) / 1e6;
    if (size > 0 && (!(time > seconds[size - 1]) || !changed(levels[size - 1], level))) {
      return false;
    }
    if (size == seconds.length) {
      seconds = Arrays.copyOf(seconds, size + (size >> 1) + 1);
      levels = Arrays.copyOf(levels, seconds.length);
    }
    seconds[size] = time;
    levels[size++] = level;
    return true;
  }

  private boolean changed(double before, double now) {
    if (!onChange) {
      return true;
    }
    double change = Math.abs(now - before);
    return change > 0 && change >= threshold * before && change >= leastChange;
  }

  double[] seconds() {
    return Arrays.copyOf(seconds, size);
  }

  double[] levels() {
    return Arrays.copyOf(levels, size);
  }
}

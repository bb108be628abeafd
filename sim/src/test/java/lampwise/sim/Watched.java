package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;

/** Lamps that show what a test wants, and sensors without any effect but those it asks for. */
final class Watched {
  private Watched() {}

  /** A scene from 0 s on without anything in it. */
  static Scene scene(double seconds) {
    return new Scene(
        new Window(0, seconds),
        List.of(
            new Act(
                Double.NEGATIVE_INFINITY, CodeSheet.NO_RHYTHM, new Show.Random(1), Seen.ALWAYS)),
        List.of(),
        List.of(),
        false,
        new Scene.Clock(0, 0),
        OptionalDouble.empty());
  }

  /** A lamp that is on in these stretches, {@code {on, off, on, off, ...}}, from 0 s on. */
  static Shown lamp(double seconds, double... onOff) {
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < onOff.length; i += 2) {
      blinks.add(new Blink(onOff[i], onOff[i + 1]));
    }
    return lamp(seconds, blinks);
  }

  /** A lamp that shows these blinks, from 0 s on. */
  static Shown lamp(double seconds, List<Blink> blinks) {
    return new Shown(scene(seconds), blinks, List.of(new Shown.ClockRate(0, 1)));
  }

  /** Blinks of one length, each {@code every} after the one before and up to {@code late} more. */
  static List<Blink> flashes(int count, double length, double every, double late, Chance chance) {
    List<Blink> blinks = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      double on = every * i + chance.uniform(0, late);
      blinks.add(new Blink(on, on + length));
    }
    return blinks;
  }

  /** Rows without noise, jitter or anything else, to a thousandth of a lux. */
  static LightSensor plain(double rateHz, double averagingSeconds) {
    return new LightSensor(Map.of())
        .with("rate-hz", rateHz)
        .with("averaging-s", averagingSeconds)
        .with("step-lux", 0.001);
  }

  static LightCurve curve(LightSensor sensor, Shown shown, long seed) {
    return (LightCurve) sensor.observe(shown, Chance.of(seed)).recording();
  }

  static double[] levels(LightCurve curve) {
    double[] levels = new double[curve.size()];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = curve.level(i);
    }
    return levels;
  }

  static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  static double deviation(double[] values) {
    double mean = mean(values);
    double sum = 0;
    for (double value : values) {
      sum += (value - mean) * (value - mean);
    }
    return Math.sqrt(sum / (values.length - 1));
  }
}

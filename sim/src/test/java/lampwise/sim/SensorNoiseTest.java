package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import lampwise.light.LightCurve;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Noise, jitter, steps and full scale. Seeds are fixed. At 20,000 values the Kolmogorov-Smirnov
 * test sees a distance of 0.014 with 99 % certainty, which is a standard deviation 6 % off.
 */
class SensorNoiseTest {
  private static final int ROWS = 20_000;

  @Test
  void noiseIsNormal() {
    LightSensor sensor = Watched.plain(50, 0.01).with("noise-lux", 5);
    double[] levels = Watched.levels(Watched.curve(sensor, Watched.lamp(ROWS / 50.0), 40));
    assertEquals(ROWS, levels.length, 2);
    assertNormal(levels, 150, 5);
    // The standard error of a correlation of neighbours is 0.007.
    double together = 0;
    for (int i = 1; i < levels.length; i++) {
      together += (levels[i] - 150) * (levels[i - 1] - 150) / 25;
    }
    assertEquals(0, together / levels.length, 0.025);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.08, 0.2})
  void jitterIsNormal(double jitter) {
    LightSensor sensor = Watched.plain(50, 0.001).with("jitter", jitter);
    LightCurve curve = Watched.curve(sensor, Watched.lamp(ROWS / 50.0), 41);
    double[] gaps = new double[curve.size() - 1];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = curve.seconds(i + 1) - curve.seconds(i);
    }
    assertEquals(ROWS, gaps.length, 5 * jitter * Math.sqrt(ROWS));
    assertNormal(gaps, 0.02, 0.02 * jitter);
  }

  private static void assertNormal(double[] values, double mean, double deviation) {
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(values, NormalDistribution.of(mean, deviation)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
    // Three standard errors of a standard deviation.
    assertEquals(deviation, Watched.deviation(values), 0.015 * deviation);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.001", "0.01", "0.1", "1", "0.25", "5", "50"})
  void levelsAreMultiplesOfTheStep(String step) {
    LightSensor sensor =
        Watched.plain(50, 0.01).with("noise-lux", 20).with("step-lux", Double.parseDouble(step));
    LightCurve curve = Watched.curve(sensor, Watched.lamp(60), 42);
    BigDecimal unit = new BigDecimal(step);
    for (int i = 0; i < curve.size(); i++) {
      // As it is written: the nearest number of few decimals is the multiple itself.
      BigDecimal level = new BigDecimal(Double.toString(curve.level(i)));
      assertEquals(0, level.remainder(unit).signum(), level + " in steps of " + step);
    }
  }

  /** Sheppard's correction: rounding to h adds a variance of h^2 / 12. */
  @Test
  void roundingAddsATwelfth() {
    LightSensor sensor = Watched.plain(50, 0.01).with("noise-lux", 1).with("step-lux", 1);
    double[] levels = Watched.levels(Watched.curve(sensor, Watched.lamp(ROWS / 50.0), 43));
    assertEquals(Math.sqrt(1 + 1 / 12.0), Watched.deviation(levels), 0.016);
  }

  @Test
  void levelsAreNeverNegative() {
    LightSensor sensor = Watched.plain(50, 0.01).with("room-lux", 1).with("noise-lux", 10);
    double[] levels = Watched.levels(Watched.curve(sensor, Watched.lamp(60), 44));
    int dark = 0;
    for (double level : levels) {
      assertTrue(level >= 0 && 1 / level > 0, "level " + level);
      dark += level == 0 ? 1 : 0;
    }
    // The normal distribution below a tenth under its mean: 46 %; standard error 0.9 points.
    assertEquals(0.46, dark / (double) levels.length, 0.03);
  }

  @Test
  void fullScaleClips() {
    LightSensor sensor = Watched.plain(50, 0.01).with("full-scale-lux", 160);
    Shown shown = Watched.lamp(20, 5, 6, 10, 10.2);
    Labelled labelled = sensor.observe(shown, Chance.of(45));
    LightCurve curve = (LightCurve) labelled.recording();
    for (int i = 0; i < curve.size(); i++) {
      double at = curve.seconds(i);
      if (at > 5.01 && at < 6 || at > 10.01 && at < 10.2) {
        assertEquals(160, curve.level(i));
      } else {
        assertTrue(curve.level(i) <= 160);
      }
    }
    assertEquals(0, labelled.truth().missed().size());
    Labelled saturated = sensor.with("room-lux", 170).observe(shown, Chance.of(45));
    for (double level : Watched.levels((LightCurve) saturated.recording())) {
      assertEquals(160, level);
    }
    assertEquals(shown.blinks(), saturated.truth().missed());
  }
}

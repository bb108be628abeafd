package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import lampwise.light.LightCurve;
import org.apache.commons.statistics.distribution.UniformContinuousDistribution;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Mains flicker in the rows, against the sampling theorem and the mean of a sine. */
class FlickerTest {
  /**
   * A frequency f sampled at fs shows at |f - fs round(f/fs)| (Shannon, Communication in the
   * presence of noise, 1949, and any text on sampling). Columns: rows a second, flicker, and where
   * it shows, all in Hz.
   */
  @ParameterizedTest
  @CsvSource({
    "5,      100,   0",
    "5,      120,   0",
    "5,      100.1, 0.10",
    "5,      120.1, 0.10",
    "10,     100,   0",
    "10,     120,   0",
    "10,     100.1, 0.10",
    "10,     120.1, 0.10",
    "20,     100,   0",
    "20,     120,   0",
    "20,     100.1, 0.10",
    "20,     120.1, 0.10",
    "5.5555555556, 100,   0",
    "5.5555555556, 120,   2.22",
    "5.5555555556, 100.1, 0.10",
    "5.5555555556, 120.1, 2.12",
    "12.5,   100,   0",
    "12.5,   120,   5.0",
    "12.5,   100.1, 0.10",
    "12.5,   120.1, 4.90",
    "25,     100,   0",
    "25,     120,   5.0",
    "25,     100.1, 0.10",
    "25,     120.1, 4.90",
    "29.97,  100,   10.09",
    "29.97,  120,   0.12",
    "29.97,  100.1, 10.19",
    "29.97,  120.1, 0.22",
    "30,     100,   10.0",
    "30,     120,   0",
    "30,     100.1, 10.1",
    "30,     120.1, 0.1",
    "50,     100,   0",
    "50,     120,   20",
    "50,     100.1, 0.1",
    "50,     120.1, 20.1",
    "59.94,  100,   19.88",
    "59.94,  120,   0.12",
    "59.94,  100.1, 19.78",
    "59.94,  120.1, 0.22",
  })
  void samplingAliases(double rate, double flicker, double shown) {
    double[] levels = levels(Watched.plain(rate, 0.0005), flicker, 200, 60, 300);
    if (shown == 0) {
      assertEquals(0, Watched.deviation(levels), 0.002);
    } else {
      assertEquals(60 / Math.sqrt(2), Watched.deviation(levels), 1.5);
      assertEquals(shown, frequency(levels, rate), 0.006);
      assertEquals(
          Math.abs(flicker - rate * Math.rint(flicker / rate)), frequency(levels, rate), 0.003);
    }
  }

  private static double[] levels(
      LightSensor sensor, double flicker, double room, double amplitude, double seconds) {
    LightSensor under =
        sensor
            .with("flicker-hz", flicker)
            .with("flicker-off-hz", 0)
            .with("flicker-lux", amplitude)
            .with("room-lux", room);
    return Watched.levels(Watched.curve(under, Watched.lamp(seconds), 8));
  }

  /** From the first to the last crossing of the mean, with their number. */
  private static double frequency(double[] levels, double rate) {
    double first = Double.NaN;
    double last = Double.NaN;
    int crossings = 0;
    for (int i = 1; i < levels.length; i++) {
      double a = levels[i - 1] - 200;
      double b = levels[i] - 200;
      if (a < 0 != b < 0) {
        last = i - b / (b - a);
        first = crossings == 0 ? last : first;
        crossings++;
      }
    }
    return (crossings - 1) / 2.0 * rate / (last - first);
  }

  /**
   * Averaging over T leaves |sin(pi f T) / (pi f T)| of a sine (its integral). Columns: T in ms,
   * what is left of 100 Hz and of 120 Hz.
   */
  @ParameterizedTest
  @CsvSource({
    "13.7, 0.21,  0.17",
    "24,   0.13,  0.04",
    "50,   0,     0",
    "100,  0,     0",
    "105,  0.030, 0.024",
    "120,  0,     0.021",
    "150,  0,     0",
    "180,  0,     0.014",
    "200,  0,     0",
    "402,  0.005, 0.005",
    "800,  0,     0",
  })
  void averagingWeakens(double milliseconds, double of100, double of120) {
    assertEquals(of100, left(100, milliseconds / 1000), of100 > 0.1 ? 0.006 : 0.0007);
    assertEquals(of120, left(120, milliseconds / 1000), of120 > 0.035 ? 0.006 : 0.0007);
  }

  private static double left(double hz, double averaging) {
    // A period that is no multiple of the flicker's, so that rows see every phase.
    double[] levels =
        levels(Watched.plain(1 / (averaging + 0.00317), averaging), hz, 200, 100, 600);
    double most = Arrays.stream(levels).max().orElseThrow();
    double least = Arrays.stream(levels).min().orElseThrow();
    double found = (most - least) / 200;
    double angle = Math.PI * hz * averaging;
    assertEquals(Math.abs(Math.sin(angle) / angle), found, 0.002);
    return found;
  }

  /** The examples worked out from the same formula: 200 lux, 30 % flicker, amplitude 60 lux. */
  @Test
  void anExampleInLux() {
    assertEquals(1.8, 60 * left(100, 0.105), 0.05);
    assertEquals(13, 60 * left(100, 0.0137), 0.5);
  }

  /** 1,000 recordings: Kolmogorov-Smirnov sees a distance of 0.06 with 99 % certainty. */
  @Test
  void theFrequencyIsOffByUpToTheSetting() {
    double[] off = new double[1000];
    LightSensor sensor =
        Watched.plain(20, 0.0005)
            .with("flicker-hz", 105)
            .with("flicker-off-hz", 0.5)
            .with("flicker-lux", 60)
            .with("room-lux", 200);
    for (int i = 0; i < off.length; i++) {
      LightCurve curve = Watched.curve(sensor, Watched.lamp(100), i);
      // 105 Hz shows at 5 Hz, turned over or not.
      off[i] = frequency(Watched.levels(curve), 20) - 5;
    }
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(off, UniformContinuousDistribution.of(-0.5, 0.5)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
  }
}

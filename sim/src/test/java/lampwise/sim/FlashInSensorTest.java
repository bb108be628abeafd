package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import org.apache.commons.statistics.distribution.UniformContinuousDistribution;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What averaging and dead time make of a flash, against elementary geometry: a flash of length f at
 * a random phase of averaging times T that follow one another after idle times D. The closed forms
 * are worked out by hand from the overlap of two stretches; the table was worked out apart from
 * this project's code, from 200,000 random phases for each of its cells.
 *
 * <p>Seeds are fixed. 20,000 flashes a case: a mean share is within 0.006 and a chance within 0.011
 * at three standard errors.
 */
class FlashInSensorTest {
  private static final int FLASHES = 20_000;
  private static final double LUX = 1000;

  /** The share of the lamp's light in the brightest row of each flash. */
  private record Peaks(double[] shares, double split, double missed) {
    double mean() {
      return Watched.mean(shares);
    }

    double least() {
      return Arrays.stream(shares).min().orElseThrow();
    }

    double below(double share) {
      return Arrays.stream(shares).filter(peak -> peak < share).count() / (double) shares.length;
    }
  }

  /** Rows as fast as the sensor converts, or a little faster if it idles between. */
  private static Peaks peaks(double flash, double averaging, double dead) {
    double cycle = averaging + dead;
    LightSensor sensor =
        Watched.plain((dead > 0 ? 1.07 : 1) / cycle, averaging)
            .with("dead-s", dead)
            .with("room-lux", 0)
            .with("lamp-lux", LUX);
    double every = 4 * cycle + flash;
    List<Blink> blinks = Watched.flashes(FLASHES, flash, every, cycle, Chance.of(20));
    Labelled labelled = sensor.observe(Watched.lamp(every * (FLASHES + 3), blinks), Chance.of(21));
    LightCurve curve = (LightCurve) labelled.recording();
    double[] shares = new double[FLASHES];
    int[] rows = new int[FLASHES];
    for (int i = 0; i < curve.size(); i++) {
      double share = curve.level(i) / LUX;
      int flashAt = (int) ((curve.seconds(i) - averaging) / every) - 1;
      if (share > 0) {
        // The row belongs to the last flash that began before its averaging ended.
        int index = Math.min(FLASHES - 1, Math.max(0, flashAt));
        while (index + 1 < FLASHES && blinks.get(index + 1).onSeconds() < curve.seconds(i)) {
          index++;
        }
        shares[index] = Math.max(shares[index], share);
        rows[index]++;
      }
    }
    double split = Arrays.stream(rows).filter(count -> count > 1).count() / (double) FLASHES;
    return new Peaks(shares, split, labelled.truth().missed().size() / (double) FLASHES);
  }

  @ParameterizedTest
  @CsvSource({"0.02, 0.05", "0.02, 0.1", "0.05, 0.1", "0.1, 0.1", "0.09, 0.15", "0.09, 0.4"})
  void peakShareWithoutDeadTime(double f, double t) {
    Peaks peaks = peaks(f, t, 0);
    assertEquals(f / t * (1 - f / (4 * t)), peaks.mean(), 0.006, "mean");
    assertEquals(f / (2 * t), peaks.least(), 0.002, "least");
    assertEquals(f / t, peaks.split(), 0.011, "chance of being split over two rows");
    assertEquals(0, peaks.missed(), "missed");
  }

  @ParameterizedTest
  @CsvSource({
    "0.02, 0.1, 0.08",
    "0.05, 0.1, 0.08",
    "0.02, 0.1, 0.1",
    "0.05, 0.1, 0.1",
    "0.02, 0.01, 0.0233",
    "0.1, 0.1, 0.1",
    "0.09, 0.1, 0.4",
  })
  void missedInDeadTime(double f, double t, double d) {
    assertEquals((d - f) / (t + d), peaks(f, t, d).missed(), 0.011);
  }

  /** T, D and f in ms; of the light's share in the brightest row mean, least, share below 2 %. */
  @ParameterizedTest
  @CsvSource({
    " 50,   0,     20, 0.36, 0.20, 0",
    " 50,   0,     50, 0.75, 0.50, 0",
    " 50,   0,    100, 1.00, 1.00, 0",
    " 50,   0,    200, 1.00, 1.00, 0",
    "100,   0,     20, 0.19, 0.10, 0",
    "100,   0,     50, 0.44, 0.25, 0",
    "100,   0,    100, 0.75, 0.50, 0",
    "100,   0,    200, 1.00, 1.00, 0",
    "100,  80,     20, 0.11, 0.00, 0.36",
    "100,  80,     50, 0.28, 0.00, 0.19",
    "100,  80,    100, 0.55, 0.10, 0",
    "100,  80,    200, 0.91, 0.60, 0",
    "100, 100,     20, 0.10, 0.00, 0.42",
    "100, 100,     50, 0.25, 0.00, 0.27",
    "100, 100,    100, 0.50, 0.00, 0.02",
    "100, 100,    200, 0.87, 0.50, 0",
    "180,   0,     20, 0.11, 0.06, 0",
    "180,   0,     50, 0.26, 0.14, 0",
    "180,   0,    100, 0.48, 0.28, 0",
    "180,   0,    200, 0.80, 0.56, 0",
    "400,   0,     20, 0.05, 0.03, 0",
    "400,   0,     50, 0.12, 0.06, 0",
    "400,   0,    100, 0.23, 0.13, 0",
    "400,   0,    200, 0.44, 0.25, 0",
    "33.3,  0,     20, 0.51, 0.30, 0",
    "33.3,  0,     50, 0.94, 0.75, 0",
    "33.3,  0,    100, 1.00, 1.00, 0",
    "33.3,  0,    200, 1.00, 1.00, 0",
    "10,   23.3,   20, 0.60, 0.00, 0.11",
    "10,   23.3,   50, 1.00, 1.00, 0",
    "10,   23.3,  100, 1.00, 1.00, 0",
    "10,   23.3,  200, 1.00, 1.00, 0",
  })
  void theTableOfFlashes(
      double t, double d, double f, double mean, double least, double belowTwoPercent) {
    Peaks peaks = peaks(f / 1000, t / 1000, d / 1000);
    // The table has two decimals.
    assertEquals(mean, peaks.mean(), 0.011, "mean");
    assertEquals(least, peaks.least(), 0.011, "least");
    assertEquals(belowTwoPercent, peaks.below(0.02), 0.016, "missed");
  }

  /**
   * The first row that shows an edge comes late by a time uniform over one period P, so that onsets
   * deviate by P/sqrt(12) and intervals by P/sqrt(6): 33 ms by 14, 100 by 41, 180 by 73, 500 by 204
   * ms. (Variance of the uniform distribution; two independent ones in an interval.) A deviation
   * from 20,000 is within 2 % at three standard errors; the Kolmogorov-Smirnov test sees a distance
   * of 0.014 with 99 % certainty at that size.
   */
  @ParameterizedTest
  @CsvSource({"0.0333, 0.014", "0.1, 0.041", "0.18, 0.073", "0.5, 0.204"})
  void timesOfSampledEdges(double period, double deviationOfIntervals) {
    double[] late = lateness(Watched.plain(1 / period, 0.0001), period);
    assertEquals(period / Math.sqrt(12), Watched.deviation(late), 0.02 * period / Math.sqrt(12));
    double[] intervals = new double[late.length - 1];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = late[i + 1] - late[i];
    }
    double expected = period / Math.sqrt(6);
    assertEquals(expected, Watched.deviation(intervals), 0.02 * expected);
    assertEquals(deviationOfIntervals, Watched.deviation(intervals), 0.02 * expected + 0.0005);
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(late, UniformContinuousDistribution.of(0, period)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
  }

  private static double[] lateness(LightSensor sensor, double period) {
    double every = 6 * period;
    List<Blink> blinks = Watched.flashes(FLASHES, 2.5 * period, every, period, Chance.of(30));
    LightCurve curve = Watched.curve(sensor, Watched.lamp(every * (FLASHES + 3), blinks), 31);
    double[] late = new double[FLASHES];
    int next = 0;
    for (int i = 1; i < curve.size() && next < FLASHES; i++) {
      if (curve.level(i - 1) == 150 && curve.level(i) > 150) {
        late[next] = curve.seconds(i) - blinks.get(next).onSeconds();
        next++;
      }
    }
    assertEquals(FLASHES, next);
    return late;
  }

  /**
   * A phone's log that wrote the newest value every 100 ms (measured, 26 min): runs of equal values
   * were two rows long 1,790 times and one row 455 times, hence a sensor of 180 ms.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void rowsFasterThanTheSensorRepeatItsValue(long seed) {
    LightSensor sensor =
        Watched.plain(10, 0.1)
            .with("dead-s", 0.08)
            .with("room-lux", 10_000)
            .with("noise-lux", 1000);
    LightCurve curve = Watched.curve(sensor, Watched.lamp(26 * 60), seed);
    int[] runs = new int[3];
    int run = 1;
    for (int i = 1; i < curve.size(); i++) {
      if (curve.level(i) == curve.level(i - 1)) {
        run++;
      } else {
        // Two values of a thousandth of a lux are alike once in three million.
        runs[run]++;
        run = 1;
      }
    }
    int all = runs[1] + runs[2];
    assertEquals(455 / 2245.0, runs[1] / (double) all, 0.01);
    assertEquals(0.18, curve.size() * 0.1 / all, 0.001);
  }

  /**
   * The sensor's pace has nothing to do with the window: a lamp that comes on at 5 s is first seen
   * at any phase, at an own pace too. 2,000 recordings: Kolmogorov-Smirnov sees a distance of 0.045
   * with 99 % certainty.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.199})
  void anyPhaseIsAsLikely(double dead) {
    // Rows come so fast after a conversion of 1 ms that its own time is seen.
    double rate = dead > 0 ? 1000 : 5;
    LightSensor sensor = Watched.plain(rate, 0.001).with("dead-s", dead);
    double[] first = new double[2000];
    for (int seed = 0; seed < first.length; seed++) {
      LightCurve curve = Watched.curve(sensor, Watched.lamp(6, 5, 5.9), seed);
      int row = 0;
      while (curve.level(row) == 150) {
        row++;
      }
      first[seed] = curve.seconds(row);
    }
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(first, UniformContinuousDistribution.of(5, 5.2)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
  }
}

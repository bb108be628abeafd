package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.apache.commons.statistics.distribution.UniformContinuousDistribution;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Drift, shadows, hands and the switch of the room's light. Seeds are fixed. */
class SensorRoomTest {
  /**
   * The change over 90 s of 4,000 recordings; three standard errors of its deviation are 3.4 %, and
   * Kolmogorov-Smirnov sees a distance of 0.03 with 99 % certainty.
   */
  @ParameterizedTest
  @ValueSource(doubles = {3, 30})
  void driftIn90Seconds(double drift) {
    LightSensor sensor = Watched.plain(1, 0.01).with("room-lux", 1000).with("drift-lux", drift);
    double[] change = new double[4000];
    for (int i = 0; i < change.length; i++) {
      double[] levels = Watched.levels(Watched.curve(sensor, Watched.lamp(95), i));
      change[i] = levels[90] - levels[0];
    }
    assertEquals(drift, Watched.deviation(change), 0.034 * drift);
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(change, NormalDistribution.of(0, drift)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
  }

  @Test
  void driftIsSmoothAndStays() {
    LightSensor sensor = Watched.plain(1, 0.01).with("room-lux", 1000).with("drift-lux", 10);
    double[] all = new double[40];
    for (int seed = 0; seed < all.length; seed++) {
      double[] levels = Watched.levels(Watched.curve(sensor, Watched.lamp(86_400), seed));
      for (int i = 1; i < levels.length; i++) {
        // Five deviations of the slope; the fastest sine has 75 s.
        assertEquals(levels[i - 1], levels[i], 2);
      }
      all[seed] = levels[levels.length - 1] - 1000;
    }
    // A day later it is no farther off: 9.6 lux, standard error 11 %.
    assertEquals(9.6, Watched.deviation(all), 3.2);
  }

  /**
   * Counts in 90 s of 4,000 recordings, by chi-square against Poisson: a mean 10 % off is seen with
   * more than 99 % certainty.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1, 3})
  void shadowsComeAtRandom(double mean) {
    LightSensor sensor = Watched.plain(2, 0.01).with("shadows", mean);
    assertPoisson(sensor, mean);
  }

  @Test
  void handsComeAtRandom() {
    assertPoisson(Watched.plain(2, 0.01).with("hands", 2), 2);
  }

  private static void assertPoisson(LightSensor sensor, double mean) {
    int recordings = 4000;
    long[] counts = new long[7];
    for (int seed = 0; seed < recordings; seed++) {
      int count = sensor.observe(Watched.lamp(90), Chance.of(seed)).truth().added().size();
      counts[Math.min(count, counts.length - 1)]++;
    }
    PoissonDistribution poisson = PoissonDistribution.of(mean);
    double[] expected = new double[counts.length];
    for (int i = 0; i < expected.length - 1; i++) {
      expected[i] = recordings * poisson.probability(i);
    }
    expected[expected.length - 1] = recordings * poisson.survivalProbability(expected.length - 2);
    double p = ChiSquareTest.withDefaults().test(expected, counts).getPValue();
    assertTrue(p > 0.001, "p = " + p + ", counts " + Arrays.toString(counts));
  }

  /**
   * Shadows are at work already when the window starts: about 3,000 ends in windows of 10 s, of
   * which Kolmogorov-Smirnov sees a distance of 0.035 with 99 % certainty; shadows that began only
   * with the window would be off by 0.2.
   */
  @Test
  void shadowsEndAtAnyTime() {
    LightSensor sensor = Watched.plain(2, 0.01).with("shadows", 9);
    List<Double> ends = new ArrayList<>();
    for (int seed = 0; seed < 3000; seed++) {
      ends.addAll(sensor.observe(Watched.lamp(10), Chance.of(seed)).truth().added());
    }
    double[] values = ends.stream().mapToDouble(Double::doubleValue).toArray();
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(values, UniformContinuousDistribution.of(0, 10)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
    assertEquals(3000, values.length, 200);
  }

  @Test
  void handsThatMeetHideTheLampOnce() {
    List<Blink> blinks = List.of(new Blink(11, 15), new Blink(15.5, 16.5));
    List<Window> hands =
        List.of(new Window(1, 2), new Window(2, 4), new Window(2.5, 3), new Window(4.5, 5.7));
    LitTime lit = new LitTime(blinks, hands, 10);
    // Left are 4 to 4.5 and 5.7 to 6.5, from the origin at 10.
    assertEquals(2, lit.size());
    assertEquals(0, lit.within(0, 4), 1e-12);
    assertEquals(0.5, lit.within(3.9, 5), 1e-12);
    assertEquals(0.8, lit.within(5, 7), 1e-12);
    assertEquals(1, lit.blink(1));
  }

  /** Ramps whose slopes leave a rest in binary numbers leave none in the level. */
  @Test
  void noRampLeavesASlope() {
    Slopes slopes =
        new Slopes.Builder(100).ramp(0.1, 0.4, -7).ramp(0.2, 0.9, 3.3).ramp(1, 1.7, 1.1).build();
    assertEquals(97.4, slopes.mean(2, 3), 1e-9);
    assertEquals(slopes.mean(4, 5), slopes.mean(1e9, 2e9));
  }

  /** The bench: 0.8 to 4 s, 10 to 40 % of the room; edges of 0.1 to 0.3 s. */
  @Test
  void aShadowsShape() {
    LightSensor sensor = Watched.plain(100, 0.001).with("room-lux", 1000).with("shadows", 1);
    int single = 0;
    double deepest = 0;
    double faintest = 1;
    double longest = 0;
    double shortest = 9;
    for (int seed = 0; seed < 600; seed++) {
      Labelled labelled = sensor.observe(Watched.lamp(60), Chance.of(seed));
      LightCurve curve = (LightCurve) labelled.recording();
      double[] levels = Watched.levels(curve);
      if (labelled.truth().added().size() != 1
          || levels[0] < 1000
          || levels[levels.length - 1] < 1000) {
        continue;
      }
      single++;
      double depth = 1 - Arrays.stream(levels).min().orElseThrow() / 1000;
      double rise = labelled.truth().added().get(0);
      int rows = (int) Arrays.stream(levels).filter(level -> level < 1000).count();
      double edge = 0;
      for (int i = 0; i < levels.length; i++) {
        if (levels[i] < 1000) {
          edge = curve.seconds(i) - rise;
        }
      }
      assertTrue(edge > 0.08 && edge < 0.32, "edge " + edge);
      deepest = Math.max(deepest, depth);
      faintest = Math.min(faintest, depth);
      longest = Math.max(longest, rows / 100.0);
      shortest = Math.min(shortest, rows / 100.0);
    }
    assertTrue(single > 120, "recordings with one shadow: " + single);
    assertEquals(0.4, deepest, 0.02);
    assertEquals(0.1, faintest, 0.02);
    assertEquals(4, longest, 0.15);
    assertEquals(0.8, shortest, 0.15);
    assertTrue(deepest <= 0.4 + 1e-6 && faintest >= 0.1 - 1e-6);
    assertTrue(longest <= 4.011 && shortest >= 0.78);
  }

  @Test
  void aHandHidesTheLamp() {
    LightSensor sensor =
        Watched.plain(50, 0.01).with("hands", 1).with("room-lux", 0).with("lamp-lux", 100);
    int hidden = 0;
    for (int seed = 0; seed < 200; seed++) {
      Labelled labelled = sensor.observe(Watched.lamp(90, 0, 90), Chance.of(seed));
      double[] levels = Watched.levels((LightCurve) labelled.recording());
      hidden += (int) Arrays.stream(levels).filter(level -> level == 0).count();
    }
    // 200 hands of 2.4 s on average: standard error 8 % (their number and their lengths).
    assertEquals(200 * 2.4 * 50, hidden, 0.25 * 200 * 2.4 * 50);
  }

  @Test
  void blinksBehindAHandAreMissed() {
    LightSensor sensor = Watched.plain(50, 0.01).with("hands", 10).with("room-lux", 0);
    List<Blink> blinks = Watched.flashes(80, 0.1, 1, 0.5, Chance.of(3));
    Shown shown = Watched.lamp(90, blinks);
    Labelled labelled = sensor.observe(shown, Chance.of(4));
    LightCurve curve = (LightCurve) labelled.recording();
    for (Blink blink : blinks) {
      boolean bright = false;
      for (int i = 0; i < curve.size(); i++) {
        bright |=
            curve.level(i) > 0
                && curve.seconds(i) > blink.onSeconds()
                && curve.seconds(i) - 0.01 < blink.offSeconds();
      }
      assertEquals(!bright, labelled.truth().missed().contains(blink), blink.toString());
    }
    assertTrue(labelled.truth().missed().size() > 5);
  }

  /** 3,000 recordings: three standard errors are 2.7 points. */
  @Test
  void theRoomsLightIsSwitchedOnce() {
    LightSensor sensor = Watched.plain(10, 0.01).with("room-switch", 0.6).with("room-lux", 1000);
    int on = 0;
    int off = 0;
    for (int seed = 0; seed < 3000; seed++) {
      Labelled labelled = sensor.observe(Watched.lamp(20), Chance.of(seed));
      double[] levels = Watched.levels((LightCurve) labelled.recording());
      double first = levels[0];
      double last = levels[levels.length - 1];
      double left = Math.min(first, last) / 1000;
      for (int i = 1; i < levels.length; i++) {
        assertTrue((levels[i] - levels[i - 1]) * (last - first) >= 0, "more than once");
      }
      if (first < last) {
        on++;
        assertEquals(1, labelled.truth().added().size());
      } else if (last < first) {
        off++;
        assertEquals(List.of(), labelled.truth().added());
      }
      assertTrue(left >= 0.05 - 1e-6, "left " + left);
    }
    assertEquals(0.3, on / 3000.0, 0.027);
    assertEquals(0.3, off / 3000.0, 0.027);
  }

  @Test
  void flickerGoesWithTheRoomsLight() {
    LightSensor sensor =
        Watched.plain(50, 0.0005)
            .with("room-switch", 1)
            .with("room-lux", 1000)
            .with("flicker-lux", 200);
    int switched = 0;
    for (int seed = 0; seed < 50; seed++) {
      double[] levels = Watched.levels(Watched.curve(sensor, Watched.lamp(40), seed));
      double[] start = Arrays.copyOf(levels, 200);
      double[] end = Arrays.copyOfRange(levels, levels.length - 200, levels.length);
      double ratio = Watched.mean(end) / Watched.mean(start);
      boolean steady = steady(start) && steady(end);
      if (steady && (ratio > 2.2 || ratio < 0.45)) {
        switched++;
        assertEquals(ratio, Watched.deviation(end) / Watched.deviation(start), 0.12 * ratio);
      }
    }
    assertTrue(switched > 15, "recordings switched: " + switched);
  }

  /** Whether the light was not switched inside: both halves are alike. */
  private static boolean steady(double[] levels) {
    int half = levels.length / 2;
    double ratio =
        Watched.mean(Arrays.copyOf(levels, half))
            / Watched.mean(Arrays.copyOfRange(levels, half, levels.length));
    return ratio > 0.99 && ratio < 1.01;
  }
}

package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which rows are written: on change, after dropouts, over ranges. */
class SensorRowsTest {
  private static final Shown SHOWN =
      Watched.lamp(120, Watched.flashes(20, 0.3, 5, 1, Chance.of(1)));

  /** Rows of a curve as text, so that two can be compared. */
  private static List<String> rows(LightCurve curve) {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      rows.add(curve.seconds(i) + " " + curve.level(i));
    }
    return rows;
  }

  @Test
  void onChangeLeavesOutOnlyUnchangedRows() {
    LightSensor sensor = LightSensor.meter();
    LightCurve all = Watched.curve(sensor.with("on-change", 0), SHOWN, 50);
    LightCurve some = Watched.curve(sensor, SHOWN, 50);
    List<String> changed = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (i == 0 || all.level(i) != all.level(i - 1)) {
        changed.add(all.seconds(i) + " " + all.level(i));
      }
    }
    assertEquals(changed, rows(some));
    assertTrue(some.size() < all.size(), some.size() + " of " + all.size());
  }

  @Test
  void aLevelThatStaysGivesOneRow() {
    LightSensor sensor = Watched.plain(10, 0.1).with("on-change", 1);
    assertEquals(1, Watched.curve(sensor, Watched.lamp(60), 51).size());
  }

  /**
   * A platform's driver that reports a change of a quarter at least: the same lamp shows in the
   * dark and not in bright surroundings.
   */
  @Test
  void aRelativeThresholdHidesTheLampInABrightRoom() {
    LightSensor sensor = Watched.plain(10, 0.1).with("on-change", 1).with("change-threshold", 0.25);
    Labelled bright = sensor.observe(SHOWN, Chance.of(52));
    assertEquals(1, ((LightCurve) bright.recording()).size());
    assertEquals(SHOWN.blinks(), bright.truth().missed());
    Labelled dim = sensor.with("room-lux", 20).observe(SHOWN, Chance.of(52));
    assertEquals(List.of(), dim.truth().missed());
    assertEquals(1 + 2 * 20, ((LightCurve) dim.recording()).size(), 20);
  }

  /**
   * A browser's sensor, by the W3C's Ambient Light Sensor: multiples of 50 lux, a change of 25 at
   * least. A lamp of 60 lux over 90 shows as 100 and 150; one of 20 in a dark room as zeros.
   */
  @Test
  void aBrowsersSensor() {
    LightSensor browser =
        Watched.plain(5, 0.05)
            .with("on-change", 1)
            .with("change-lux", 25)
            .with("step-lux", 50)
            .with("lamp-lux", 60)
            .with("room-lux", 90);
    assertEquals(Set.of(100.0, 150.0), levels(browser));
    assertEquals(Set.of(0.0), levels(browser.with("lamp-lux", 20).with("room-lux", 0)));
  }

  private static Set<Double> levels(LightSensor sensor) {
    Set<Double> levels = new TreeSet<>();
    for (double level : Watched.levels(Watched.curve(sensor, SHOWN, 53))) {
      levels.add(level);
    }
    return levels;
  }

  @Test
  void aChangeMustReachTheLeast() {
    LightSensor sensor =
        LightSensor.fast().with("on-change", 1).with("change-lux", 1.5).with("noise-lux", 1);
    LightCurve curve = Watched.curve(sensor, SHOWN, 54);
    for (int i = 1; i < curve.size(); i++) {
      assertTrue(Math.abs(curve.level(i) - curve.level(i - 1)) >= 1.5);
    }
    assertTrue(curve.size() > 100, "rows: " + curve.size());
  }

  /** 6,000 rows: three standard errors are 2 points. */
  @Test
  void dropoutLosesRows() {
    LightCurve all = Watched.curve(LightSensor.fast(), SHOWN, 55);
    LightCurve some = Watched.curve(LightSensor.fast().with("dropout", 0.3), SHOWN, 55);
    assertEquals(0.7, some.size() / (double) all.size(), 0.02);
    assertTrue(rows(all).containsAll(rows(some)));
    LightSensor own = Watched.plain(10, 0.1).with("dead-s", 0.1);
    assertEquals(
        0.7, Watched.curve(own.with("dropout", 0.3), Watched.lamp(600), 55).size() / 6000.0, 0.02);
  }

  /**
   * Ranges that double from 100 lux: a jump to 1,000 throws away the values at 100, 200, 400 and
   * 800 and is first seen at 1,600; a full scale between ends the search earlier.
   */
  @ParameterizedTest
  @CsvSource({"1000, 0, 4", "150, 0, 1", "90, 0, 0", "1000, 400, 2"})
  void aJumpOverTheRangeLosesRows(double lamp, double fullScale, int lost) {
    LightSensor sensor =
        Watched.plain(10, 0.01)
            .with("room-lux", 5)
            .with("lamp-lux", lamp)
            .with("full-scale-lux", fullScale)
            .with("auto-range-lux", 100);
    LightCurve curve = Watched.curve(sensor, Watched.lamp(20, 10, 12), 56);
    double longest = 0;
    for (int i = 1; i < curve.size(); i++) {
      longest = Math.max(longest, curve.seconds(i) - curve.seconds(i - 1));
    }
    assertEquals((lost + 1) * 0.1, longest, 1e-5);
  }

  @Test
  void aFlashThatEndsWhileTheRangeIsSoughtIsMissed() {
    LightSensor sensor =
        Watched.plain(10, 0.01)
            .with("room-lux", 5)
            .with("lamp-lux", 1000)
            .with("auto-range-lux", 100);
    Shown shown = Watched.lamp(20, 5, 5.3, 10, 12);
    assertEquals(List.of(new Blink(5, 5.3)), sensor.observe(shown, Chance.of(57)).truth().missed());
  }

  @Test
  void atAnOwnPaceTheLastValueIsRepeatedWhileTheRangeIsSought() {
    LightSensor sensor =
        Watched.plain(20, 0.1)
            .with("room-lux", 5)
            .with("lamp-lux", 1000)
            .with("auto-range-lux", 100);
    LightCurve curve = Watched.curve(sensor, Watched.lamp(20, 10, 12), 58);
    double first = Double.NaN;
    for (int i = 1; i < curve.size(); i++) {
      assertEquals(0.05, curve.seconds(i) - curve.seconds(i - 1), 1e-5);
      if (Double.isNaN(first) && curve.level(i) > 5) {
        first = curve.seconds(i);
      }
    }
    // The conversion that the flash begins in may fit one of the lower ranges.
    assertTrue(first > 10.3 && first < 10.66, "first seen at " + first);
  }

  @Test
  void theRangeComesDownStepByStep() {
    LightSensor sensor =
        Watched.plain(10, 0.01)
            .with("room-lux", 5)
            .with("lamp-lux", 1000)
            .with("auto-range-lux", 100);
    // Dark for two rows, the range is down by two steps of four; for ten, by all.
    assertEquals(2, lostAtSecond(sensor, 0.2));
    assertEquals(4, lostAtSecond(sensor, 1));
  }

  private static int lostAtSecond(LightSensor sensor, double pause) {
    LightCurve curve = Watched.curve(sensor, Watched.lamp(20, 5.0, 7.0, 7 + pause, 9 + pause), 59);
    int lost = 0;
    for (int i = 1; i < curve.size(); i++) {
      double gap = curve.seconds(i) - curve.seconds(i - 1);
      if (curve.seconds(i) > 6.5 && gap > 0.11) {
        lost = (int) Math.rint(gap / 0.1) - 1;
      }
    }
    return lost;
  }
}

package lampwise.file;

import static lampwise.file.Readings.said;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import lampwise.Testdata;
import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** The files of testdata/recordings; their README gives the truth. */
class RecordingFilesTest {
  private static final double[] TAPS = {
    0.3, 3.5, 6.5, 9.7, 12.8, 15.8, 19.0, 22.0, 25.2, 28.3, 31.2, 34.5, 37.6, 40.7, 43.8, 47.0,
    50.0, 53.2, 56.1, 59.2
  };

  @Test
  void readsTaps() throws Exception {
    BlinkLog log = log("cells-low-taps.txt", said().to("60"));
    assertArrayEquals(TAPS, Readings.starts(log));
    assertEquals(Optional.of(new Window(0, 60)), log.window());
  }

  @Test
  void readsClockTimes() throws Exception {
    double[] fromFirst = TAPS.clone();
    for (int i = 0; i < fromFirst.length; i++) {
      fromFirst[i] -= TAPS[0];
    }
    BlinkLog log =
        log("cells-low-clock.txt", said().from("23:59:40").to("00:00:40").targets("none"));
    assertArrayEquals(fromFirst, Readings.starts(log), 1e-9);
    assertEquals(Optional.of(new Window(-0.3, 59.7)), log.window());
  }

  @Test
  void readsPairsAndGaps() throws Exception {
    BlinkLog pairs = log("cells-low-on-off.txt", said());
    assertEquals(10, pairs.blinks().size());
    for (int i = 0; i < 10; i++) {
      assertEquals(1.2 + 3.07 * i, pairs.blinks().get(i).onSeconds(), 1e-9);
      assertEquals(1.31 + 3.07 * i, pairs.blinks().get(i).offSeconds(), 1e-9);
    }
    double[] gaps = Readings.starts(log("window-covered-gaps.txt", said()));
    assertEquals(12, gaps.length);
    for (int i = 0; i < 12; i++) {
      assertEquals(2 + 10.3 * (i / 3) + 0.27 * (i % 3), gaps[i], 0.2);
    }
  }

  @Test
  void readsMeterFiles() throws Exception {
    LightCurve seconds = curve("cells-low-meter.csv");
    assertEquals(1200, seconds.size());
    assertEquals(Optional.of(new Window(0.05, 60)), seconds.window());
    assertBlinks(seconds, 1.7, 3.162, 0.1, 0.05, 49);

    LightCurve millis = curve("cells-low-meter-ms.csv");
    assertEquals(300, millis.size());
    assertBlinks(millis, 1.7, 3.1, 0.11, 0.104, 30);

    LightCurve micros = curve("window-covered-meter-us.csv");
    assertEquals(1250, micros.size());
    assertEquals(2, micros.seconds(0), 0.001);
  }

  /**
   * Wherever the level is high, a blink of the truth is on in the time that the sample averages.
   */
  private static void assertBlinks(
      LightCurve curve, double start, double period, double length, double sample, double high) {
    int lit = 0;
    for (int i = 0; i < curve.size(); i++) {
      if (curve.level(i) > high) {
        lit++;
        double phase = (curve.seconds(i) - start) % period;
        assertTrue(phase > 0 && phase < length + sample, "a high level at " + curve.seconds(i));
      }
    }
    assertTrue(lit >= (curve.seconds(curve.size() - 1) - start) / period, lit + " high levels");
  }

  private static BlinkLog log(String file, Readings.Said said) throws Exception {
    return assertInstanceOf(
        BlinkLog.class, Readings.read(Testdata.bytes("recordings", file), said));
  }

  private static LightCurve curve(String file) throws Exception {
    return assertInstanceOf(
        LightCurve.class, Readings.read(Testdata.bytes("recordings", file), said()));
  }
}

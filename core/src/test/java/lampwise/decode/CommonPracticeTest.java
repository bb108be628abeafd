package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rhythms that lamps of such units commonly show. Common practice, no source. */
class CommonPracticeTest {
  private static final CodeSheet SHEET =
      Sheets.of(
          0.1,
          "every-5",
          "1 blink every 5 s",
          "every-30",
          "1 blink every 30 s",
          "run",
          "2 to 3 blinks per second",
          "three-two",
          "3 blinks then 2 blinks",
          "none",
          "dark");

  @ParameterizedTest
  @CsvSource({
    "every-5, 5, 60",
    "every-30, 30, 150",
    "run, 0.5, 20",
    "run, 0.4, 20",
    "run, 0.34, 20"
  })
  void singleBlinksAreToldApartByStarts(String state, double period, double seconds) {
    for (int seed = 0; seed < 5; seed++) {
      Answers.assertDecoded(
          state, Answers.decode(SHEET, single(period, seed).window(seconds).starts()));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "every-5, 5, 60",
    "every-30, 30, 150",
    "run, 0.5, 20",
    "run, 0.4, 20",
    "run, 0.34, 20"
  })
  void singleBlinksAreToldApartByStartsAndEnds(String state, double period, double seconds) {
    for (int seed = 0; seed < 5; seed++) {
      Answers.assertDecoded(
          state, Answers.decode(SHEET, single(period, seed).window(seconds).onAndOff()));
    }
  }

  private static CleanRecordings single(double period, int seed) {
    return CleanRecordings.blinks(0.1, period, 0).drawn(new SplittableRandom(seed), 0.02);
  }

  /** Three single blinks a second apart, a pause, two quick ones, a long pause. */
  private static CleanRecordings threeThenTwo() {
    return CleanRecordings.blinks(0.1, 9, 0, 1, 2, 4, 4.3);
  }

  @Test
  void threeSinglesAndAQuickDoubleAreDecoded() {
    for (int seed = 0; seed < 5; seed++) {
      CleanRecordings lamp = threeThenTwo().drawn(new SplittableRandom(seed), 0.05).cycles(5);
      Answers.assertDecoded("three-two", Answers.decode(SHEET, lamp.starts()));
    }
  }

  @Test
  void threeSinglesAndAQuickDoubleAreObservedAsTwoGroups() {
    for (int seed = 0; seed < 5; seed++) {
      CleanRecordings lamp = threeThenTwo().drawn(new SplittableRandom(seed), 0.05).cycles(5);
      Rhythm observed = new LampDecoder().observe(lamp.starts()).observed().orElseThrow();
      assertEquals("3 2 ", groups(observed), observed.toString());
      assertEquals(9 * lamp.clock(), Answers.cycleSeconds(observed), 0.1, observed.toString());
    }
  }

  private static String groups(Rhythm rhythm) {
    StringBuilder counts = new StringBuilder();
    for (Part part : ((Cycle.Parts) ((Rhythm.Blinking) rhythm).cycle()).parts()) {
      if (part instanceof Part.Blinks blinks) {
        assertEquals(blinks.count().min(), blinks.count().max());
        counts.append(blinks.count().min()).append(' ');
      }
    }
    return counts.toString();
  }

  /** Half a minute of darkness cannot be told from a blink twice a minute; three minutes can. */
  @Test
  void aLongPauseNeedsALongLook() {
    Reading brief = Answers.decode(SHEET, BlinkLog.ofStarts(Marks.watched(0, 20)));
    Answers.assertNotDecoded(brief, "20 s");
    assertTrue(Answers.probability(brief, "every-30") > 0.05, () -> Answers.shown(brief));
    Answers.assertDecoded("none", Answers.decode(SHEET, BlinkLog.ofStarts(Marks.watched(0, 180))));
  }
}

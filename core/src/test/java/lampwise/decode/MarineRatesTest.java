package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rates of flashing of marine lights, as blinks per minute.
 *
 * <p>Sources: INT 1 section P10 (Canadian Chart 1, "Light Characters"; seen): quick 50 to 79, very
 * quick 80 to 159, ultra quick from 160. IHO S-57 attribute LITCHR and the S-101 catalogue (seen):
 * quick 50 to below 80, very quick 80 to below 160. IALA E-110, 1998 translation, 2.3 (seen): ultra
 * quick at most 300; edition 4.0 tables 2 and 3 (seen-secondary, a design note that quotes it):
 * quick 60, very quick 120, ultra quick 240 as specified rates, flashing below 50. IHO M-12 A-9
 * (seen): flashing below 50.
 */
@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class MarineRatesTest {
  private static final double DEFAULT_CLOCK = 0.1;
  private static final double[] PHASES = {0, 0.31, 0.77};

  private static CodeSheet sheet(double clock) {
    return Sheets.of(
        clock,
        "flashing",
        "5 to 50 blinks per minute",
        "quick",
        "50 to 80 blinks per minute",
        "very-quick",
        "80 to 160 blinks per minute",
        "ultra-quick",
        "160 to 300 blinks per minute",
        "out",
        "dark");
  }

  /** A lamp with equal light and dark. */
  private static CleanRecordings lamp(double perMinute, double phase, double seconds) {
    double period = 60 / perMinute;
    return CleanRecordings.blinks(period / 2, period, 0).phase(phase).window(seconds);
  }

  /** The specified rates, with the clock of a sheet that says none. */
  @Nested
  class Specified {
    @ParameterizedTest
    @CsvSource({"60, quick", "120, very-quick", "240, ultra-quick", "15, flashing"})
    void areDecodedFromStarts(double perMinute, String state) {
      for (double phase : PHASES) {
        Reading reading = Answers.decode(sheet(DEFAULT_CLOCK), lamp(perMinute, phase, 30).starts());
        Answers.assertDecoded(state, reading, "phase " + phase);
      }
    }

    @ParameterizedTest
    @CsvSource({"60, quick", "120, very-quick", "240, ultra-quick", "15, flashing"})
    void areDecodedFromStartsAndEnds(double perMinute, String state) {
      for (double phase : PHASES) {
        Reading reading =
            Answers.decode(sheet(DEFAULT_CLOCK), lamp(perMinute, phase, 30).onAndOff());
        Answers.assertDecoded(state, reading, "phase " + phase);
      }
    }

    @Test
    void areDecodedInALightCurve() {
      CodeSheet sheet = sheet(DEFAULT_CLOCK);
      Answers.assertDecoded(
          "quick", Answers.decode(sheet, lamp(60, 0.2, 30).curve(50, 150, 20, 1, 5)));
      Answers.assertDecoded(
          "very-quick", Answers.decode(sheet, lamp(120, 0.2, 30).curve(50, 150, 20, 1, 6)));
      Answers.assertDecoded(
          "ultra-quick", Answers.decode(sheet, lamp(240, 0.2, 30).curve(50, 150, 20, 1, 7)));
    }

    @Test
    void aMinuteWithoutABlinkIsNoneOfThem() {
      Answers.assertDecoded(
          "out", Answers.decode(sheet(DEFAULT_CLOCK), BlinkLog.ofStarts(Marks.watched(0, 60))));
    }
  }

  /** A clock without error and two minutes watched: just beside a border is on its side. */
  @Nested
  class Borders {
    @ParameterizedTest
    @CsvSource({
      "49.9, flashing",
      "50.1, quick",
      "79, quick",
      "79.5, quick",
      "79.9, quick",
      "80.1, very-quick",
      "159, very-quick",
      "159.5, very-quick",
      "159.9, very-quick",
      "160.1, ultra-quick",
      "299.5, ultra-quick"
    })
    void besideThem(double perMinute, String state) {
      for (double phase : new double[] {0.05, 0.52}) {
        Answers.assertDecoded(
            state, Answers.decode(sheet(0), lamp(perMinute, phase, 120).starts()), "starts");
      }
    }

    /** A phrase's range has both its borders, so a lamp on the border is of either class. */
    @ParameterizedTest
    @CsvSource({
      "50, flashing, quick",
      "80, quick, very-quick",
      "160, very-quick, ultra-quick",
    })
    void onThem(double perMinute, String below, String above) {
      Reading reading = Answers.decode(sheet(0), lamp(perMinute, 0.3, 120).starts());
      double both = Answers.probability(reading, below) + Answers.probability(reading, above);
      assertTrue(both > 0.95, () -> Answers.shown(reading));
    }

    @Test
    void theHighestRateIsUltraQuick() {
      Reading reading = Answers.decode(sheet(0), lamp(300, 0.3, 120).starts());
      assertEquals("ultra-quick", Answers.top(reading), () -> Answers.shown(reading));
    }

    @ParameterizedTest
    @ValueSource(doubles = {303, 330, 400})
    void aboveItIsNoClass(double perMinute) {
      Reading reading = Answers.decode(sheet(0), lamp(perMinute, 0.3, 120).starts());
      assertNotEquals("decoded", reading.verdict().word(), () -> Answers.shown(reading));
      assertEquals(CodeSheet.UNLISTED, Answers.top(reading), () -> Answers.shown(reading));
    }
  }
}

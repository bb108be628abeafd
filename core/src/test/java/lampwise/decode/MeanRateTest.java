package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lamps whose mean rate of blinks lies in the range of a constant rate, but which blink in bursts:
 * they are not that rate.
 *
 * <p>Sources: FHWA interpretation 4(09)-64 of 2018 (seen, the exact gaps inferred): two flashes of
 * a quarter of a second and one of a second in 3 s are no flasher of 50 to 60 a minute, since the
 * rate must be constant. MUTCD 2003 revision 1, 4K.01 (seen): 50 to 60 a minute, lit half to two
 * thirds of the time. NHTSA interpretation GF006498 (seen): SAE J945 of February 1966 wants 60 to
 * 120 a minute, and a triple burst whose mean is within that is held to be another kind of pattern.
 * Ontario Building Code note A-3.2.4.18.(2) (seen): temporal-three of ISO 8201, a mean of 45 a
 * minute. CiA 303-3 (seen-secondary): double, triple and quadruple flash, means of 75 to 100. UN
 * R48 (seen-secondary): 90 a minute, 30 either way.
 */
class MeanRateTest {
  private static final double NOTED_SD = 0.04;
  private static final double CLOCK = 0.05;
  private static final double LONG_SECONDS = 30;
  private static final int SEEDS = 8;

  private static CodeSheet rates() {
    return Sheets.of(
        CLOCK,
        "slow",
        "24 to 48 blinks per minute",
        "beacon",
        "50 to 60 blinks per minute",
        "indicator",
        "60 to 120 blinks per minute",
        "out",
        "dark");
  }

  /**
   * A lamp that blinks in bursts.
   *
   * @param phases light and dark in turn, milliseconds
   * @param count how many blinks a cycle has
   * @param shortSeconds what is watched at the least; three cycles if they take longer
   */
  record Burst(String name, int count, double shortSeconds, double... phases) {
    CleanRecordings lamp() {
      return CleanRecordings.ofPhases(Arrays.stream(phases).map(ms -> ms / 1000).toArray());
    }

    double perMinute() {
      return 60 * count / lamp().cycleSeconds();
    }

    @Override
    public String toString() {
      return name;
    }
  }

  static List<Burst> bursts() {
    return List.of(
        new Burst("FHWA 4(09)-64", 3, 8, 250, 250, 250, 250, 1000, 1000),
        new Burst("NHTSA triple burst", 3, 8, 200, 250, 200, 250, 200, 850),
        new Burst("ISO 8201 temporal-three", 3, 8, 500, 500, 500, 500, 500, 1500),
        new Burst("CiA 303-3 double flash", 2, 8, 200, 200, 200, 1000),
        new Burst("CiA 303-3 triple flash", 3, 8, 200, 200, 200, 200, 200, 1000),
        new Burst("CiA 303-3 quadruple flash", 4, 8, 200, 200, 200, 200, 200, 200, 200, 1000));
  }

  @ParameterizedTest
  @MethodSource("bursts")
  void theMeanIsThatOfAListedRate(Burst burst) {
    double mean = burst.perMinute();
    assertTrue((mean >= 24 && mean <= 48) || (mean >= 50 && mean <= 120), burst + ": " + mean);
  }

  /** Each rate alone on a sheet, so that no other takes its share. */
  @ParameterizedTest
  @MethodSource("bursts")
  void aShortLogIsNotDecoded(Burst burst) {
    for (LampState rate : rates().states()) {
      CodeSheet alone = Sheets.of(CLOCK, OptionalDouble.empty(), List.of(rate));
      for (int seed = 0; seed < SEEDS; seed++) {
        CleanRecordings lamp = drawn(burst, seed, burst.shortSeconds());
        for (Recording recording : List.of(lamp.starts(), lamp.onAndOff(), tapped(lamp, seed))) {
          Answers.assertNotDecoded(
              Answers.decode(alone, recording), burst + ", " + rate.name() + ", seed " + seed);
        }
      }
    }
  }

  /**
   * The two lamps of FHWA interim approval 21 of 2018 (seen-secondary: 75 sequences a minute, 800
   * ms each, steps of 50 ms; which steps are lit is from memory): as many sequences as a rate of 60
   * to 120 has blinks, and no such rate.
   */
  @Test
  void rapidSequencesAreNotTheirRate() {
    Burst left = new Burst("left", 4, 8, 50, 150, 50, 150, 50, 50, 50, 250);
    Burst right = new Burst("right", 4, 8, 50, 150, 50, 50, 50, 50, 50, 350);
    for (Burst burst : List.of(left, right)) {
      assertEquals(0.8, burst.lamp().cycleSeconds(), 1e-9);
      for (int seed = 0; seed < SEEDS; seed++) {
        CleanRecordings lamp = drawn(burst, seed, 10);
        for (Recording recording :
            List.of(lamp.starts(), lamp.onAndOff(), lamp.curve(100, 150, 20, 1, seed))) {
          Answers.assertNotDecoded(Answers.decode(rates(), recording), burst + ", seed " + seed);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("bursts")
  void aCleanLogIsNoRate(Burst burst) {
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp = drawn(burst, seed, LONG_SECONDS);
      isNoRate(burst, lamp.starts(), "starts, seed " + seed);
      isNoRate(burst, lamp.onAndOff(), "log, seed " + seed);
    }
  }

  @ParameterizedTest
  @MethodSource("bursts")
  void aTappedLogIsNoRate(Burst burst) {
    for (int seed = 0; seed < SEEDS; seed++) {
      isNoRate(burst, tapped(drawn(burst, seed, LONG_SECONDS), seed), "taps, seed " + seed);
    }
  }

  @ParameterizedTest
  @MethodSource("bursts")
  void aLightCurveIsNoRate(Burst burst) {
    for (int seed = 0; seed < SEEDS / 2; seed++) {
      CleanRecordings lamp = drawn(burst, seed, LONG_SECONDS);
      isNoRate(burst, lamp.curve(100, 150, 20, 1, seed), "curve, seed " + seed);
    }
  }

  /** The same sheet takes lamps of a constant rate for what they are. */
  @ParameterizedTest
  @CsvSource({"55, 0.5, beacon", "55, 0.66, beacon", "90, 0.5, indicator", "110, 0.3, indicator"})
  void aConstantRateIsOne(double perMinute, double lit, String state) {
    double period = 60 / perMinute;
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.blinks(lit * period, period, 0)
              .drawn(new SplittableRandom(seed), 0.01)
              .window(20);
      Answers.assertDecoded(state, Answers.decode(rates(), lamp.starts()), "starts");
      Answers.assertDecoded(state, Answers.decode(rates(), lamp.onAndOff()), "log");
      Answers.assertDecoded(state, Answers.decode(rates(), tapped(lamp, seed)), "taps");
    }
  }

  /** Three cycles at the least, and so many seconds. */
  private static CleanRecordings drawn(Burst burst, int seed, double seconds) {
    CleanRecordings lamp = burst.lamp().drawn(new SplittableRandom(seed), 0.02);
    return lamp.window(Math.max(seconds, 3 * lamp.cycleSeconds() * lamp.clock()));
  }

  /** The starts with a Gaussian error each, in hundredths of a second. */
  private static BlinkLog tapped(CleanRecordings lamp, int seed) {
    SplittableRandom random = new SplittableRandom(977L + seed);
    return BlinkLog.ofStarts(
        Marks.watched(0, lamp.windowSeconds()),
        lamp.starts().blinks().stream()
            .mapToDouble(blink -> blink.onSeconds() + NOTED_SD * CleanRecordings.normal(random))
            .map(on -> Math.rint(on * 100) / 100)
            .filter(on -> on >= 0 && on <= lamp.windowSeconds())
            .sorted()
            .distinct()
            .toArray());
  }

  private static void isNoRate(Burst burst, Recording recording, String what) {
    Reading reading = Answers.decode(rates(), recording);
    Answers.assertNotDecoded(reading, burst + ", " + what);
    assertEquals(CodeSheet.UNLISTED, Answers.top(reading), () -> Answers.shown(reading));
    Rhythm observed = reading.observed().orElseThrow(() -> new AssertionError(what));
    assertEquals(burst.count(), perCycle(observed), () -> what + ": " + Answers.shown(reading));
  }

  /** How many blinks a cycle of an observed rhythm has; 1 for a constant rate. */
  private static int perCycle(Rhythm observed) {
    if (observed instanceof Rhythm.Blinking blinking
        && blinking.cycle() instanceof Cycle.Parts cycle) {
      int count = 0;
      for (Part part : cycle.parts()) {
        if (part instanceof Part.Blinks blinks) {
          count += blinks.count().min();
        } else if (part instanceof Part.Lit) {
          count++;
        }
      }
      return count;
    }
    return 1;
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rhythms that the bench sheet does not list, and blinks in no order. */
class UnlistedTest {
  /** How far the measured cycle may lie from the lamp's own, as a fraction. */
  private static final double CYCLE_TOLERANCE = 0.03;

  private static final double SECONDS = 45;
  private static final double CLOCK = 0.05;
  private static final int SEEDS = 6;
  private static final CodeSheet BENCH = Sheets.bench();

  /**
   * Two listed codes, each with one blink missed in every cycle: it takes twelve cycles until that
   * is the poorer account.
   */
  private static final String NEARLY_LISTED =
      "2 blinks 0.45 s apart then dark 1.3 s then 2 blinks 0.45 s apart every 11 s";

  /** A lamp and its phrase. */
  record Lamp(String phrase, CleanRecordings train) {
    @Override
    public String toString() {
      return phrase;
    }
  }

  private static Lamp lamp(String phrase, double cycle, double... starts) {
    return new Lamp(phrase, CleanRecordings.blinks(0.09, cycle, starts));
  }

  static List<Lamp> lamps() {
    return List.of(
        lamp("1 blink every 10 s", 10, 0),
        lamp("1 blink every 1.2 s", 1.2, 0),
        lamp("1 blink every 2.6 s", 2.6, 0),
        lamp("5 blinks 0.6 s apart every 8 s", 8, 0, 0.6, 1.2, 1.8, 2.4),
        lamp("2 blinks 0.3 s apart every 4.5 s", 4.5, 0, 0.3),
        lamp("3 blinks 1.3 s apart every 8 s", 8, 0, 1.3, 2.6),
        lamp(NEARLY_LISTED, 11, 0, 0.45, 1.84, 2.29));
  }

  @ParameterizedTest
  @MethodSource("lamps")
  void areNotDecodedAsAListedState(Lamp lamp) {
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings drawn = drawn(lamp, seed);
      Answers.assertNotDecoded(Answers.decode(BENCH, drawn.starts()), "starts, seed " + seed);
      Answers.assertNotDecoded(Answers.decode(BENCH, drawn.onAndOff()), "ends, seed " + seed);
    }
  }

  @ParameterizedTest
  @MethodSource("lamps")
  void areMeasuredRightWithEnds(Lamp lamp) {
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings drawn = drawn(lamp, seed);
      measuredRight(lamp, drawn, Answers.decode(BENCH, drawn.onAndOff()));
    }
  }

  @ParameterizedTest
  @MethodSource("lamps")
  void areMeasuredRightFromStarts(Lamp lamp) {
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings drawn = drawn(lamp, seed);
      measuredRight(lamp, drawn, Answers.decode(BENCH, drawn.starts()));
    }
  }

  private static void measuredRight(Lamp lamp, CleanRecordings drawn, Reading reading) {
    Rhythm measured = reading.observed().orElseThrow(() -> new AssertionError("nothing measured"));
    assertEquals(measured, Sheets.rhythm(Phrase.print(measured)), () -> Phrase.print(measured));
    double cycle = drawn.cycleSeconds() * drawn.clock();
    assertEquals(
        cycle,
        Answers.cycleSeconds(measured),
        CYCLE_TOLERANCE * cycle,
        () -> Answers.shown(reading));
    assertEquals(
        drawn.onOff().length / 2, pulses(measured), () -> lamp + ": " + Answers.shown(reading));
    if (reading.verdict() instanceof Verdict.Unlisted unlisted) {
      assertEquals(reading.observed(), unlisted.measured());
      assertTrue(!unlisted.nearest().isEmpty(), () -> Answers.shown(reading));
    }
  }

  private static int pulses(Rhythm measured) {
    Rhythm.Blinking blinking = (Rhythm.Blinking) measured;
    return Templates.of(blinking, OptionalDouble.empty(), 0).get(0).perCycle();
  }

  private static CleanRecordings drawn(Lamp lamp, int seed) {
    double seconds = lamp.phrase().equals(NEARLY_LISTED) ? 3 * SECONDS : SECONDS;
    return lamp.train().drawn(new SplittableRandom(40 + seed), CLOCK).window(seconds);
  }

  @ParameterizedTest
  @MethodSource("lamps")
  void becomeAListedStateOnceTheSheetHasThem(Lamp lamp) {
    List<LampState> states = new ArrayList<>(BENCH.states());
    states.add(Sheets.state("new", lamp.phrase(), Seen.ALWAYS));
    CodeSheet sheet = Sheets.of(CLOCK, BENCH.blinkSeconds(), states);
    for (int seed = 0; seed < SEEDS; seed++) {
      Reading reading = Answers.decode(sheet, drawn(lamp, seed).window(90).starts());
      Answers.assertDecoded("new", reading, lamp.phrase() + ", seed " + seed);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1})
  void blinksAtRandomAreNoState(double perSecond) {
    for (long seed = 0; seed < 20; seed++) {
      Reading reading = Answers.decode(BENCH, CleanRecordings.atRandom(perSecond, 60, seed));
      Answers.assertNotDecoded(reading, perSecond + " per second, seed " + seed);
      assertNotEquals("dark", Answers.top(reading), () -> Answers.shown(reading));
    }
  }

  private static double unlisted(double seconds, double... starts) {
    Reading reading = Answers.decode(BENCH, BlinkLog.ofStarts(Marks.watched(0, seconds), starts));
    return Answers.probability(reading, CodeSheet.UNLISTED);
  }

  /** Blinks in this place of a cycle, their errors of this size following no pattern. */
  private static double[] noted(
      double seconds, double first, double cycle, double error, double... on) {
    SplittableRandom random = new SplittableRandom(7);
    return IntStream.range(0, (int) (seconds / cycle) + 1)
        .mapToObj(i -> Arrays.stream(on).map(at -> first + i * cycle + at))
        .flatMapToDouble(starts -> starts)
        .map(start -> start + error * (2 * random.nextDouble() - 1))
        .filter(start -> start > 0 && start < seconds)
        .toArray();
  }

  /** The end of a group of three 1.3 s apart every 8 s, and the beginning of the next one. */
  @Test
  void aGroupThatTheWindowCutsTwiceIsOne() {
    assertTrue(unlisted(10, 0.18, 5.58, 6.88, 8.18) > 0.5);
    assertTrue(unlisted(10, 0.3, 1.61, 7, 8.31, 9.6) > 0.95);
  }

  /** A group in full, and the first blinks of the next one. */
  @Test
  void aCycleThatIsSeenOnceAndALittleMoreIsOne() {
    assertTrue(unlisted(10, 1.1, 1.7, 2.3, 2.9, 3.5, 9.1, 9.7) > 0.95);
  }

  /** As `hurried` sees it: the first of each pair is late, so that its blinks are 0.2 s apart. */
  @Test
  void blinksThatFollowCloselyAreTwo() {
    assertTrue(unlisted(45, noted(45, 1.2, 4.5, 0.08, 0.1, 0.3)) > 0.99);
  }

  @ParameterizedTest
  @CsvSource({"0.17, 8", "0.18, 1", "0.19, 8", "0.2, 10", "0.21, 10", "0.22, 10"})
  void fastBlinksOfWhichSomeAreMissedAreARate(double cycle, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] noted =
        IntStream.range(0, (int) (10 / cycle))
            .mapToDouble(i -> 0.15 + cycle * i)
            .filter(start -> random.nextDouble() > 0.1)
            .map(start -> start + 0.14 * (2 * random.nextDouble() - 1))
            .filter(start -> start > 0 && start < 10)
            .sorted()
            .toArray();
    assertTrue(unlisted(10, noted) > 0.99);
  }

  /** Longer than any cycle that a sheet can say, and three times as long as a listed one. */
  @Test
  void aBlinkEveryMinuteIsNoListedOneOfWhichTwoAreMissed() {
    assertTrue(unlisted(183.6, 60.84, 122.04, 183.24) > 0.9);
  }
}

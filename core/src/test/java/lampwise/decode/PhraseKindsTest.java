package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every way of saying a rhythm is decoded: ranges, counts, rates in words, preludes, once. */
class PhraseKindsTest {
  private static final int SEEDS = 4;

  private static SplittableRandom random(int seed) {
    return new SplittableRandom(900 + seed);
  }

  private static Marks marks(double seconds, double targetFrom, double targetTo) {
    return Marks.watched(0, seconds)
        .withTargets(Targets.during(List.of(new TargetSpan(targetFrom, targetTo))));
  }

  @ParameterizedTest
  @ValueSource(doubles = {25.3, 27.5, 29.7})
  void aRangeOfCycles(double period) {
    CodeSheet sheet =
        Sheets.of(
            0.02,
            "range",
            "1 blink every 25 to 30 s",
            "shorter",
            "1 blink every 20 s",
            "longer",
            "1 blink every 36 s",
            "none",
            "dark");
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.blinks(0.1, period, 0).phase(random(seed).nextDouble()).window(180);
      Answers.assertDecoded("range", Answers.decode(sheet, lamp.starts()), "seed " + seed);
    }
  }

  @ParameterizedTest
  @CsvSource({"1, one", "2, some", "3, some", "4, four"})
  void aRangeOfCounts(int count, String state) {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            "one",
            "1 blink every 7 s",
            "some",
            "2 to 3 blinks 0.4 s apart every 7 s",
            "four",
            "4 blinks 0.4 s apart every 7 s");
    double[] starts = new double[count];
    for (int i = 0; i < count; i++) {
      starts[i] = 0.4 * i;
    }
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.blinks(0.1, 7, starts).drawn(random(seed), 0.05).window(45);
      Answers.assertDecoded(state, Answers.decode(sheet, lamp.starts()), "seed " + seed);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.15, slow",
    "0.5, slow",
    "0.9, slow",
    "1.8, fast",
    "4, fast",
    "8, fast",
    "1.22, unlisted"
  })
  void ratesInWords(double perSecond, String state) {
    CodeSheet sheet = Sheets.of(0.01, "slow", "slow blinks", "fast", "fast blinks", "none", "dark");
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.blinks(0.05, 1 / perSecond, 0)
              .phase(random(seed).nextDouble())
              .window(40);
      Reading reading = Answers.decode(sheet, lamp.starts());
      assertEquals(state, Answers.top(reading), () -> Answers.shown(reading));
      if (!state.equals(CodeSheet.UNLISTED)) {
        Answers.assertDecoded(state, reading, "seed " + seed);
      }
    }
  }

  private static final CodeSheet STARTING =
      Sheets.of(
          0.05,
          OptionalDouble.of(0.1),
          List.of(
              Sheets.state(
                  "starting",
                  "first steady 5 s afterwards 1 blink every 1.8 s",
                  Seen.AFTER_POWER_UP),
              Sheets.state(
                  "waking",
                  "first 6 blinks 0.5 s apart afterwards 1 blink every 1.8 s",
                  Seen.AFTER_POWER_UP),
              Sheets.state("ready", "1 blink every 4 s", Seen.ALWAYS),
              Sheets.state("none", "dark", Seen.ALWAYS)));

  /** Power comes back at 4 s; the lamp answers 0.6 s later. */
  private static Recording afterPowerUp(boolean ends, double... prelude) {
    List<Blink> blinks = new ArrayList<>();
    double time = 4.6;
    for (int i = 0; i < prelude.length; i += 2) {
      blinks.add(blink(time, prelude[i], ends));
      time += prelude[i + 1];
    }
    for (; time < 39; time += 1.8) {
      blinks.add(blink(time, 0.1, ends));
    }
    Marks marks = Marks.watched(0, 40).withEvents(List.of(new Event(Event.Kind.POWER_UP, 4)));
    return new BlinkLog(Origin.named("log"), marks, blinks);
  }

  private static Blink blink(double on, double length, boolean end) {
    return end ? new Blink(on, on + length) : Blink.startingAt(on);
  }

  @Test
  void aPreludeOfSteadyLightAfterPowerUp() {
    Answers.assertDecoded("starting", Answers.decode(STARTING, afterPowerUp(true, 5, 5.1)), "ends");
    Answers.assertDecoded(
        "starting", Answers.decode(STARTING, afterPowerUp(false, 5, 5.1)), "starts");
  }

  @Test
  void aPreludeOfBlinksAfterPowerUp() {
    double[] six = {0.1, 0.5, 0.1, 0.5, 0.1, 0.5, 0.1, 0.5, 0.1, 0.5, 0.1, 0.2};
    Answers.assertDecoded("waking", Answers.decode(STARTING, afterPowerUp(true, six)), "ends");
    Answers.assertDecoded("waking", Answers.decode(STARTING, afterPowerUp(false, six)), "starts");
  }

  @ParameterizedTest
  @CsvSource({"3, 0.47, three", "2, 0.47, two", "5, 0.3, five"})
  void onceAfterATarget(int count, double apart, String state) {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            OptionalDouble.of(0.1),
            List.of(
                Sheets.state("two", "2 blinks 0.47 s apart once", Seen.TARGET),
                Sheets.state("three", "3 blinks 0.47 s apart once", Seen.TARGET),
                Sheets.state("five", "5 blinks 0.3 s apart once", Seen.TARGET),
                Sheets.state("tick", "1 blink every 3 s", Seen.ALWAYS),
                Sheets.state("none", "dark", Seen.ALWAYS)));
    for (double delay : new double[] {0.2, 0.9, 2.4}) {
      double[] starts = new double[3 * count];
      List<TargetSpan> targets = new ArrayList<>();
      for (int show = 0; show < 3; show++) {
        double came = 20 + 30 * show;
        targets.add(new TargetSpan(came, came + 15));
        for (int i = 0; i < count; i++) {
          starts[show * count + i] = came + delay + i * apart;
        }
      }
      double[] first = Arrays.copyOf(starts, count);
      Reading one = Answers.decode(sheet, BlinkLog.ofStarts(marks(45, 20, 35), first));
      assertEquals(state, Answers.top(one), () -> Answers.shown(one));
      assertTrue(Answers.probability(one, CodeSheet.UNLISTED) < 0.05, () -> Answers.shown(one));
      Marks marks = Marks.watched(0, 120).withTargets(Targets.during(targets));
      Reading three = Answers.decode(sheet, BlinkLog.ofStarts(marks, starts));
      Answers.assertDecoded(state, three, "after " + delay + " s");
    }
  }

  @Test
  void steadyOnceAfterATarget() {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            OptionalDouble.of(0.1),
            List.of(
                Sheets.state("brief", "1 blink of 0.5 s once", Seen.TARGET),
                Sheets.state("long", "steady 4 s once", Seen.TARGET),
                Sheets.state("none", "dark", Seen.ALWAYS)));
    BlinkLog log =
        new BlinkLog(Origin.named("log"), marks(60, 20, 35), List.of(new Blink(20.8, 24.9)));
    Answers.assertDecoded("long", Answers.decode(sheet, log));
  }

  private static final CodeSheet UNSAID =
      Sheets.of(
          0.1,
          "three-two",
          "3 blinks then 2 blinks",
          "two-three",
          "2 blinks then 3 blinks",
          "four-one",
          "4 blinks then 1 blink",
          "five",
          "5 blinks repeating",
          "three",
          "3 blinks repeating");

  @ParameterizedTest
  @CsvSource({"0.4, 1.4, 8", "0.8, 2, 12", "0.25, 1, 5"})
  void unsaidDurationsInThreeCycles(double apart, double pause, double cycle) {
    double[] three = {0, apart, 2 * apart, 2 * apart + pause, 3 * apart + pause};
    double[] two = {0, apart, apart + pause, 2 * apart + pause, 3 * apart + pause};
    for (int seed = 0; seed < SEEDS; seed++) {
      double phase = random(seed).nextDouble();
      CleanRecordings lamp = CleanRecordings.blinks(0.1, cycle, three).phase(phase).cycles(3);
      Answers.assertDecoded(
          "three-two", Answers.decode(UNSAID, lamp.starts()), "3 + 2, phase " + phase);
      CleanRecordings other = CleanRecordings.blinks(0.1, cycle, two).phase(phase).cycles(3);
      Answers.assertDecoded(
          "two-three", Answers.decode(UNSAID, other.starts()), "2 + 3, phase " + phase);
    }
  }

  @ParameterizedTest
  @CsvSource({"3, three", "5, five"})
  void unsaidDurationsOfOneGroup(int count, String state) {
    double[] starts = new double[count];
    for (int i = 0; i < count; i++) {
      starts[i] = 0.5 * i;
    }
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.blinks(0.1, 9, starts).phase(random(seed).nextDouble()).cycles(4);
      Answers.assertDecoded(state, Answers.decode(UNSAID, lamp.starts()), "seed " + seed);
    }
  }

  /** Groups with a spacing each: what is not said is not known, and need not be the same twice. */
  @Test
  void unsaidSpacingsMayDiffer() {
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.blinks(0.1, 9, 0, 0.8, 1.6, 3.4, 3.7)
              .phase(random(seed).nextDouble())
              .cycles(4);
      Answers.assertDecoded("three-two", Answers.decode(UNSAID, lamp.starts()), "seed " + seed);
    }
  }

  @Test
  void longAndShortBlinks() {
    CodeSheet sheet =
        Sheets.of(
            0.1,
            "long-short",
            "1 long blink then 2 short blinks",
            "short-long",
            "2 short blinks then 2 long blinks",
            "three",
            "3 blinks repeating");
    for (int seed = 0; seed < SEEDS; seed++) {
      CleanRecordings lamp =
          CleanRecordings.of(6, 0, 0.9, 1.4, 1.6, 2.1, 2.3)
              .phase(random(seed).nextDouble())
              .cycles(5);
      Reading reading = Answers.decode(sheet, lamp.onAndOff());
      Answers.assertDecoded("long-short", reading, "seed " + seed);
    }
  }

  @Test
  void aLampThatIsMostlyLit() {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            "winks",
            "steady then dark 0.3 s every 8 s",
            "even",
            "steady 4 s then dark 4 s",
            "on",
            "steady",
            "off",
            "dark");
    for (int seed = 0; seed < SEEDS; seed++) {
      double phase = random(seed).nextDouble();
      CleanRecordings winks = CleanRecordings.of(8, 0, 7.7).phase(phase).window(60);
      Answers.assertDecoded("winks", Answers.decode(sheet, winks.onAndOff()), "log " + phase);
      Answers.assertDecoded(
          "winks", Answers.decode(sheet, winks.curve(50, 100, 20, 1, seed)), "curve " + phase);
      CleanRecordings even = CleanRecordings.of(8, 0, 4).phase(phase).window(60);
      Answers.assertDecoded("even", Answers.decode(sheet, even.onAndOff()), "log " + phase);
    }
  }

  @Test
  void aRateForATimeAndAPause() {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            OptionalDouble.of(0.08),
            "bursts",
            "5 blinks per second for 3 s then dark 2 s",
            "run",
            "5 blinks per second");
    double[] starts = new double[15];
    for (int i = 0; i < 15; i++) {
      starts[i] = 0.2 * i;
    }
    CleanRecordings bursts = CleanRecordings.blinks(0.08, 5, starts).phase(0.3).window(30);
    Answers.assertDecoded("bursts", Answers.decode(sheet, bursts.starts()));
    CleanRecordings run = CleanRecordings.blinks(0.08, 0.2, 0).window(30);
    Answers.assertDecoded("run", Answers.decode(sheet, run.starts()));
  }

  @Test
  void everyBenchStateIsDecodedFromACleanRecording() {
    CodeSheet bench = Sheets.bench();
    for (int i = 0; i < Sheets.BENCH_CYCLES.length; i++) {
      for (int seed = 0; seed < SEEDS; seed++) {
        CleanRecordings lamp =
            CleanRecordings.blinks(0.09, Sheets.BENCH_CYCLES[i], Sheets.BENCH_STARTS[i])
                .drawn(random(seed), 0.05)
                .window(90);
        String state = bench.states().get(i).name();
        Answers.assertDecoded(state, Answers.decode(bench, lamp.starts()), "starts " + seed);
        Answers.assertDecoded(state, Answers.decode(bench, lamp.onAndOff()), "ends " + seed);
        Reading curve = Answers.decode(bench, lamp.curve(50, 150, 20, 1, seed));
        Answers.assertDecoded(state, curve, "curve " + seed);
        assertTrue(curve.observed().isPresent());
      }
    }
  }
}

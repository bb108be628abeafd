package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is found in light curves before and after decoding. */
class LightCurveReadingTest {
  /** Edges at 100 samples a second are found to within this. */
  private static final double EDGE_SECONDS = 0.03;

  private static final double BLINK_SECONDS = 0.2;
  private static final CodeSheet BENCH = Sheets.bench(BLINK_SECONDS);
  private static final CleanRecordings FOUR =
      CleanRecordings.blinks(BLINK_SECONDS, 8, 0, 0.6, 1.2, 1.8).phase(0.35).window(60);
  private static final CleanRecordings TICK =
      CleanRecordings.blinks(BLINK_SECONDS, 3.4, 0).phase(0.35).window(60);

  private static List<SeenBlink> blinks(LightCurve curve) {
    return new LampDecoder().observe(curve).blinks();
  }

  /** The same curve, its levels changed by what is added at each time, some samples left out. */
  private static LightCurve changed(
      LightCurve curve, DoubleUnaryOperator added, DoublePredicate kept) {
    List<double[]> samples = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      double seconds = curve.seconds(i);
      if (kept.test(seconds)) {
        samples.add(new double[] {seconds, curve.level(i) + added.applyAsDouble(seconds)});
      }
    }
    return curve(curve.marks(), samples);
  }

  private static LightCurve curve(Marks marks, List<double[]> samples) {
    return LightCurve.of(
        Origin.named("curve"),
        marks,
        LightCurve.Lit.BRIGHTER,
        samples.stream().mapToDouble(s -> s[0]).toArray(),
        samples.stream().mapToDouble(s -> s[1]).toArray());
  }

  /** Every lit stretch is found, its edges where they are, and nothing else. */
  private static void assertFound(List<Blink> lit, List<SeenBlink> seen, double tolerance) {
    assertEquals(lit.size(), seen.size(), seen::toString);
    for (int i = 0; i < lit.size(); i++) {
      Blink blink = seen.get(i).blink();
      assertEquals(lit.get(i).onSeconds(), blink.onSeconds(), tolerance, blink::toString);
      assertEquals(lit.get(i).offSeconds(), blink.offSeconds(), tolerance, blink::toString);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 1.5})
  void twoLevelsAndTheirEdges(double noise) {
    for (long seed = 0; seed < 4; seed++) {
      assertFound(FOUR.lit(), blinks(FOUR.curve(100, 150, 20, noise, seed)), EDGE_SECONDS);
    }
  }

  @Test
  void darkerMayBeLit() {
    LightCurve curve = FOUR.curve(100, 150, -20, 1, 3);
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = curve.seconds(i);
      levels[i] = curve.level(i);
    }
    LightCurve darker =
        LightCurve.of(curve.origin(), curve.marks(), LightCurve.Lit.DARKER, seconds, levels);
    assertFound(FOUR.lit(), blinks(darker), EDGE_SECONDS);
  }

  /** The room's light rises and falls by twice as much as the lamp gives. */
  @Test
  void blinksOnASlowDrift() {
    for (long seed = 0; seed < 4; seed++) {
      LightCurve drifting =
          changed(
              FOUR.curve(100, 150, 20, 1, seed),
              t -> 40 * Math.sin(2 * Math.PI * t / 90),
              t -> true);
      assertFound(FOUR.lit(), blinks(drifting), 2 * EDGE_SECONDS);
      Answers.assertDecoded("four", Answers.decode(BENCH, drifting), "seed " + seed);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {10, 50, 100})
  void noiseAloneIsNoBlink(double rate) {
    for (long seed = 0; seed < 10; seed++) {
      LightCurve level = TICK.curve(rate, 150, 0, 2, seed);
      assertEquals(List.of(), blinks(level), "seed " + seed);
      LightCurve drifting = changed(level, t -> 0.5 * t, t -> true);
      assertEquals(List.of(), blinks(drifting), "drifting, seed " + seed);
    }
  }

  /** Silences of 6 s at 10 samples a second: nothing is known of them, and they make no edge. */
  @Test
  void pausesMakeNoEdges() {
    DoublePredicate kept = t -> !(t > 12 && t < 18) && !(t > 31 && t < 37) && !(t > 50 && t < 56);
    for (long seed = 0; seed < 4; seed++) {
      LightCurve curve = changed(TICK.curve(10, 150, 30, 1, seed), t -> 0, kept);
      for (SeenBlink seen : blinks(curve)) {
        double on = seen.blink().onSeconds();
        assertTrue(
            TICK.lit().stream().anyMatch(blink -> Math.abs(blink.onSeconds() - on) < 0.15),
            seen::toString);
      }
      long inside = TICK.lit().stream().filter(blink -> kept.test(blink.onSeconds())).count();
      assertEquals(inside, blinks(curve).size(), "seed " + seed);
      Answers.assertDecoded("tick", Answers.decode(BENCH, curve), "seed " + seed);
    }
  }

  /** The room is brighter after the pause by less than the lamp: that is no blink. */
  @Test
  void aStepInAPauseIsNoEdge() {
    DoublePredicate kept = t -> !(t > 29 && t < 35);
    LightCurve level = changed(TICK.curve(10, 150, 0, 1, 8), t -> 0, kept);
    assertEquals(List.of(), blinks(level));
    assertTrue(
        new LampDecoder().observe(level).notes().stream().anyMatch(n -> n.contains("pause")));
  }

  /** A sensor that reports whole lux when they change: silence means that nothing changed. */
  @Test
  void onChangeFilesHoldTheirLastLevel() {
    for (long seed = 0; seed < 4; seed++) {
      LightCurve even = TICK.curve(10, 150, 30, 0.4, seed);
      List<double[]> samples = new ArrayList<>();
      double last = Double.NaN;
      for (int i = 0; i < even.size(); i++) {
        double level = Math.rint(even.level(i));
        if (level != last) {
          samples.add(new double[] {even.seconds(i), level});
        }
        last = level;
      }
      LightCurve onChange = curve(Marks.watched(0, 60), samples);
      Observation observation = new LampDecoder().observe(onChange);
      assertTrue(
          observation.notes().stream().noneMatch(n -> n.contains("pause")),
          observation.notes()::toString);
      assertEquals(TICK.lit().size(), observation.blinks().size(), "seed " + seed);
      Answers.assertDecoded("tick", Answers.decode(BENCH, onChange), "seed " + seed);
    }
  }

  /** The same without noise: two samples a blink and none between. */
  @Test
  void onChangeFilesOfTwoLevelsHoldTheirLastLevel() {
    List<double[]> samples = new ArrayList<>();
    samples.add(new double[] {0, 150});
    for (Blink blink : TICK.lit()) {
      samples.add(new double[] {Math.rint(blink.onSeconds() * 10) / 10, 180});
      samples.add(new double[] {Math.rint(blink.offSeconds() * 10) / 10, 150});
    }
    LightCurve onChange = curve(Marks.watched(0, 60), samples);
    assertEquals(TICK.lit().size(), blinks(onChange).size());
    Answers.assertDecoded("tick", Answers.decode(BENCH, onChange));
  }

  @Test
  void missingLevelsAreNoEdges() {
    LightCurve curve =
        changed(
            TICK.curve(50, 150, 30, 1, 4),
            t -> Math.floor(t * 10) % 7 == 0 ? Double.NaN : 0,
            t -> true);
    Answers.assertDecoded("tick", Answers.decode(BENCH, curve));
  }

  private static final CodeSheet LEVELS =
      Sheets.of(0.05, "off", "dark", "on", "steady", "tick", "1 blink every 3.4 s");

  @Test
  void aLevelThatNeverChangesIsDarkOrSteady() {
    for (double noise : new double[] {0, 1}) {
      Answers.assertUndecided(
          Set.of("off", "on"),
          Answers.decode(LEVELS, TICK.curve(20, 150, 0, noise, 2)),
          "noise " + noise);
    }
  }

  @Test
  void aSheetWithOneOfThemDecidesIt() {
    LightCurve level = TICK.curve(20, 150, 0, 1, 2);
    CodeSheet off = Sheets.of(0.05, "off", "dark", "tick", "1 blink every 3.4 s");
    Answers.assertDecoded("off", Answers.decode(off, level));
    CodeSheet on = Sheets.of(0.05, "on", "steady", "tick", "1 blink every 3.4 s");
    Answers.assertDecoded("on", Answers.decode(on, level));
  }

  private static Marks covered(double from, double to) {
    return new Marks(Optional.empty(), Targets.unknown(), List.of(), List.of(new Window(from, to)));
  }

  @Test
  void aCoveredStretchThatIsDarkerSaysSteady() {
    LightCurve plain = TICK.curve(covered(20, 30), 20, 150, 0, 1, 2);
    LightCurve darker = changed(plain, t -> t >= 20 && t <= 30 ? -40 : 0, t -> true);
    Answers.assertDecoded("on", Answers.decode(LEVELS, darker));
  }

  @Test
  void aCoveredStretchOfTheSameLevelSaysDark() {
    LightCurve plain = TICK.curve(covered(20, 30), 20, 150, 0, 1, 2);
    Answers.assertDecoded("off", Answers.decode(LEVELS, plain));
  }

  @Test
  void aLampLitThroughoutAfterASingleStepIsSeen() {
    SplittableRandom random = new SplittableRandom(6);
    List<double[]> samples = new ArrayList<>();
    for (int i = 0; i <= 600; i++) {
      double t = i / 10.0;
      samples.add(new double[] {t, (t < 20 ? 100 : 140) + CleanRecordings.normal(random)});
    }
    List<SeenBlink> seen = blinks(curve(Marks.nothing(), samples));
    assertEquals(1, seen.size(), seen::toString);
    assertEquals(20, seen.get(0).blink().onSeconds(), 0.15);
  }

  /** Lit but for darks of 1.5 s. */
  private static LightCurve mostlyLit(double[] darks) {
    SplittableRandom random = new SplittableRandom(9);
    List<double[]> samples = new ArrayList<>();
    for (int i = 0; i <= 1500; i++) {
      double t = i / 20.0;
      boolean dark = false;
      for (double at : darks) {
        dark |= t >= at && t < at + 1.5;
      }
      samples.add(new double[] {t, (dark ? 1 : 3) + 0.02 * CleanRecordings.normal(random)});
    }
    return curve(Marks.nothing(), samples);
  }

  @Test
  void aDarkIsSaidAsLongAsItWasSeen() {
    LampDecoder decoder = new LampDecoder();
    Observation uneven = decoder.observe(mostlyLit(new double[] {5, 24.7, 46, 64.8}));
    assertEquals(
        "steady 17.3 to 19.8 s then dark 1.5 s repeating",
        uneven.observed().map(Phrase::print).orElse("nothing"));
    Observation even = decoder.observe(mostlyLit(new double[] {5, 24.7, 44.4, 64.1}));
    assertEquals(
        "steady 18.2 s then dark 1.5 s repeating",
        even.observed().map(Phrase::print).orElse("nothing"));
  }

  @Test
  void whatIsTakenOfTargetsIsSaidWhereAStateHangsOnIt() {
    LightCurve curve =
        TICK.curve(20, 150, 30, 1, 2).withMarks(Marks.nothing().withTargets(Targets.likely()));
    CodeSheet hangs =
        Sheets.of(
            0.05,
            OptionalDouble.empty(),
            List.of(
                Sheets.state("tick", "1 blink every 3.4 s", Seen.ALWAYS),
                Sheets.state("hand", "2 blinks per second", Seen.TARGET)));
    assertTrue(notes(hangs, curve).contains("one is taken as likely"));
    assertFalse(notes(BENCH, curve).contains("target"));
    LightCurve nobody = curve.withMarks(Marks.nothing().withTargets(Targets.none()));
    assertFalse(notes(hangs, nobody).contains("target"));
    assertFalse(new LampDecoder().observe(curve).notes().toString().contains("target"));
  }

  private static String notes(CodeSheet sheet, LightCurve curve) {
    return Answers.decode(sheet, curve).observations().get(0).notes().toString();
  }
}

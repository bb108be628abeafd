package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import lampwise.decode.LampDecoder;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.file.SheetReader;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The trace of the light levels. */
class ChartLevelsTest {
  private static LightCurve curve(double perSecond, int samples, Marks marks) {
    double[] seconds = new double[samples];
    double[] levels = new double[samples];
    for (int i = 0; i < samples; i++) {
      seconds[i] = i / perSecond;
      levels[i] = 40 + (i * 7919 % 13) * 0.1 + (seconds[i] % 3.1 < 0.1 ? 18 : 0);
    }
    return LightCurve.of(
        Origin.named("levels.csv"), marks, LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  @Test
  void theNameOfTheLevelsStandsAboveTheirTrace() {
    Pictures picture =
        Pictures.of(
            ChartSubject.of(Readings.observed(curve(20, 200, Marks.nothing()), List.of())), 1000);
    assertTrue(picture.topOf("rgb(36,80,107)") > picture.baselineOf("light level"));
  }

  @Test
  void evenSamplesAreALineAndChangesAreSteps() {
    Pictures even =
        Pictures.of(
            ChartSubject.of(Readings.observed(curve(2, 5, Marks.nothing()), List.of())), 1000);
    String line = even.paths("rgb(36,80,107)").get(0);
    assertEquals(5, points(line), line);
    LightCurve changes =
        LightCurve.of(
            Origin.named("changes.csv"),
            Marks.nothing(),
            LightCurve.Lit.DARKER,
            new double[] {0, 0.1, 3, 3.1, 6, 6.1},
            new double[] {10, 5, 10, 5, 10, 5});
    Pictures steps = Pictures.of(ChartSubject.of(Readings.observed(changes, List.of())), 1000);
    assertTrue(steps.labels().contains("light level (lower is on)"), steps.labels()::toString);
    String stepped = steps.paths("rgb(36,80,107)").get(0);
    // Each change is a level line and an upright one.
    assertTrue(points(stepped) >= 10, stepped);
  }

  /** The points of a path that are not its empty beginning or the dot of a first sample. */
  private static int points(String path) {
    return path.split("[L]", -1).length - 1;
  }

  @Test
  void missingLevelsAreSaidAndNotBridged() {
    double[] seconds = new double[100];
    double[] levels = new double[100];
    for (int i = 0; i < 100; i++) {
      seconds[i] = i < 50 ? i * 0.1 : i * 0.1 + 10;
      levels[i] = i >= 20 && i < 40 ? Double.NaN : 5;
    }
    LightCurve curve =
        LightCurve.of(
            Origin.named("gaps.csv"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(curve, List.of())), 1000);
    assertEquals(
        2,
        picture.labels().stream().filter("no levels"::equals).count(),
        picture.labels()::toString);
    String trace = picture.paths("rgb(36,80,107)").get(0);
    assertEquals(3, trace.split("M", -1).length - 1, trace);
  }

  @Test
  void anHourAtFiftySamplesASecondIsASmallPicture() {
    LightCurve hour = curve(50, 180_000, Marks.nothing());
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(hour, List.of())), 1000);
    assertTrue(picture.source().length() < 1_000_000, () -> picture.source().length() + " bytes");
    // It still shows the least and the greatest level of every column.
    assertTrue(picture.paths("rgb(36,80,107)").get(0).length() > 10_000);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -3, 1e-300, 1.7e308, -1.7e308, Double.NaN})
  void anyLevelCanBeDrawn(double level) {
    LightCurve curve =
        LightCurve.of(
            Origin.named("levels.csv"),
            Marks.nothing(),
            LightCurve.Lit.BRIGHTER,
            new double[] {0, 1, 2},
            new double[] {level, level, -level});
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(curve, List.of())), 360);
    assertTrue(picture.labels().contains("light level"));
  }

  /** A lamp of four deviations of the noise, which no sample shows by itself. */
  private static LightCurve faint() {
    SplittableRandom random = new SplittableRandom(4);
    double[] seconds = new double[1500];
    double[] levels = new double[1500];
    for (int i = 0; i < 1500; i++) {
      seconds[i] = i / 25.0;
      double noise = random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5;
      levels[i] = 40 + 2 * noise + (seconds[i] % 3.1 < 0.12 ? 4 : 0);
    }
    return LightCurve.of(
        Origin.named("faint.csv"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  @Test
  void whatWasAddedUpStandsBetweenBlinksAndLevels() throws Exception {
    CodeSheet sheet =
        SheetReader.read(
            "ticks",
            """
            lampwise-sheet: 1
            title: Ticks
            basis: observed
            blink: 120 ms
            states:
              tick:
                rhythm: 1 blink every 3.1 s
                means: tick
                condition: other
              dark:
                rhythm: dark
                means: nothing
                condition: other
            """
                .getBytes(StandardCharsets.UTF_8));
    Reading reading = new LampDecoder().decode(sheet, List.of(faint()));
    for (int width : new int[] {1000, 360}) {
      Pictures picture = Pictures.of(ChartSubject.of(sheet, reading, 0), width);
      List<String> labels = picture.labels();
      assertTrue(labels.contains(ChartEvidence.NAME), labels::toString);
      String legend = String.join(" ", labels);
      assertTrue(legend.contains("up speaks for a blink"), legend);
      assertTrue(legend.contains("dashed: the level that counts as dark"), legend);
      assertFalse(legend.contains("dotted"), legend);
      assertTrue(picture.baselineOf("blinks") < picture.baselineOf(ChartEvidence.NAME));
      assertTrue(picture.baselineOf(ChartEvidence.NAME) < picture.baselineOf("light level"));
    }
  }

  @Test
  void whereBlinksStandOutTheLevelThatCutsThemIsDrawn() {
    Observation observation = new LampDecoder().observe(curve(20, 600, Marks.nothing()));
    Pictures picture = Pictures.of(ChartSubject.of(observation), 1000);
    List<String> labels = picture.labels();
    assertFalse(labels.contains(ChartEvidence.NAME), labels::toString);
    String legend = String.join(" ", labels);
    assertTrue(legend.contains("dotted: lit from here on"), legend);
  }
}

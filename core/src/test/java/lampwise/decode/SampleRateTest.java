package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;

/** How fast a rhythm a light curve can show, and what is said of faster ones. */
class SampleRateTest {
  private static final double ROW = 0.1;

  private static LightCurve curve(List<double[]> rows) {
    return LightCurve.of(
        Origin.named("curve"),
        Marks.nothing(),
        LightCurve.Lit.BRIGHTER,
        rows.stream().mapToDouble(r -> r[0]).toArray(),
        rows.stream().mapToDouble(r -> r[1]).toArray());
  }

  /** Rows every 0.1 s of a sensor that has a new level every so often. */
  private static LightCurve polled(double levelSeconds, double noise, boolean whole) {
    SplittableRandom random = new SplittableRandom(5);
    List<double[]> rows = new ArrayList<>();
    double level = 0;
    int last = -1;
    for (int i = 0; i < 600; i++) {
      int number = (int) (i * ROW / levelSeconds + 1e-9);
      if (number != last) {
        double exact = 100 + noise * CleanRecordings.normal(random);
        level = whole ? Math.rint(exact) : exact;
        last = number;
      }
      rows.add(new double[] {i * ROW, level});
    }
    return curve(rows);
  }

  @Test
  void aRowForEachLevel() {
    SampleRate rate = SampleRate.of(polled(ROW, 3, false));
    assertEquals(ROW, rate.seconds(), 1e-9);
    assertEquals("10 samples a second", rate.words());
    assertEquals(
        "a sample every 0.1 s: blinks closer together than 0.25 s cannot be seen", rate.note());
  }

  @Test
  void rowsThatRepeatTheLevelsOfASlowerSensor() {
    SampleRate rate = SampleRate.of(polled(0.18, 20, true));
    assertEquals(0.18, rate.seconds(), 0.01);
    assertEquals(ROW, rate.rowSeconds(), 1e-9);
    assertTrue(rate.note().startsWith("a row every 0.1 s, a new level every 0.18"), rate.note());
  }

  /** Whole lux that hardly change are equal by chance, in runs of all lengths. */
  @Test
  void equalLevelsByChanceAreNoSlowerSensor() {
    for (double noise : new double[] {0.3, 0.5, 1, 3}) {
      assertEquals(ROW, SampleRate.of(polled(ROW, noise, true)).seconds(), 1e-9, "noise " + noise);
    }
  }

  /** Without noise a lamp that is lit as long as it is dark leaves runs that are all alike. */
  @Test
  void aLampIsNoSlowerSensor() {
    LightCurve even =
        CleanRecordings.blinks(0.5, 1, 0).phase(0.35).window(60).curve(10, 100, 30, 0, 1);
    assertEquals(ROW, SampleRate.of(even).seconds(), 1e-9);
  }

  /** Written on change, the shortest steps tell the sensor's time, not the usual ones. */
  @Test
  void silencesOfAnOnChangeFileAreNoSteps() {
    List<double[]> rows = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      rows.add(new double[] {i, 100});
      rows.add(new double[] {i + ROW, 130});
      rows.add(new double[] {i + 2 * ROW, 110});
    }
    assertEquals(ROW, SampleRate.of(curve(rows)).seconds(), 1e-9);
  }

  @Test
  void numbersAsLongAsAReaderNeeds() {
    assertEquals("5", SampleRate.number(5));
    assertEquals("5.56", SampleRate.number(1 / 0.18));
    assertEquals("30", SampleRate.number(29.98));
    assertEquals("29.9", SampleRate.number(29.94));
    assertEquals("200", SampleRate.number(199.6));
  }

  private static final CodeSheet FAST =
      Sheets.of(
          0.05,
          java.util.OptionalDouble.of(0.06),
          "rapid",
          "4.9 blinks per second",
          "long",
          "1 blink of 3 s every 10 s",
          "pair",
          "2 blinks 0.3 s apart every 8 s",
          "tick",
          "1 blink every 3.4 s",
          "off",
          "dark");

  private static List<String> notes(double rateHz) {
    LightCurve curve =
        CleanRecordings.blinks(0.2, 3.4, 0).phase(0.35).window(60).curve(rateHz, 150, 30, 1, 1);
    return new LampDecoder().decode(FAST, List.of(curve)).observations().get(0).notes();
  }

  @Test
  void statesThatAreTooFastAreNamedWithWhatTheyLookLike() {
    List<String> notes = notes(5);
    assertTrue(
        notes.contains("at 5 samples a second, rapid cannot be told from long or off"),
        notes::toString);
    assertTrue(
        notes.contains("at 5 samples a second, the blinks of pair run together"), notes::toString);
    assertFalse(notes.stream().anyMatch(n -> n.contains("tick")), notes::toString);
  }

  @Test
  void nothingIsSaidWhereTheSensorIsFastEnough() {
    List<String> notes = notes(25);
    assertFalse(notes.stream().anyMatch(n -> n.contains("a second")), notes::toString);
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.light.LightCurve;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;

/** Blinks that stand out from raw samples where no two levels do. */
class FaintBlinksTest {
  private static final CodeSheet SHEET = Sheets.bench(0.09);
  private static final double CYCLE = 8;
  private static final CleanRecordings THREE =
      CleanRecordings.blinks(0.09, CYCLE, 0, 0.6, 1.2).phase(0.35).window(60);

  /** A lamp of five deviations before daylight that moves by ten times as much. */
  private static LightCurve faint(double lamp, long seed) {
    LightCurve curve = THREE.curve(30, 150, lamp, 1.5, seed);
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = curve.seconds(i);
      levels[i] = curve.level(i) + 40 * Math.sin(2 * Math.PI * seconds[i] / 90);
    }
    return LightCurve.of(curve.origin(), curve.marks(), curve.lit(), seconds, levels);
  }

  private static boolean saysStill(List<String> notes) {
    return notes.stream().anyMatch(note -> note.contains("does not change"));
  }

  @Test
  void areShownWithoutASheet() {
    for (long seed = 0; seed < 4; seed++) {
      Observation seen = new LampDecoder().observe(faint(8, seed));
      assertTrue(seen.observed().isPresent(), "seed " + seed);
      assertEquals(CYCLE, Answers.cycleSeconds(seen.observed().get()), 0.06, "seed " + seed);
      assertTrue(seen.blinks().size() >= 0.8 * THREE.lit().size(), seen.blinks()::toString);
      assertTrue(seen.blinks().size() <= THREE.lit().size(), seen.blinks()::toString);
      assertTrue(seen.blinks().stream().noneMatch(b -> b.blink().hasOff()), "length unknown");
      assertFalse(saysStill(seen.notes()), "seed " + seed);
    }
  }

  @Test
  void aLampThatIsDecodedIsNotSaidNotToChange() {
    Reading reading = Answers.decode(SHEET, faint(8, 1));
    Answers.assertDecoded("three", reading, "lamp of five deviations");
    assertFalse(saysStill(reading.observations().get(0).notes()), "note");
  }

  @Test
  void withoutALampTheLevelIsSaidNotToChange() {
    LightCurve dark = faint(0, 1);
    assertTrue(saysStill(new LampDecoder().observe(dark).notes()), "without a sheet");
    assertTrue(saysStill(Answers.decode(SHEET, dark).observations().get(0).notes()), "with one");
    assertEquals(List.of(), new LampDecoder().observe(dark).blinks());
  }
}

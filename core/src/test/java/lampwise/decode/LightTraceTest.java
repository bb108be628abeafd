package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;

/** What a light curve was read by. */
class LightTraceTest {
  private static final CleanRecordings TICK =
      CleanRecordings.blinks(0.1, 3.4, 0).phase(0.35).window(60);
  private static final CodeSheet SHEET =
      Sheets.of(0.05, OptionalDouble.of(0.1), "tick", "1 blink every 3.4 s", "off", "dark");

  private static LightTrace trace(LightCurve curve) {
    Reading reading = Answers.decode(SHEET, curve);
    Answers.assertDecoded("tick", reading);
    return LightTrace.of(Optional.of(SHEET), curve, reading.observations().get(0).blinks());
  }

  @Test
  void aFaintLampHasEvidenceAtItsBlinks() {
    LightTrace trace = trace(TICK.curve(25, 150, 4, 1, 3));
    assertFalse(trace.hasLitLevel());
    double sum = 0;
    for (int i = 0; i < trace.size(); i++) {
      assertTrue(Math.abs(trace.darkLevel(i) - 150) < 2, "dark at " + trace.seconds(i));
    }
    for (int k = 0; k < trace.evidenceSize(); k++) {
      double at = trace.evidenceSeconds(k);
      for (Blink blink : TICK.lit()) {
        sum += Math.abs(at - blink.onSeconds()) < 0.01 ? trace.evidence(k) : 0;
      }
    }
    assertTrue(sum > 3 * TICK.lit().size(), "sum " + sum);
  }

  @Test
  void aBrightLampIsCutHalfWay() {
    LightTrace trace = trace(TICK.curve(50, 150, 40, 1, 3));
    assertTrue(trace.hasLitLevel());
    assertEquals(0, trace.evidenceSize());
    for (int i = 0; i < trace.size(); i++) {
      assertEquals(150, trace.darkLevel(i), 1);
      assertEquals(170, trace.litLevel(i), 2);
    }
  }

  @Test
  void withoutAnythingThatStandsOutThereIsNoLevel() {
    LightTrace trace = LightTrace.of(Optional.empty(), TICK.curve(50, 150, 0, 1, 3), List.of());
    assertEquals(0, trace.size() + trace.evidenceSize() + trace.saturated().size());
  }
}

package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import lampwise.light.BlinkLog;
import lampwise.sim.Labelled;
import lampwise.sim.Person;
import org.junit.jupiter.api.Test;

/** Counted codes of which nobody says a duration: a small version of {@link UnsaidStudy}. */
class UnsaidTest {
  private static final int RECORDINGS = 110;
  private static final double CYCLES = 3;

  /** Of the study's 1,000 recordings 97 in 100 must be right; a few of these may be bad luck. */
  private static final int LEAST_RIGHT = 105;

  @Test
  void countsAreReadWithoutDurations() {
    UnsaidStudy.Count count = UnsaidStudy.count(Person.careful(), RECORDINGS, 1125, CYCLES, false);
    assertTrue(count.right() >= LEAST_RIGHT, count::toString);
    assertTrue(count.misread() <= 1, count::toString);
    assertTrue(count.decoded() >= 95, count::toString);
  }

  @Test
  void recordingsRepeatAndDiffer() {
    Set<Double> windows = new HashSet<>();
    for (int i = 0; i < 22; i++) {
      Labelled one = UnsaidSheet.recording(Person.careful(), CYCLES, 1125, i);
      assertEquals(one, UnsaidSheet.recording(Person.careful(), CYCLES, 1125, i));
      assertEquals(
          UnsaidSheet.SHEET.states().get(i % 11).name(), one.truth().state(), "number " + i);
      windows.add(((BlinkLog) one.recording()).window().orElseThrow().lengthSeconds());
    }
    assertEquals(22, windows.size());
  }
}

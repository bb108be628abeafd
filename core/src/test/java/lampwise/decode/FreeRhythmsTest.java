package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** Rhythms that a recording proposes. */
class FreeRhythmsTest {
  /** Blinks after these gaps, over and over. */
  private static List<FreeRhythms> proposed(int cycles, double... gaps) {
    List<Evidence.Note> notes = new ArrayList<>();
    double on = 1;
    for (int i = 0; i < cycles * gaps.length; i++) {
      notes.add(new Evidence.Note(on, Double.NaN, false, false, 1));
      on += gaps[i % gaps.length];
    }
    Window window = new Window(0, on + 1);
    return FreeRhythms.propose(
        new Evidence(window, notes, List.of(), Noise.ofPeople(0.01, false), 0.01, true, false));
  }

  /** The groups that are proposed for the cycle of these gaps. */
  private static List<FreeRhythms> groups(int cycles, double... gaps) {
    double cycle = Arrays.stream(gaps).sum();
    return proposed(cycles, gaps).stream()
        .filter(free -> free.train().size() == gaps.length)
        .filter(free -> Math.abs(free.train().cycleSeconds() - cycle) < 0.1)
        .toList();
  }

  @Test
  void aPauseThatIsNoneMakesNoGroupOnceItIsKnown() {
    assertEquals(List.of(), groups(20, 0.6, 0.66));
    assertFalse(groups(20, 0.5, 0.75).isEmpty(), "the shortest pause");
  }

  @Test
  void twoGroupsWantAPauseBetweenThem() {
    assertEquals(List.of(1), durations(groups(20, 0.5, 0.58, 0.5, 4)));
    assertEquals(List.of(1, 2, 3), durations(groups(20, 0.5, 0.9, 0.5, 4)));
    assertEquals(List.of(1, 2, 3), durations(groups(5, 0.5, 0.58, 0.5, 4)), "not seen often");
  }

  @Test
  void twoGroupsOfWhichOneIsASingleBlinkAreProposedOnce() {
    assertEquals(List.of(1, 2), durations(groups(12, 0.4, 1.5, 5)));
    assertEquals(List.of(1, 2, 3), durations(groups(12, 0.4, 1.5, 0.7, 5)));
  }

  /** How many durations each has, of those that are not on a beat. */
  private static List<Integer> durations(List<FreeRhythms> groups) {
    return groups.stream().map(FreeRhythms::durations).filter(some -> some > 0).toList();
  }
}

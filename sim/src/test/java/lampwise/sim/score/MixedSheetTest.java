package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import lampwise.decode.LampDecoder;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Presets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A sheet with long lights, a start-up phase and what shows once hides none of its short blinks
 * from a light sensor before which they do not stand out.
 */
class MixedSheetTest {
  private static final Set<String> SHORT =
      Set.of(
          "cells-low",
          "sees-too-far",
          "sees-too-near",
          "window-covered",
          "coil-open",
          "target-seen",
          "starting",
          "learning");
  private static final int RECORDINGS = 40;

  @ParameterizedTest
  @ValueSource(strings = {"camera", "meter"})
  void shortBlinksAreReadBesideLongLights(String sensor) {
    CodeSheet demo = SheetReader.demo();
    Score score = new Score(Bench.mix(demo), 20261125);
    Cell cell = new Cell(sensor, Presets.named(sensor), 60);
    int all = 0;
    int right = 0;
    for (int i = 0; i < RECORDINGS; i++) {
      Outcome outcome = score.outcome(new LampDecoder(), cell, i);
      assertTrue(!outcome.isMisread(), outcome::toString);
      if (SHORT.contains(outcome.truth())) {
        all++;
        right += outcome.isRight() ? 1 : 0;
      }
    }
    assertTrue(all >= 14, "only " + all);
    assertTrue(right >= 0.85 * all, right + " of " + all + " right");
    assertEquals(List.of(), List.copyOf(missing(demo)));
  }

  private static Set<String> missing(CodeSheet sheet) {
    Set<String> names = new TreeSet<>(SHORT);
    sheet.states().forEach(state -> names.remove(state.name()));
    return names;
  }
}

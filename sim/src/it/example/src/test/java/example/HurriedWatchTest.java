package example;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.decode.LampDecoder;
import lampwise.decode.Verdict;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Labelled;
import lampwise.sim.Person;
import lampwise.sim.Scene;
import lampwise.sim.Simulator;
import org.junit.jupiter.api.Test;

/** How the decoder does on a hundred made-up recordings whose truth is known. */
class HurriedWatchTest {
  @Test
  void aMinuteOfAHurriedPersonTellsLowCells() {
    CodeSheet sheet = SheetReader.demo();
    LampState low = sheet.state("cells-low").orElseThrow();
    Scene scene = Scene.of(sheet, Act.of(low), 60);
    int right = 0;
    int wrong = 0;
    for (int seed = 1; seed <= 100; seed++) {
      Labelled labelled = Simulator.record(scene, Person.hurried(), seed);
      Verdict verdict = new LampDecoder().decode(sheet, List.of(labelled.recording())).verdict();
      if (verdict instanceof Verdict.Decoded decoded) {
        if (decoded.state().equals(labelled.truth().state())) {
          right++;
        } else {
          wrong++;
        }
      }
    }
    assertEquals(0, wrong, "misread");
    assertTrue(right >= 95, "only " + right + " of 100 are decoded");
  }
}

package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertTrue;

import lampwise.sheet.CodeSheet;
import lampwise.sim.Observer;
import lampwise.sim.Presets;
import org.junit.jupiter.api.Test;

/** A small version of the study of changes; its floors are some way below the study's figures. */
class SwitchStudyTest {
  private static final CodeSheet SHEET = Bench.sheet();

  private static void assertFound(String observer, int recordings, double least) {
    SwitchStudy study = new SwitchStudy(SHEET);
    study.changes(Presets.named(observer), recordings, 20);
    assertTrue(study.share() >= least, () -> observer + ": " + study.share());
  }

  @Test
  void anExactObserversChangesAreFoundAndBothStatesNamed() {
    assertFound("exact", 100, 0.93);
  }

  @Test
  void aCarefulObserversChangesAreFoundAndBothStatesNamed() {
    assertFound("careful", 100, 0.87);
  }

  @Test
  void whereNothingChangesNothingIsCut() {
    for (String name : new String[] {"exact", "careful", "careless"}) {
      Observer observer = Presets.named(name);
      double share = SwitchStudy.wronglyCut(SHEET, observer, 45, 300, 20);
      assertTrue(share <= 0.02, () -> name + ": " + share);
    }
  }
}

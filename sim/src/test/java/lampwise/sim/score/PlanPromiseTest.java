package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertTrue;

import lampwise.decode.RecordingPlan;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Person;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The promise of a plan on some pairs; all pairs are a study, see sim/docs/score.md. */
class PlanPromiseTest {
  private static final int COUNT = 300;

  /** What so few recordings of a promise that is kept may show by chance (three deviations). */
  private static final double CHANCE = 0.018;

  @ParameterizedTest
  @CsvSource({
    "tick, tock",
    "three, four",
    "code-23, code-32",
    "half, three",
    "rapid, code-23",
    "rapid, dark"
  })
  void aRecordingAsLongTellsAndAShorterOneDoesNot(String one, String two) {
    CodeSheet sheet = Bench.sheet();
    PlanStudy study = new PlanStudy(sheet, Person.careful(), 77);
    LampState first = sheet.state(one).orElseThrow();
    LampState second = sheet.state(two).orElseThrow();
    double seconds = study.plan().between(first, second).seconds().orElseThrow();
    double whole = study.told(first, second, seconds, COUNT);
    assertTrue(whole >= RecordingPlan.SURE - CHANCE, seconds + " s tell " + whole);
    double part = study.told(first, second, PlanStudy.SHORT * seconds, COUNT);
    assertTrue(part < whole && part < 0.995, PlanStudy.SHORT * seconds + " s tell " + part);
  }
}

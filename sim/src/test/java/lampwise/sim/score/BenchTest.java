package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import lampwise.rhythm.Phrase;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Labelled;
import lampwise.sim.Mix;
import lampwise.sim.SimulationException;
import org.junit.jupiter.api.Test;

class BenchTest {
  @Test
  void theSheetIsTheBench() {
    CodeSheet sheet = Bench.sheet();
    assertEquals(Basis.INVENTED, sheet.basis());
    assertEquals(0.05, sheet.clockTolerance());
    assertEquals(OptionalDouble.of(0.09), sheet.blinkSeconds());
    assertEquals(12, sheet.states().size());
    assertEquals(
        "1.5 to 2.5 blinks per second", Phrase.print(sheet.state("rapid").orElseThrow().rhythm()));
  }

  @Test
  void priorsAreTheUsualShares() {
    double[] priors = Bench.mix(Bench.sheet()).priors();
    double[] expected = new double[14];
    java.util.Arrays.fill(expected, 0.94 / 12);
    expected[12] = 0.05;
    expected[13] = 0.01;
    assertArrayEquals(expected, priors, 1e-12);
    assertEquals(8, Bench.mix(Bench.sheet()).unlisted().size());
  }

  @Test
  void whatASheetListsIsNotUnlisted() {
    CodeSheet bench = Bench.sheet();
    LampState first = bench.states().get(0);
    LampState ten =
        new LampState(
            "ten",
            Bench.mix(bench).unlisted().get(0),
            first.means(),
            first.condition(),
            first.seen(),
            1,
            first.labelSays(),
            first.clearedBy(),
            first.lamp());
    CodeSheet other = CodeSheet.of("Other", Basis.INVENTED, List.of(ten));
    assertEquals(7, Bench.mix(other).unlisted().size());
  }

  @Test
  void unlistedIsAllThatTheUnlistedMixShows() {
    Score score = new Score(Bench.unlistedMix(Bench.sheet()), 1);
    Cell cell = Bench.cells("careful").get(3);
    assertEquals(90, cell.seconds());
    Set<String> truths = new TreeSet<>();
    for (int i = 0; i < 100; i++) {
      truths.add(score.recording(cell, i).truth().state());
    }
    assertEquals(Set.of(CodeSheet.UNLISTED, CodeSheet.NO_RHYTHM), truths);
  }

  @Test
  void windowsAreThoseOfPeopleAndSensors() {
    assertEquals(
        List.of(10.0, 20.0, 45.0, 90.0), Bench.cells("exact").stream().map(Cell::seconds).toList());
    assertEquals(List.of(30.0, 90.0), Bench.cells("slow").stream().map(Cell::seconds).toList());
  }

  @Test
  void aRecordingDependsOnItsSeedCellAndNumberAlone() {
    Score score = new Score(Bench.mix(Bench.sheet()), 5);
    Cell cell = Bench.cells("careful").get(1);
    Labelled third = score.recording(cell, 3);
    assertEquals(third, new Score(Bench.mix(Bench.sheet()), 5).recording(cell, 3));
    assertFalse(third.equals(score.recording(cell, 4)));
    assertFalse(third.equals(new Score(Bench.mix(Bench.sheet()), 6).recording(cell, 3)));
  }

  @Test
  void sharesThatAreNoneAreRefused() {
    String message =
        assertThrows(
                SimulationException.class,
                () -> new Mix(Bench.sheet(), List.of(), List.of(), 0.7, 0.4))
            .getMessage();
    assertTrue(message.startsWith("the shares of a mix"), message);
  }
}

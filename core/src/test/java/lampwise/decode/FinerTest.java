package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Finer settings of the noise, for candidates in doubt. */
class FinerTest {
  private static final NoiseGrid GRID = NoiseGrid.ofPeople(0.01, false);
  private static final double[] LOG_PRIORS = {Math.log(0.5), Math.log(0.3), Math.log(0.2)};
  private static final double[] COARSE = {-20, -21, -40};

  /** Two candidates that hang on the noise; a third does not. */
  private static Sums sums() {
    List<Timing> timings = Timing.of(Noise.ofPeople(0.01, false));
    Sums sums = new Sums(2, timings, -500);
    for (Timing timing : timings) {
      for (int candidate = 0; candidate < 2; candidate++) {
        sums.add(candidate, timing, timing.all(COARSE[candidate]));
      }
    }
    return sums;
  }

  private static double[] finer(List<Integer> contenders, Finer.Fold fold) {
    return Finer.logs(GRID, contenders, LOG_PRIORS, COARSE, sums(), fold);
  }

  /** Logarithm of prior times likelihood, summed over all candidates. */
  private static double together(double[] logs) {
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      sum = Gauss.logAdd(sum, LOG_PRIORS[i] + logs[i]);
    }
    return sum;
  }

  @Test
  void whatSaysTheSameUnderEverySettingMovesNothing() {
    double[] logs =
        finer(List.of(0, 1), (candidate, timing, floor) -> timing.all(COARSE[candidate]));
    assertEquals(COARSE[0], logs[0], 1e-9);
    assertEquals(COARSE[1], logs[1], 1e-9);
    assertEquals(COARSE[2], logs[2]);
  }

  @Test
  void whoFitsWithOtherPeopleGainsWhatTheOthersLose() {
    double[] logs =
        finer(
            List.of(0, 1),
            (candidate, timing, floor) ->
                timing.all(
                    COARSE[candidate] + (candidate == 1 ? 20 * timing.any().firstLate() : 0)));
    assertTrue(logs[1] > COARSE[1] && logs[0] < COARSE[0]);
    assertEquals(together(COARSE), together(logs), 1e-9);
    double sum = 0;
    for (int i = 0; i < GRID.size(); i++) {
      sum += GRID.timing(i).weight() * Math.exp(20 * GRID.timing(i).any().firstLate());
    }
    double mean = sum / GRID.weight();
    assertEquals(COARSE[1] - COARSE[0] + Math.log((1 + 2 * mean) / 3), logs[1] - logs[0], 1e-9);
  }

  @Test
  void everyCandidateIsAskedForTheSameSettingsAndFarOnesAreNot() {
    List<Set<Timing>> asked = List.of(new HashSet<>(), new HashSet<>());
    finer(
        List.of(0, 1),
        (candidate, timing, floor) -> {
          asked.get(candidate).add(timing);
          return timing.all(-20 - 60 * Math.abs(Math.log(timing.any().sd() / 0.012)));
        });
    assertEquals(asked.get(0), asked.get(1));
    assertTrue(asked.get(0).size() < GRID.size());
    assertTrue(asked.get(0).stream().noneMatch(timing -> timing.any().sd() > 0.08));
  }

  @Test
  void thePointsOfTheGridHangTogetherAndShareOnePrior() {
    Set<Integer> seen = new HashSet<>(List.of(0));
    List<Integer> next = new ArrayList<>(seen);
    while (!next.isEmpty()) {
      for (int other : GRID.beside(next.remove(0))) {
        if (seen.add(other)) {
          next.add(other);
        }
      }
    }
    assertEquals(GRID.size(), seen.size());
    double inTime = 0;
    for (int i = 0; i < GRID.size(); i++) {
      int here = i;
      assertTrue(GRID.beside(i).stream().allMatch(other -> GRID.beside(other).contains(here)));
      assertEquals(i, GRID.nearest(GRID.timing(i)));
      inTime += GRID.timing(i).any().firstLate() == 0 ? GRID.timing(i).weight() : 0;
    }
    assertEquals(0.25, inTime / GRID.weight(), 1e-9);
    assertEquals(2 * GRID.size(), NoiseGrid.ofPeople(0.01, true).size(), "ends late or in time");
  }

  @Test
  void burstsThatWereNotedLateBeganEarlier() {
    double[] on = {0, 0.4, 0.8, 3, 3.4};
    double[] lengths = {0.1, 0.1, 0.1, 0.1, 0.1};
    Train late = new Train(on, lengths, 0, 9, 0.95, 1.05, 0).notedLate(0.1);
    double[] expected = {0, 0.45, 0.9, 3, 3.5};
    for (int i = 0; i < on.length; i++) {
      assertEquals(expected[i], late.on(i), 1e-9);
    }
    Train uneven = new Train(new double[] {0, 0.3, 0.8}, new double[3], 0, 9, 0.95, 1.05, 0);
    assertEquals(0.4, uneven.notedLate(0.1).on(1), 1e-9);
    assertEquals(0.9, uneven.notedLate(0.1).on(2), 1e-9);
    assertEquals(0.8, uneven.notedLate(0).on(2), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "2 blinks 0.5 s apart every 7 s, 2 blinks 0.6 s apart every 7.3 s, true",
    "2 blinks 0.5 s apart every 7 s, 2 blinks 0.8 s apart every 7 s, false",
    "2 blinks 0.5 s apart every 7 s, 2 blinks 0.5 s apart every 9 s, false",
    "2 blinks 0.5 s apart every 7 s, 3 blinks 0.5 s apart every 7 s, false",
    "3 blinks 0.5 s apart every 7 s, 3 blinks 0.56 s apart every 7 s, true",
    "3 blinks 0.5 s apart every 7 s, 3 blinks 0.65 s apart every 7 s, false",
    "1 blink every 7 s, 1 blink every 7.1 s, false"
  })
  void aLateFirstBlinkMakesOneStateLookLikeAnother(String one, String other, boolean alike) {
    Train a = train(one);
    Train b = train(other);
    assertEquals(alike, a.mayLookLike(b));
    assertEquals(alike, b.mayLookLike(a));
  }

  private static Train train(String phrase) {
    Evidence nothing =
        new Evidence(
            new Window(0, 60),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            0.01,
            true,
            false);
    Rhythm.Blinking rhythm = (Rhythm.Blinking) Sheets.rhythm(phrase);
    return Templates.of(rhythm, OptionalDouble.empty(), 0.05, nothing).get(0);
  }

  /** Exact but for the first of each pair, which is noted 0.06 s late: 0.44 s apart of 0.5 s. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.03, 0.06, 0.1})
  void whoIsExactButLateAtFirstIsUnderstood(double late) {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            "pair",
            "2 blinks 0.5 s apart every 7 s",
            "three",
            "3 blinks 0.5 s apart every 7 s",
            "single",
            "1 blink every 5 s");
    double[] starts = new double[24];
    for (int cycle = 0; cycle < 12; cycle++) {
      double error = 0.008 * Math.sin(5 * cycle);
      starts[2 * cycle] = 2 + late + 7 * cycle + error;
      starts[2 * cycle + 1] = 2.5 + 7 * cycle - error;
    }
    Reading reading = Answers.decode(sheet, BlinkLog.ofStarts(Marks.watched(0, 90), starts));
    assertEquals("pair", reading.candidates().get(0).state(), () -> Answers.shown(reading));
    assertTrue(reading.candidates().get(0).probability() > 0.95, () -> Answers.shown(reading));
  }
}

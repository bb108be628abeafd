package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Mix;
import lampwise.sim.Person;
import lampwise.sim.PlainSheet;
import lampwise.sim.SimulationException;
import org.junit.jupiter.api.Test;

class ReferenceTest {
  private static LampState state(String name, String phrase, Seen seen, double weight) {
    return PlainSheet.state(name, phrase, seen, weight);
  }

  private static CodeSheet sheet(double clock, LampState... states) {
    return PlainSheet.of(clock, OptionalDouble.of(0.1), List.of(states));
  }

  /**
   * Dark with weight 3 or random blinks, 0.5 a second, 10 % of all; a person who misses a fifth and
   * has 6 strays a minute, watches 10 s and taps twice. Dark: 0.1^2 e^-1. Random: (0.1 + 0.4)^2
   * e^-5. With priors 0.9 and 0.1 the odds are 0.9 * 0.01 e^-1 to 0.1 * 0.25 e^-5.
   */
  @Test
  void darkAgainstRandomByHand() {
    Mix mix =
        new Mix(
            sheet(0.05, state("dark", "dark", Seen.ALWAYS, 3)), List.of(), List.of(0.5), 0.05, 0.1);
    Person person = Person.plain().with("missed", 0.2).with("strays-per-minute", 6);
    double[] chances =
        new Reference(mix, person)
            .probabilities(BlinkLog.ofStarts(Marks.watched(0, 10), 2.0, 7.0))
            .told();
    double dark = 0.9 * 0.01 * Math.exp(-1);
    double random = 0.1 * 0.25 * Math.exp(-5);
    assertArrayEquals(
        new double[] {dark / (dark + random), 0, random / (dark + random)}, chances, 1e-9);
  }

  /**
   * One blink every 20 s or dark, watched for 10 s without a tap, nothing missed: the window of 10
   * s has no blink in half of all phases. Even weights, so dark has 1 / (1 + 1/2), whatever the
   * clock.
   */
  @Test
  void noBlinkInHalfACycleByHand() {
    Mix mix =
        new Mix(
            sheet(
                0,
                state("seldom", "1 blink every 20 s", Seen.ALWAYS, 1),
                state("dark", "dark", Seen.ALWAYS, 1)),
            List.of(),
            List.of(),
            0,
            0);
    double[] chances =
        new Reference(mix, Person.exact())
            .probabilities(BlinkLog.ofStarts(Marks.watched(0, 10)))
            .told();
    assertEquals(2.0 / 3, chances[1], 1e-3);
    assertEquals(1, chances[0] + chances[1], 1e-12);
  }

  @Test
  void whatIsNotCoveredIsSaid() {
    CodeSheet once = sheet(0.05, state("once", "3 blinks once", Seen.ALWAYS, 1));
    CodeSheet hidden = sheet(0.05, state("hidden", "1 blink every 3 s", Seen.TARGET, 1));
    List<String> said = new ArrayList<>();
    for (CodeSheet sheet : List.of(once, hidden)) {
      said.add(
          assertThrows(
                  SimulationException.class,
                  () -> new Reference(Mix.usual(sheet, List.of()), Person.exact()))
              .getMessage());
    }
    assertEquals(
        List.of(
            "the reference decoder does not cover \"once\": 3 blinks once",
            "the reference decoder does not cover states that are not always seen: hidden"),
        said);
  }

  /**
   * The one outside proof of all its sums: recordings drawn from its own mix are right as often as
   * it says. 80 readings, the seed fixed; five standard deviations of what it states.
   */
  @Test
  void itIsCalibratedOnTheBench() {
    Score score = new Score(Bench.mix(Bench.sheet()), Bench.SEED);
    List<Outcome> outcomes = new ArrayList<>();
    for (String name : List.of("careful", "careless")) {
      for (Cell cell : Bench.cells(name).subList(0, 2)) {
        Reference reference = new Reference(Bench.mix(Bench.sheet()), (Person) cell.watching());
        outcomes.addAll(
            IntStream.range(0, 20)
                .parallel()
                .mapToObj(n -> score.outcome(score.answer(reference, cell, n).told(), cell, n))
                .toList());
      }
    }
    long right = Stated.assertRightAsOftenAsStated(outcomes);
    Calibration calibration = Calibration.of(outcomes, 1);
    assertTrue(calibration.excess() < 0.03, calibration::toString);
    assertTrue(right > 52 && right < 80, "too easy or too hard to show anything: " + right);
  }
}

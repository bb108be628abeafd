package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Phrases;

/** Sheets that say no more than their rhythms, and what a reference must hold on any. */
final class PlainSheet {
  private PlainSheet() {}

  static LampState state(String name, String phrase, Seen seen, double weight) {
    return new LampState(
        name,
        Phrases.rhythm(phrase),
        "a state",
        Condition.OTHER,
        seen,
        weight,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static CodeSheet of(double clock, OptionalDouble blink, List<LampState> states) {
    return new CodeSheet(
        "Unit",
        Basis.INVENTED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        blink,
        states);
  }

  /**
   * Holds that the likeliest candidates are right as often as was stated, to five standard
   * deviations.
   *
   * @return how many are right
   */
  static long assertRightAsOftenAsStated(List<Outcome> outcomes) {
    double stated = 0;
    double variance = 0;
    for (Outcome outcome : outcomes) {
      stated += outcome.topProbability();
      variance += outcome.topProbability() * (1 - outcome.topProbability());
    }
    long right = outcomes.stream().filter(Outcome::isRight).count();
    assertEquals(stated, right, 5 * Math.sqrt(variance), "variance " + variance);
    return right;
  }
}

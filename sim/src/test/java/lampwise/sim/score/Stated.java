package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;

/** What a reference must hold on any sheet. */
final class Stated {
  private Stated() {}

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

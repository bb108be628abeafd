package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sim.Chance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatisticsTest {
  private static Outcome outcome(String truth, String top, double probability, String verdict) {
    return new Outcome(
        truth,
        top,
        probability,
        truth.equals(top) ? probability : 1 - probability,
        verdict,
        verdict.equals("decoded") ? Optional.of(top) : Optional.empty());
  }

  private static List<Outcome> rights(int right, int wrong) {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < right + wrong; i++) {
      outcomes.add(outcome("a", i < right ? "a" : "b", 0.9, "undecided"));
    }
    return outcomes;
  }

  /**
   * R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in
   * Medicine 17, 1998, table I, method 3; from memory.
   */
  @ParameterizedTest
  @CsvSource({"81, 263, 0.2553, 0.3662", "15, 148, 0.0624, 0.1605", "0, 20, 0, 0.1611"})
  void sharesHaveWilsonsInterval(int hits, int all, double low, double high) {
    Interval interval = Interval.share(hits, all);
    assertEquals((double) hits / all, interval.value());
    assertEquals(low, interval.low(), 5e-5);
    assertEquals(high, interval.high(), 5e-5);
  }

  /** Its ends are where the share is 1.96 standard errors, taken at the end itself, away. */
  @Test
  void theEndsSolveWilsonsEquation() {
    for (int hits = 1; hits < 50; hits++) {
      Interval interval = Interval.share(hits, 50);
      for (double end : new double[] {interval.low(), interval.high()}) {
        double error = Math.sqrt(end * (1 - end) / 50);
        assertEquals(1.959964, Math.abs(end - interval.value()) / error, 1e-5);
      }
    }
    assertEquals(1, Interval.share(7, 7).high());
    assertTrue(Double.isNaN(Interval.share(0, 0).value()));
  }

  /** 100 pairs, 6 better and 2 worse: (7 - 3) / 102, error sqrt((10 - 16 / 102) / 102^2). */
  @Test
  void differencesArePaired() {
    List<Outcome> one = new ArrayList<>(rights(6, 2));
    List<Outcome> other = new ArrayList<>(rights(0, 6));
    other.addAll(rights(2, 0));
    one.addAll(rights(92, 0));
    other.addAll(rights(92, 0));
    Interval difference = Interval.difference(one, other);
    assertEquals(0.04, difference.value(), 1e-12);
    double half = 1.959964 * Math.sqrt(10 - 16.0 / 102) / 102;
    assertEquals(4.0 / 102 - half, difference.low(), 1e-6);
    assertEquals(4.0 / 102 + half, difference.high(), 1e-6);
    Interval same = Interval.difference(one, one);
    assertEquals(0, same.value());
    assertTrue(same.low() < 0 && same.high() > 0, same::toString);
  }

  /** Drawn pairs whose true difference is known: the interval holds it in about 95 % of cases. */
  @Test
  void theIntervalOfDifferencesHoldsTheTruth() {
    int held = 0;
    for (int run = 0; run < 1000; run++) {
      Chance chance = Chance.of(run);
      List<Outcome> one = new ArrayList<>();
      List<Outcome> other = new ArrayList<>();
      for (int i = 0; i < 200; i++) {
        boolean easy = chance.happens(0.9);
        one.addAll(easy || chance.happens(0.4) ? rights(1, 0) : rights(0, 1));
        boolean right = easy ? chance.happens(0.95) : chance.happens(0.4);
        other.addAll(right ? rights(1, 0) : rights(0, 1));
      }
      Interval difference = Interval.difference(one, other);
      held += difference.low() <= 0.045 && difference.high() >= 0.045 ? 1 : 0;
    }
    assertTrue(held >= 925 && held <= 985, "held " + held);
  }

  /** Of 1, 2, 3, 4 the standard deviation is the root of 5/3. */
  @Test
  void aMeanHasTheNormalInterval() {
    Interval mean = Interval.mean(1, 2, 3, 4);
    assertEquals(2.5, mean.value(), 1e-12);
    assertEquals(2.5 - 1.959964 * Math.sqrt(5.0 / 3 / 4), mean.low(), 1e-6);
    assertEquals(2.5 + 1.959964 * Math.sqrt(5.0 / 3 / 4), mean.high(), 1e-6);
    assertEquals(Double.POSITIVE_INFINITY, Interval.mean(7).high());
    assertTrue(Double.isNaN(Interval.mean().value()));
  }

  @Test
  void outcomesAreCounted() {
    List<Outcome> outcomes =
        List.of(
            outcome("a", "a", 0.96, "decoded"),
            outcome("a", "b", 0.98, "decoded"),
            outcome("a", "a", 0.5, "undecided"),
            outcome("unlisted", "unlisted", 0.97, "unlisted"),
            outcome("b", "unlisted", 0.97, "unlisted"),
            outcome("no-rhythm", "no-rhythm", 0.8, "unreadable"));
    Tally tally = Tally.of(outcomes);
    double loss =
        -(Math.log(0.96)
                + Math.log(0.02)
                + Math.log(0.5)
                + Math.log(0.97)
                + Math.log(0.03)
                + Math.log(0.8))
            / 6;
    assertEquals(new Tally(6, 4, 2, 1, 1, 1, 2, 1, tally.logLoss()), tally);
    assertEquals(loss, tally.logLoss(), 1e-12);
    assertEquals(0.5, tally.misreadShare().value());
    assertEquals(4.0 / 6, tally.rightShare().value());
    assertEquals(
        Map.of(
            "a", Map.of("a", 2, "b", 1),
            "b", Map.of("unlisted", 1),
            "unlisted", Map.of("unlisted", 1),
            "no-rhythm", Map.of("no-rhythm", 1)),
        Tally.confusion(outcomes));
  }

  @Test
  void aTruthWithoutProbabilityLosesAtMost() {
    Outcome sure = outcome("a", "b", 1, "decoded");
    assertEquals(-Math.log(Tally.LEAST_PROBABILITY), Tally.of(List.of(sure)).logLoss(), 1e-12);
    assertTrue(Double.isNaN(Tally.of(List.of()).logLoss()));
  }

  @Test
  void bareProbabilitiesBecomeAnOutcome() {
    List<String> names = List.of("a", "b", "unlisted", "no-rhythm");
    Outcome decoded = Outcome.of("a", names, new double[] {0.01, 0.97, 0.01, 0.01});
    assertEquals(Optional.of("b"), decoded.answer());
    assertTrue(decoded.isMisread() && !decoded.isRight());
    assertEquals(0.01, decoded.truthProbability());
    List<String> verdicts = new ArrayList<>();
    for (double[] chances :
        List.of(
            new double[] {0.5, 0.5, 0, 0},
            new double[] {0.02, 0.02, 0.96, 0},
            new double[] {0.02, 0.02, 0, 0.96})) {
      verdicts.add(Outcome.of("a", names, chances).verdict());
    }
    assertEquals(List.of("undecided", "unlisted", "unreadable"), verdicts);
  }

  private static List<Outcome> drawn(int count, double overstated) {
    Chance chance = Chance.of(3);
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double chanceOfRight = chance.uniform(0.4, 0.9);
      boolean right = chance.happens(chanceOfRight);
      outcomes.add(outcome("a", right ? "a" : "b", chanceOfRight + overstated, "undecided"));
    }
    return outcomes;
  }

  @Test
  void aCalibratedDecoderHasNothingLeft() {
    Calibration calibration = Calibration.of(drawn(10_000, 0), 1);
    assertEquals(10, calibration.bins().size());
    assertTrue(calibration.bins().stream().allMatch(bin -> bin.count() == 1000));
    assertEquals(0, calibration.excess(), 0.005);
    assertTrue(calibration.byChance() > 0.005, calibration::toString);
  }

  @Test
  void overstatingByATenthIsATenth() {
    Calibration calibration = Calibration.of(drawn(10_000, 0.1), 1);
    assertEquals(0.1, calibration.error(), 0.015);
    assertEquals(0.1, calibration.excess(), 0.02);
    for (Calibration.Bin bin : calibration.bins()) {
      assertTrue(bin.stated() > bin.right().value(), bin::toString);
    }
  }

  /** Two bins by hand: 0.6 and 0.8 stated, one right and one wrong. */
  @Test
  void fewOutcomesByHand() {
    Calibration calibration =
        Calibration.of(
            List.of(outcome("a", "a", 0.8, "undecided"), outcome("a", "b", 0.6, "undecided")), 1);
    assertEquals(2, calibration.bins().size());
    assertEquals(0.6, calibration.bins().get(0).stated());
    assertEquals(0, calibration.bins().get(0).right().value());
    assertEquals((0.2 + 0.6) / 2, calibration.error(), 1e-12);
    // Each is off by 2 p (1 - p) on average.
    assertEquals((2 * 0.8 * 0.2 + 2 * 0.6 * 0.4) / 2, calibration.byChance(), 0.02);
    assertEquals(
        calibration,
        Calibration.of(
            Arrays.asList(outcome("a", "a", 0.8, "undecided"), outcome("a", "b", 0.6, "undecided")),
            1));
  }
}

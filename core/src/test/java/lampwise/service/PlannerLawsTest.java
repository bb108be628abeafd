package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The planner beside every plan there is. */
class PlannerLawsTest {
  /** Kadane and Simon 1977; Heckerman et al. 1995, page 52. */
  @Test
  void chanceOverCostIsOptimalForSingleFaults() {
    SplittableRandom random = new SplittableRandom(1125);
    for (int round = 0; round < 10_000; round++) {
      int count = 2 + random.nextInt(5);
      double[] weights = new double[count];
      double sum = 0;
      for (int i = 0; i < count; i++) {
        weights[i] = 0.01 + random.nextDouble();
        sum += weights[i];
      }
      List<Problem.Repair> repairs = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        weights[i] /= sum;
        double[] fixes = new double[count];
        fixes[i] = 1;
        repairs.add(
            new Problem.Repair(0.1 + 20 * random.nextDouble(), 10 * random.nextDouble(), fixes, 0));
      }
      Problem problem = new Problem(count, repairs, List.of(), Double.POSITIVE_INFINITY);
      double lowest = Double.MAX_VALUE;
      for (int[] order : Orders.all(count)) {
        lowest = Math.min(lowest, problem.costOfOrder(weights, order));
      }
      double chosen = new Planner(problem).repairsOnly(Belief.start(weights));
      assertEquals(lowest, chosen, 1e-9 * lowest, "round " + round);
    }
  }

  /**
   * A plan followed to its end costs what was expected of it at the most, and never less than can
   * be.
   */
  @Test
  void followingThePlanCostsLittleMoreThanTheBestPlan() {
    SplittableRandom random = new SplittableRandom(1126);
    double excess = 0;
    int rounds = 300;
    for (int round = 0; round < rounds; round++) {
      Problem problem = problem(random, 3 + random.nextInt(3), 1 + random.nextInt(3));
      double[] weights = new double[problem.causes()];
      for (int i = 0; i < weights.length; i++) {
        weights[i] = random.nextDouble() / weights.length;
      }
      double exact = ExactPlan.cost(problem, weights);
      double followed = Followed.cost(problem, weights);
      double expected = new Planner(problem).best(Belief.start(weights)).cost();
      assertTrue(followed >= exact - 1e-6, "round " + round + ": no plan is better than the best");
      assertTrue(followed <= expected + 1e-6, "round " + round + ": dearer than was said");
      excess += followed / exact - 1;
    }
    double mean = 100 * excess / rounds;
    System.out.printf(Locale.ROOT, "mean excess over the exact plan, random: %.2f %%%n", mean);
    assertTrue(mean < 1.81, "beside the 1.81 % of Jensen et al. 2001, table 2: " + mean);
  }

  private static Problem problem(SplittableRandom random, int repairs, int checks) {
    int causes = repairs + 1;
    List<Problem.Repair> made = new ArrayList<>();
    for (int i = 0; i < repairs; i++) {
      double[] fixes = new double[causes];
      fixes[i] = 0.7 + 0.3 * random.nextDouble();
      fixes[random.nextInt(causes)] = random.nextDouble();
      made.add(new Problem.Repair(1 + 30 * random.nextDouble(), 0, fixes, 0));
    }
    List<Problem.Test> tests = new ArrayList<>();
    for (int i = 0; i < checks; i++) {
      double[][] rows = new double[2][causes];
      for (int cause = 0; cause < causes; cause++) {
        rows[0][cause] = random.nextDouble();
        rows[1][cause] = 1 - rows[0][cause];
      }
      tests.add(new Problem.Test(0.5 + 6 * random.nextDouble(), rows, 0));
    }
    return new Problem(causes, made, tests, 60 + 60 * random.nextDouble());
  }
}

package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Worked examples of troubleshooting as decision theory, each named by its source. */
class PublishedPlansTest {
  private static final double NOBODY = Double.POSITIVE_INFINITY;
  private static final double EXACT = 1e-9;

  /** The figure is printed with two decimals. */
  private static final double PRINTED = 0.005;

  private static Planner.Choice best(Problem problem, double... weights) {
    return new Planner(problem).best(Belief.start(weights));
  }

  /**
   * Heckerman, Breese and Rommelse 1995, figure 1: observing costs 5, the repairs 10 and 20, both
   * together always fix. The figure's chances are no mixture of each other, so that each branch is
   * fed as it is printed: a cause for "the first repair will do" and one for "it will not".
   */
  @Test
  void heckerman1995ObservesFirst() {
    double seenTrue = branch(10, .9, 20);
    double seenFalse = Math.min(branch(10, .25, 20), branch(20, .7, 10));
    assertEquals(17, 5 + seenTrue, EXACT);
    assertEquals(34.9, 5 + branch(20, .01, 10), EXACT);
    assertEquals(30, 5 + branch(10, .25, 20), EXACT);
    assertEquals(28, 5 + seenFalse, EXACT);
    assertEquals(20, branch(10, .5, 20), EXACT);
    assertEquals(29.5, branch(20, .05, 10), EXACT);

    // Four outcomes by what is seen and which repair will do first.
    Problem observe =
        new Problem(
            3,
            List.of(Problem.Repair.of(10, 1, 0, 0), Problem.Repair.of(20, 1, 1, 1)),
            List.of(),
            NOBODY);
    assertEquals(12, observe.costOfOrder(new double[] {.9, .1, 0}, 0, 1), EXACT);
    assertEquals(19.2, 5 + .8 * seenTrue + .2 * seenFalse, EXACT);
  }

  /** The first repair works with some chance, else the second does. */
  private static double branch(double cost, double works, double second) {
    Problem problem =
        new Problem(
            2,
            List.of(Problem.Repair.of(cost, 1, 0), Problem.Repair.of(second, 0, 1)),
            List.of(),
            NOBODY);
    return problem.costOfOrder(new double[] {works, 1 - works}, 0, 1);
  }

  /** Jensen et al. 2001, figure 1: three actions that overlap. */
  @Test
  void jensen2001GreedyIsNotOptimal() {
    Problem problem =
        new Problem(
            4,
            List.of(
                Problem.Repair.of(1, 1, 1, 0, 0),
                Problem.Repair.of(1, 0, 1, 1, 0),
                Problem.Repair.of(1, 0, 0, 1, 1)),
            List.of(),
            NOBODY);
    double[] weights = {.20, .25, .40, .15};
    assertEquals(1.50, problem.costOfOrder(weights, 1, 0, 2), EXACT);
    assertEquals(1.55, problem.costOfOrder(weights, 1, 2, 0), EXACT);
    assertEquals(1.55, problem.costOfOrder(weights, 0, 2), EXACT);
    assertEquals(1.70, problem.costOfOrder(weights, 0, 1, 2), EXACT);
    assertEquals(1.65, problem.costOfOrder(weights, 2, 1, 0), EXACT);
    assertEquals(1.45, problem.costOfOrder(weights, 2, 0), EXACT);
    assertEquals(1.45, ExactPlan.cost(problem, weights), EXACT);
    assertEquals(1.50, new Planner(problem).repairsOnly(Belief.start(weights)), EXACT);
    Planner.Choice chosen = best(problem, weights);
    assertEquals(2, chosen.number(), "looking ahead finds the optimal first action");
    assertEquals(1.45, chosen.cost(), EXACT);
  }

  /** Lin 2014, figure 2: a question that is not worth its cost. */
  @Test
  void lin2014AsksNothing() {
    Problem problem =
        new Problem(
            3,
            List.of(
                Problem.Repair.of(1, 1, 0, 0),
                Problem.Repair.of(1, 0, 1, 0),
                Problem.Repair.of(1, 0, 0, 1)),
            List.of(new Problem.Test(1, new double[][] {{.5, 1, 0}, {.5, 0, 1}}, 0)),
            NOBODY);
    Belief start = Belief.start(new double[] {.5, .25, .25});
    Belief failed = start.failed(problem, 0);
    double asking = start.costOf(problem, problem.repairs().get(0));
    asking += failed.costOf(problem, problem.checks().get(0));
    for (int answer = 0; answer < 2; answer++) {
      Belief told = failed.answered(problem, 0, answer);
      asking += told.costOf(problem, problem.repairs().get(1 + answer));
    }
    assertEquals(2, asking, EXACT);
    assertEquals(1.75, problem.costOfOrder(new double[] {.5, .25, .25}, 0, 1, 2), EXACT);
    assertEquals(1.75, ExactPlan.cost(problem, .5, .25, .25), EXACT);
    Planner.Choice chosen = best(problem, .5, .25, .25);
    assertEquals(Planner.Act.REPAIR, chosen.act());
    assertEquals(1.75, chosen.cost(), EXACT);
  }

  /** Langseth and Jensen 2003, example 4: the regions follow from its efficiencies and costs. */
  @Test
  void langseth2003LooksPastTheMostEfficient() {
    // Causes: mended by 2 and 3, by 2 alone, by 2 and 4, by 3 and 4, by 4 alone.
    double[] weights = {.357, .157, .015, .267, .204};
    Problem problem =
        new Problem(
            5,
            List.of(
                Problem.Repair.of(1, 1, 1, 1, 0, 0),
                Problem.Repair.of(1, 1, 0, 0, 1, 0),
                Problem.Repair.of(1, 0, 0, 1, 1, 1)),
            List.of(),
            NOBODY);
    Belief start = Belief.start(weights);
    assertEquals(.529, start.gain(problem.repairs().get(0)), EXACT);
    assertEquals(.624, start.gain(problem.repairs().get(1)), EXACT);
    assertEquals(.486, start.gain(problem.repairs().get(2)), EXACT);
    assertEquals(1.58, problem.costOfOrder(weights, 1, 0, 2), PRINTED);
    assertEquals(1.47, problem.costOfOrder(weights, 0, 2), PRINTED);
    assertEquals(1.47, ExactPlan.cost(problem, weights), PRINTED);
    assertEquals(1.47, best(problem, weights).cost(), PRINTED);
  }

  /** Derived from the service call of Heckerman et al. 1995: all three before handing over. */
  @Test
  void handingOverComesAfterAllThree() {
    double[] weights = {.5, .3, .2};
    Problem problem =
        new Problem(
            3,
            List.of(
                new Problem.Repair(10, 40, new double[] {1, 0, 0}, 0),
                new Problem.Repair(15, 60, new double[] {0, 1, 0}, 0),
                new Problem.Repair(40, 150, new double[] {0, 0, 1}, 0)),
            List.of(),
            200);
    assertEquals(200, problem.costOfOrder(weights), EXACT);
    assertEquals(130, problem.costOfOrder(weights, 0), EXACT);
    assertEquals(95.5, problem.costOfOrder(weights, 0, 1), EXACT);
    assertEquals(93.5, problem.costOfOrder(weights, 0, 1, 2), EXACT);
    assertEquals(93.5, ExactPlan.cost(problem, weights), EXACT);
    assertEquals(93.5, best(problem, weights).cost(), EXACT);
  }

  /** "Sensor sees, no flush": derived; chances and minutes are illustrative, no source. */
  @Test
  void sensorSeesNoFlush() {
    double[] weights = {.20, .30, .15, .25, .06, .04};
    double[] minutes = {1, 2, 2, 12, 6, 10};
    double[] fix = {2, 3, 2, 10, 8, 15};
    List<Problem.Repair> repairs =
        IntStream.range(0, 6)
            .mapToObj(
                i -> {
                  double[] fixes = new double[6];
                  fixes[i] = 1;
                  return new Problem.Repair(minutes[i], fix[i], fixes, 0);
                })
            .toList();
    Problem problem = new Problem(6, repairs, List.of(), NOBODY);
    double lowest = Double.MAX_VALUE;
    double highest = 0;
    int orders = 0;
    for (int[] order : Orders.all(6)) {
      double cost = problem.costOfOrder(weights, order);
      lowest = Math.min(lowest, cost);
      highest = Math.max(highest, cost);
      orders++;
    }
    assertEquals(720, orders);
    assertEquals(13.98, lowest, PRINTED);
    assertEquals(34.24, highest, PRINTED);
    assertEquals(17.53, problem.costOfOrder(weights, 1, 3, 0, 2, 4, 5), PRINTED);
    assertEquals(lowest, new Planner(problem).repairsOnly(Belief.start(weights)), EXACT);
    assertEquals(lowest, ExactPlan.cost(problem, weights), EXACT);
    assertTrue(best(problem, weights).cost() <= lowest + EXACT);
  }
}

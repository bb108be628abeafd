package lampwise.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Says what to do next about a {@link Problem}, by the lowest expected cost.
 *
 * <p>What a belief costs without any further check is worked out by trying repairs in the order of
 * chance over cost, renewed after each, and handing over at the best moment (Kadane and Simon 1977;
 * Heckerman, Breese and Rommelse 1995; Jensen et al. 2001). On top of that lie two steps of looking
 * ahead: each check is valued by what its answers leave, a further check or a repair included.
 */
final class Planner {
  /** What is done first. */
  enum Act {
    HAND_OVER,
    REPAIR,
    CHECK
  }

  /**
   * A first step and what it leads to.
   *
   * @param act what it is
   * @param number the number of the repair or check; 0 for handing over
   * @param cost the expected cost from here to the end, times the sum of the weights
   */
  record Choice(Act act, int number, double cost) {}

  /** How many of the best first steps are looked at two steps ahead. */
  private static final int WIDTH = 4;

  /** How many repairs, the best by chance over cost, are thought of as first steps. */
  private static final int REPAIRS = 3;

  /** How much better a check must be, so that equal costs do not cause idle questions. */
  private static final double WORTH = 1e-9;

  private final Problem problem;

  Planner(Problem problem) {
    this.problem = problem;
  }

  /** The best first step, two steps looked ahead. */
  Choice best(Belief belief) {
    return all(belief).get(0);
  }

  /** The first steps that were thought of, best first; handing over is always among them. */
  List<Choice> all(Belief belief) {
    return ahead(belief, 2);
  }

  private List<Choice> ahead(Belief belief, int depth) {
    List<Choice> near = new ArrayList<>();
    for (int repair : repairs(belief)) {
      near.add(choice(belief, Act.REPAIR, repair, 0));
    }
    for (int check = 0; check < problem.checks().size(); check++) {
      if (!belief.wasMade(check)) {
        near.add(choice(belief, Act.CHECK, check, 0));
      }
    }
    near.sort(Comparator.comparingDouble(Choice::cost));
    List<Choice> result = new ArrayList<>();
    for (int i = 0; i < near.size(); i++) {
      Choice choice = near.get(i);
      boolean further = depth > 1 && (i < WIDTH || choice.act() == Act.REPAIR);
      result.add(further ? choice(belief, choice.act(), choice.number(), depth - 1) : choice);
    }
    result.add(new Choice(Act.HAND_OVER, 0, belief.handOver(problem)));
    result.sort(Comparator.comparingDouble(Choice::cost));
    return result;
  }

  private Choice choice(Belief belief, Act act, int number, int depth) {
    double cost;
    if (act == Act.REPAIR) {
      cost = belief.costOf(problem, problem.repairs().get(number));
      cost += value(belief.failed(problem, number), depth);
    } else {
      Problem.Test check = problem.checks().get(number);
      cost = belief.costOf(problem, check) + WORTH * belief.sum();
      for (int answer = 0; answer < check.likelihoods().length; answer++) {
        cost += value(belief.answered(problem, number, answer), depth);
      }
    }
    return new Choice(act, number, cost);
  }

  private double value(Belief belief, int depth) {
    if (belief.isMended()) {
      return 0;
    }
    return depth == 0 ? repairsOnly(belief) : ahead(belief, depth).get(0).cost();
  }

  /**
   * The expected cost without any further check but those that repairs need.
   *
   * @return the cost, times the sum of the weights; infinite if nothing can mend all causes
   */
  double repairsOnly(Belief start) {
    Belief belief = start;
    double best = belief.handOver(problem);
    double cost = 0;
    while (!belief.isMended()) {
      int next = mostEfficient(belief);
      if (next < 0) {
        break;
      }
      cost += belief.costOf(problem, problem.repairs().get(next));
      if (!(cost < best)) {
        break;
      }
      belief = belief.failed(problem, next);
      best = Math.min(best, cost + belief.handOver(problem));
    }
    return best;
  }

  /** The repairs that may come first: the most efficient ones. */
  private List<Integer> repairs(Belief belief) {
    List<Integer> best = new ArrayList<>();
    for (int i = 0; i < problem.repairs().size(); i++) {
      if (!belief.wasTried(i) && belief.gain(problem.repairs().get(i)) > 0) {
        best.add(i);
      }
    }
    best.sort(Comparator.comparingDouble((Integer i) -> -efficiency(belief, i)));
    return best.subList(0, Math.min(REPAIRS, best.size()));
  }

  /** The untried repair with the highest chance over cost, or -1 if none helps. */
  private int mostEfficient(Belief belief) {
    int best = -1;
    double highest = 0;
    for (int i = 0; i < problem.repairs().size(); i++) {
      if (!belief.wasTried(i)) {
        double efficiency = efficiency(belief, i);
        if (efficiency > highest) {
          highest = efficiency;
          best = i;
        }
      }
    }
    return best;
  }

  /** Chance over cost; what a repair costs only if it works does not count (1995, page 52). */
  private double efficiency(Belief belief, int number) {
    Problem.Repair repair = problem.repairs().get(number);
    double cost = repair.cost() + belief.costOfNeeds(problem, repair.needs());
    return belief.gain(repair) / cost;
  }
}

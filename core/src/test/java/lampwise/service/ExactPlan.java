package lampwise.service;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwise.service.Problem.Repair;
import lampwise.service.Problem.Test;

/**
 * The lowest expected cost of any plan, by trying every one. What is known depends only on which
 * repairs failed and what each check answered, not on their order, so each such state is worked out
 * once. A yardstick: it shares with the planner under test the belief and nothing of its choices.
 */
final class ExactPlan {
  private final Problem problem;
  private final Map<Long, Double> known = new HashMap<>();

  private ExactPlan(Problem problem) {
    this.problem = problem;
  }

  static double cost(Problem problem, double... weights) {
    return new ExactPlan(problem).cost(Belief.start(weights), 0);
  }

  /** The state: one bit a repair, four bits a check. */
  private double cost(Belief belief, long state) {
    if (belief.isMended()) {
      return 0;
    }
    Double before = known.get(state);
    if (before != null) {
      return before;
    }
    double best = belief.handOver(problem);
    List<Repair> repairs = problem.repairs();
    for (int i = 0; i < repairs.size(); i++) {
      if (!belief.wasTried(i) && belief.gain(repairs.get(i)) > 0) {
        best =
            Math.min(
                best,
                belief.costOf(problem, repairs.get(i))
                    + cost(belief.failed(problem, i), state | 1L << i));
      }
    }
    for (int i = 0; i < problem.checks().size(); i++) {
      if (!belief.wasMade(i)) {
        Test check = problem.checks().get(i);
        double cost = belief.costOf(problem, check);
        for (long answer = 0; answer < check.likelihoods().length; answer++) {
          long next = state | (answer + 1) << (repairs.size() + 4 * i);
          cost += cost(belief.answered(problem, i, (int) answer), next);
        }
        best = Math.min(best, cost);
      }
    }
    known.put(state, best);
    return best;
  }
}

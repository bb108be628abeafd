package lampwise.service;

/** What the planner's choices cost when they are followed to the end, thought anew at each step. */
final class Followed {
  private Followed() {}

  static double cost(Problem problem, double... weights) {
    return cost(problem, Belief.start(weights));
  }

  private static double cost(Problem problem, Belief belief) {
    if (belief.isMended()) {
      return 0;
    }
    Planner.Choice choice = new Planner(problem).best(belief);
    switch (choice.act()) {
      case HAND_OVER:
        return belief.handOver(problem);
      case REPAIR:
        return belief.costOf(problem, problem.repairs().get(choice.number()))
            + cost(problem, belief.failed(problem, choice.number()));
      default:
        Problem.Test check = problem.checks().get(choice.number());
        double cost = belief.costOf(problem, check);
        for (int answer = 0; answer < check.likelihoods().length; answer++) {
          cost += cost(problem, belief.answered(problem, choice.number(), answer));
        }
        return cost;
    }
  }
}

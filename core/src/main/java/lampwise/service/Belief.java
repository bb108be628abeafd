package lampwise.service;

/**
 * What is known of a {@link Problem} at some point: the weight of each cause, what was tried and
 * what was asked. Weights are not normalised; their sum is the chance of getting here, so that
 * costs of different outcomes simply add up.
 */
final class Belief {
  /** A sum of weights below which the fault counts as mended. */
  private static final double NOTHING = 1e-12;

  private final double[] weights;
  private final double sum;
  private final long tried;
  private final long made;

  private Belief(double[] weights, long tried, long made) {
    this.weights = weights;
    this.tried = tried;
    this.made = made;
    double total = 0;
    for (double weight : weights) {
      total += weight;
    }
    sum = total;
  }

  /** Nothing tried, nothing asked. */
  static Belief start(double[] weights) {
    return new Belief(weights.clone(), 0, 0);
  }

  /** The chance of getting here. */
  double sum() {
    return sum;
  }

  boolean isMended() {
    return !(sum > NOTHING);
  }

  boolean wasTried(int repair) {
    return (tried >> repair & 1) != 0;
  }

  boolean wasMade(int check) {
    return (made >> check & 1) != 0;
  }

  /** What handing over costs from here. */
  double handOver(Problem problem) {
    return isMended() ? 0 : problem.handOver() * sum;
  }

  /** The chance that a repair works, times that of getting here. */
  double gain(Problem.Repair repair) {
    double gain = 0;
    double[] fixes = repair.fixes();
    for (int i = 0; i < weights.length; i++) {
      gain += weights[i] * fixes[i];
    }
    return gain;
  }

  /** What trying a repair costs from here, needed checks included. */
  double costOf(Problem problem, Problem.Repair repair) {
    return (repair.cost() + problem.costOfNeeds(repair.needs(), made)) * sum
        + repair.extra() * gain(repair);
  }

  /** What checks cost that are needed and not yet made. */
  double costOfNeeds(Problem problem, long needs) {
    return problem.costOfNeeds(needs, made);
  }

  /** What a check costs from here, needed checks included. */
  double costOf(Problem problem, Problem.Test check) {
    return (check.cost() + problem.costOfNeeds(check.needs(), made)) * sum;
  }

  /** What is known after a repair that did not work. */
  Belief failed(Problem problem, int number) {
    Problem.Repair repair = problem.repairs().get(number);
    double[] left = new double[weights.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = weights[i] * (1 - repair.fixes()[i]);
    }
    return new Belief(left, tried | 1L << number, made | repair.needs());
  }

  /** What is known after an answer. */
  Belief answered(Problem problem, int number, int answer) {
    Problem.Test check = problem.checks().get(number);
    double[] chances = check.likelihoods()[answer];
    double[] left = new double[weights.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = weights[i] * chances[i];
    }
    return new Belief(left, tried, made | check.needs() | 1L << number);
  }
}

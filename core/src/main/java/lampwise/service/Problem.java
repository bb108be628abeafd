package lampwise.service;

import java.util.List;

/**
 * A fault to be found and mended, in the abstract: one of some causes is there, repairs may mend
 * it, checks tell the causes apart, and handing over always works.
 *
 * <p>Assumed are a single fault, costs that do not depend on what was done before, and that whether
 * a repair has worked is seen at once (Heckerman, Breese and Rommelse 1995, pages 51 and 52).
 *
 * @param causes how many causes there are
 * @param repairs the repairs; each is tried once at the most
 * @param checks the checks; each is made once at the most
 * @param handOver what handing over costs; positive infinity where nobody can be handed over to
 */
record Problem(int causes, List<Repair> repairs, List<Test> checks, double handOver) {
  /** The most repairs, and the most checks, that a problem can have. */
  static final int MOST = Long.SIZE;

  /** Keeps copies of the lists. */
  Problem {
    repairs = List.copyOf(repairs);
    checks = List.copyOf(checks);
    Rules.that(
        repairs.size() <= MOST && checks.size() <= MOST,
        "a problem has at most " + MOST + " repairs and " + MOST + " checks");
  }

  /**
   * Something that may mend the fault.
   *
   * @param cost what trying it costs, over 0
   * @param extra what it costs besides if it does mend the fault, 0 or more
   * @param fixes the chance that it mends each cause
   * @param needs the checks that must be made before, one bit each, in the order of the problem
   */
  @SuppressWarnings("ArrayRecordComponent") // Inner loops; nobody outside the package sees it.
  record Repair(double cost, double extra, double[] fixes, long needs) {
    /** A repair without anything before or besides. */
    static Repair of(double cost, double... fixes) {
      return new Repair(cost, 0, fixes, 0);
    }
  }

  /**
   * Something that tells the causes apart.
   *
   * @param cost what it costs, over 0
   * @param likelihoods for each answer its chance under each cause
   * @param needs the checks that must be made before, one bit each
   */
  @SuppressWarnings("ArrayRecordComponent") // Inner loops; nobody outside the package sees it.
  record Test(double cost, double[][] likelihoods, long needs) {}

  /** What checks cost that are needed and not yet made. */
  double costOfNeeds(long needs, long made) {
    long open = needs & ~made;
    double cost = 0;
    while (open != 0) {
      cost += checks.get(Long.numberOfTrailingZeros(open)).cost();
      open &= open - 1;
    }
    return cost;
  }

  /**
   * The expected cost of trying all repairs in an order until one works, then handing over.
   *
   * @param weights the weights of the causes
   * @param order numbers of repairs
   * @return the cost, times the sum of the weights
   */
  double costOfOrder(double[] weights, int... order) {
    Belief belief = Belief.start(weights);
    double cost = 0;
    for (int number : order) {
      cost += belief.costOf(this, repairs.get(number));
      belief = belief.failed(this, number);
    }
    return cost + belief.handOver(this);
  }
}

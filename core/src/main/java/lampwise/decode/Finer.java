package lampwise.decode;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Likelihoods of the candidates between which coarse settings of the noise leave a doubt, averaged
 * over finer settings too. Only the settings near those that matter are looked at, the same ones
 * for each candidate; what the candidates have together stays as it is, so that they remain
 * comparable with the others.
 */
final class Finer {
  /** How far behind the best a candidate is still in doubt (natural logarithm). */
  private static final double DOUBT = 6;

  /** The share of the coarse settings in the prior. */
  private static final double COARSE = 1.0 / 3;

  /** Beside a point that adds this much less than the best one no other is looked at. */
  private static final double REACH = 4;

  /** A setting that adds this much less to a candidate than it has is not looked at closely. */
  private static final double NEGLIGIBLE = 6;

  /** Tells the likelihoods of a candidate under the settings of a timing. */
  interface Fold {
    /**
     * Logarithms of the likelihoods.
     *
     * @param floor the least that matters
     */
    double[] logs(int candidate, Timing timing, Floor floor);
  }

  private final NoiseGrid grid;
  private final List<Integer> contenders;
  private final double[] logPriors;
  private final Sums sums;
  private final Fold fold;

  /** For each candidate the logarithm of its average so far, if what was not looked at is 0. */
  private final double[] logs;

  private final double logShare;

  private Finer(
      NoiseGrid grid,
      List<Integer> contenders,
      double[] logPriors,
      double[] coarse,
      Sums sums,
      Fold fold) {
    this.grid = grid;
    // The likeliest first, so that the sheet's order says nothing.
    this.contenders =
        contenders.stream()
            .sorted(Comparator.comparingDouble(i -> -(logPriors[i] + coarse[i])))
            .toList();
    this.logPriors = logPriors;
    this.sums = sums;
    this.fold = fold;
    this.logs = coarse.clone();
    this.logShare = Math.log((1 - COARSE) / grid.weight());
    for (int i = 0; i < sums.size(); i++) {
      logs[i] += Math.log(COARSE);
    }
  }

  /** Whether a candidate of this weight is in doubt beside the best one. */
  static boolean isInDoubt(double log, double best) {
    return log > best - DOUBT;
  }

  /**
   * The likelihoods with finer settings.
   *
   * @param contenders the candidates in doubt
   * @param logPriors logarithms of the priors of all candidates
   * @param coarse logarithms of their likelihoods
   * @param sums how these came about; candidates beyond them do not hang on the noise
   */
  static double[] logs(
      NoiseGrid grid,
      List<Integer> contenders,
      double[] logPriors,
      double[] coarse,
      Sums sums,
      Fold fold) {
    Finer finer = new Finer(grid, contenders, logPriors, coarse, sums, fold);
    finer.spread();
    double shift = finer.together(coarse) - finer.together(finer.logs);
    double[] logs = coarse.clone();
    for (int i : contenders) {
      logs[i] = finer.logs[i] + shift;
    }
    return logs;
  }

  /** Logarithm of prior times likelihood of the contenders, summed. */
  private double together(double[] likelihoods) {
    double sum = Double.NEGATIVE_INFINITY;
    for (int i : contenders) {
      sum = Gauss.logAdd(sum, logPriors[i] + likelihoods[i]);
    }
    return sum;
  }

  /** Looks at the points of the grid, from those that are like the best coarse settings on. */
  private void spread() {
    boolean[] seen = new boolean[grid.size()];
    Deque<Integer> next = new ArrayDeque<>();
    for (int i : contenders) {
      if (i < sums.size()) {
        sums.bestTiming(i).ifPresent(timing -> add(grid.nearest(timing), seen, next));
      }
    }
    double most = Double.NEGATIVE_INFINITY;
    while (!next.isEmpty()) {
      int point = next.remove();
      double here = at(grid.timing(point));
      most = Math.max(most, here);
      if (here > most - REACH) {
        grid.beside(point).forEach(other -> add(other, seen, next));
      }
    }
  }

  private static void add(int point, boolean[] seen, Deque<Integer> next) {
    if (!seen[point]) {
      seen[point] = true;
      next.add(point);
    }
  }

  /** Adds the settings of a timing; tells what they add to the candidate to which they add most. */
  private double at(Timing timing) {
    double most = Double.NEGATIVE_INFINITY;
    for (int i : contenders) {
      if (i < sums.size()) {
        double log = log(i, timing);
        logs[i] = Gauss.logAdd(logs[i], log);
        most = Math.max(most, logPriors[i] + log);
      }
    }
    return most;
  }

  private double log(int candidate, Timing timing) {
    double least = logs[candidate] - NEGLIGIBLE - logShare - Math.log(timing.weight());
    double[] terms = fold.logs(candidate, timing, new Floor(least, 0, sums.front()));
    double log = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < terms.length; s++) {
      log = Gauss.logAdd(log, logShare + Math.log(timing.setting(s).weight()) + terms[s]);
    }
    return log;
  }
}

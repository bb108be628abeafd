package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Likelihoods of candidates, averaged over noise settings one setting after another, and how far a
 * candidate may fall behind before it no longer matters.
 */
final class Sums {
  /** Candidates this far below the best one (natural logarithm) are not looked at more closely. */
  static final double HOPELESS = 16;

  /**
   * What averaging over settings, several trains and weights far apart can add to a single term: so
   * far below, it does not show which candidate was tried first.
   */
  private static final double AVERAGING = 12;

  /** What is so far behind the best under one setting does not matter. */
  static final double BEHIND = AVERAGING + HOPELESS;

  private final Front front = new Front();
  private final double[] logs;
  private final double[] weights;
  private double bestTerm = Double.NEGATIVE_INFINITY;
  private Optional<Timing> bestTiming = Optional.empty();
  private final double other;

  /**
   * Begins with nothing.
   *
   * @param candidates how many there are
   * @param other logarithm of a likelihood that another candidate has in any case
   */
  Sums(int candidates, double other) {
    this.logs = new double[candidates];
    this.weights = new double[candidates];
    this.other = other;
    Arrays.fill(logs, Double.NEGATIVE_INFINITY);
  }

  /** Adds a candidate's likelihoods under the settings of one more timing. */
  void add(int candidate, Timing timing, double[] terms) {
    for (int s = 0; s < terms.length; s++) {
      Noise noise = timing.setting(s);
      logs[candidate] = Gauss.logAdd(logs[candidate], Math.log(noise.weight()) + terms[s]);
      weights[candidate] += noise.weight();
      if (bestTiming.isEmpty() || terms[s] > bestTerm) {
        bestTerm = terms[s];
        bestTiming = Optional.of(timing);
      }
    }
  }

  /** The timing, among those seen, under which a candidate fits best. */
  Timing bestTiming() {
    return bestTiming.orElseThrow();
  }

  /** A likelihood under one setting below which it does not matter. */
  Floor floor() {
    return new Floor(Math.max(bestTerm - AVERAGING, other) - HOPELESS, 0, front);
  }

  /**
   * The same once all of the best candidate's likelihoods are in: no average is above its terms.
   */
  Floor finalFloor() {
    return new Floor(best() - HOPELESS, 0, front);
  }

  /** Logarithm of a candidate's average; negative infinity if it has none. */
  double mean(int candidate) {
    return weights[candidate] == 0
        ? Double.NEGATIVE_INFINITY
        : logs[candidate] - Math.log(weights[candidate]);
  }

  /** The best average, the other candidate's included. */
  double best() {
    double best = other;
    for (int i = 0; i < logs.length; i++) {
      best = Math.max(best, mean(i));
    }
    return best;
  }

  /** Whether a candidate may still matter. */
  boolean isHopeful(int candidate) {
    return mean(candidate) >= best() - HOPELESS;
  }

  /** The first candidates by number, the best so far first, so that the floor is soon high. */
  List<Integer> bestFirst(int count) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      order.add(i);
    }
    order.sort((a, b) -> Double.compare(logs[b], logs[a]));
    return order;
  }
}

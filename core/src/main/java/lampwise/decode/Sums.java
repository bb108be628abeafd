package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Likelihoods of candidates, averaged over noise settings one setting after another, and how far a
 * candidate may fall behind before it no longer matters.
 */
final class Sums {
  /** Candidates this far below the best one (natural logarithm) are not looked at more closely. */
  static final double HOPELESS = 14;

  /**
   * Who falls so far behind the best on the way does not come up again: the true state does, if the
   * noise is as it is taken for, once in e to this power (Ville's inequality).
   */
  static final double BEHIND = 14;

  private final Front front = new Front();
  private final double[] logs;
  private final double[] weights;
  private double bestTerm = Double.NEGATIVE_INFINITY;

  /** The best average is at least this: the largest part that one setting has in one. */
  private double least;

  private final double[] bestTerms;
  private final List<Optional<Timing>> bestTimings;
  private Optional<Timing> bestTiming = Optional.empty();
  private final List<Timing> timings;
  private final double allWeights;
  private final double other;

  /**
   * Begins with nothing.
   *
   * @param candidates how many there are
   * @param timings the settings that are averaged over
   * @param other logarithm of a likelihood that another candidate has in any case
   */
  Sums(int candidates, List<Timing> timings, double other) {
    this.logs = new double[candidates];
    this.weights = new double[candidates];
    this.bestTerms = new double[candidates];
    this.bestTimings = new ArrayList<>(Collections.nCopies(candidates, Optional.empty()));
    this.timings = timings;
    this.allWeights = timings.stream().mapToDouble(Timing::weight).sum();
    this.other = other;
    this.least = other;
    Arrays.fill(bestTerms, Double.NEGATIVE_INFINITY);
    Arrays.fill(logs, Double.NEGATIVE_INFINITY);
  }

  /** Adds a candidate's likelihoods under the settings of one more timing. */
  void add(int candidate, Timing timing, double[] terms) {
    for (int s = 0; s < terms.length; s++) {
      Noise noise = timing.setting(s);
      double log = Math.log(noise.weight()) + terms[s];
      logs[candidate] = Gauss.logAdd(logs[candidate], log);
      weights[candidate] += noise.weight();
      least = Math.max(least, log - Math.log(allWeights));
      if (terms[s] > bestTerms[candidate]) {
        bestTerms[candidate] = terms[s];
        bestTimings.set(candidate, Optional.of(timing));
      }
      if (bestTiming.isEmpty() || terms[s] > bestTerm) {
        bestTerm = terms[s];
        bestTiming = Optional.of(timing);
      }
    }
  }

  /** The settings that are averaged over. */
  List<Timing> timings() {
    return timings;
  }

  /** How many candidates there are. */
  int size() {
    return logs.length;
  }

  /** How the best fold of the blinks went so far. */
  Front front() {
    return front;
  }

  /** The timing under which a candidate fits best; empty if it fits under none. */
  Optional<Timing> bestTiming(int candidate) {
    return bestTimings.get(candidate);
  }

  /** The timing, among those seen, under which a candidate fits best. */
  Timing bestTiming() {
    return bestTiming.orElseThrow();
  }

  /**
   * A likelihood under one setting below which it does not matter: no average is above all of its
   * terms.
   */
  Floor floor() {
    return new Floor(least - HOPELESS, 0, front);
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

  /** The first candidates by number that may still matter, the best first. */
  List<Integer> hopeful(int count) {
    return IntStream.range(0, count)
        .filter(this::isHopeful)
        .boxed()
        .sorted((a, b) -> Double.compare(mean(b), mean(a)))
        .toList();
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** Priors, and what becomes of them. */
final class Posterior {
  static final double UNLISTED = 0.05;
  static final double NO_RHYTHM = 0.01;

  private Posterior() {}

  /** Prior of each candidate: the states in the sheet's order, then unlisted, then no rhythm. */
  static double[] priors(CodeSheet sheet) {
    int states = sheet.states().size();
    double[] priors = new double[states + 2];
    double weights = 0;
    for (LampState state : sheet.states()) {
      weights += state.weight();
    }
    for (int i = 0; i < states; i++) {
      priors[i] = (1 - UNLISTED - NO_RHYTHM) * sheet.states().get(i).weight() / weights;
    }
    priors[states] = UNLISTED;
    priors[states + 1] = NO_RHYTHM;
    return priors;
  }

  static String name(CodeSheet sheet, int index) {
    int states = sheet.states().size();
    if (index < states) {
      return sheet.states().get(index).name();
    }
    return index == states ? CodeSheet.UNLISTED : CodeSheet.NO_RHYTHM;
  }

  /** The number of the candidate of a name, which is one: the other way round. */
  static int number(CodeSheet sheet, String name) {
    int number = 0;
    while (!name(sheet, number).equals(name)) {
      number++;
    }
    return number;
  }

  /**
   * The candidates, likeliest first; equal ones in the sheet's order.
   *
   * @param logLikelihoods in the order of {@link #priors}
   */
  static List<Candidate> candidates(CodeSheet sheet, double[] logLikelihoods) {
    double[] priors = priors(sheet);
    double best = Arrays.stream(logLikelihoods).max().orElse(Double.NEGATIVE_INFINITY);
    double[] weights = new double[priors.length];
    double sum = 0;
    for (int i = 0; i < priors.length; i++) {
      // Where nothing is possible, or all is lost in rounding, the priors stand.
      double ratio = logLikelihoods[i] == best ? 0 : logLikelihoods[i] - best;
      weights[i] = priors[i] * Math.exp(ratio);
      sum += weights[i];
    }
    List<Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < priors.length; i++) {
      double probability = weights[i] / sum;
      candidates.add(new Candidate(name(sheet, i), priors[i], logLikelihoods[i], probability));
    }
    candidates.sort((a, b) -> Double.compare(b.probability(), a.probability()));
    return candidates;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.List;

/** The likelihood of a stretch under rhythms that no sheet lists. */
final class Unlisted {
  /** Rhythms this far below the best of them are left out. */
  private static final double UNLIKELY = 8;

  private final List<FreeRhythms> rhythms;

  private Unlisted(List<FreeRhythms> rhythms) {
    this.rhythms = rhythms;
  }

  /** The rhythms that a stretch proposes, but for those that a sheet lists. */
  static List<FreeRhythms> proposed(Listed listed, Evidence stretch) {
    List<FreeRhythms> all = new ArrayList<>(FreeRhythms.propose(stretch));
    all.removeIf(free -> listed.shows(free.train()));
    return all;
  }

  /**
   * Those that matter, by how they fit under one setting of the noise.
   *
   * @param near variants of the listed states
   * @param floor logarithm of a likelihood that does not matter
   */
  static Unlisted of(
      Listed listed, Evidence stretch, List<FreeRhythms> near, Noise noise, double floor) {
    List<FreeRhythms> all = proposed(listed, stretch);
    all.addAll(near);
    double[] logs = new double[all.size()];
    double best = floor;
    for (int i = 0; i < logs.length; i++) {
      FreeRhythms free = all.get(i);
      double logWeight = free.logWeight(noise);
      double least = best - UNLIKELY - logWeight;
      logs[i] = logWeight + Fit.logLikelihood(free.train(), stretch, noise, false, least);
      best = Math.max(best, logs[i]);
    }
    List<FreeRhythms> kept = new ArrayList<>();
    for (int i = 0; i < logs.length; i++) {
      if (logs[i] >= best - UNLIKELY) {
        kept.add(all.get(i));
      }
    }
    return new Unlisted(kept);
  }

  /**
   * Logarithms of the likelihood, for each setting of a timing.
   *
   * @param floor below this logarithm the answer does not matter and may come out lower
   */
  double[] logs(Evidence stretch, Timing timing, double floor) {
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    for (FreeRhythms free : rhythms) {
      double logWeight = free.logWeight(timing.any());
      double least = floor - logWeight - Math.log(rhythms.size());
      double[] logs = Fit.logLikelihoods(free.train(), stretch, timing, false, least);
      Showing.add(sums, logWeight, logs);
    }
    return sums;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The runs of a pass for changes that are carried on. */
final class Runs {
  /** Runs this much below the best one (natural logarithm) are dropped. */
  private static final double DROP = 13;

  /** How many runs are carried on. */
  private static final int MOST = 64;

  private Runs() {}

  /** The score of the best; negative infinity if there is none. */
  static double best(List<Run> runs) {
    double best = Double.NEGATIVE_INFINITY;
    for (Run run : runs) {
      best = Math.max(best, run.score());
    }
    return best;
  }

  /**
   * The least score that is carried on.
   *
   * @param hopeless the least that matters in any case
   */
  static double least(List<Run> runs, double hopeless) {
    return Math.max(best(runs) - DROP, hopeless);
  }

  /**
   * What is carried on, the best first, so that others are soon seen not to matter beside it.
   *
   * @param old how many end before the blink that was taken in; the others are merged
   */
  static List<Run> pruned(List<Run> runs, int old, double hopeless) {
    double least = least(runs, hopeless);
    List<Run> kept = new ArrayList<>();
    int fresh = 0;
    for (int i = 0; i < runs.size(); i++) {
      Run run = runs.get(i);
      fresh = i == old ? kept.size() : fresh;
      if (run.score() > least && !(i >= old && run.isMerged(kept, fresh))) {
        kept.add(run);
      }
    }
    if (kept.size() > MOST) {
      double[] scores = kept.stream().mapToDouble(Run::score).toArray();
      double last = Largest.last(scores, MOST);
      kept.removeIf(run -> run.score() < last);
    }
    for (int i = 1; i < kept.size(); i++) {
      if (kept.get(i).score() > kept.get(0).score()) {
        Collections.swap(kept, 0, i);
      }
    }
    return kept;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The likelihood of a stretch under rhythms that no sheet lists. */
final class Unlisted {
  /** Rhythms this far below the best of them are left out. */
  private static final double UNLIKELY = 8;

  private final List<FreeRhythms> rhythms;
  private final Timing timing;
  private final double[] sums;

  private Unlisted(List<FreeRhythms> rhythms, Timing timing, double[] sums) {
    this.rhythms = rhythms;
    this.timing = timing;
    this.sums = sums;
  }

  /**
   * Those that matter, by how they fit under one timing.
   *
   * @param all all that the stretch may show
   * @param floor the least that matters
   */
  static Unlisted of(List<FreeRhythms> all, Evidence stretch, Timing timing, Floor floor) {
    double[] most = new double[all.size()];
    double[][] logs = new double[all.size()][];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < most.length; i++) {
      FreeRhythms free = all.get(i);
      Floor least = new Floor(Math.max(floor.log(), best - UNLIKELY), 0, floor.front());
      logs[i] = logs(free, stretch, timing, least);
      most[i] = Arrays.stream(logs[i]).max().orElseThrow();
      best = Math.max(best, most[i]);
    }
    List<FreeRhythms> kept = new ArrayList<>();
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    double sd = timing.any().sd();
    int[] order =
        IntStream.range(0, most.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> -most[i]))
            .mapToInt(i -> i)
            .toArray();
    for (int i : order) {
      FreeRhythms free = all.get(i);
      if (most[i] >= Math.max(floor.log(), best - UNLIKELY)
          && kept.stream().noneMatch(other -> free.isBeside(other, sd))) {
        kept.add(free);
        Showing.add(sums, 0, logs[i]);
      }
    }
    return new Unlisted(kept, timing, sums);
  }

  /**
   * Logarithms of the likelihood of the same stretch, for each setting of a timing.
   *
   * @param floor the least that matters
   */
  double[] logs(Evidence stretch, Timing other, Floor floor) {
    if (other == timing) {
      return sums.clone();
    }
    double[] all = other.all(Double.NEGATIVE_INFINITY);
    for (FreeRhythms free : rhythms) {
      Showing.add(all, 0, logs(free, stretch, other, floor.ofEach(rhythms.size())));
    }
    return all;
  }

  /** The same of one rhythm, its share of the prior included. */
  private static double[] logs(FreeRhythms free, Evidence stretch, Timing timing, Floor floor) {
    double logWeight = free.logWeight(timing.any());
    double[] logs =
        Fit.logLikelihoods(
            free.train(timing.any()), stretch, timing, false, floor.of(logWeight).weighed());
    for (int s = 0; s < logs.length; s++) {
      logs[s] += logWeight;
    }
    return logs;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** The likelihood of a stretch under rhythms that no sheet lists. */
final class Unlisted {
  /** Rhythms this far below the best of them are left out. */
  private static final double UNLIKELY = 8;

  private final List<FreeRhythms> rhythms;
  private final Map<Timing, double[]> sums;

  private Unlisted(List<FreeRhythms> rhythms, Map<Timing, double[]> sums) {
    this.rhythms = rhythms;
    this.sums = sums;
  }

  /**
   * Those that matter, by how they fit under some timings; of some on one peak of the likelihood
   * the best.
   *
   * @param all all that the stretch may show
   * @param timings those that may be the stretch's, at least one
   * @param floor the least that matters
   */
  static Unlisted of(List<FreeRhythms> all, Evidence stretch, List<Timing> timings, Floor floor) {
    double[] most = new double[all.size()];
    Arrays.fill(most, Double.NEGATIVE_INFINITY);
    Map<Timing, double[][]> logs = new HashMap<>();
    double border = floor.log();
    for (Timing timing : timings) {
      double[][] under = new double[all.size()][];
      for (int i = 0; i < most.length; i++) {
        under[i] = logs(all.get(i), stretch, timing, new Floor(border, 0, floor.front()));
        most[i] = Math.max(most[i], Arrays.stream(under[i]).max().orElseThrow());
        border = Math.max(border, most[i] - UNLIKELY);
      }
      logs.put(timing, under);
    }
    List<Integer> bestFirst =
        IntStream.range(0, most.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> -most[i]))
            .toList();
    double sd = timings.stream().mapToDouble(timing -> timing.any().sd()).max().orElseThrow();
    List<Integer> kept = new ArrayList<>();
    for (int i : bestFirst) {
      boolean alone = kept.stream().noneMatch(k -> all.get(i).isBeside(all.get(k), sd));
      if (most[i] >= border && alone) {
        kept.add(i);
      }
    }
    Map<Timing, double[]> sums = new HashMap<>();
    logs.forEach(
        (timing, under) -> {
          double[] sum = timing.all(Double.NEGATIVE_INFINITY);
          kept.forEach(i -> Showing.add(sum, 0, under[i]));
          sums.put(timing, sum);
        });
    return new Unlisted(kept.stream().map(all::get).toList(), sums);
  }

  /**
   * Logarithms of the likelihood of the same stretch, for each setting of a timing.
   *
   * @param floor the least that matters
   */
  double[] logs(Evidence stretch, Timing timing, Floor floor) {
    double[] known = sums.get(timing);
    if (known != null) {
      return known.clone();
    }
    double[] all = timing.all(Double.NEGATIVE_INFINITY);
    for (FreeRhythms free : rhythms) {
      Showing.add(all, 0, logs(free, stretch, timing, floor.ofEach(rhythms.size())));
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

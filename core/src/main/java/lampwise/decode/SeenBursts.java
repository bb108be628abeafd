package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cycles of a recording that was cut at its longer darks: the bursts between them are the cycle's
 * blinks. Unlike a {@link PhaseFold} this tells blinks that follow each other quickly, and a cycle
 * of which the window shows the end of one and the beginning of the next.
 */
final class SeenBursts {
  /** A dark that is longer by this than any time inside bursts parts them. */
  private static final double LONGER = 1.4;

  /** How many darks are tried as the shortest that parts bursts. */
  private static final int MOST_CUTS = 2;

  private final Evidence evidence;
  private final double[] starts;
  private final double[] gaps;
  private final int mostBlinks;
  private final List<SeenCycle> cycles = new ArrayList<>();

  /** Some blinks that follow each other, the number of the first and how many. */
  private record Burst(int from, int size) {
    int last() {
      return from + size - 1;
    }
  }

  private SeenBursts(Evidence evidence, int mostBlinks) {
    this.evidence = evidence;
    this.starts = evidence.starts();
    this.gaps = Intervals.gaps(starts, 1);
    this.mostBlinks = mostBlinks;
  }

  /**
   * The cycles that a recording shows if its bursts are cut.
   *
   * @param evidence three blinks or more
   * @param mostBlinks how many blinks a cycle can have
   */
  static List<SeenCycle> of(Evidence evidence, int mostBlinks) {
    SeenBursts seen = new SeenBursts(evidence, mostBlinks);
    for (double dark : darks(seen.gaps)) {
      seen.cut(dark);
    }
    return seen.cycles;
  }

  /** The shortest darks that part bursts: those that are most times as long as the next shorter. */
  private static double[] darks(double[] gaps) {
    double[] sorted = gaps.clone();
    Arrays.sort(sorted);
    List<double[]> jumps = new ArrayList<>();
    for (int i = 1; i < sorted.length; i++) {
      if (sorted[i] > LONGER * sorted[i - 1]) {
        jumps.add(new double[] {sorted[i] / sorted[i - 1], sorted[i]});
      }
    }
    jumps.sort((a, b) -> Double.compare(b[0], a[0]));
    return jumps.stream().limit(MOST_CUTS).mapToDouble(jump -> jump[1]).toArray();
  }

  private void cut(double dark) {
    List<Burst> bursts = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= starts.length; i++) {
      if (i == starts.length || gaps[i - 1] >= dark) {
        bursts.add(new Burst(from, i - from));
        from = i;
      }
    }
    int[] often = new int[mostBlinks + 1];
    int largest = 0;
    for (Burst burst : bursts) {
      if (burst.size() <= mostBlinks) {
        often[burst.size()]++;
        largest = Math.max(largest, burst.size());
      }
    }
    int usual = largest;
    for (int size = largest - 1; size >= 2; size--) {
      usual = often[size] > often[usual] ? size : usual;
    }
    if (largest >= 2) {
      whole(bursts, largest);
    }
    if (usual != largest) {
      whole(bursts, usual);
    }
    if (bursts.size() == 2) {
      parts(bursts.get(0), bursts.get(1));
    }
  }

  /** Bursts of a size as whole cycles; beside them there may be such of which a part is missing. */
  private void whole(List<Burst> bursts, int size) {
    double[] apart = new double[2 * bursts.size()];
    int count = 0;
    for (int i = 1; i < bursts.size(); i++) {
      Burst one = bursts.get(i - 1);
      Burst other = bursts.get(i);
      if (one.size() == size) {
        apart[count++] = starts[other.from()] - starts[one.from()];
      }
      if (other.size() == size) {
        apart[count++] = starts[other.last()] - starts[one.last()];
      }
    }
    List<Burst> whole = bursts.stream().filter(burst -> burst.size() == size).toList();
    double[] means = new double[size];
    double[] lengths = new double[size];
    for (int i = 0; i < size; i++) {
      int blink = i;
      lengths[i] =
          SeenLengths.middle(
              whole.stream().map(burst -> evidence.notes().get(burst.from() + blink)).toList());
      if (i + 1 < size) {
        means[i] = whole.stream().mapToDouble(b -> gaps[b.from() + blink]).average().orElseThrow();
      }
    }
    double within = Arrays.stream(means).sum();
    for (double cycle : Intervals.clusters(Arrays.copyOf(apart, count), 1)) {
      means[size - 1] = cycle - within;
      if (means[size - 1] > LONGER * within / (size - 1)) {
        cycles.add(new SeenCycle(cycle, means, lengths, whole.size()));
      }
    }
  }

  /** The end of one cycle and the beginning of the next, of even blinks, each cut by the window. */
  private void parts(Burst end, Burst begin) {
    double within =
        starts[end.last()] - starts[end.from()] + starts[begin.last()] - starts[begin.from()];
    int repeats = end.size() + begin.size() - 2;
    double spacing = within / Math.max(1, repeats);
    double dark = starts[begin.from()] - starts[end.last()];
    boolean cut =
        repeats > 0
            && dark > LONGER * spacing
            && starts[end.from()] - spacing < evidence.window().fromSeconds()
            && starts[begin.last()] + spacing > evidence.window().toSeconds();
    int seen = Math.max(end.size(), begin.size());
    for (int size = seen + 1; cut && size <= mostBlinks; size++) {
      double[] cycle = new double[size];
      double[] lengths = new double[size];
      Arrays.fill(cycle, spacing);
      Arrays.fill(lengths, SeenLengths.middle(evidence.notes()));
      cycle[size - 1] = dark;
      cycles.add(new SeenCycle(dark + (size - 1) * spacing, cycle, lengths, 1));
    }
  }
}

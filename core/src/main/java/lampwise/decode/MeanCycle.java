package lampwise.decode;

import java.util.Arrays;

/**
 * The usual cycle of a recording that repeats after a given count of blinks: medians over all
 * stretches of that many blinks that last about as long as the cycle.
 */
final class MeanCycle {
  private final double[] gaps;
  private final double[] lengths;
  private final int repeats;

  private MeanCycle(double[] gaps, double[] lengths, int repeats) {
    this.gaps = gaps;
    this.lengths = lengths;
    this.repeats = repeats;
  }

  /**
   * Takes the cycles out of a recording, each turned so that its largest gap is the last.
   *
   * @param starts when the blinks of the recording begin
   * @param count how many blinks a cycle has
   * @param cycle how long it is about
   */
  static MeanCycle of(Evidence evidence, double[] starts, int count, double cycle) {
    double[][] gaps = new double[count][starts.length];
    double[][] lengths = new double[count][starts.length];
    int repeats = 0;
    for (int i = 0; i + count < starts.length; i++) {
      if (Math.abs(starts[i + count] - starts[i] - cycle) > 0.1 * cycle + 0.05) {
        continue;
      }
      int largest = 0;
      for (int k = 1; k < count; k++) {
        if (starts[i + k + 1] - starts[i + k] > starts[i + largest + 1] - starts[i + largest]) {
          largest = k;
        }
      }
      for (int k = 0; k < count; k++) {
        int from = (largest + 1 + k) % count;
        gaps[k][repeats] = starts[i + from + 1] - starts[i + from];
        lengths[k][repeats] = evidence.notes().get(i + from).length();
      }
      repeats++;
    }
    return new MeanCycle(medians(gaps, repeats), medians(lengths, repeats), repeats);
  }

  private static double[] medians(double[][] rows, int count) {
    return Arrays.stream(rows).mapToDouble(row -> median(row, count)).toArray();
  }

  private static double median(double[] values, int count) {
    return SeenLengths.median(
        Arrays.stream(values, 0, count).filter(v -> !Double.isNaN(v)).sorted().toArray());
  }

  /** The gap after each blink of the cycle, start to start; NaN if the cycle was not seen. */
  double[] gaps() {
    return gaps.clone();
  }

  /** The length of each blink of the cycle, NaN where none was noted. */
  double[] lengths() {
    return lengths.clone();
  }

  /** How often the cycle was seen. */
  int repeats() {
    return repeats;
  }
}

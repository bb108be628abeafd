package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Length;

/**
 * The values one duration may have: one for a known duration, a grid over a range, or values that
 * the recording itself proposes where nothing was said.
 *
 * @param values the durations in seconds
 * @param logWeights logarithm of the share of the prior that each stands for
 * @param half how far to either side each value stands for, as a difference of logarithms
 */
record Choices(double[] values, double[] logWeights, double half) {
  /** The widest cell of a grid, as a difference of logarithms. */
  private static final double CELL = 0.1;

  /** The most cells of a grid. */
  private static final int MOST_CELLS = 12;

  /** Stands for a length that is not known and not looked for. */
  static Choices unknown() {
    return new Choices(new double[] {Double.NaN}, new double[] {0}, 0);
  }

  static Choices exactly(double seconds) {
    return new Choices(new double[] {seconds}, new double[] {0}, 0);
  }

  /** What a phrase says, its open borders closed by these limits. */
  static Choices said(Length length, double least, double most) {
    double from = Math.max(length.leastSeconds(), Math.min(least, length.mostSeconds()));
    double to = Math.min(length.mostSeconds(), Math.max(most, 2 * from));
    return to > from * 1.000001 ? grid(from, to, CELL) : exactly(from);
  }

  /** Cells even in the logarithm. */
  static Choices grid(double from, double to, double cell) {
    double span = Math.log(to / from);
    int cells = Math.max(1, Math.min(MOST_CELLS, (int) Math.ceil(span / cell)));
    double[] values = new double[cells];
    double[] logWeights = new double[cells];
    for (int i = 0; i < cells; i++) {
      values[i] = from * Math.exp(span * (i + 0.5) / cells);
      logWeights[i] = -Math.log(cells);
    }
    return new Choices(values, logWeights, span / cells / 2);
  }

  /** Values that were seen in the recording, as far as they lie within the limits. */
  static Choices proposed(List<Double> seen, double least, double most) {
    List<Double> inside = new ArrayList<>();
    for (double value : seen) {
      if (value >= least * 0.95 && value <= most * 1.05) {
        inside.add(value);
      }
    }
    if (inside.isEmpty()) {
      return grid(least, most, 1.0);
    }
    double[] values = new double[inside.size()];
    double[] logWeights = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = inside.get(i);
      logWeights[i] = Math.log(CELL / Math.log(most / least));
    }
    return new Choices(values, logWeights, CELL / 2);
  }

  static Choices saidOr(Optional<Length> length, double least, double most, Choices otherwise) {
    return length.map(l -> said(l, least, most)).orElse(otherwise);
  }
}

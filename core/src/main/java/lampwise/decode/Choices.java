package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Length;

/**
 * The values one duration may have: one for a known duration, a grid over a range, or values that
 * the recording itself proposes where nothing was said.
 *
 * @param values the durations, each with its weight
 * @param half how far to either side each value stands for, as a difference of logarithms
 */
record Choices(List<Value> values, double half) {
  /**
   * One value.
   *
   * @param seconds the duration; NaN if it is not known and not looked for
   * @param logWeight logarithm of the share of the prior that it stands for
   */
  record Value(double seconds, double logWeight) {}

  /** The widest cell of a grid, as a difference of logarithms. */
  private static final double CELL = 0.1;

  /** The most cells of a grid. */
  private static final int MOST_CELLS = 12;

  /** Stands for a length that is not known and not looked for. */
  static Choices unknown() {
    return new Choices(List.of(new Value(Double.NaN, 0)), 0);
  }

  static Choices exactly(double seconds) {
    return new Choices(List.of(new Value(seconds, 0)), 0);
  }

  /** What a phrase says, its open borders closed by these limits. */
  static Choices said(Length length, double least, double most) {
    double from = Math.max(length.leastSeconds(), Math.min(least, length.mostSeconds()));
    double to = Math.min(length.mostSeconds(), Math.max(most, 2 * from));
    return to > from * 1.000001 ? grid(from, to, CELL) : exactly(from);
  }

  /** A range in cells narrow enough for a clock to reach over. */
  static Choices cells(double from, double to) {
    return grid(from, to, CELL);
  }

  /** Cells even in the logarithm, this wide or wider. */
  static Choices grid(double from, double to, double cell) {
    double span = Math.log(to / from);
    int cells = Math.max(1, Math.min(MOST_CELLS, (int) Math.ceil(span / cell)));
    List<Value> values = new ArrayList<>();
    for (int i = 0; i < cells; i++) {
      values.add(new Value(from * Math.exp(span * (i + 0.5) / cells), -Math.log(cells)));
    }
    return new Choices(values, span / cells / 2);
  }

  /** Values that were seen in the recording, as far as they lie within the limits. */
  static Choices proposed(List<Double> seen, double least, double most) {
    List<Value> values = new ArrayList<>();
    for (double value : seen) {
      if (value >= least * 0.95 && value <= most * 1.05) {
        values.add(new Value(value, Math.log(CELL / Math.log(most / least))));
      }
    }
    return values.isEmpty() ? grid(least, most, 1.0) : new Choices(values, CELL / 2);
  }

  /** These values, or as likely one that was chosen before. */
  Choices or(double seconds) {
    List<Value> both = new ArrayList<>();
    both.add(new Value(seconds, Math.log(0.5)));
    for (Value value : values) {
      if (value.seconds() != seconds) {
        both.add(new Value(value.seconds(), value.logWeight() + Math.log(0.5)));
      }
    }
    return new Choices(both, half);
  }

  static Choices saidOr(Optional<Length> length, double least, double most, Choices otherwise) {
    return length.map(l -> said(l, least, most)).orElse(otherwise);
  }
}

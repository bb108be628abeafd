package lampwise.file;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.file.ReadOptions.Dates;

/**
 * What the first rows of a table show of one column.
 *
 * @param numbers how many cells hold a number or a clock time
 * @param others how many cells hold something else that is not a missing value
 * @param clock whether most of the numbers are clock times
 * @param dated whether most of the numbers are dates, with or without clock times
 * @param decimals whether a number is written with decimals
 * @param up how many steps from row to row go up
 * @param down how many go down
 * @param medianStep the median of the steps up; NaN if there is none
 * @param spread the median distance from the median step, as a share of it; NaN if there is none
 */
record ColumnSample(
    int numbers,
    int others,
    boolean clock,
    boolean dated,
    boolean decimals,
    int up,
    int down,
    double medianStep,
    double spread) {
  /** Times go up this many times as often as down. */
  private static final int RISING_FACTOR = 4;

  /** A finer column of times goes up this many times as often. */
  private static final int COARSE_FACTOR = 2;

  /** Times go up at least in this share of the rows; in the others they stand. */
  private static final double RISING_SHARE = 0.2;

  /** Looks at a column. */
  static ColumnSample of(List<List<String>> rows, int column, DecimalMark mark) {
    double[] steps = new double[rows.size()];
    int numbers = 0;
    int others = 0;
    int up = 0;
    int down = 0;
    int clocks = 0;
    int dates = 0;
    boolean decimals = false;
    double before = Double.NaN;
    for (List<String> row : rows) {
      String cell = column < row.size() ? row.get(column) : "";
      double value = mark.loose(cell);
      if (!Double.isFinite(value)) {
        Optional<Stamp> stamp = Stamp.of(cell);
        boolean date = stamp.isPresent() && stamp.get().kind() != Stamp.Kind.CLOCK;
        value = clockSeconds(cell);
        clocks += Double.isFinite(value) && !date ? 1 : 0;
        dates += date ? 1 : 0;
      }
      if (!Double.isFinite(value)) {
        others += Numbers.isMissing(cell) ? 0 : 1;
        continue;
      }
      numbers++;
      decimals |= cell.indexOf('.') >= 0 || cell.indexOf(',') >= 0;
      if (value > before) {
        steps[up++] = value - before;
      } else if (value < before) {
        down++;
      }
      before = value;
    }
    double[] rising = Arrays.copyOf(steps, up);
    double median = median(rising);
    for (int i = 0; i < up; i++) {
      rising[i] = Math.abs(rising[i] - median);
    }
    return new ColumnSample(
        numbers,
        others,
        clocks * 2 > numbers,
        dates * 2 > numbers,
        decimals,
        up,
        down,
        median,
        median(rising) / median);
  }

  /** Whether it is a column of clock times or dates. */
  boolean isStamped() {
    return clock || dated;
  }

  /** Whether it is a column of numbers or clock times. */
  boolean isNumeric() {
    return numbers > 0 && numbers >= others;
  }

  /** Whether not all of its numbers are equal. */
  boolean varies() {
    return up + down > 0;
  }

  /** Whether it rises like times do, a few rows that came late allowed. */
  boolean isRising() {
    return isNumeric()
        && up > 0
        && up >= RISING_FACTOR * down
        && (clock || dated || up >= RISING_SHARE * (numbers - 1));
  }

  /** Whether it counts the rows: whole numbers, one more in each. */
  boolean isCounter() {
    return !clock
        && !dated
        && !decimals
        && down == 0
        && up == numbers - 1
        && medianStep == 1
        && spread == 0;
  }

  /** Whether it stands in most rows, as a clock does that shows whole seconds. */
  boolean isCoarse(ColumnSample other) {
    return other.up > COARSE_FACTOR * up && other.isRising();
  }

  /** The seconds that a clock time or a date says, from any zero; NaN if a cell is neither. */
  static double clockSeconds(String cell) {
    Optional<Stamp> stamp = Stamp.of(cell);
    if (stamp.isPresent()) {
      double day = stamp.get().kind() == Stamp.Kind.CLOCK ? 0 : stamp.get().day(Dates.DMY);
      double known = Double.isNaN(day) ? stamp.get().day(Dates.MDY) : day;
      return known * RecordingClock.DAY + stamp.get().seconds();
    }
    if (cell.indexOf(':') <= 0) {
      return Double.NaN;
    }
    try {
      return TimeText.parse(cell).value();
    } catch (TimeText.Fault e) {
      return Double.NaN;
    }
  }

  private static double median(double[] values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }
}

package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.PastedTime.Role;

/**
 * Rows of a stopwatch: a lap and a split on each, in either order, perhaps with the lap's number
 * before them, the first row or the last one on top. The split is the column that sums the other.
 */
final class LapTable {
  private final List<PastedTime> times;
  private final int width;

  private LapTable(List<PastedTime> times, int width) {
    this.times = times;
    this.width = width;
  }

  /**
   * What was found.
   *
   * @param splits the column of the running times, in the order of the text
   * @param note what was found, for the notes
   */
  record Found(List<PastedTime> splits, String note) {}

  /** Finds laps and splits; empty if the times are not such rows. */
  static Optional<Found> find(PastedScanner.Found found) {
    List<PastedTime> times = found.times();
    int width = width(times);
    if (width < 2 || width > 3) {
      return Optional.empty();
    }
    LapTable table = new LapTable(times, width);
    boolean counted = table.isCounter(0);
    if (width == 3 && !counted) {
      return Optional.empty();
    }
    if (width == 2 && counted && (found.numbered() || table.at(0, 1).time().isClock())) {
      String note = "the first column numbers the rows";
      return Optional.of(new Found(table.column(1), note));
    }
    int first = width - 2;
    for (int lap = first; lap < width; lap++) {
      int split = first + (width - 1 - lap);
      if (table.sums(lap, split, 1) || table.sums(lap, split, -1)) {
        return Optional.of(new Found(table.column(split), note(lap, split, width)));
      }
    }
    return Optional.empty();
  }

  private static String note(int lap, int split, int width) {
    return "column "
        + (split + 1)
        + " of "
        + width
        + " sums column "
        + (lap + 1)
        + " and was taken for the times";
  }

  /** How many times each line has; 0 if they differ, or one has a word that says its role. */
  private static int width(List<PastedTime> times) {
    int width = 0;
    int run = 0;
    for (int i = 0; i < times.size(); i++) {
      if (times.get(i).role() != Role.UNSAID) {
        return 0;
      }
      run++;
      boolean last = i + 1 == times.size() || times.get(i + 1).line() != times.get(i).line();
      if (last) {
        if (width != 0 && width != run) {
          return 0;
        }
        width = run;
        run = 0;
      }
    }
    return times.size() > width ? width : 0;
  }

  private int rows() {
    return times.size() / width;
  }

  private PastedTime at(int row, int column) {
    return times.get(row * width + column);
  }

  private double value(int row, int column) {
    return at(row, column).time().value();
  }

  private List<PastedTime> column(int column) {
    List<PastedTime> cells = new ArrayList<>();
    for (int row = 0; row < rows(); row++) {
      cells.add(at(row, column));
    }
    return cells;
  }

  /** Whether a column counts the rows, upwards or downwards. */
  private boolean isCounter(int column) {
    double step = value(1, column) - value(0, column);
    for (int row = 0; row < rows(); row++) {
      String word = at(row, column).word();
      boolean whole = word.chars().allMatch(c -> c >= '0' && c <= '9');
      boolean next = row == 0 || value(row, column) - value(row - 1, column) == step;
      if (!whole || !next) {
        return false;
      }
    }
    return Math.abs(step) == 1;
  }

  /**
   * Whether each split is the one before and the row's lap together. Of two rows the first split
   * must be its lap; laps that are all alike show nothing.
   */
  private boolean sums(int lap, int split, int step) {
    int rows = rows();
    int top = step > 0 ? 0 : rows - 1;
    double unit = Math.max(unit(at(0, lap).word()), unit(at(0, split).word()));
    boolean differ = false;
    boolean starts = Math.abs(value(top, split) - value(top, lap)) <= unit * 1.01;
    for (int i = 1; i < rows; i++) {
      int row = top + step * i;
      double sum = value(row - step, split) + value(row, lap);
      if (at(row, split).isGap() || !(Math.abs(value(row, split) - sum) <= unit * 1.01)) {
        return false;
      }
      differ |= value(row, lap) != value(row - step, lap);
    }
    return differ && (rows > 2 || starts) && value(top, lap) > 0;
  }

  /** What the last digit of a time counts. */
  private static double unit(String word) {
    int end = word.length();
    while (end > 0 && !Numbers.isDigit(word.charAt(end - 1))) {
      end--;
    }
    int point = Math.max(word.lastIndexOf('.', end), word.lastIndexOf(',', end));
    return point < 0 ? 1 : Math.pow(10, -Math.min(end - 1 - point, 9));
  }
}

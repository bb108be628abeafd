package lampwise.file;

import java.util.List;

/**
 * How the numbers of a table run when they are read row by row, cell by cell.
 *
 * @param numbers how many numbers there are
 * @param up how many are larger than the one before
 * @param down how many are smaller than the one before
 * @param holes how many cells hold no number
 * @param clocks in how many columns there are clock times
 */
record ReadingOrder(int numbers, int up, int down, int holes, int clocks) {
  static ReadingOrder of(List<List<String>> rows, DecimalMark mark) {
    int numbers = 0;
    int up = 0;
    int down = 0;
    int holes = 0;
    boolean clockFirst = false;
    boolean clockLater = false;
    double before = Double.NaN;
    for (List<String> row : rows) {
      for (int i = 0; i < row.size(); i++) {
        String cell = row.get(i);
        boolean clock = cell.indexOf(':') > 0;
        double value = clock ? clock(cell) : mark.parse(cell);
        if (!Double.isFinite(value)) {
          holes += cell.isEmpty() && i == row.size() - 1 ? 0 : 1;
          continue;
        }
        clockFirst |= clock && i == 0;
        clockLater |= clock && i > 0;
        numbers++;
        up += value > before ? 1 : 0;
        down += value < before ? 1 : 0;
        before = value;
      }
    }
    return new ReadingOrder(numbers, up, down, holes, (clockFirst ? 1 : 0) + (clockLater ? 1 : 0));
  }

  /** Whether every number is at least the one before. */
  boolean isRising() {
    return holes == 0 && down == 0 && up > 0;
  }

  /** Whether every number is at most the one before. */
  boolean isFalling() {
    return holes == 0 && up == 0 && down > 0;
  }

  private static double clock(String cell) {
    try {
      return TimeText.parse(cell).value();
    } catch (TimeText.Fault e) {
      return Double.NaN;
    }
  }
}

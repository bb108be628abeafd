package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/**
 * What stands above the rows of a table.
 *
 * @param skipped how many lines that hold something lie above the first row
 * @param preamble how many of them belong to no table
 * @param header the names of the columns; empty if there are none
 * @param units the units below the names; empty if there are none
 */
record TableHead(int skipped, int preamble, List<String> header, List<String> units) {
  /** A table starts in these lines. */
  private static final int MOST_LINES = 100;

  /** A column of numbers has numbers in this share of its cells. */
  private static final double SHARE = 0.8;

  /**
   * Finds the head of a table.
   *
   * @param rows its first lines, split
   * @param delimiter what splits them
   */
  static TableHead of(List<List<String>> rows, Delimiter delimiter) {
    if (rows.isEmpty()) {
      return new TableHead(0, 0, List.of(), List.of());
    }
    int first = firstRow(rows);
    boolean wide = first < rows.size() && Table.widthOf(rows.get(first)) > 1;
    if (first < 2 || first > MOST_LINES || !wide) {
      return plain(rows);
    }
    int header = first - 1;
    boolean units = areUnits(rows.get(header));
    header -= units ? 1 : 0;
    List<String> names = rows.get(header);
    boolean named = isHeader(names) && Table.widthOf(names) > 1;
    if (delimiter == Delimiter.BLANKS && !(named && speaksOfLight(names))) {
      return plain(rows);
    }
    return new TableHead(
        first,
        named ? header : first,
        named ? names : List.of(),
        units ? rows.get(first - 1) : List.of());
  }

  private static TableHead plain(List<List<String>> rows) {
    return isHeader(rows.get(0))
        ? new TableHead(1, 0, rows.get(0), List.of())
        : new TableHead(0, 0, List.of(), List.of());
  }

  /** The first of the lines from which on there are numbers in the columns of numbers. */
  private static int firstRow(List<List<String>> rows) {
    List<Integer> numbers = numberColumns(rows.subList(rows.size() / 2, rows.size()));
    if (numbers.isEmpty()) {
      return rows.size();
    }
    for (int i = 0; i < rows.size(); i++) {
      boolean last = i + 1 == rows.size();
      if (isRow(rows.get(i), numbers) && (last || isRow(rows.get(i + 1), numbers))) {
        return i;
      }
    }
    return rows.size();
  }

  private static List<Integer> numberColumns(List<List<String>> rows) {
    List<Integer> columns = new ArrayList<>();
    int width = rows.stream().mapToInt(Table::widthOf).max().orElse(0);
    for (int column = 0; column < width; column++) {
      int values = 0;
      int others = 0;
      for (List<String> row : rows) {
        String cell = cell(row, column);
        values += isValue(cell) ? 1 : 0;
        others += isValue(cell) || Numbers.isMissing(cell) ? 0 : 1;
      }
      if (values > 0 && values >= SHARE * (values + others)) {
        columns.add(column);
      }
    }
    return columns;
  }

  private static boolean isRow(List<String> row, List<Integer> columns) {
    boolean value = false;
    for (int column : columns) {
      String cell = cell(row, column);
      if (isValue(cell)) {
        value = true;
      } else if (!Numbers.isMissing(cell)) {
        return false;
      }
    }
    return value;
  }

  private static String cell(List<String> row, int column) {
    return column < row.size() ? row.get(column) : "";
  }

  /** Whether a cell holds a number, with or without unit, a clock time or a date. */
  private static boolean isValue(String cell) {
    return !Double.isNaN(DecimalMark.COMMA.loose(cell))
        || !Double.isNaN(DecimalMark.POINT.loose(cell))
        || !Double.isNaN(ColumnSample.clockSeconds(cell))
        || Tuple.isTuple(cell);
  }

  private static boolean areUnits(List<String> row) {
    boolean unit = false;
    for (String cell : row) {
      boolean here = LooseNumber.isUnit(cell) || (unit && cell.length() <= 8 && !isValue(cell));
      if (!here && !cell.isEmpty()) {
        return false;
      }
      unit |= here;
    }
    return unit;
  }

  private static boolean speaksOfLight(List<String> names) {
    return names.stream().anyMatch(name -> ColumnNames.levelRank(name).isPresent());
  }

  /** A header has a name and no number. */
  private static boolean isHeader(List<String> row) {
    boolean named = false;
    for (String cell : row) {
      boolean digits = !cell.isEmpty() && Numbers.isDigit(cell.charAt(0));
      if (digits || !Double.isNaN(Numbers.parse(cell)) || Tuple.isTuple(cell)) {
        return false;
      }
      named |= !Numbers.isMissing(cell);
    }
    return named;
  }
}

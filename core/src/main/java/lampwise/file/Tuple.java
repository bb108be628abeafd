package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/** Cells that hold two values in brackets: {@code (0.0333, 2)}. */
final class Tuple {
  private Tuple() {}

  /** Whether a cell is two values in brackets. */
  static boolean isTuple(String cell) {
    int comma = cell.indexOf(',');
    return comma > 0
        && comma == cell.lastIndexOf(',')
        && cell.charAt(0) == '('
        && cell.charAt(cell.length() - 1) == ')';
  }

  /** Whether a row is made of such cells alone. */
  static boolean areTuples(List<String> row) {
    boolean found = false;
    for (String cell : row) {
      if (!cell.isEmpty() && !isTuple(cell)) {
        return false;
      }
      found |= !cell.isEmpty();
    }
    return found;
  }

  /** One value of a cell; nothing if the cell is no tuple. */
  static String value(String cell, int index) {
    if (!isTuple(cell)) {
      return cell.isEmpty() || index > 0 ? "" : cell;
    }
    int comma = cell.indexOf(',');
    String value =
        index == 0 ? cell.substring(1, comma) : cell.substring(comma + 1, cell.length() - 1);
    return value.strip();
  }

  /** The values of a row of such cells, one a column. */
  static List<String> values(List<String> row) {
    List<String> values = new ArrayList<>();
    for (String cell : row) {
      values.add(value(cell, 0));
      values.add(value(cell, 1));
    }
    return values;
  }

  /** The names of the columns of values. */
  static List<String> names(List<String> header) {
    List<String> names = new ArrayList<>();
    for (String name : header) {
      names.add("time of " + name);
      names.add(name);
    }
    return names;
  }

  /** A row whose cells are the values of another's. */
  record Cells(Row row) implements Row {
    @Override
    public String cell(int column) {
      return value(row.cell(column / 2), column % 2);
    }

    @Override
    public boolean isBlank() {
      return row.isBlank();
    }
  }
}

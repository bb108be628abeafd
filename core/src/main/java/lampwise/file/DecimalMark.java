package lampwise.file;

import java.util.List;

/** What separates the whole part of a number from its fraction. */
enum DecimalMark {
  /** A point. */
  POINT,
  /** A comma. */
  COMMA;

  /**
   * Finds the mark of the numbers in some rows.
   *
   * @throws FileException if commas are there and each could as well separate thousands
   */
  static DecimalMark of(SourceText source, List<List<String>> rows) throws FileException {
    String open = "";
    for (List<String> row : rows) {
      for (String cell : row) {
        int comma = cell.indexOf(',');
        if (comma < 0 || comma != cell.lastIndexOf(',') || !isNumber(cell)) {
          continue;
        }
        boolean thousands =
            cell.length() - comma == 4 && comma > 0 && comma <= 3 && cell.charAt(0) != '0';
        if (!thousands) {
          return COMMA;
        }
        open = cell;
      }
    }
    if (!open.isEmpty()) {
      throw source.fault(
          0,
          0,
          "the comma in "
              + Numbers.quote(open)
              + " may be a decimal point or separate thousands; write a decimal point");
    }
    return POINT;
  }

  /** Reads a number; NaN if the cell holds none. */
  double parse(String cell) {
    if (this == COMMA && cell.indexOf(',') >= 0) {
      return cell.indexOf('.') >= 0 ? Double.NaN : Numbers.parse(cell.replace(',', '.'));
    }
    return Numbers.parse(cell);
  }

  private static boolean isNumber(String cell) {
    return cell.indexOf('.') < 0 && !Double.isNaN(Numbers.parse(cell.replace(',', '.')));
  }
}

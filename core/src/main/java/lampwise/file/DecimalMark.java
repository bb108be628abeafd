package lampwise.file;

import java.util.List;

/** What separates the whole part of a number from its fraction. */
enum DecimalMark {
  /** A point. */
  POINT,
  /** A comma. */
  COMMA;

  /** What the commas of some numbers show. */
  enum Sign {
    /** There are none. */
    NONE,
    /** They part fractions. */
    DECIMAL,
    /** They part thousands. */
    THOUSANDS,
    /** They could do either. */
    OPEN
  }

  /** What the comma of one cell shows: {@code 1,5} a fraction, {@code 1,234.5} thousands. */
  static Sign signOf(String cell) {
    int comma = cell.indexOf(',');
    if (comma < 0) {
      return Sign.NONE;
    }
    boolean pointBehind = cell.lastIndexOf('.') > comma;
    boolean pointBefore = cell.indexOf('.') >= 0 && cell.indexOf('.') < comma;
    boolean decimal = !Double.isNaN(LooseNumber.parse(cell, COMMA));
    boolean thousands = !Double.isNaN(LooseNumber.parse(cell, POINT));
    if (pointBehind || comma != cell.lastIndexOf(',')) {
      return thousands ? Sign.THOUSANDS : Sign.NONE;
    }
    if (!decimal) {
      return Sign.NONE;
    }
    return thousands && !pointBefore && cell.charAt(0) != '0' ? Sign.OPEN : Sign.DECIMAL;
  }

  /** What the commas of some rows show; the first cell that tells decides. */
  static Sign signOf(List<List<String>> rows) {
    Sign sign = Sign.NONE;
    for (List<String> row : rows) {
      for (String cell : row) {
        Sign here = signOf(cell);
        if (here == Sign.DECIMAL || here == Sign.THOUSANDS) {
          return here;
        }
        sign = here == Sign.OPEN ? here : sign;
      }
    }
    return sign;
  }

  /** Reads a number without unit or thousands; NaN if the cell holds none. */
  double parse(String cell) {
    if (this == COMMA && cell.indexOf(',') >= 0) {
      return cell.indexOf('.') >= 0 ? Double.NaN : Numbers.parse(cell.replace(',', '.'));
    }
    return Numbers.parse(cell);
  }

  /** Reads a number that may carry a unit and signs between thousands; NaN if there is none. */
  double loose(String cell) {
    double value = this == COMMA && cell.indexOf('.') >= 0 ? Double.NaN : parse(cell);
    if (!Double.isNaN(value)) {
      return value;
    }
    value = LooseNumber.parse(cell, this);
    return Double.isNaN(value) ? parse(cell) : value;
  }
}

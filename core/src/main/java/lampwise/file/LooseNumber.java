package lampwise.file;

import java.util.Locale;
import java.util.Set;

/** Numbers as spreadsheets and people dress them up: with a unit, with thousands set apart. */
final class LooseNumber {
  private static final int MAX_LENGTH = 60;

  private static final Set<String> LIGHT_UNITS =
      Set.of("lx", "lux", "klx", "v", "mv", "\u00B5v", "%", "cd", "lm", "fc", "counts", "count");

  private static final Set<String> TIME_UNITS =
      Set.of("s", "sec", "secs", "second", "seconds", "ms", "us", "\u00B5s", "\u03BCs", "ns");

  private LooseNumber() {}

  /**
   * Reads a number that may carry a unit and signs between its thousands.
   *
   * @param cell the cell, trimmed
   * @param mark what parts whole and fraction
   * @return the number; NaN if it is none
   */
  static double parse(String cell, DecimalMark mark) {
    if (cell.isEmpty() || cell.length() > MAX_LENGTH) {
      return Double.NaN;
    }
    String unit = unit(cell);
    String number = cell.substring(0, cell.length() - unit.length()).strip();
    if (!unit.isEmpty() && !isUnit(unit)) {
      return Double.NaN;
    }
    return Numbers.parse(plain(number, mark));
  }

  /** The unit of time that a cell carries behind its number; nothing if it carries none. */
  static String timeUnit(String cell) {
    String unit = cell.length() > MAX_LENGTH ? "" : unit(cell).toLowerCase(Locale.ROOT);
    return unit.length() < cell.length() && TIME_UNITS.contains(unit) ? unit : "";
  }

  /** Whether a cell is a number with a unit of light, voltage or share behind it. */
  static boolean hasLightUnit(String cell) {
    if (cell.isEmpty() || cell.length() > MAX_LENGTH || !startsNumber(cell)) {
      return false;
    }
    return LIGHT_UNITS.contains(unit(cell).toLowerCase(Locale.ROOT));
  }

  /** Whether a cell is nothing but a unit, with or without brackets. */
  static boolean isUnit(String cell) {
    String word = cell.toLowerCase(Locale.ROOT);
    boolean bracketed =
        word.length() > 2
            && "([".indexOf(word.charAt(0)) >= 0
            && ")]".indexOf(word.charAt(word.length() - 1)) >= 0;
    String bare = bracketed ? word.substring(1, word.length() - 1).strip() : word;
    return TIME_UNITS.contains(bare) || LIGHT_UNITS.contains(bare);
  }

  private static boolean startsNumber(String cell) {
    char c = cell.charAt(0);
    return Numbers.isDigit(c) || c == '-' || c == '+' || c == '.';
  }

  /** What stands behind the last digit, point or comma. */
  private static String unit(String cell) {
    int at = cell.length();
    while (at > 0 && !Numbers.isDigit(cell.charAt(at - 1)) && cell.charAt(at - 1) != '.') {
      at--;
    }
    return cell.substring(at).strip();
  }

  /** The number with a point and without signs between thousands; nothing if it is no number. */
  private static String plain(String number, DecimalMark mark) {
    char decimal = mark == DecimalMark.COMMA ? ',' : '.';
    char group = mark == DecimalMark.COMMA ? '.' : ',';
    StringBuilder digits = new StringBuilder();
    int run = 0;
    boolean grouped = false;
    boolean fraction = false;
    for (int i = 0; i < number.length(); i++) {
      char c = number.charAt(i);
      if (Numbers.isDigit(c)) {
        digits.append(c);
        run++;
      } else if (!fraction && run > 0 && (c == group || isGap(c))) {
        if (grouped ? run != 3 : run > 3) {
          return "";
        }
        grouped = true;
        run = 0;
      } else if (c == decimal && !fraction) {
        if (grouped && run != 3) {
          return "";
        }
        fraction = true;
        digits.append('.');
      } else {
        digits.append(c);
      }
    }
    return grouped && !fraction && run != 3 ? "" : digits.toString();
  }

  /** A blank or an apostrophe that parts thousands. */
  private static boolean isGap(char c) {
    return c == ' '
        || c == '\u00A0'
        || c == '\u202F'
        || c == '\u2009'
        || c == '\''
        || c == '\u2019';
  }
}

package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/** What stands between the columns of a table. */
enum Delimiter {
  /** A comma. */
  COMMA(','),
  /** A semicolon. */
  SEMICOLON(';'),
  /** A tab. */
  TAB('\t'),
  /** One blank or more. */
  BLANKS(' ');

  /** At least this share of the lines must have the delimiter. */
  private static final double SHARE = 0.8;

  private final char sign;

  Delimiter(char sign) {
    this.sign = sign;
  }

  /** The character that separates. */
  char sign() {
    return sign;
  }

  /** Whether a comma can stand inside a number. */
  boolean allowsDecimalComma() {
    return this == SEMICOLON || this == TAB;
  }

  /**
   * Finds the delimiter of some lines: the first of semicolon, tab, comma and blanks that most of
   * them have. A comma with a tab behind it is a comma.
   *
   * @param lines lines of one table
   * @return the delimiter; a comma if there is none
   */
  static Delimiter of(List<String> lines) {
    int semicolons = 0;
    int tabs = 0;
    int commas = 0;
    int commaTabs = 0;
    int blanks = 0;
    for (String line : lines) {
      String bare = line.strip();
      semicolons += bare.indexOf(';') >= 0 ? 1 : 0;
      tabs += bare.indexOf('\t') >= 0 ? 1 : 0;
      commas += bare.indexOf(',') >= 0 ? 1 : 0;
      commaTabs += bare.contains(",\t") ? 1 : 0;
      blanks += bare.indexOf(' ') >= 0 ? 1 : 0;
    }
    double enough = lines.size() * SHARE;
    if (semicolons > 0 && semicolons >= enough) {
      return SEMICOLON;
    }
    if (tabs > 0 && tabs >= enough && commaTabs < enough) {
      return TAB;
    }
    if (commas > 0 && commas >= enough) {
      return COMMA;
    }
    return blanks > 0 && blanks >= enough ? BLANKS : COMMA;
  }

  /** The cells of a line without quotes, trimmed; an empty last cell is left out. */
  List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    int at = 0;
    while (at <= line.length()) {
      int end = cellEnd(line, at);
      String cell = line.substring(at, end).strip();
      boolean last = end >= line.length();
      if (!(cell.isEmpty() && (last || this == BLANKS))) {
        cells.add(cell);
      }
      at = end + 1;
    }
    return cells;
  }

  /**
   * Where a cell starts in its line.
   *
   * @param line the line
   * @param cell the number of the cell, from 0
   * @return the column, from 1; that of the line's end if the line has no such cell
   */
  int columnOf(String line, int cell) {
    int at = skipBlanks(line, 0);
    for (int i = 0; i < cell && at < line.length(); i++) {
      at = skipBlanks(line, cellEnd(line, at) + 1);
    }
    return Math.min(at, line.length()) + 1;
  }

  private int skipBlanks(String line, int from) {
    int at = from;
    while (at < line.length() && isPadding(line.charAt(at))) {
      at++;
    }
    return at;
  }

  private boolean isPadding(char c) {
    return Lines.isBlank(c) && !(c == '\t' && this == TAB);
  }

  private int cellEnd(String line, int from) {
    int end = from;
    boolean quoted = false;
    while (end < line.length() && (quoted || !separates(line.charAt(end)))) {
      quoted ^= line.charAt(end) == '"';
      end++;
    }
    return end;
  }

  private boolean separates(char c) {
    return c == sign || (this == BLANKS && Lines.isBlank(c));
  }
}

package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

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

  /** The delimiter that a first line such as {@code sep=;} states. */
  static Optional<Delimiter> hint(String line) {
    String bare = line.strip().replace("\"", "");
    String word = bare.toLowerCase(Locale.ROOT);
    if (!word.startsWith("sep=")) {
      return Optional.empty();
    }
    String sign = line.substring(line.indexOf('=') + 1);
    for (Delimiter delimiter : values()) {
      if (!sign.isEmpty() && sign.charAt(0) == delimiter.sign) {
        return Optional.of(delimiter);
      }
    }
    return Optional.empty();
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

  /** The cells of a line, trimmed and out of their quotes; an empty last cell is left out. */
  List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    int at = rowStart(line, 0, line.length());
    while (at < line.length()) {
      cells.add(cell(line, at, line.length()));
      at = nextCell(line, at, line.length());
    }
    return cells;
  }

  /** The cell that starts at a place, trimmed and out of its quotes. */
  String cell(String text, int from, int end) {
    String cell = text.substring(from, cellEnd(text, from, end)).strip();
    boolean quoted = cell.length() > 1 && cell.startsWith("\"") && cell.endsWith("\"");
    return quoted ? cell.substring(1, cell.length() - 1).replace("\"\"", "\"").strip() : cell;
  }

  /** Where the first cell of a line starts. */
  int rowStart(String text, int from, int end) {
    int at = from;
    while (at < end && isPadding(text.charAt(at))) {
      at++;
    }
    return at;
  }

  /** Where the cell after the one that holds a place starts; {@code end} if there is none. */
  int nextCell(String text, int from, int end) {
    int delimiter = cellEnd(text, from, end);
    return delimiter < end ? rowStart(text, delimiter + 1, end) : end;
  }

  /** Where the cell that holds a place ends. */
  int cellEnd(String text, int from, int end) {
    int at = from;
    boolean quoted = false;
    while (at < end && (quoted || !separates(text.charAt(at)))) {
      quoted ^= text.charAt(at) == '"';
      at++;
    }
    return at;
  }

  /** Whether a character parts cells. */
  boolean separates(char c) {
    return c == sign || (this == BLANKS && Lines.isBlank(c));
  }

  private boolean isPadding(char c) {
    return Lines.isBlank(c) && c != (this == TAB ? '\t' : '\0');
  }
}

package lampwise.file;

/** Finds out what a comma between two digits is in pasted times: a separator or a decimal point. */
final class PastedCommas {
  private static final String HINT =
      "a comma here may be a decimal point or stand between times;"
          + " write a decimal point, or a blank after each comma";

  private PastedCommas() {}

  /**
   * Whether commas between digits are decimal points. They are if no number has a point, blanks,
   * semicolons or line ends stand between words of the kind {@code 3,5}, and the numbers do not
   * rise when the comma separates them.
   *
   * @throws FileException if both readings give rising times
   */
  static boolean areDecimal(SourceText source) throws FileException {
    Lines lines = Lines.content(source.text());
    int words = 0;
    int decimals = 0;
    double before = Double.NEGATIVE_INFINITY;
    boolean apartRises = true;
    int line = 0;
    int column = 0;
    boolean semicolons = false;
    while (lines.next()) {
      String text = lines.get();
      int at = 0;
      while (at < text.length()) {
        int end = at;
        while (end < text.length() && text.charAt(end) != ';' && !Lines.isBlank(text.charAt(end))) {
          end++;
        }
        semicolons |= end < text.length() && text.charAt(end) == ';';
        int comma = firstComma(text, at, end);
        if (comma >= 0 && comma < end - 1) {
          if (comma == at || !isDecimal(text, at, comma, end)) {
            return false;
          }
          decimals++;
          double left = Numbers.parse(text.substring(at, comma));
          double right = Numbers.parse(text.substring(comma + 1, end));
          apartRises &= left >= before && right >= left;
          before = right;
          line = lines.line();
          column = at + 1;
        } else if (comma == end - 1 || text.substring(at, end).indexOf('.') >= 0) {
          return false;
        }
        words += end > at ? 1 : 0;
        at = end + 1;
      }
    }
    if (decimals == 0 || words < 2) {
      return false;
    }
    if (apartRises && !semicolons) {
      throw source.fault(line, column, HINT);
    }
    return true;
  }

  private static int firstComma(String text, int from, int end) {
    int at = from;
    while (at < end && text.charAt(at) != ',') {
      at++;
    }
    return at < end ? at : -1;
  }

  private static boolean isDecimal(String text, int start, int comma, int end) {
    for (int i = start; i < end; i++) {
      if (i != comma && !Numbers.isDigit(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }
}

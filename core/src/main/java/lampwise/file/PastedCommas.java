package lampwise.file;

import java.util.List;
import lampwise.file.PastedSection.PastedLine;

/** Finds out what a comma between two digits is in pasted times: a separator or a decimal point. */
final class PastedCommas {
  private static final String HINT =
      "a comma here may be a decimal point or stand between times;"
          + " write a decimal point, or a blank after each comma";

  private int words;
  private int decimals;
  private boolean certain;
  private boolean semicolons;
  private boolean apartRises = true;
  private double before = Double.NEGATIVE_INFINITY;
  private int line;
  private int column;

  private PastedCommas() {}

  /**
   * Whether commas between digits are decimal points. They are if no number has a point, blanks,
   * semicolons, line ends or commas with a blank stand between words of the kind {@code 3,5}, and
   * the numbers do not rise when the comma separates them; and in clock times, {@code 0:03,5}.
   *
   * @throws FileException if both readings give rising times
   */
  static boolean areDecimal(SourceText source, List<PastedSection> sections) throws FileException {
    PastedCommas commas = new PastedCommas();
    for (PastedSection section : sections) {
      commas.before = Double.NEGATIVE_INFINITY;
      for (PastedLine line : section.lines()) {
        if (!commas.take(line)) {
          return false;
        }
      }
    }
    if (commas.decimals == 0 || (commas.words < 2 && !commas.certain)) {
      return false;
    }
    if (commas.apartRises && !commas.semicolons && !commas.certain) {
      throw source.fault(commas.line, commas.column, HINT);
    }
    return true;
  }

  /** Looks at a line; false if its commas cannot be decimal points. */
  private boolean take(PastedLine pasted) {
    String text = pasted.text();
    int at = pasted.from();
    while (at < text.length()) {
      int end = at;
      while (end < text.length() && text.charAt(end) != ';' && !Lines.isBlank(text.charAt(end))) {
        end++;
      }
      semicolons |= end < text.length() && text.charAt(end) == ';';
      if (!take(text, at, end, pasted.number())) {
        return false;
      }
      at = end + 1;
    }
    return true;
  }

  private boolean take(String text, int start, int wordEnd, int number) {
    int end = wordEnd;
    while (end > start && !Numbers.isDigit(text.charAt(end - 1))) {
      end--; // units, a comma behind
    }
    int at = start;
    while (at < end && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
      at++;
    }
    if (at == end) {
      return wordEnd - start != 1 || text.charAt(start) != ',';
    }
    words++;
    int comma = firstComma(text, at, end);
    if (comma < 0) {
      boolean listComma = wordEnd > end && text.charAt(end) == ',';
      return !listComma && text.substring(at, end).indexOf('.') < 0;
    }
    boolean clock = text.substring(at, comma).indexOf(':') > 0;
    if (comma == at || !isDecimal(text, at, comma, end)) {
      return false;
    }
    decimals++;
    certain |= clock;
    double left = Numbers.parse(text.substring(at, comma));
    double right = Numbers.parse(text.substring(comma + 1, end));
    apartRises &= at == start && left >= before && right >= left;
    before = right;
    line = number;
    column = at + 1;
    return true;
  }

  private static int firstComma(String text, int from, int end) {
    int at = from;
    while (at < end && text.charAt(at) != ',') {
      at++;
    }
    return at < end ? at : -1;
  }

  /** Digits, in a clock time colons too, then the comma and digits alone. */
  private static boolean isDecimal(String text, int start, int comma, int end) {
    for (int i = start; i < end; i++) {
      char c = text.charAt(i);
      if (i != comma && !Numbers.isDigit(c) && !(c == ':' && i < comma)) {
        return false;
      }
    }
    return true;
  }
}

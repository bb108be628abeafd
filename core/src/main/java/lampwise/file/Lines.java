package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/**
 * Walks over the lines of a text that hold something: blank lines and comments are passed over.
 * Lines end with LF, CR or CR LF. A comment starts with {@code #}, {@code //} or {@code %}; {@code
 * #1 0.3} is an item of a numbered list.
 */
final class Lines {
  /** Which lines are walked over. */
  private enum Kind {
    CONTENT,
    COMMENTS,
    ALL
  }

  private final String text;
  private final Kind kind;
  private int line;
  private int start;
  private int end;
  private int next;

  private Lines(String text, Kind kind) {
    this.text = text;
    this.kind = kind;
  }

  /** The lines that are neither blank nor comments. */
  static Lines content(String text) {
    return new Lines(text, Kind.CONTENT);
  }

  /** The comments alone. */
  static Lines comments(String text) {
    return new Lines(text, Kind.COMMENTS);
  }

  /** Every line, blank ones and comments too. */
  static Lines all(String text) {
    return new Lines(text, Kind.ALL);
  }

  /** Goes to the next line; false at the end of the text. */
  boolean next() {
    while (next < text.length()) {
      line++;
      start = next;
      end = start;
      while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
        end++;
      }
      next = end + 1;
      if (next < text.length() && text.charAt(end) == '\r' && text.charAt(next) == '\n') {
        next++;
      }
      int first = firstAfterBlanks(start);
      if (kind == Kind.ALL || (first < end && isComment(first) == (kind == Kind.COMMENTS))) {
        return true;
      }
    }
    return false;
  }

  /** The number of this line, from 1. */
  int line() {
    return line;
  }

  /** Where this line starts in the text. */
  int start() {
    return start;
  }

  /** Where this line ends in the text; the line's end mark is not part of it. */
  int end() {
    return end;
  }

  /** This line. */
  String get() {
    return text.substring(start, end);
  }

  private int firstAfterBlanks(int from) {
    int at = from;
    while (at < end && isBlank(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private boolean isComment(int first) {
    char c = text.charAt(first);
    return c == '%' || text.startsWith("//", first) || (c == '#' && !isNumbered(text, first, end));
  }

  /** Whether an item such as {@code #1 0.3} starts at the hash sign. */
  static boolean isNumbered(CharSequence text, int hash, int end) {
    int at = hash + 1;
    while (at < end && Numbers.isDigit(text.charAt(at))) {
      at++;
    }
    if (at == hash + 1) {
      return false;
    }
    int number = at;
    while (at < end && (isBlank(text.charAt(at)) || ").:".indexOf(text.charAt(at)) >= 0)) {
      at++;
    }
    return at > number
        && at < end
        && (Numbers.isDigit(text.charAt(at)) || "+-.".indexOf(text.charAt(at)) >= 0);
  }

  /** The parts of a text between any of some signs; a part may be empty. */
  static List<String> split(String text, String signs) {
    List<String> parts = new ArrayList<>();
    int start = 0;
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || signs.indexOf(text.charAt(i)) >= 0) {
        parts.add(text.substring(start, i));
        start = i + 1;
      }
    }
    return parts;
  }

  /** Blank, tab, form feed or no-break space. */
  static boolean isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\f' || c == '\u00A0';
  }
}

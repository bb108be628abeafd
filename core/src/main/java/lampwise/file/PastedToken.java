package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/**
 * A word of a pasted line.
 *
 * @param item whether it is the number of a list item: {@code 1)}, {@code 1.}, {@code #1}
 * @param text the word
 * @param column its column, from 1
 */
record PastedToken(boolean item, String text, int column) {
  /** The words of a line up to a comment. */
  static List<PastedToken> of(String line, int from, boolean decimalComma) {
    List<PastedToken> tokens = new ArrayList<>();
    int at = from;
    while (at < line.length()) {
      if (isSeparator(line, at, decimalComma)) {
        at++;
        continue;
      }
      int end = at;
      while (end < line.length() && !isSeparator(line, end, decimalComma)) {
        end++;
      }
      if (line.charAt(at) == '#' && !Lines.isNumbered(line, at, line.length())) {
        break;
      }
      int item = itemEnd(line, at, end, line.length());
      boolean isItem = item > at;
      tokens.add(new PastedToken(isItem, line.substring(at, isItem ? item : end), at + 1));
      at = isItem ? item : end;
    }
    return tokens;
  }

  private static boolean isSeparator(String line, int at, boolean decimalComma) {
    char c = line.charAt(at);
    if (c == ',' && decimalComma) {
      return at == 0
          || at + 1 == line.length()
          || !Numbers.isDigit(line.charAt(at - 1))
          || !Numbers.isDigit(line.charAt(at + 1));
    }
    return c == ',' || c == ';' || Lines.isBlank(c);
  }

  /**
   * Where the number of a list item ends: {@code 1)}, {@code 1.} or {@code 1:} before a blank and a
   * time, {@code #1}.
   *
   * @return the place after it; {@code at} if there is none
   */
  static int itemEnd(String line, int at, int end, int lineEnd) {
    boolean hash = line.charAt(at) == '#';
    int digits = at + (hash ? 1 : 0);
    while (digits < end && Numbers.isDigit(line.charAt(digits))) {
      digits++;
    }
    if (digits == at) {
      return at;
    }
    if (digits == end) {
      return hash ? end : at;
    }
    char mark = line.charAt(digits);
    if (mark == ')' || (hash && mark != '.')) {
      return digits + 1;
    }
    boolean dotted = (mark == '.' || mark == ':') && digits + 1 == end;
    return dotted && timeFollows(line, end, lineEnd) ? end : at;
  }

  /** Whether the next word starts like a time and is no list number itself. */
  private static boolean timeFollows(String line, int from, int lineEnd) {
    int at = from;
    while (at < lineEnd && Lines.isBlank(line.charAt(at))) {
      at++;
    }
    if (at == from || at == lineEnd || "0123456789+-.".indexOf(line.charAt(at)) < 0) {
      return false;
    }
    int end = at;
    while (end < lineEnd && ",; \t\f\u00A0".indexOf(line.charAt(end)) < 0) {
      end++;
    }
    return line.charAt(end - 1) != '.' && line.charAt(end - 1) != ':';
  }

  /** Whether it starts like a time. */
  boolean isNumeric() {
    char first = text.charAt(0);
    char second = text.length() > 1 ? text.charAt(1) : ' ';
    return !item
        && (Numbers.isDigit(first)
            || ("+-.".indexOf(first) >= 0 && (Numbers.isDigit(second) || second == '.')));
  }

  /** Whether it is a whole number, perhaps with a colon or a point behind. */
  boolean isWhole() {
    int end = text.length();
    if (end > 1 && ":.".indexOf(text.charAt(end - 1)) >= 0) {
      end--;
    }
    for (int i = 0; i < end; i++) {
      if (!Numbers.isDigit(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  /** The digits of a whole number, as far as it fits; 0 if there are none. */
  int number() {
    int number = 0;
    for (int i = 0; i < text.length() && number < 100_000_000; i++) {
      if (Numbers.isDigit(text.charAt(i))) {
        number = number * 10 + text.charAt(i) - '0';
      }
    }
    return number;
  }
}

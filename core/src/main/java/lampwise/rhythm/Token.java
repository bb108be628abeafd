package lampwise.rhythm;

import java.util.ArrayList;
import java.util.List;

/**
 * One word, number or other sign of a phrase.
 *
 * @param kind which of them
 * @param text as written, words in lower case; empty at the end
 * @param start index of its first character
 * @param end index after its last character
 */
record Token(Kind kind, String text, int start, int end) {
  /** The kinds of tokens. */
  enum Kind {
    WORD,
    NUMBER,
    SIGN,
    END
  }

  /** The most characters of a number; the longest that is ever printed has fewer. */
  private static final int LONGEST_NUMBER = 400;

  /** The most characters of a word that a message repeats. */
  private static final int LONGEST_SHOWN = 24;

  // Written out, as in Window: a record's own would cost every cold start.

  @Override
  public boolean equals(Object other) {
    return other instanceof Token token
        && kind == token.kind
        && start == token.start
        && end == token.end
        && text.equals(token.text);
  }

  @Override
  public int hashCode() {
    return 31 * start + text.hashCode();
  }

  int column() {
    return start + 1;
  }

  boolean is(String word) {
    return kind == Kind.WORD && text.equals(word);
  }

  boolean isNumber() {
    return kind == Kind.NUMBER;
  }

  boolean isEnd() {
    return kind == Kind.END;
  }

  /** The token in quotes, short enough for a message. */
  String shown() {
    if (kind == Kind.SIGN) {
      return '"' + Decimals.shown(text.codePointAt(0)) + '"';
    }
    return text.length() <= LONGEST_SHOWN
        ? '"' + text + '"'
        : '"' + text.substring(0, LONGEST_SHOWN) + "...\"";
  }

  /** Splits a phrase; the last token is the end. */
  static List<Token> split(String text) throws Fault {
    List<Token> tokens = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      int c = text.codePointAt(at);
      if (isBlank(c)) {
        at += Character.charCount(c);
      } else if (c == ',') {
        comma(text, at);
        at++;
      } else {
        Token token = token(text, at, c);
        tokens.add(token);
        at = token.end();
      }
    }
    tokens.add(new Token(Kind.END, "", text.length(), text.length()));
    return tokens;
  }

  private static Token token(String text, int start, int c) throws Fault {
    if (isDigit(c)) {
      int end = numberEnd(text, start);
      return new Token(Kind.NUMBER, text.substring(start, end), start, end);
    }
    if (Character.isLetter(c)) {
      int end = wordEnd(text, start);
      return new Token(Kind.WORD, lower(text.substring(start, end)), start, end);
    }
    if (c == '.' && digitAt(text, start + 1)) {
      String number = "0" + text.substring(start, numberEnd(text, start));
      throw new Fault(
          start + 1,
          "a number begins with a digit",
          number,
          text.substring(0, start) + " 0" + text.substring(start));
    }
    int end = start + Character.charCount(c);
    return new Token(Kind.SIGN, text.substring(start, end), start, end);
  }

  private static int wordEnd(String text, int start) {
    int end = start;
    while (end < text.length() && Character.isLetter(text.codePointAt(end))) {
      end += Character.charCount(text.codePointAt(end));
    }
    return end;
  }

  /** The end of digits, perhaps with one point between two of them. */
  private static int numberEnd(String text, int start) throws Fault {
    int end = digitsEnd(text, start);
    if (end < text.length() && text.charAt(end) == '.' && digitAt(text, end + 1)) {
      end = digitsEnd(text, end + 1);
    }
    if (end - start > LONGEST_NUMBER) {
      throw new Fault(start + 1, "a number has at most " + LONGEST_NUMBER + " characters", "", "");
    }
    return end;
  }

  private static int digitsEnd(String text, int start) {
    int end = start;
    while (digitAt(text, end)) {
      end++;
    }
    return end;
  }

  /** A comma is noise before a blank and at the end. */
  private static void comma(String text, int at) throws Fault {
    if (at + 1 == text.length() || isBlank(text.codePointAt(at + 1))) {
      return;
    }
    String before = text.substring(0, at);
    String after = text.substring(at + 1);
    if (at > 0 && digitAt(text, at - 1) && digitAt(text, at + 1)) {
      int from = at;
      while (digitAt(text, from - 1)) {
        from--;
      }
      int to = digitsEnd(text, at + 1);
      boolean tooLong = to - from > LONGEST_NUMBER;
      throw new Fault(
          at + 1,
          "a number has a point, not a comma; a comma between words is followed by a blank",
          tooLong ? "." : text.substring(from, at) + "." + text.substring(at + 1, to),
          before + "." + after);
    }
    throw new Fault(at + 1, "a comma is followed by a blank", ",", before + ", " + after);
  }

  private static boolean isBlank(int c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  private static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  private static boolean digitAt(String text, int at) {
    return at >= 0 && at < text.length() && isDigit(text.charAt(at));
  }

  /** ASCII letters only: the words of the grammar have no others. */
  private static String lower(String word) {
    StringBuilder out = new StringBuilder(word.length());
    for (int i = 0; i < word.length(); i++) {
      char c = word.charAt(i);
      out.append(c >= 'A' && c <= 'Z' ? (char) (c + ('a' - 'A')) : c);
    }
    return out.toString();
  }
}

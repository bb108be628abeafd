package lampwise.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Looks for words in what a label says. */
final class LabelText {
  private LabelText() {}

  /** Lower case, with every run of blanks one blank and none at the ends. */
  static String plain(String text) {
    return onOneLine(text).toLowerCase(Locale.ROOT);
  }

  /** With every run of blanks one blank and none at the ends. */
  static String onOneLine(String text) {
    StringBuilder plain = new StringBuilder(text.length());
    boolean gap = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c <= ' ' || Character.isSpaceChar(c) || Character.isWhitespace(c)) {
        gap = plain.length() > 0;
      } else {
        if (gap) {
          plain.append(' ');
          gap = false;
        }
        plain.append(c);
      }
    }
    return plain.toString();
  }

  /** Where some words stand as whole words at or after an index; -1 if they do not. */
  static int find(String text, String words, int from) {
    int at = text.indexOf(words, from);
    while (at >= 0 && !isWhole(text, at, at + words.length())) {
      at = text.indexOf(words, at + 1);
    }
    return at;
  }

  private static boolean isWhole(String text, int start, int end) {
    boolean before = start == 0 || !Character.isLetter(text.charAt(start - 1));
    boolean after = end >= text.length() || !Character.isLetter(text.charAt(end));
    return before && after;
  }

  /**
   * Whether one of these, each some words or (with a star at its end) how a word begins, is there.
   */
  static boolean hasAny(String text, String... alternatives) {
    for (String words : alternatives) {
      if (words.endsWith("*")
          ? begins(text, words.substring(0, words.length() - 1))
          : find(text, words, 0) >= 0) {
        return true;
      }
    }
    return false;
  }

  private static boolean begins(String text, String start) {
    int at = text.indexOf(start);
    while (at > 0 && Character.isLetter(text.charAt(at - 1))) {
      at = text.indexOf(start, at + 1);
    }
    return at >= 0;
  }

  /** The stretches between commas and semicolons that a blank follows. */
  static List<String> clauses(String text) {
    List<String> clauses = new ArrayList<>();
    int start = 0;
    for (int i = 0; i < text.length(); i++) {
      boolean mark = text.charAt(i) == ',' || text.charAt(i) == ';';
      if (mark && (i + 1 == text.length() || text.charAt(i + 1) == ' ')) {
        clauses.add(text.substring(start, i).strip());
        start = i + 1;
      }
    }
    clauses.add(text.substring(start).strip());
    return clauses;
  }

  /** Without blanks, commas and the like at either end. */
  static String trimmed(String text) {
    int start = 0;
    int end = text.length();
    while (start < end && " ,;:.-=".indexOf(text.charAt(start)) >= 0) {
      start++;
    }
    while (end > start && " ,;:.-=".indexOf(text.charAt(end - 1)) >= 0) {
      end--;
    }
    return text.substring(start, end);
  }
}

package lampwise.file;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** What messages about a file's words have in common. */
final class Wording {
  private static final int MOST_QUOTED = 60;
  private static final int INSTEAD = 0xFFFD;

  private Wording() {}

  /** The text in quotation marks, shortened, and safe to print on one line. */
  static String quote(String text) {
    boolean whole = text.codePoints().skip(MOST_QUOTED).findAny().isEmpty();
    int end = whole ? text.length() : text.offsetByCodePoints(0, MOST_QUOTED);
    return '"' + printable(text.substring(0, end)) + (whole ? "\"" : "...\"");
  }

  /** The text with a mark in place of each character that may not stand in a line of output. */
  static String printable(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints().forEach(c -> shown.appendCodePoint(isPrintable(c) ? c : INSTEAD));
    return shown.toString();
  }

  /** Whether a character may stand in a line of output: no control, no half of a pair. */
  static boolean isPrintable(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  /** The first character that may not stand in a line of output. */
  static Optional<String> unprintable(String text) {
    return text.codePoints()
        .filter(c -> !isPrintable(c))
        .mapToObj(c -> String.format(Locale.ROOT, "U+%04X", c))
        .findFirst();
  }

  /** The text with every run of blanks and line ends as one blank, and none at either end. */
  static String onOneLine(String text) {
    StringBuilder line = new StringBuilder();
    boolean gap = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
        gap = line.length() > 0;
      } else {
        if (gap) {
          line.append(' ');
          gap = false;
        }
        line.append(c);
      }
    }
    return line.toString();
  }

  /** The known words in one line. */
  static String list(Collection<String> words) {
    return words.stream().collect(Collectors.joining(", "));
  }

  /**
   * The known word that a misspelt one most likely stands for, the first of equally near ones;
   * empty if more than half the letters would have to change.
   */
  static Optional<String> nearest(String word, List<String> known) {
    Optional<String> nearest = Optional.empty();
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int most = Math.max(word.length(), candidate.length()) / 2;
      if (Math.abs(word.length() - candidate.length()) <= most) {
        int edits = edits(word.toLowerCase(Locale.ROOT).replace('_', '-'), candidate);
        if (edits <= most && edits < least) {
          least = edits;
          nearest = Optional.of(candidate);
        }
      }
    }
    return nearest;
  }

  /**
   * The number of letters put in, left out, replaced or swapped with their neighbour (the optimal
   * string alignment distance).
   */
  private static int edits(String a, String b) {
    int[][] edits = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          edits[i][j] = i + j;
          continue;
        }
        int replaced = edits[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        edits[i][j] = Math.min(replaced, 1 + Math.min(edits[i - 1][j], edits[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          edits[i][j] = Math.min(edits[i][j], edits[i - 2][j - 2] + 1);
        }
      }
    }
    return edits[a.length()][b.length()];
  }
}

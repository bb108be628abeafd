package lampwise.cli;

import java.util.ArrayList;
import java.util.List;

/** Fits text into lines of 80 columns. */
final class Layout {
  /** The widest line. */
  static final int WIDTH = 80;

  private static final List<String> UNITS = List.of("s", "ms", "min", "h", "%");

  private Layout() {}

  /** Filled up with blanks to a width. */
  static String padded(String text, int width) {
    StringBuilder padded = new StringBuilder(text);
    while (padded.length() < width) {
      padded.append(' ');
    }
    return padded.toString();
  }

  /**
   * The text on one line: each run of blanks and control characters is one blank, none at the ends.
   * What came from a file can so do nothing to the terminal.
   */
  static String clean(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    boolean gap = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c <= ' ' || Character.isISOControl(c)) {
        gap = clean.length() > 0;
      } else {
        if (gap) {
          clean.append(' ');
          gap = false;
        }
        clean.append(c);
      }
    }
    return clean.toString();
  }

  /**
   * Wraps a text at its blanks, if possible not between a number and its unit; a word that is
   * longer than a line is broken.
   *
   * @param text the text; cleaned first
   * @param first columns for the first line, over zero
   * @param rest columns for the other lines, over zero
   * @return one line or more, none wider than asked
   */
  static List<String> wrap(String text, int first, int rest) {
    List<String> lines = new ArrayList<>();
    String left = clean(text);
    int width = first;
    while (left.length() > width) {
      int blank = blankAtMost(left, width);
      if (blank > 0) {
        lines.add(left.substring(0, blank));
        left = left.substring(blank + 1);
      } else {
        int cut =
            Character.isHighSurrogate(left.charAt(width - 1)) && width > 1 ? width - 1 : width;
        lines.add(left.substring(0, cut));
        left = left.substring(cut);
      }
      width = rest;
    }
    lines.add(left);
    return lines;
  }

  /** The last good blank for a break, else the last blank, else -1. */
  private static int blankAtMost(String text, int width) {
    int last = text.lastIndexOf(' ', width);
    int blank = last;
    while (blank > 0 && isBeforeUnit(text, blank)) {
      blank = text.lastIndexOf(' ', blank - 1);
    }
    return blank > 0 ? blank : last;
  }

  private static boolean isBeforeUnit(String text, int blank) {
    char before = text.charAt(blank - 1);
    if (before < '0' || before > '9') {
      return false;
    }
    for (String unit : UNITS) {
      int end = blank + 1 + unit.length();
      if (text.startsWith(unit, blank + 1)
          && (end == text.length() || !Character.isLetterOrDigit(text.charAt(end)))) {
        return true;
      }
    }
    return false;
  }
}

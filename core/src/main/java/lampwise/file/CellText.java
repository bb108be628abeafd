package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/**
 * Text in a cell that stays on one line, that a spreadsheet opens without running anything, and
 * that comes back as it was.
 *
 * <p>Line ends and backslashes are written as {@code \n}, {@code \r}, {@code \\}. A cell that
 * begins with {@code = + - @} or a tab gets an apostrophe before it, and so does one that begins
 * with an apostrophe, so that one apostrophe taken away gives every text back. (Which signs start a
 * formula: OWASP, CSV Injection.) Several texts are parted by semicolons; {@code \;} is a semicolon
 * of a text.
 */
final class CellText {
  private static final String GUARDED = "=+-@\t'";
  private static final String PLAIN = "\\\n\r;";
  private static final String WRITTEN = "\\nr;";

  private CellText() {}

  static String cell(String text) {
    return guarded(escaped(text, 3));
  }

  static String cell(List<String> texts) {
    return guarded(String.join("; ", texts.stream().map(text -> escaped(text, 4)).toList()));
  }

  private static String escaped(String text, int signs) {
    StringBuilder cell = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char sign = text.charAt(i);
      int at = PLAIN.indexOf(sign);
      if (at >= 0 && at < signs) {
        cell.append('\\').append(WRITTEN.charAt(at));
      } else {
        cell.append(sign);
      }
    }
    return cell.toString();
  }

  private static String guarded(String cell) {
    return !cell.isEmpty() && GUARDED.indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
  }

  private static String bare(String cell) {
    return cell.startsWith("'") ? cell.substring(1) : cell;
  }

  /** The text of a cell. */
  static String text(String cell) {
    StringBuilder text = new StringBuilder();
    String bare = bare(cell);
    for (int i = 0; i < bare.length(); i++) {
      i += take(bare, i, text);
    }
    return text.toString();
  }

  /** The texts of a cell, trimmed, without blank ones. */
  static List<String> texts(String cell) {
    List<String> texts = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    String bare = bare(cell) + ";";
    for (int i = 0; i < bare.length(); i++) {
      if (bare.charAt(i) == ';') {
        String trimmed = text.toString().strip();
        if (!trimmed.isEmpty()) {
          texts.add(trimmed);
        }
        text.setLength(0);
      } else {
        i += take(bare, i, text);
      }
    }
    return texts;
  }

  /** Takes the sign at a place; 1 if it was written as two. */
  private static int take(String cell, int at, StringBuilder text) {
    int which =
        cell.charAt(at) == '\\' && at + 1 < cell.length()
            ? WRITTEN.indexOf(cell.charAt(at + 1))
            : -1;
    text.append(which < 0 ? cell.charAt(at) : PLAIN.charAt(which));
    return which < 0 ? 0 : 1;
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;

/**
 * One answer for people: the answer itself, rows of a label and a text, and what to do next. It
 * fits 80 columns and {@value #MOST_LINES} lines; rows that find no place are counted in the last
 * row.
 */
final class Block {
  /** The most lines of one block. */
  static final int MOST_LINES = 14;

  private static final int MOST_LINES_OF_A_ROW = 3;
  private static final int INDENT = 2;
  private static final int LABEL = 12;

  private final List<String> head;
  private final List<List<String>> rows = new ArrayList<>();

  /**
   * Starts a block.
   *
   * @param answer the answer
   * @param tag what must stand in the first line whatever the answer's length; may be empty
   */
  Block(String answer, String tag) {
    int room = tag.isEmpty() ? Layout.WIDTH : Layout.WIDTH - tag.length() - 2;
    head = lines(answer, room, "", "    ");
    if (!tag.isEmpty()) {
      head.set(0, head.get(0) + "  " + tag);
    }
  }

  /** Adds a row; the ones added first are kept first when there is no place for all. */
  void row(String label, String text) {
    StringBuilder indent = new StringBuilder();
    while (indent.length() < INDENT + LABEL) {
      indent.append(' ');
    }
    String first = Layout.padded("  " + label, INDENT + LABEL);
    rows.add(lines(text, Layout.WIDTH, first, indent.toString()));
  }

  /** The block with its last line or lines: what to do next. */
  List<String> lines(String next) {
    List<String> tail = lines(next, Layout.WIDTH, "next: ", "      ");
    int room = MOST_LINES - head.size() - tail.size();
    List<String> all = new ArrayList<>(head);
    int used = 0;
    int shown = 0;
    for (List<String> row : rows) {
      boolean last = shown == rows.size() - 1;
      if (used + row.size() + (last ? 0 : 1) > room) {
        break;
      }
      all.addAll(row);
      used += row.size();
      shown++;
    }
    if (shown < rows.size()) {
      int left = rows.size() - shown;
      all.add(
          Layout.padded("  more", INDENT + LABEL)
              + Words.count(left, "further line")
              + "; --json shows all");
    }
    all.addAll(tail);
    return all;
  }

  private static List<String> lines(String text, int firstWidth, String first, String rest) {
    List<String> wrapped =
        Layout.wrap(text, firstWidth - first.length(), Layout.WIDTH - rest.length());
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < wrapped.size() && i < MOST_LINES_OF_A_ROW; i++) {
      lines.add((i == 0 ? first : rest) + wrapped.get(i));
    }
    if (wrapped.size() > MOST_LINES_OF_A_ROW) {
      int last = lines.size() - 1;
      String cut = lines.get(last);
      if (cut.length() > Layout.WIDTH - 4) {
        int blank = cut.lastIndexOf(' ', Layout.WIDTH - 4);
        cut = cut.substring(0, blank > rest.length() ? blank : Layout.WIDTH - 4);
      }
      lines.set(last, cut + " ...");
    }
    return lines;
  }
}

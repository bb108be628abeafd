package lampwise.file;

import java.util.ArrayList;
import java.util.List;

/**
 * A word of a log's line.
 *
 * @param text the word
 * @param column where it starts in its line, from 1
 */
record LogWord(String text, int column) {
  /** The words between blanks, from a place of the line on. */
  static List<LogWord> of(String line, int from) {
    List<LogWord> words = new ArrayList<>();
    int at = from;
    while (at < line.length()) {
      int end = at;
      while (end < line.length() && !Lines.isBlank(line.charAt(end))) {
        end++;
      }
      if (end > at) {
        words.add(new LogWord(line.substring(at, end), at + 1));
      }
      at = end + 1;
    }
    return words;
  }
}

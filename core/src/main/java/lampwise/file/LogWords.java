package lampwise.file;

import java.util.List;

/** Takes the words of one line of a log, one after another, and says what was expected instead. */
final class LogWords {
  /** A line of a log is wrong; says where and what was expected. */
  static final class Fault extends Exception {
    private static final long serialVersionUID = 1L;

    private final int column;

    Fault(int column, String message) {
      super(message);
      this.column = column;
    }

    int column() {
      return column;
    }

    String reason() {
      return String.valueOf(getMessage());
    }
  }

  private final List<LogWord> words;
  private final int endColumn;
  private int next;

  /**
   * Makes one.
   *
   * @param line the line
   * @param from where its first word may start
   */
  LogWords(String line, int from) {
    this.words = LogWord.of(line, from);
    this.endColumn = words.isEmpty() ? line.length() + 1 : endOf(words.get(words.size() - 1));
  }

  private static int endOf(LogWord word) {
    return word.column() + word.text().length();
  }

  /** Whether no word is left. */
  boolean isAtEnd() {
    return next == words.size();
  }

  /** Where the next word starts, or the place after the last one. */
  int column() {
    return isAtEnd() ? endColumn : words.get(next).column();
  }

  /** Whether the next word is this one; it stays. */
  boolean isNext(String word) {
    return !isAtEnd() && words.get(next).text().equals(word);
  }

  /** Takes the next word if it is this one. */
  boolean take(String word) {
    boolean is = isNext(word);
    next += is ? 1 : 0;
    return is;
  }

  /** Takes a word that must stand here. */
  void expect(String word, String expected) throws Fault {
    if (!take(word)) {
      throw fault(expected);
    }
  }

  /** Takes any word. */
  LogWord word(String expected) throws Fault {
    if (isAtEnd()) {
      throw fault(expected);
    }
    return words.get(next++);
  }

  /** Takes a number of seconds: digits with an optional point and an optional minus. */
  double seconds(String expected) throws Fault {
    if (isAtEnd() || !isPlain(words.get(next).text())) {
      throw fault(expected);
    }
    LogWord word = words.get(next++);
    double seconds = Numbers.parse(word.text());
    if (!(Math.abs(seconds) <= RecordingClock.MAX_SECONDS)) {
      throw new Fault(
          word.column(), Numbers.quote(word.text()) + " is too large for a time in seconds");
    }
    return seconds == 0 ? 0 : seconds;
  }

  private static boolean isPlain(String word) {
    int digits = 0;
    int points = 0;
    for (int i = 0; i < word.length(); i++) {
      char c = word.charAt(i);
      digits += Numbers.isDigit(c) ? 1 : 0;
      points += c == '.' ? 1 : 0;
      if (!Numbers.isDigit(c) && c != '.' && !(c == '-' && i == 0)) {
        return false;
      }
    }
    return digits > 0
        && points <= 1
        && Numbers.isDigit(word.charAt(word.length() - 1))
        && Numbers.isDigit(word.charAt(word.charAt(0) == '-' ? 1 : 0));
  }

  /** The line must end here. */
  void end() throws Fault {
    if (!isAtEnd()) {
      throw fault("the end of the line");
    }
  }

  /** Says what was expected in place of the next word. */
  Fault fault(String expected) {
    String found = isAtEnd() ? "the end of the line" : Numbers.quote(words.get(next).text());
    return new Fault(column(), "expected " + expected + "; found " + found);
  }
}

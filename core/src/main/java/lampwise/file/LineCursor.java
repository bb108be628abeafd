package lampwise.file;

/** Reads one line of a log word by word; every fault knows its column. */
final class LineCursor {
  private final String text;
  private int at;
  private int before;

  LineCursor(String text) {
    this.text = text;
    skip();
  }

  /** What is wrong with a line, and where. */
  static final class Fault extends Exception {
    private static final long serialVersionUID = 1L;

    private final int column;
    private final String reason;

    Fault(int column, String reason) {
      super(reason);
      this.column = column;
      this.reason = reason;
    }

    int column() {
      return column;
    }

    String reason() {
      return reason;
    }
  }

  private void skip() {
    while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == '\t')) {
      at++;
    }
  }

  boolean atEnd() {
    return at >= text.length();
  }

  /** Where the next word starts, from 1. */
  int column() {
    return at + 1;
  }

  /** A fault at the next word. */
  Fault fault(String reason) {
    return new Fault(atEnd() ? before + 1 : column(), reason);
  }

  /** A fault at the word that was just read. */
  Fault unknown(String reason) {
    return new Fault(before + 1, reason);
  }

  private int wordEnd() {
    int end = at;
    while (end < text.length() && text.charAt(end) != ' ' && text.charAt(end) != '\t') {
      end++;
    }
    return end;
  }

  /** The next word, empty at the end of the line. */
  String token() {
    before = at;
    String word = text.substring(at, wordEnd());
    at += word.length();
    skip();
    return word;
  }

  /** Takes this word if it is the next one. */
  boolean word(String expected) {
    if (!text.substring(at, wordEnd()).equals(expected)) {
      return false;
    }
    token();
    return true;
  }

  void expect(String word) throws Fault {
    if (!word(word)) {
      String found = text.substring(at, wordEnd());
      throw new Fault(
          column(),
          (found.isEmpty() ? "the line ends" : Wording.quote(found) + " stands here")
              + "; expected "
              + word);
    }
  }

  /** A key with its colon. */
  String key() throws Fault {
    before = at;
    int colon = text.indexOf(':', at);
    if (colon < 0) {
      throw new Fault(column(), "expected a key with a colon, or on and a time");
    }
    String key = text.substring(at, colon).strip();
    at = colon + 1;
    skip();
    return key;
  }

  /** A finite number of seconds. */
  double number() throws Fault {
    int column = column();
    String word = token();
    double number = Numbers.parse(word);
    if (!(Math.abs(number) <= RecordingClock.MAX_SECONDS)) {
      throw new Fault(
          column,
          (word.isEmpty() ? "the line ends" : Wording.quote(word) + " is no time")
              + "; expected seconds");
    }
    return number;
  }

  /** All that is left. */
  String rest() {
    before = at;
    String rest = text.substring(at).strip();
    at = text.length();
    return rest;
  }

  void end() throws Fault {
    if (!atEnd()) {
      throw new Fault(column(), Wording.quote(text.substring(at)) + " is too much here");
    }
  }
}

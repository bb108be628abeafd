package lampwise.file;

import java.io.Reader;

/**
 * The lines of a table as one stream for the splitter: comments and blank lines are left out, every
 * line ends with LF, runs of blanks become one where blanks separate.
 */
final class TableText extends Reader {
  private final String text;
  private final Lines lines;
  private final boolean oneBlank;
  private int at;
  private boolean inLine;
  private boolean ended;

  TableText(String text, Delimiter delimiter) {
    this.text = text;
    this.lines = Lines.content(text);
    this.oneBlank = delimiter == Delimiter.BLANKS;
  }

  @Override
  public int read(char[] buffer, int offset, int length) {
    int count = 0;
    while (count < length) {
      if (!inLine && !nextLine()) {
        return count == 0 ? -1 : count;
      }
      if (at >= lines.end()) {
        buffer[offset + count++] = '\n';
        inLine = false;
        continue;
      }
      char c = text.charAt(at++);
      if (oneBlank && Lines.isBlank(c)) {
        skipBlanks();
        if (at >= lines.end()) {
          continue;
        }
        c = ' ';
      }
      buffer[offset + count++] = c;
    }
    return count;
  }

  private boolean nextLine() {
    if (ended || !lines.next()) {
      ended = true;
      return false;
    }
    at = lines.start();
    if (oneBlank) {
      skipBlanks();
    }
    inLine = true;
    return true;
  }

  private void skipBlanks() {
    while (at < lines.end() && Lines.isBlank(text.charAt(at))) {
      at++;
    }
  }

  @Override
  public void close() {
    // the text stays where it is
  }
}

package lampwise.file;

/** A row that is one line: the line that is being looked at, cut where it is asked. */
final class PlainRow implements Row {
  private final String text;
  private final Lines lines;
  private final Delimiter delimiter;

  PlainRow(String text, Lines lines, Delimiter delimiter) {
    this.text = text;
    this.lines = lines;
    this.delimiter = delimiter;
  }

  @Override
  public String cell(int column) {
    int at = delimiter.rowStart(text, lines.start(), lines.end());
    for (int i = 0; i < column && at < lines.end(); i++) {
      at = delimiter.nextCell(text, at, lines.end());
    }
    return at < lines.end() ? delimiter.cell(text, at, lines.end()) : "";
  }

  @Override
  public boolean isBlank() {
    for (int i = lines.start(); i < lines.end(); i++) {
      if (!delimiter.separates(text.charAt(i)) && !Lines.isBlank(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }
}

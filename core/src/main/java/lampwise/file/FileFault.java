package lampwise.file;

/**
 * One fault of a file: what, where, what was expected.
 *
 * @param file the file's name as the user gave it, or a word for pasted text
 * @param line the line, from 1; 0 if the fault belongs to no line
 * @param column the column in characters, from 1; 0 if the fault belongs to no column
 * @param message what is wrong and what was expected, one line
 */
public record FileFault(String file, int line, int column, String message) {
  /** Makes the message one line, whatever of a file it quotes. */
  public FileFault {
    message = message.replaceAll("\\p{Cntrl}+", " ");
  }

  /**
   * The fault in one line.
   *
   * @return {@code file:line:column: message}, with line and column left out where they are 0
   */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
      if (column > 0) {
        text.append(':').append(column);
      }
    }
    return text.append(": ").append(message).toString();
  }
}

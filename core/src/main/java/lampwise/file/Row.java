package lampwise.file;

/** The cells of one row of a table, trimmed. */
interface Row {
  /**
   * One cell.
   *
   * @param column the column, from 0
   * @return what it holds; nothing where the row has no such cell
   */
  String cell(int column);

  /** Whether no cell holds anything. */
  boolean isBlank();
}

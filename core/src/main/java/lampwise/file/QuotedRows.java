package lampwise.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Splits a table whose cells may stand in quotes. */
final class QuotedRows {
  private QuotedRows() {}

  /** A row cannot be split. */
  static final class Fault extends Exception {
    private static final long serialVersionUID = 1L;

    /** The row, counted among the lines that hold something, from 1. */
    private final long row;

    Fault(long row) {
      super("a quote in this row is not closed, or stands inside a cell");
      this.row = row;
    }

    long row() {
      return row;
    }
  }

  /**
   * Hands over every row.
   *
   * @return whether more rows are wanted at the end
   * @throws Fault if a quote is not closed or stands inside a cell
   * @throws FileException if the taker refuses a row
   */
  static boolean forEach(String text, Delimiter delimiter, Table.RowTaker taker)
      throws Fault, FileException {
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(delimiter.sign())
            .setRecordSeparator('\n')
            .setIgnoreEmptyLines(false)
            .setIgnoreSurroundingSpaces(delimiter != Delimiter.BLANKS)
            .get();
    long row = 0;
    try (CSVParser parser =
        CSVParser.builder().setReader(new TableText(text, delimiter)).setFormat(format).get()) {
      Iterator<CSVRecord> rows = parser.iterator();
      boolean more = true;
      while (more && rows.hasNext()) {
        row = parser.getCurrentLineNumber();
        more = taker.take(row, new QuotedRow(rows.next()));
      }
      return more;
    } catch (IOException | UncheckedIOException e) {
      throw new Fault(row + 1);
    }
  }
}

package lampwise.file;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * The rows of a comma-separated file of our own (RFC 4180, lines ended by CR LF or LF), each with
 * its line, and where the last line ends. A cell that somebody else wrote may hold a line's end
 * inside quotes.
 *
 * @param rows the rows that have ended
 * @param end how many characters they take
 * @param open the line of a row whose quotes do not end with the last line; 0 if there is none
 */
record CsvRows(List<Line> rows, int end, int open) {
  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT.builder().setRecordSeparator("\r\n").setIgnoreEmptyLines(false).get();

  /**
   * A row.
   *
   * @param line the line it begins at, from 1
   * @param cells its cells as they stand; none for one whose quotes are wrong
   */
  record Line(int line, List<String> cells) {}

  /** Splits a text; blank lines are left out. */
  static CsvRows of(String text) {
    List<Line> rows = new ArrayList<>();
    boolean quoted = false;
    int start = 0;
    int line = 1;
    int first = 1;
    int end = text.lastIndexOf('\n') + 1;
    for (int i = 0; i < end; i++) {
      char sign = text.charAt(i);
      if (sign == '"') {
        quoted = !quoted;
      } else if (sign == '\n') {
        line++;
        if (!quoted) {
          String row = text.substring(start, i);
          if (!row.isBlank()) {
            rows.add(new Line(first, cells(row)));
          }
          start = i + 1;
          first = line;
        }
      }
    }
    return new CsvRows(rows, end, quoted ? first : 0);
  }

  private static List<String> cells(String row) {
    String cut = row.endsWith("\r") ? row.substring(0, row.length() - 1) : row;
    try (CSVParser parser =
        CSVParser.builder().setReader(new StringReader(cut)).setFormat(FORMAT).get()) {
      List<CSVRecord> records = parser.getRecords();
      return records.size() == 1 ? records.get(0).toList() : List.of();
    } catch (IOException | UncheckedIOException e) {
      return List.of();
    }
  }

  /** The text of a row, with its end. */
  static String text(List<String> cells) {
    return FORMAT.format(cells.toArray()) + "\r\n";
  }
}

package lampwise.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The rows of a table of numbers, with a header or none. */
final class Table {
  /** So many rows are looked at to find out what a table is. */
  private static final int SAMPLE_ROWS = 500;

  private final SourceText source;
  private final Delimiter delimiter;
  private final boolean quoted;
  private final List<String> header;
  private final List<List<String>> sample;
  private final DecimalMark decimals;

  private Table(
      SourceText source,
      Delimiter delimiter,
      boolean quoted,
      List<String> header,
      List<List<String>> sample,
      DecimalMark decimals) {
    this.source = source;
    this.delimiter = delimiter;
    this.quoted = quoted;
    this.header = header;
    this.sample = sample;
    this.decimals = decimals;
  }

  /** Takes the rows of a table one after another. */
  interface RowTaker {
    /**
     * Takes a row.
     *
     * @param row the line it ends on, counted among the lines that hold something, from 1
     * @param cells its cells
     */
    void take(long row, CSVRecord cells) throws FileException;
  }

  /**
   * Opens a table.
   *
   * @throws FileException if it cannot be split into rows, or its decimal mark is not clear
   */
  static Table open(SourceText source) throws FileException {
    List<String> lines = new ArrayList<>();
    Lines content = Lines.content(source.text());
    while (lines.size() < SAMPLE_ROWS && content.next()) {
      lines.add(content.get());
    }
    Delimiter delimiter = Delimiter.of(lines.size() > 2 ? lines.subList(1, lines.size()) : lines);
    boolean quoted = source.text().indexOf('"') >= 0;
    Table bare =
        new Table(source, delimiter, quoted, List.of(), List.of(), DecimalMark.POINT);
    List<List<String>> rows = bare.firstRows();
    boolean named = !rows.isEmpty() && isHeader(rows.get(0));
    List<List<String>> sample = named ? rows.subList(1, rows.size()) : rows;
    DecimalMark decimals =
        delimiter.allowsDecimalComma() ? DecimalMark.of(source, sample) : DecimalMark.POINT;
    return new Table(
        source, delimiter, quoted, named ? rows.get(0) : List.of(), List.copyOf(sample), decimals);
  }

  /** The names of the columns; empty if the table has no header. */
  List<String> header() {
    return header;
  }

  /** The first rows below the header. */
  List<List<String>> sample() {
    return sample;
  }

  /** How the numbers are written. */
  DecimalMark decimals() {
    return decimals;
  }

  /** How many columns there are, an empty last one not counted. */
  int width() {
    int width = header.size();
    for (List<String> row : sample) {
      int cells = row.size();
      while (cells > 0 && row.get(cells - 1).isEmpty()) {
        cells--;
      }
      width = Math.max(width, cells);
    }
    return width;
  }

  /** A name for a column, for notes and messages. */
  String nameOf(int column) {
    return column < header.size() && !header.get(column).isEmpty()
        ? "column " + (column + 1) + " (" + Numbers.quote(header.get(column)) + ")"
        : "column " + (column + 1);
  }

  /**
   * Hands over every row below the header.
   *
   * @throws FileException if a row cannot be split, or the taker refuses one
   */
  void forEachRow(RowTaker taker) throws FileException {
    try (CSVParser parser = parser()) {
      Iterator<CSVRecord> rows = parser.iterator();
      boolean below = header.isEmpty();
      long row = 0;
      while (hasNext(rows, row)) {
        row = parser.getCurrentLineNumber();
        CSVRecord cells = rows.next();
        if (below) {
          taker.take(row, cells);
        }
        below = true;
      }
    } catch (IOException e) {
      throw source.fault(0, 0, "cannot be split into rows");
    }
  }

  /**
   * A fault in a cell.
   *
   * @param row the row's number, as it was handed over
   * @param column the cell, from 0
   * @param message what is wrong and what was expected
   */
  FileException fault(long row, int column, String message) {
    Lines lines = Lines.content(source.text());
    for (long i = 0; i < row; i++) {
      if (!lines.next()) {
        return source.fault(0, 0, message);
      }
    }
    return source.fault(lines.line(), delimiter.columnOf(lines.get(), column), message);
  }

  private List<List<String>> firstRows() throws FileException {
    List<List<String>> rows = new ArrayList<>();
    try (CSVParser parser = parser()) {
      Iterator<CSVRecord> records = parser.iterator();
      long row = 0;
      while (rows.size() < SAMPLE_ROWS && hasNext(records, row)) {
        row = parser.getCurrentLineNumber();
        List<String> cells = new ArrayList<>();
        for (String cell : records.next()) {
          cells.add(cell.strip());
        }
        rows.add(cells);
      }
    } catch (IOException e) {
      throw source.fault(0, 0, "cannot be split into rows");
    }
    return rows;
  }

  private boolean hasNext(Iterator<CSVRecord> rows, long lastRow) throws FileException {
    try {
      return rows.hasNext();
    } catch (UncheckedIOException e) {
      throw fault(lastRow + 1, 0, "a quote in this row is not closed, or stands inside a cell");
    }
  }

  private CSVParser parser() throws IOException {
    CSVFormat.Builder format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(delimiter.sign())
            .setRecordSeparator('\n')
            .setIgnoreEmptyLines(false)
            .setIgnoreSurroundingSpaces(quoted && delimiter != Delimiter.BLANKS);
    if (!quoted) {
      format.setQuote(null);
    }
    return CSVParser.builder()
        .setReader(new TableText(source.text(), delimiter))
        .setFormat(format.get())
        .get();
  }

  /** A header has a name and no number. */
  private static boolean isHeader(List<String> row) {
    boolean named = false;
    for (String cell : row) {
      boolean digits = !cell.isEmpty() && Numbers.isDigit(cell.charAt(0));
      if (digits || !Double.isNaN(Numbers.parse(cell))) {
        return false;
      }
      named |= !Numbers.isMissing(cell);
    }
    return named;
  }
}

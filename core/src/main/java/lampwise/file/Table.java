package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.ReadOptions.Decimal;

/** The rows of a table of numbers, with a header or none. */
final class Table {
  /** So many rows are looked at to find out what a table is. */
  private static final int SAMPLE_ROWS = 200;

  /** Noted times that look like a light file lie less than this apart, and so from their zero. */
  private static final double LONGEST_GAP_SECONDS = 16;

  private final SourceText source;
  private final Delimiter delimiter;
  private final TableHead head;
  private final List<String> header;
  private final List<List<String>> sample;
  private final boolean tuples;
  private DecimalMark decimals = DecimalMark.POINT;

  private Table(
      SourceText source,
      Delimiter delimiter,
      TableHead head,
      List<List<String>> sample,
      boolean tuples) {
    this.source = source;
    this.delimiter = delimiter;
    this.head = head;
    this.header = tuples ? Tuple.names(head.header()) : head.header();
    this.sample = tuples ? sample.stream().map(Tuple::values).toList() : sample;
    this.tuples = tuples;
  }

  /** Takes the rows of a table one after another. */
  interface RowTaker {
    /**
     * Takes a row.
     *
     * @param row the line it ends on, counted among the lines that hold something, from 1
     * @param cells its cells, which hold only until the next row
     * @return whether more rows are wanted
     */
    boolean take(long row, Row cells) throws FileException;
  }

  /**
   * Opens a table.
   *
   * @param said how its numbers are written, if the user said it
   * @throws FileException if it cannot be split into rows, or its decimal mark is not clear
   */
  static Table open(SourceText source, Optional<Decimal> said) throws FileException {
    List<String> lines = new ArrayList<>();
    Lines content = Lines.content(source.text());
    while (lines.size() < SAMPLE_ROWS && content.next()) {
      lines.add(content.get());
    }
    Optional<Delimiter> hint = lines.isEmpty() ? Optional.empty() : Delimiter.hint(lines.get(0));
    Delimiter delimiter = hint.orElseGet(() -> Delimiter.of(tail(lines)));
    List<List<String>> rows = firstRows(source, delimiter, lines);
    TableHead head = headOf(rows, delimiter, hint.isPresent());
    List<List<String>> sample =
        List.copyOf(rows.subList(Math.min(head.skipped(), rows.size()), rows.size()));
    boolean tuples = !sample.isEmpty() && sample.stream().allMatch(Tuple::areTuples);
    Table table = new Table(source, delimiter, head, sample, tuples);
    table.decimals = table.decimalMark(said);
    return table;
  }

  private static TableHead headOf(List<List<String>> rows, Delimiter delimiter, boolean hint) {
    if (!hint) {
      return TableHead.of(rows, delimiter);
    }
    TableHead below = TableHead.of(rows.subList(1, rows.size()), delimiter);
    return new TableHead(below.skipped() + 1, below.preamble(), below.header(), below.units());
  }

  /** The later half of some lines, where there are only rows; of a few, all but the first. */
  private static List<String> tail(List<String> lines) {
    int from = lines.size() > 4 ? lines.size() / 2 : lines.size() > 2 ? 1 : 0;
    return lines.subList(from, lines.size());
  }

  private DecimalMark decimalMark(Optional<Decimal> said) throws FileException {
    if (said.isPresent()) {
      return said.get() == Decimal.COMMA ? DecimalMark.COMMA : DecimalMark.POINT;
    }
    DecimalMark.Sign sign = DecimalMark.signOf(sample);
    if (sign == DecimalMark.Sign.OPEN) {
      sign = signOfAllRows();
    }
    if (sign == DecimalMark.Sign.OPEN) {
      throw openSign();
    }
    return sign == DecimalMark.Sign.DECIMAL ? DecimalMark.COMMA : DecimalMark.POINT;
  }

  /** The fault of the first cell whose comma could do either. */
  private FileException openSign() throws FileException {
    for (int row = 0; row < sample.size(); row++) {
      for (int column = 0; column < sample.get(row).size(); column++) {
        String cell = sample.get(row).get(column);
        if (DecimalMark.signOf(cell) == DecimalMark.Sign.OPEN) {
          return fault(
              head.skipped() + row + 1L,
              column,
              "the comma in "
                  + Numbers.quote(cell)
                  + " may part thousands or a fraction; add --decimal comma or --decimal point");
        }
      }
    }
    throw new IllegalStateException("no cell is open");
  }

  private DecimalMark.Sign signOfAllRows() throws FileException {
    DecimalMark.Sign[] sign = {DecimalMark.Sign.OPEN};
    int width = width();
    forEachRow(
        (row, cells) -> {
          for (int i = 0; i < width; i++) {
            DecimalMark.Sign here = DecimalMark.signOf(cells.cell(i));
            if (here == DecimalMark.Sign.DECIMAL || here == DecimalMark.Sign.THOUSANDS) {
              sign[0] = here;
              return false;
            }
          }
          return true;
        });
    return sign[0];
  }

  /** What stands above the rows. */
  TableHead head() {
    return head;
  }

  /** Whether each cell of a row holds a time and a level. */
  boolean areTuples() {
    return tuples;
  }

  /** What parts the columns. */
  Delimiter delimiter() {
    return delimiter;
  }

  /** The name of a column and the unit below it, where there are any. */
  List<String> namesOf(int column) {
    List<String> names = new ArrayList<>();
    for (List<String> row : List.of(header, head.units())) {
      if (column < row.size()) {
        names.add(row.get(column));
      }
    }
    return names;
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
      width = Math.max(width, widthOf(row));
    }
    return width;
  }

  /** How many cells a row has, empty last ones not counted. */
  static int widthOf(List<String> row) {
    int cells = row.size();
    while (cells > 0 && row.get(cells - 1).isEmpty()) {
      cells--;
    }
    return cells;
  }

  /**
   * Whether all rows look like {@code 3,5}: short times with a decimal comma. They have no header,
   * two whole numbers, as many digits after each comma, and rise when read as one number.
   */
  boolean hasDecimalCommaLook() {
    if (delimiter != Delimiter.COMMA || !header.isEmpty()) {
      return false;
    }
    int digits = sample.get(0).size() == 2 ? sample.get(0).get(1).length() : 0;
    double before = -1;
    for (List<String> row : sample) {
      boolean two = row.size() == 2 && row.get(1).length() == digits;
      double value = two ? Numbers.parse(row.get(0) + "." + row.get(1)) : Double.NaN;
      if (!(value > before && value < before + LONGEST_GAP_SECONDS)) {
        return false;
      }
      before = value;
    }
    return digits == 1 || digits == 2;
  }

  /** A name for a column, for notes and messages. */
  String nameOf(int column) {
    return column < header.size() && !header.get(column).isEmpty()
        ? "column " + (column + 1) + " (" + Numbers.quote(header.get(column)) + ")"
        : "column " + (column + 1);
  }

  /**
   * Hands over every row below the header until no more is wanted.
   *
   * @throws FileException if a row cannot be split, or the taker refuses one
   */
  void forEachRow(RowTaker taker) throws FileException {
    long[] seen = {0};
    RowTaker below =
        (row, cells) ->
            seen[0]++ < head.skipped() || taker.take(row, tuples ? new Tuple.Cells(cells) : cells);
    boolean quoted = isQuoted(source);
    long[] rows = {0};
    source.forEachPart(
        part -> {
          long before = rows[0];
          RowTaker counted =
              (row, cells) -> {
                rows[0] = before + row;
                return below.take(before + row, cells);
              };
          return quoted
              ? forEachQuoted(source, part, delimiter, before, counted)
              : forEachLine(part, delimiter, counted);
        });
  }

  private static boolean forEachLine(String text, Delimiter delimiter, RowTaker taker)
      throws FileException {
    Lines lines = Lines.content(text);
    PlainRow cells = new PlainRow(text, lines, delimiter);
    long row = 0;
    boolean more = true;
    while (more && lines.next()) {
      row++;
      more = taker.take(row, cells);
    }
    return more;
  }

  /**
   * A fault in a cell.
   *
   * @param row the row's number, as it was handed over
   * @param column the cell, from 0
   * @param message what is wrong and what was expected
   * @throws FileException if the file cannot be read again
   */
  FileException fault(long row, int column, String message) throws FileException {
    return fault(source, delimiter, row, column, message);
  }

  private static FileException fault(
      SourceText source, Delimiter delimiter, long row, int column, String message)
      throws FileException {
    long[] left = {row};
    int[] above = {0};
    FileException[] found = {source.fault(0, 0, message)};
    source.forEachPart(
        part -> {
          Lines lines = Lines.content(part);
          while (left[0] > 0 && lines.next()) {
            left[0]--;
          }
          if (left[0] > 0 || row == 0) {
            above[0] += lines.line();
            return row > 0;
          }
          int at = delimiter.rowStart(part, lines.start(), lines.end());
          for (int i = 0; i < column && at < lines.end(); i++) {
            at = delimiter.nextCell(part, at, lines.end());
          }
          int place = Math.min(at, lines.end()) - lines.start() + 1;
          found[0] = source.fault(above[0] + lines.line(), place, message);
          return false;
        });
    return found[0];
  }

  /** Whether there are quotes below the first line, or that line does not close its own. */
  private static boolean isQuoted(SourceText source) {
    String text = source.text();
    int last = source.isQuotedBehind() ? text.length() : text.lastIndexOf('"');
    Lines lines = Lines.content(text);
    if (last < 0 || !lines.next()) {
      return false;
    }
    int quotes = 0;
    for (int i = lines.start(); i < lines.end(); i++) {
      quotes += text.charAt(i) == '"' ? 1 : 0;
    }
    return last >= lines.end() || quotes % 2 == 1;
  }

  private static List<List<String>> firstRows(
      SourceText source, Delimiter delimiter, List<String> lines) throws FileException {
    List<List<String>> rows = new ArrayList<>();
    if (!isQuoted(source)) {
      for (String line : lines) {
        rows.add(delimiter.split(line));
      }
      return rows;
    }
    forEachQuoted(
        source,
        source.text(),
        delimiter,
        0,
        (row, cells) -> {
          rows.add(((QuotedRow) cells).toList());
          return rows.size() < SAMPLE_ROWS;
        });
    return rows;
  }

  private static boolean forEachQuoted(
      SourceText source, String text, Delimiter delimiter, long above, RowTaker taker)
      throws FileException {
    try {
      return QuotedRows.forEach(text, delimiter, taker);
    } catch (QuotedRows.Fault e) {
      throw fault(source, delimiter, above + e.row(), 0, String.valueOf(e.getMessage()));
    }
  }
}

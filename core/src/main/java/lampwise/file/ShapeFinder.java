package lampwise.file;

import java.util.List;
import lampwise.file.ReadOptions.Shape;

/** Finds out what a text holds: blink times, pairs of on and off, or timed light levels. */
final class ShapeFinder {
  private final SourceText source;
  private final Table table;

  private ShapeFinder(SourceText source, Table table) {
    this.source = source;
    this.table = table;
  }

  /**
   * Finds the shape.
   *
   * @return the shape that the options say; else levels, spans or times (gaps show by their signs)
   * @throws FileException if the text could be two of them
   * @throws OptionException if options do not go together
   */
  static Shape find(SourceText source, ReadOptions options) throws FileException, OptionException {
    boolean columns = options.column().isPresent() || options.time().isPresent();
    if (options.shape().isPresent()) {
      Shape shape = options.shape().get();
      if (columns && shape != Shape.LEVELS) {
        throw new OptionException("--column and --time choose light levels; they need --as levels");
      }
      return shape;
    }
    boolean rate = options.writing().rateHz() > 0;
    if (columns || rate) {
      return Shape.LEVELS;
    }
    if (source.text().length() > 0 && isLightTable(source, options)) {
      return Shape.LEVELS;
    }
    PastedMarks marks = PastedMarks.of(source);
    if (marks.show()) {
      return Shape.TIMES;
    }
    SourceText below = marks.withoutHeading(source);
    return new ShapeFinder(below, Table.open(below, options.writing().decimal())).ofTable();
  }

  /** Whether the text is a table that can hold nothing but timed light levels. */
  private static boolean isLightTable(SourceText source, ReadOptions options) {
    try {
      Table table = Table.open(source, options.writing().decimal());
      if (table.width() < 2 || table.sample().isEmpty()) {
        return false;
      }
      boolean light = table.header().stream().anyMatch(n -> ColumnNames.levelRank(n).isPresent());
      boolean time = table.header().stream().anyMatch(n -> ColumnNames.timeRank(n).isPresent());
      int units = 0;
      int dates = 0;
      for (List<String> row : table.sample()) {
        units += row.stream().anyMatch(LooseNumber::hasLightUnit) ? 1 : 0;
        dates += row.stream().anyMatch(ShapeFinder::isDateTime) ? 1 : 0;
      }
      int half = table.sample().size() / 2;
      return (light && time)
          || table.areTuples()
          || units > half
          || (dates > half && table.width() > 1);
    } catch (FileException e) {
      return false;
    }
  }

  private static boolean isDateTime(String cell) {
    return Stamp.of(cell).filter(s -> s.kind() == Stamp.Kind.DATE_TIME).isPresent();
  }

  private Shape ofTable() throws FileException {
    List<String> header = table.header();
    boolean level = header.stream().anyMatch(n -> ColumnNames.levelRank(n).isPresent());
    if (ColumnNames.areSpans(header)) {
      return Shape.SPANS;
    }
    if (level && (header.size() > 1 || header.get(0).indexOf(' ') < 0)) {
      return Shape.LEVELS;
    }
    int width = commonWidth();
    if (width < 2 || table.sample().size() < (header.isEmpty() ? 2 : 1)) {
      return Shape.TIMES;
    }
    ReadingOrder order = ReadingOrder.of(table.sample(), table.decimals());
    if (header.size() >= 2 && !order.isRising()) {
      return Shape.LEVELS;
    }
    return width == 2 ? ofTwoColumns(order) : ofManyColumns(order);
  }

  private Shape ofTwoColumns(ReadingOrder order) throws FileException {
    if (order.isRising()) {
      String fits =
          order.clocks() > 0
              ? "could be times, or pairs of on and off; add --as times or --as spans"
              : "could be pairs of on and off, or timed light levels;"
                  + " add --as spans or --as levels (or --as times)";
      throw source.fault(0, 0, "two columns of rising numbers " + fits);
    }
    if (order.down() == 0 && order.up() > 0) {
      return Shape.TIMES; // a word among rising times
    }
    ColumnSample first = ColumnSample.of(table.sample(), 0, table.decimals());
    ColumnSample second = ColumnSample.of(table.sample(), 1, table.decimals());
    if (first.isCounter() && second.isRising() && second.down() == 0) {
      throw source.fault(
          0,
          0,
          "two columns of rising numbers could be numbered times, or timed light levels;"
              + " add --as times (without the numbers) or --as levels");
    }
    if (table.hasDecimalCommaLook()) {
      throw source.fault(
          0,
          0,
          "could be times with decimal commas, or timed light levels;"
              + " write decimal points, or add --as times or --as levels");
    }
    return order.isFalling() || order.clocks() > 1 ? Shape.TIMES : Shape.LEVELS;
  }

  private Shape ofManyColumns(ReadingOrder order) {
    boolean rows = order.down() * 2 > table.sample().size();
    return rows && !order.isFalling() ? Shape.LEVELS : Shape.TIMES;
  }

  /** How many cells the widest row has, if most rows have as many; else 0. */
  private int commonWidth() {
    int width = table.width();
    int same = 0;
    for (List<String> row : table.sample()) {
      same += Table.widthOf(row) == width ? 1 : 0;
    }
    return same * 2 >= table.sample().size() ? width : 0;
  }
}

package lampwise.file;

/**
 * How many rows make a second.
 *
 * @param hz the rate; NaN if it is not known
 * @param said whether the user said it; else the lines above the table do
 */
record RowRate(double hz, boolean said) {
  /** The rate that the user says, else the one that comments or lines above the table state. */
  static RowRate of(SourceText source, Table table, ReadOptions options) {
    double given = options.writing().rateHz();
    if (given > 0) {
      return new RowRate(given, true);
    }
    Lines comments = Lines.comments(source.head());
    while (comments.next()) {
      double rate = ColumnNames.rate(comments.get());
      if (rate > 0) {
        return new RowRate(rate, false);
      }
    }
    Lines lines = Lines.content(source.head());
    for (int i = 0; i < table.head().preamble() && lines.next(); i++) {
      double rate = ColumnNames.rate(lines.get());
      if (rate > 0) {
        return new RowRate(rate, false);
      }
    }
    return new RowRate(Double.NaN, false);
  }

  /** Whether the file states it. */
  boolean stated() {
    return hz > 0 && !said;
  }

  /** What was made of it. */
  String note() {
    return "times come from "
        + Numbers.text(hz)
        + " rows a second"
        + (said ? "" : ", as the file says");
  }
}

package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which columns of a table are read, and what makes its times.
 *
 * @param time the column of the times, or of the count that the rate turns into times, from 0;
 *     {@link #NONE} if the rows themselves are counted
 * @param level the column of the light levels, from 0
 * @param date the column of the dates, from 0; {@link #NONE} if there is none
 * @param sensor which rows are read, where a column says which sensor a row is of
 * @param rateHz how many rows make a second; NaN if the times are read
 * @param timeSample what the first rows show of the times; of the levels if there are no times
 * @param notes how they were chosen, where there was a choice
 */
record TableColumns(
    int time,
    int level,
    int date,
    Optional<SensorRows> sensor,
    double rateHz,
    ColumnSample timeSample,
    List<String> notes) {
  /** No column. */
  static final int NONE = -1;

  private static final int MAX_COLUMNS = 1000;

  /** Whether the times come from the number of a row and a rate. */
  boolean areEven() {
    return !Double.isNaN(rateHz);
  }

  /**
   * Chooses the columns: as the options say, else by name, else by what the columns hold.
   *
   * @throws OptionException if an option names a column that is not there or holds no numbers
   * @throws FileException if the table has no two columns that can be times and levels
   */
  static TableColumns choose(SourceText source, Table table, ReadOptions options)
      throws FileException, OptionException {
    if (table.width() > MAX_COLUMNS) {
      throw source.fault(0, 0, "has more than " + MAX_COLUMNS + " columns; expected fewer");
    }
    List<ColumnSample> samples = new ArrayList<>();
    for (int i = 0; i < table.width(); i++) {
      samples.add(ColumnSample.of(table.sample(), i, table.decimals()));
    }
    ColumnChooser chooser = new ColumnChooser(table, samples);
    Optional<SensorRows> sensor = SensorRows.find(table, samples, options.column());
    Optional<Integer> namedTime = chooser.option("--time", options.time());
    Optional<Integer> namedLevel =
        sensor.isPresent() && sensor.get().wasSaid()
            ? Optional.empty()
            : chooser.option("--column", options.column());
    if (namedTime.isPresent() && namedTime.equals(namedLevel)) {
      throw new OptionException("--time and --column both name " + table.nameOf(namedTime.get()));
    }
    RowRate rate = RowRate.of(source, table, options);
    List<String> notes = new ArrayList<>();
    int time = time(source, table, chooser, rate, namedTime, namedLevel);
    boolean even = rate.said() || (rate.stated() && chooser.isUntimed(time));
    if (even) {
      time = namedTime.orElse(chooser.count(namedLevel).orElse(NONE));
      notes.add(rate.note());
    } else if (time != NONE && chooser.isNamedCount(time)) {
      throw source.fault(0, 0, table.nameOf(time) + " counts rows; add --rate HZ for their times");
    }
    int times = time;
    Optional<Integer> level = namedLevel.or(() -> chooser.level(times));
    if (level.isEmpty()) {
      throw source.fault(
          0,
          0,
          "no column beside the times holds numbers; expected light levels ("
              + chooser.known()
              + ")");
    }
    int date = even || time == NONE ? NONE : chooser.date(time);
    sensor.ifPresent(rows -> notes.add(rows.note(table)));
    if (table.width() > 2 && (namedTime.isEmpty() || namedLevel.isEmpty())) {
      notes.add(
          (time == NONE ? "" : "times are " + table.nameOf(time) + ", ")
              + "levels are "
              + table.nameOf(level.get()));
    }
    return new TableColumns(
        time,
        level.get(),
        date,
        sensor,
        even ? rate.hz() : Double.NaN,
        samples.get(time == NONE ? level.get() : time),
        List.copyOf(notes));
  }

  private static int time(
      SourceText source,
      Table table,
      ColumnChooser chooser,
      RowRate rate,
      Optional<Integer> namedTime,
      Optional<Integer> namedLevel)
      throws FileException {
    if (rate.said()) {
      return NONE;
    }
    if (table.width() < 2) {
      if (rate.stated()) {
        return NONE;
      }
      throw source.fault(
          0,
          0,
          "has one column; expected a column of times and one of light levels,"
              + " or --rate HZ for levels at an even rate");
    }
    Optional<Integer> time = namedTime.or(() -> chooser.time(namedLevel));
    if (time.isEmpty() && !rate.stated()) {
      throw source.fault(
          0,
          0,
          "no column rises like times do; name it with --time ("
              + chooser.known()
              + "), or add --rate HZ");
    }
    return time.orElse(NONE);
  }
}

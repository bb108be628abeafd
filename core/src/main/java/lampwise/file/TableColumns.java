package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Which columns of a table are read.
 *
 * @param time the column of the times, from 0
 * @param level the column of the light levels, from 0
 * @param timeSample what the first rows show of the times
 * @param notes how they were chosen, where there was a choice
 */
record TableColumns(int time, int level, ColumnSample timeSample, List<String> notes) {
  private static final int MAX_COLUMNS = 1000;

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
    Chooser chooser = new Chooser(table, samples);
    Optional<Integer> namedTime = chooser.option("--time", options.time());
    Optional<Integer> namedLevel = chooser.option("--column", options.column());
    if (namedTime.isPresent() && namedTime.equals(namedLevel)) {
      throw new OptionException("--time and --column both name " + table.nameOf(namedTime.get()));
    }
    if (table.width() < 2) {
      throw source.fault(
          0, 0, "has one column; expected a column of times and one of light levels");
    }
    Optional<Integer> time = namedTime.or(() -> chooser.time(namedLevel));
    if (time.isEmpty()) {
      throw source.fault(
          0, 0, "no column rises like times do; name it with --time (" + chooser.known() + ")");
    }
    Optional<Integer> level = namedLevel.or(() -> chooser.level(time.get()));
    if (level.isEmpty()) {
      throw source.fault(
          0,
          0,
          "no column beside the times holds numbers; expected light levels ("
              + chooser.known()
              + ")");
    }
    List<String> notes = new ArrayList<>();
    if (table.width() > 2 && (namedTime.isEmpty() || namedLevel.isEmpty())) {
      notes.add(
          "times are " + table.nameOf(time.get()) + ", levels are " + table.nameOf(level.get()));
    }
    return new TableColumns(time.get(), level.get(), samples.get(time.get()), notes);
  }

  /** Knows the columns of one table. */
  private record Chooser(Table table, List<ColumnSample> samples) {
    /** The column that an option names. */
    Optional<Integer> option(String option, Optional<String> name) throws OptionException {
      if (name.isEmpty()) {
        return Optional.empty();
      }
      String wanted = name.get().strip().toLowerCase(Locale.ROOT);
      int found = -1;
      for (int i = 0; i < table.header().size() && found < 0; i++) {
        found = table.header().get(i).toLowerCase(Locale.ROOT).equals(wanted) ? i : -1;
      }
      double number = Numbers.parse(wanted);
      if (found < 0 && number >= 1 && number <= samples.size() && number == Math.rint(number)) {
        found = (int) number - 1;
      }
      if (found < 0) {
        throw new OptionException(
            option + ": no column " + Numbers.quote(name.get()) + "; there are " + known());
      }
      if (!samples.get(found).isNumeric()) {
        throw new OptionException(
            option + ": " + table.nameOf(found) + " holds no numbers; there are " + known());
      }
      return Optional.of(found);
    }

    /** The column of times, but not the one that is said to hold the levels. */
    Optional<Integer> time(Optional<Integer> level) {
      Optional<Integer> named = Optional.empty();
      Optional<Integer> rising = Optional.empty();
      for (int i = 0; i < samples.size(); i++) {
        if (level.isPresent() && level.get() == i) {
          continue;
        }
        if (isTimeName(i) && (named.isEmpty() || isBetterName(i, named.get()))) {
          named = Optional.of(i);
        }
        if (samples.get(i).isRising() && (rising.isEmpty() || isMoreEven(i, rising.get()))) {
          rising = Optional.of(i);
        }
      }
      return named.isPresent() ? named : rising;
    }

    private static Optional<Integer> none() {
      return Optional.empty();
    }

    private boolean isTimeName(int column) {
      return timeRank(column).isPresent() && samples.get(column).isNumeric();
    }

    private boolean isBetterName(int column, int than) {
      boolean rising = samples.get(column).isRising();
      if (rising != samples.get(than).isRising()) {
        return rising;
      }
      return timeRank(column).orElse(Integer.MAX_VALUE) < timeRank(than).orElse(Integer.MAX_VALUE);
    }

    private boolean isMoreEven(int column, int than) {
      ColumnSample one = samples.get(column);
      ColumnSample other = samples.get(than);
      if (one.isCounter() != other.isCounter()) {
        return other.isCounter();
      }
      return one.down() < other.down()
          || (one.down() == other.down() && one.spread() < other.spread());
    }

    /** The column of levels: by name, else the first that varies, else the first with numbers. */
    Optional<Integer> level(int time) {
      Optional<Integer> named = none();
      Optional<Integer> varying = none();
      Optional<Integer> any = none();
      for (int i = 0; i < samples.size(); i++) {
        if (i == time || !samples.get(i).isNumeric() || samples.get(i).clock()) {
          continue;
        }
        Optional<Integer> rank = levelRank(i);
        if (rank.isPresent()
            && (named.isEmpty() || rank.get() < levelRank(named.get()).orElse(Integer.MAX_VALUE))) {
          named = Optional.of(i);
        }
        boolean counts = samples.get(i).isCounter() || timeRank(i).isPresent();
        if (varying.isEmpty() && samples.get(i).varies() && !counts) {
          varying = Optional.of(i);
        }
        if (any.isEmpty()) {
          any = Optional.of(i);
        }
      }
      return named.isPresent() ? named : varying.isPresent() ? varying : any;
    }

    private Optional<Integer> timeRank(int column) {
      return column < table.header().size()
          ? ColumnNames.timeRank(table.header().get(column))
          : none();
    }

    private Optional<Integer> levelRank(int column) {
      return column < table.header().size()
          ? ColumnNames.levelRank(table.header().get(column))
          : none();
    }

    /** The columns that there are, for messages. */
    String known() {
      List<String> names = new ArrayList<>();
      for (int i = 0; i < Math.min(samples.size(), 20); i++) {
        names.add(table.nameOf(i));
      }
      return names.isEmpty() ? "no columns" : String.join(", ", names);
    }
  }
}

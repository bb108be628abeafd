package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Chooses among the columns of one table.
 *
 * @param table the table
 * @param samples what the first rows show of each column
 */
record ColumnChooser(Table table, List<ColumnSample> samples) {
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

  /** The column that counts rows or frames, but not the one that is said to hold the levels. */
  Optional<Integer> count(Optional<Integer> level) {
    for (int i = 0; i < samples.size(); i++) {
      boolean counts = samples.get(i).isCounter() && (table.header().isEmpty() || isCountName(i));
      boolean named = isCountName(i) && samples.get(i).isRising();
      if ((counts || named) && samples.size() > 1 && !(level.isPresent() && level.get() == i)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /** Whether a column, or none, cannot be times of its own: it is not named so and counts. */
  boolean isUntimed(int column) {
    return column < 0
        || (timeRank(column).isEmpty()
            && (samples.get(column).isCounter() || isNamedCount(column)));
  }

  /** Whether a column counts rows or frames by its name. */
  boolean isNamedCount(int column) {
    return isCountName(column)
        && timeRank(column).isEmpty()
        && ColumnNames.unit(table.header().get(column)).isEmpty();
  }

  private boolean isCountName(int column) {
    return column < table.header().size() && ColumnNames.isCount(table.header().get(column));
  }

  /** The column of the dates beside a column of clock times. */
  int date(int time) {
    if (samples.get(time).clock()) {
      for (int i = 0; i < samples.size(); i++) {
        if (i != time && samples.get(i).dated()) {
          return i;
        }
      }
    }
    return TableColumns.NONE;
  }

  private boolean isTimeName(int column) {
    return timeRank(column).isPresent() && samples.get(column).isNumeric();
  }

  private boolean isBetterName(int column, int than) {
    ColumnSample one = samples.get(column);
    ColumnSample other = samples.get(than);
    if (one.isCoarse(other) != other.isCoarse(one)) {
      return other.isCoarse(one);
    }
    if (one.isRising() != other.isRising()) {
      return one.isRising();
    }
    return timeRank(column).orElse(Integer.MAX_VALUE) < timeRank(than).orElse(Integer.MAX_VALUE);
  }

  private boolean isMoreEven(int column, int than) {
    ColumnSample one = samples.get(column);
    ColumnSample other = samples.get(than);
    if (one.isCounter() != other.isCounter()) {
      return other.isCounter();
    }
    if (one.isCoarse(other) != other.isCoarse(one)) {
      return other.isCoarse(one);
    }
    return one.down() < other.down()
        || (one.down() == other.down() && one.spread() < other.spread());
  }

  /** The column of levels: by name, else the first that varies, else the first with numbers. */
  Optional<Integer> level(int time) {
    Optional<Integer> named = Optional.empty();
    Optional<Integer> varying = Optional.empty();
    Optional<Integer> any = Optional.empty();
    for (int i = 0; i < samples.size(); i++) {
      ColumnSample sample = samples.get(i);
      if (i == time || !sample.isNumeric() || sample.clock() || sample.dated()) {
        continue;
      }
      Optional<Integer> rank = levelRank(i);
      if (rank.isPresent()
          && (named.isEmpty() || rank.get() < levelRank(named.get()).orElse(Integer.MAX_VALUE))) {
        named = Optional.of(i);
      }
      boolean counts = sample.isCounter() || timeRank(i).isPresent();
      if (varying.isEmpty() && sample.varies() && !counts) {
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
        : Optional.empty();
  }

  private Optional<Integer> levelRank(int column) {
    return column < table.header().size()
        ? ColumnNames.levelRank(table.header().get(column))
        : Optional.empty();
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

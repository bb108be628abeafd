package lampwise.file;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Which rows belong to the light sensor, in a table where a column names the sensor of each row.
 *
 * @param column the column of the names, from 0
 * @param name the name of the light sensor, as the table writes it
 * @param wasSaid whether the user named it
 */
record SensorRows(int column, String name, boolean wasSaid) {
  /**
   * Finds them.
   *
   * @param samples what the first rows show of each column
   * @param said the sensor that the user named, or a column
   * @return empty if no column names sensors
   */
  static Optional<SensorRows> find(Table table, List<ColumnSample> samples, Optional<String> said) {
    for (int i = 0; i < samples.size(); i++) {
      if (samples.get(i).numbers() > 0 || samples.get(i).others() == 0) {
        continue;
      }
      TreeSet<String> names = new TreeSet<>();
      for (List<String> row : table.sample()) {
        if (i < row.size() && !row.get(i).isEmpty()) {
          names.add(row.get(i));
        }
      }
      Optional<SensorRows> found = said.isPresent() ? named(i, names, said.get()) : best(i, names);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static Optional<SensorRows> named(int column, TreeSet<String> names, String said) {
    String wanted = said.strip().toLowerCase(Locale.ROOT);
    return names.stream()
        .filter(name -> name.toLowerCase(Locale.ROOT).equals(wanted))
        .findFirst()
        .map(name -> new SensorRows(column, name, true));
  }

  private static Optional<SensorRows> best(int column, TreeSet<String> names) {
    if (names.size() < 2) {
      return Optional.empty();
    }
    int least = Integer.MAX_VALUE;
    Optional<SensorRows> best = Optional.empty();
    for (String name : names) {
      int rank = ColumnNames.levelRank(name).orElse(Integer.MAX_VALUE);
      if (rank < least) {
        least = rank;
        best = Optional.of(new SensorRows(column, name, false));
      }
    }
    return best;
  }

  /** Whether a row is one of them. */
  boolean has(Row cells) {
    return cells.cell(column).equals(name);
  }

  /** What was chosen. */
  String note(Table table) {
    return "only rows with " + Numbers.quote(name) + " in " + table.nameOf(column) + " are read";
  }
}

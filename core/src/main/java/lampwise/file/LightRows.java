package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.ReadOptions.Dates;

/** Reads the rows of a light file, one after another, into a buffer of times and levels. */
final class LightRows {
  /** So many lines below a table may be something else. */
  private static final int MOST_BELOW = 5;

  /** A double carries whole numbers of so many digits. */
  private static final int SAFE_DIGITS = 15;

  private static final int MOST_DIGITS = 18;

  private final Table table;
  private final TableColumns columns;
  private final DayCount days;
  private final boolean stamped;
  private final SampleBuffer samples = new SampleBuffer();
  private boolean dated;
  private double firstZone = Double.NaN;
  private long base;
  private int missing;
  private int below;
  private Optional<FileException> firstBelow = Optional.empty();

  LightRows(Table table, TableColumns columns, Optional<Dates> said) {
    this.table = table;
    this.columns = columns;
    this.days = new DayCount(said);
    this.stamped = columns.timeSample().isStamped() && !columns.areEven();
  }

  /** What was read: times as they are written, less the base; dates and clocks in seconds. */
  SampleBuffer samples() {
    return samples;
  }

  /** What the times count from, in their own unit; 0 unless they are too long for a double. */
  double base() {
    return base;
  }

  /** Whether the times carry dates. */
  boolean dated() {
    return dated;
  }

  /**
   * Reads all rows.
   *
   * @return notes of what was left out
   */
  List<String> read() throws FileException {
    table.forEachRow(this::take);
    if (firstBelow.isPresent() && samples.size() < 2) {
      throw firstBelow.get();
    }
    List<String> notes = new ArrayList<>();
    days.note().ifPresent(notes::add);
    count(notes, missing, "row without a level left out", "rows without a level left out");
    count(notes, below, "line below the table passed over", "lines below the table passed over");
    return notes;
  }

  /**
   * Reads one line as a list of levels, the first at 0. What stands behind the last level without a
   * delimiter is passed over.
   *
   * @return notes of what was left out
   */
  List<String> readLine() throws FileException {
    List<String> notes = new ArrayList<>();
    int width = table.width();
    table.forEachRow(
        (row, cells) -> {
          for (int i = 0; i < width; i++) {
            String cell = cells.cell(i);
            int blank = cell.indexOf(' ');
            if (i == width - 1 && blank > 0 && table.delimiter() != Delimiter.BLANKS) {
              notes.add(Numbers.quote(cell.substring(blank + 1)) + " at the end passed over");
              cell = cell.substring(0, blank);
            }
            add(row, i, i, cell);
          }
          return true;
        });
    count(notes, missing, "place without a level left out", "places without a level left out");
    return notes;
  }

  private static void count(List<String> notes, int number, String one, String many) {
    if (number > 0) {
      notes.add(number + " " + (number == 1 ? one : many));
    }
  }

  private boolean take(long row, Row cells) throws FileException {
    if (columns.sensor().isPresent() && !columns.sensor().get().has(cells)) {
      return true;
    }
    String levelCell = cells.cell(columns.level());
    if (columns.time() == TableColumns.NONE) {
      if (!cells.isBlank()) {
        add(row, columns.level(), samples.size() + missing, levelCell);
      }
      return true;
    }
    String timeCell = cells.cell(columns.time());
    if (timeCell.isEmpty() && cells.isBlank()) {
      return true;
    }
    double time;
    try {
      time = time(row, timeCell, cells);
    } catch (FileException e) {
      if (!Double.isNaN(table.decimals().loose(levelCell)) || (timeCell.isEmpty() && below == 0)) {
        throw firstBelow.orElse(e);
      }
      firstBelow = firstBelow.or(() -> Optional.of(e));
      below++;
      if (below > MOST_BELOW) {
        throw firstBelow.get();
      }
      return true;
    }
    if (firstBelow.isPresent()) {
      throw firstBelow.get();
    }
    add(row, columns.level(), time, levelCell);
    return true;
  }

  private void add(long row, int column, double time, String cell) throws FileException {
    double level = table.decimals().loose(cell);
    if (Double.isFinite(level)) {
      samples.add(time, level);
    } else if (Double.isNaN(level) && !Numbers.isMissing(cell)) {
      throw table.fault(
          row, column, Numbers.quote(cell) + " is not a light level; expected a number");
    } else {
      missing++;
    }
  }

  private double time(long row, String cell, Row cells) throws FileException {
    if (!stamped) {
      double value = number(cell);
      if (Double.isFinite(value)) {
        return value;
      }
    }
    Optional<Stamp> stamp = Stamp.of(cell);
    if (stamped && stamp.isPresent()) {
      return stamp(row, stamp.get(), cells);
    }
    try {
      TimeText time =
          TimeText.parse(table.decimals() == DecimalMark.COMMA ? cell.replace(',', '.') : cell);
      if (time.isClock() == stamped && !columns.timeSample().dated()) {
        return time.value();
      }
    } catch (TimeText.Fault e) {
      throw table.fault(
          row,
          columns.time(),
          cell.isEmpty()
              ? "the time is missing; expected a number"
              : columns.timeSample().dated()
                  ? Numbers.quote(cell) + " is not a date and time like those before it"
                  : String.valueOf(e.getMessage()));
    }
    throw table.fault(
        row, columns.time(), Numbers.quote(cell) + " is not written like the times before it");
  }

  /** A number, less the base if it is too long for a double. */
  private double number(String cell) {
    if (cell.length() > SAFE_DIGITS && isWhole(cell)) {
      long value = Long.parseLong(cell);
      if (samples.size() + missing == 0) {
        base = value;
      }
      return value - base;
    }
    double value = table.decimals().loose(cell);
    return base == 0 ? value : value - base;
  }

  private static boolean isWhole(String cell) {
    if (cell.length() > MOST_DIGITS + 1 || (cell.length() > MOST_DIGITS && cell.charAt(0) > '8')) {
      return false;
    }
    for (int i = 0; i < cell.length(); i++) {
      if (!Numbers.isDigit(cell.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  private double stamp(long row, Stamp stamp, Row cells) throws FileException {
    if (stamp.kind() == Stamp.Kind.CLOCK && columns.timeSample().dated()) {
      throw table.fault(row, columns.time(), "the date is missing; expected a date and a time");
    }
    firstZone = Double.isNaN(firstZone) ? stamp.zoneSeconds() : firstZone;
    double clock = stamp.seconds() - (stamp.zoneSeconds() - firstZone);
    int column = stamp.kind() == Stamp.Kind.CLOCK ? columns.date() : columns.time();
    if (column == TableColumns.NONE) {
      return clock;
    }
    String cell = cells.cell(column);
    Optional<Stamp> date = Stamp.of(cell);
    if (date.isEmpty() || date.get().kind() == Stamp.Kind.CLOCK) {
      throw table.fault(row, column, Numbers.quote(cell) + " is not a date");
    }
    double day = days.days(date.get());
    if (Double.isNaN(day)) {
      throw table.fault(
          row,
          column,
          Numbers.quote(cell) + " can be read in two ways; add --dates dmy or --dates mdy");
    }
    dated = true;
    return day * RecordingClock.DAY + clock;
  }
}

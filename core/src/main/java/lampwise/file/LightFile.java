package lampwise.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.file.TimeText.Writing;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Targets;
import lampwise.light.Window;

/** Reads a light curve from a table of times and light levels. */
final class LightFile {
  private final SourceText source;
  private final ReadOptions options;
  private final Table table;
  private final TableColumns columns;
  private final List<String> notes;
  private final SampleBuffer samples = new SampleBuffer();
  private int missing;

  private LightFile(SourceText source, ReadOptions options, Table table, TableColumns columns) {
    this.source = source;
    this.options = options;
    this.table = table;
    this.columns = columns;
    this.notes = new ArrayList<>(source.notes());
    notes.addAll(columns.notes());
  }

  /**
   * Reads the curve.
   *
   * @throws FileException if the text is no such table, or a time or level cannot be read
   * @throws OptionException if an option cannot be understood or does not fit the table
   */
  static LightCurve read(SourceText source, ReadOptions options)
      throws FileException, OptionException {
    Table table = Table.open(source);
    if (table.sample().isEmpty()) {
      throw source.fault(0, 0, "holds no rows; expected rows of a time and a light level");
    }
    TableColumns columns = TableColumns.choose(source, table, options);
    return new LightFile(source, options, table, columns).curve();
  }

  private LightCurve curve() throws FileException, OptionException {
    table.forEachRow(this::take);
    if (missing > 0) {
      notes.add(
          missing + (missing == 1 ? " row without a" : " rows without a") + " level left out");
    }
    if (samples.size() == 0) {
      throw source.fault(0, 0, "no row has both a time and a level");
    }
    boolean clock = columns.timeSample().clock();
    double perSecond = perSecond(clock);
    if (clock && samples.addDays(RecordingClock.DAY)) {
      notes.add("the times cross midnight");
    }
    order();
    double first = samples.time(0);
    boolean ownZero = !clock && first / perSecond < RecordingClock.OWN_ZERO_BELOW_SECONDS;
    double zero = ownZero ? 0 : first;
    if (zero != 0) {
      notes.add("times count from the first row");
    }
    double[] seconds = samples.times();
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = Numbers.tidy((seconds[i] - zero) / perSecond);
    }
    return curve(seconds, clock, perSecond, zero / perSecond);
  }

  private LightCurve curve(double[] seconds, boolean clock, double perSecond, double zero)
      throws FileException, OptionException {
    RecordingClock recordingClock =
        new RecordingClock(
            clock ? clockWriting() : Writing.NUMBER,
            perSecond,
            zero,
            seconds[0],
            seconds[seconds.length - 1]);
    checkRange(seconds, zero);
    Marks marks = MarkOptions.marks(options, recordingClock, Targets.likely());
    if (marks.targets().knowledge() == Targets.Knowledge.LIKELY) {
      notes.add("target likely: the sensor that recorded this was close to the unit");
    }
    double[] levels = samples.levels();
    int from = 0;
    int to = seconds.length;
    if (marks.window().isPresent()) {
      Window window = marks.window().get();
      from = firstAtOrAfter(seconds, window.fromSeconds());
      to = firstAtOrAfter(seconds, Math.nextUp(window.toSeconds()));
      if (from == to) {
        throw new OptionException(
            "no row lies between --from "
                + Numbers.text(window.fromSeconds())
                + " s and --to "
                + Numbers.text(window.toSeconds())
                + " s; the rows run from "
                + Numbers.text(seconds[0])
                + " to "
                + Numbers.text(seconds[seconds.length - 1])
                + " s");
      }
      int outside = seconds.length - (to - from);
      if (outside > 0) {
        notes.add(outside + (outside == 1 ? " row lies" : " rows lie") + " outside the window");
      }
    }
    return LightCurve.of(
        new Origin(source.name(), Optional.empty(), notes),
        marks,
        options.lit(),
        Arrays.copyOfRange(seconds, from, to),
        Arrays.copyOfRange(levels, from, to));
  }

  private void checkRange(double[] seconds, double zero) throws FileException {
    double largest = Math.max(Math.abs(seconds[0]), Math.abs(seconds[seconds.length - 1]));
    if (!(largest + Math.abs(zero) <= RecordingClock.MAX_SECONDS)) {
      throw source.fault(0, 0, "the times are too large for seconds; check --unit and --time");
    }
  }

  private Writing clockWriting() {
    for (List<String> row : table.sample()) {
      String cell = columns.time() < row.size() ? row.get(columns.time()) : "";
      if (cell.indexOf(':') != cell.lastIndexOf(':')) {
        return Writing.HOURS;
      }
    }
    return Writing.MINUTES;
  }

  private double perSecond(boolean clock) throws FileException {
    if (clock) {
      return 1;
    }
    TimeUnit unit = TimeUnit.find(source, table, columns, options, samples.time(0));
    unit.note().ifPresent(notes::add);
    return unit.unit().perSecond();
  }

  private boolean take(long row, Row cells) throws FileException {
    String timeCell = cells.cell(columns.time());
    if (timeCell.isEmpty() && cells.isBlank()) {
      return true;
    }
    double time = time(row, timeCell);
    String levelCell = cells.cell(columns.level());
    double level = table.decimals().parse(levelCell);
    if (Double.isFinite(level)) {
      samples.add(time, level);
    } else if (Double.isNaN(level) && !Numbers.isMissing(levelCell)) {
      throw table.fault(
          row,
          columns.level(),
          Numbers.quote(levelCell) + " is not a light level; expected a number");
    } else {
      missing++;
    }
    return true;
  }

  private double time(long row, String cell) throws FileException {
    boolean clock = columns.timeSample().clock();
    if (!clock) {
      double value = table.decimals().parse(cell);
      if (Double.isFinite(value)) {
        return value;
      }
    }
    try {
      TimeText time =
          TimeText.parse(table.decimals() == DecimalMark.COMMA ? cell.replace(',', '.') : cell);
      if (time.isClock() == clock) {
        return time.value();
      }
    } catch (TimeText.Fault e) {
      throw table.fault(
          row,
          columns.time(),
          cell.isEmpty()
              ? "the time is missing; expected a number"
              : String.valueOf(e.getMessage()));
    }
    throw table.fault(
        row, columns.time(), Numbers.quote(cell) + " is not written like the times before it");
  }

  private void order() throws FileException {
    int moved = samples.sort();
    if (moved > 0) {
      notes.add(moved + (moved == 1 ? " row was" : " rows were") + " out of order and sorted in");
    }
    int read = samples.size();
    int equal = samples.collapse();
    if (read > 1 && samples.size() == 1) {
      throw source.fault(
          0,
          0,
          "all times are equal in " + table.nameOf(columns.time()) + "; expected times that rise");
    }
    if (equal > 0) {
      notes.add(
          equal
              + (equal == 1 ? " row has" : " rows have")
              + " the time of the next one; the last of each was kept");
    }
  }

  private static int firstAtOrAfter(double[] seconds, double time) {
    int found = Arrays.binarySearch(seconds, time);
    return found < 0 ? -found - 1 : found;
  }
}

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
  private final LightRows rows;
  private final SampleBuffer samples;

  private LightFile(SourceText source, ReadOptions options, Table table, TableColumns columns) {
    this.source = source;
    this.options = options;
    this.table = table;
    this.columns = columns;
    this.notes = new ArrayList<>(source.notes());
    this.rows = new LightRows(table, columns, options.writing().dates());
    this.samples = rows.samples();
    int above = table.head().preamble();
    if (above > 0) {
      notes.add(above + (above == 1 ? " line" : " lines") + " above the table passed over");
    }
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
    Table table = Table.open(source, options.writing().decimal());
    if (table.sample().isEmpty()) {
      throw source.fault(0, 0, "holds no rows; expected rows of a time and a light level");
    }
    TableColumns columns = TableColumns.choose(source, table, options);
    return new LightFile(source, options, table, columns).curve();
  }

  private LightCurve curve() throws FileException, OptionException {
    boolean line = columns.areEven() && columns.time() == TableColumns.NONE && isOneLine();
    notes.addAll(line ? rows.readLine() : rows.read());
    if (samples.size() == 0) {
      throw source.fault(0, 0, "no row has both a time and a level");
    }
    int unusable = samples.dropMinusOnes();
    if (unusable > 0) {
      notes.add(unusable + (unusable == 1 ? " level" : " levels") + " of -1 left out as missing");
    }
    boolean clock = columns.timeSample().isStamped() && !columns.areEven();
    double perSecond = perSecond(clock);
    boolean timed = clock && !rows.dated();
    if (timed && samples.addDays(RecordingClock.DAY)) {
      notes.add("the times cross midnight");
    }
    if (!columns.areEven() && samples.spreadSeconds(perSecond)) {
      notes.add("rows that share a second were spread evenly inside it");
    }
    order();
    double first = samples.time(0);
    double written = first + rows.base();
    boolean ownZero = !clock && written / perSecond < RecordingClock.OWN_ZERO_BELOW_SECONDS;
    double zero = ownZero ? 0 : first;
    if (!ownZero && written != 0) {
      notes.add("times count from the first row");
    }
    double[] seconds = samples.takeTimes();
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = Numbers.tidy((seconds[i] - zero) / perSecond);
    }
    return curve(seconds, clock, perSecond, (zero + rows.base()) / perSecond);
  }

  /** Whether all levels stand in one line. */
  private boolean isOneLine() {
    return table.sample().size() == 1 && table.width() > 2;
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
    double[] levels = samples.takeLevels();
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
        part(seconds, from, to),
        part(levels, from, to));
  }

  private static double[] part(double[] values, int from, int to) {
    return to - from == values.length ? values : Arrays.copyOfRange(values, from, to);
  }

  private void checkRange(double[] seconds, double zero) throws FileException {
    double largest = Math.max(Math.abs(seconds[0]), Math.abs(seconds[seconds.length - 1]));
    if (!(largest + Math.abs(zero) <= RecordingClock.MAX_SECONDS)) {
      throw source.fault(0, 0, "the times are too large for seconds; check --unit and --time");
    }
    for (int i = 1; i < seconds.length; i++) {
      if (!(seconds[i] > seconds[i - 1])) {
        throw source.fault(
            0, 0, "rows lie under a billionth of a second apart; check --unit and --time");
      }
    }
  }

  private Writing clockWriting() {
    if (columns.timeSample().dated()) {
      return Writing.HOURS;
    }
    for (List<String> row : table.sample()) {
      String cell = columns.time() < row.size() ? row.get(columns.time()) : "";
      if (cell.indexOf(':') != cell.lastIndexOf(':')) {
        return Writing.HOURS;
      }
    }
    return Writing.MINUTES;
  }

  private double perSecond(boolean clock) throws FileException {
    if (columns.areEven()) {
      return columns.rateHz();
    }
    if (clock) {
      return 1;
    }
    double first = samples.time(0) + rows.base();
    TimeUnit unit = TimeUnit.find(source, table, columns, options, first);
    unit.note().ifPresent(notes::add);
    return unit.perSecond();
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
          "all times are equal in "
              + table.nameOf(columns.time())
              + "; expected times that rise. Export them again with all their digits,"
              + " choose another column with --time, or add --rate HZ");
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

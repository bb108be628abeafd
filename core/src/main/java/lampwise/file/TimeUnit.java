package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwise.file.ReadOptions.Unit;

/**
 * The unit of a numeric time column and how it was found.
 *
 * @param perSecond how many of the unit make a second
 * @param note how it was found; empty if it was said
 */
record TimeUnit(double perSecond, Optional<String> note) {
  /** Days since 1900 of the years 1990 to 2099, as spreadsheets count. */
  private static final double SERIAL_MIN = 32_874;

  private static final double SERIAL_MAX = 73_051;

  private static final double TYPICAL_MIN_SECONDS = 0.001;
  private static final double TYPICAL_MAX_SECONDS = 2;
  private static final double MIN_SECONDS = 0.0002;
  private static final double MAX_SECONDS = 60;

  /** Rows of a spreadsheet's days are no further apart. */
  private static final double MAX_STEP_DAYS = MIN_SECONDS;

  /** Seconds since 1970 of the years 2000 and 2100. */
  private static final double EPOCH_MIN = 946_684_800.0;

  private static final double EPOCH_MAX = 4_102_444_800.0;

  /**
   * Finds the unit: as the option says, as the header or a comment states, else the one that makes
   * the rows lie as far apart as those of a light file do. Rows are 1 ms to 2 s apart, at the
   * outside 0.2 ms to 60 s; numbers with decimals are seconds if they can be.
   *
   * @param first the first time as it is written
   * @throws FileException if no unit fits, or two fit equally well
   */
  static TimeUnit find(
      SourceText source, Table table, TableColumns columns, ReadOptions options, double first)
      throws FileException {
    if (options.unit().isPresent()) {
      return new TimeUnit(options.unit().get().perSecond(), Optional.empty());
    }
    Optional<Unit> stated = stated(source, table, columns.time());
    if (stated.isPresent()) {
      return new TimeUnit(stated.get().perSecond(), Optional.empty());
    }
    ColumnSample times = columns.timeSample();
    double step = times.medianStep();
    if (!(step > 0)) {
      return inferred(Unit.S, "too few rows to tell their unit");
    }
    if (first > SERIAL_MIN && first < SERIAL_MAX && times.decimals() && step < MAX_STEP_DAYS) {
      return new TimeUnit(
          1 / RecordingClock.DAY, Optional.of("times were taken as days of a spreadsheet"));
    }
    List<Unit> typical = fitting(step, TYPICAL_MIN_SECONDS, TYPICAL_MAX_SECONDS);
    List<Unit> possible = fitting(step, MIN_SECONDS, MAX_SECONDS);
    List<Unit> fit = typical.isEmpty() ? possible : typical;
    String apart = "rows are " + Numbers.text(step) + " apart";
    if (times.decimals() && fit.contains(Unit.S)) {
      return inferred(Unit.S, apart);
    }
    if (fit.size() > 1) {
      List<Unit> sinceEpoch = fit.stream().filter(unit -> isEpoch(first, unit)).toList();
      fit = sinceEpoch.size() == 1 ? sinceEpoch : fit;
    }
    if (fit.size() == 1) {
      return inferred(fit.get(0), apart);
    }
    throw source.fault(
        0,
        0,
        "the unit of the times in "
            + table.nameOf(columns.time())
            + " cannot be told, "
            + apart
            + (fit.isEmpty() ? "" : ": " + words(fit))
            + "; add --unit s, ms, us or ns");
  }

  private static TimeUnit inferred(Unit unit, String why) {
    return new TimeUnit(
        unit.perSecond(), Optional.of("times were taken as " + word(unit) + ": " + why));
  }

  private static Optional<Unit> stated(SourceText source, Table table, int column) {
    for (String name : table.namesOf(column)) {
      Optional<Unit> unit = ColumnNames.unit(name);
      if (unit.isPresent()) {
        return unit;
      }
    }
    for (List<String> row : table.sample()) {
      String unit = column < row.size() ? LooseNumber.timeUnit(row.get(column)) : "";
      if (!unit.isEmpty()) {
        return ColumnNames.unit(unit);
      }
    }
    Lines comments = Lines.comments(source.head());
    while (comments.next()) {
      Optional<Unit> unit = ColumnNames.unitOfComment(comments.get());
      if (unit.isPresent()) {
        return unit;
      }
    }
    return Optional.empty();
  }

  private static List<Unit> fitting(double step, double minSeconds, double maxSeconds) {
    List<Unit> fit = new ArrayList<>();
    for (Unit unit : Unit.values()) {
      double seconds = step / unit.perSecond();
      if (seconds >= minSeconds && seconds <= maxSeconds) {
        fit.add(unit);
      }
    }
    return fit;
  }

  private static boolean isEpoch(double first, Unit unit) {
    double seconds = first / unit.perSecond();
    return seconds >= EPOCH_MIN && seconds <= EPOCH_MAX;
  }

  private static String words(List<Unit> units) {
    return String.join(" or ", units.stream().map(TimeUnit::word).toList());
  }

  private static String word(Unit unit) {
    return unit.name().toLowerCase(Locale.ROOT);
  }
}

package lampwise.file;

import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;

/**
 * What the user said about a recording file; whatever is empty is found out from the file. Times
 * are as the user wrote them: seconds of the output, or the file's own writing.
 *
 * @param shape what the file holds
 * @param column the column of the levels, a name or a number from 1
 * @param time the column of the times, a name or a number from 1
 * @param unit the unit of the times
 * @param lit which way the level moves when the lamp comes on
 * @param from where the window starts
 * @param to where the window ends
 * @param targets {@code none}, {@code all} or {@code A..B}, as often as given
 * @param events {@code NAME@T}, as often as given
 * @param covered {@code A..B}, as often as given
 * @param writing how the numbers of a table are written
 */
public record ReadOptions(
    Optional<Shape> shape,
    Optional<String> column,
    Optional<String> time,
    Optional<Unit> unit,
    LightCurve.Lit lit,
    Optional<String> from,
    Optional<String> to,
    List<String> targets,
    List<String> events,
    List<String> covered,
    Writing writing) {
  /** What a file can hold. */
  public enum Shape {
    /** Blink starts. */
    TIMES,
    /** Seconds from one blink to the next. */
    GAPS,
    /** Pairs of on and off. */
    SPANS,
    /** Timed light levels. */
    LEVELS
  }

  /** The unit of a numeric time column. */
  public enum Unit {
    /** Seconds. */
    S(1),
    /** Milliseconds. */
    MS(1e3),
    /** Microseconds. */
    US(1e6),
    /** Nanoseconds. */
    NS(1e9);

    private final double perSecond;

    Unit(double perSecond) {
      this.perSecond = perSecond;
    }

    /**
     * How many of it make a second.
     *
     * @return one or more
     */
    public double perSecond() {
      return perSecond;
    }
  }

  /** Which number of a date is the day. */
  public enum Dates {
    /** The first: day, month, year. */
    DMY,
    /** The second: month, day, year. */
    MDY
  }

  /** What parts the whole of a number from its fraction. */
  public enum Decimal {
    /** A point; commas part thousands. */
    POINT,
    /** A comma; points part thousands. */
    COMMA
  }

  /**
   * How a table is written, where it cannot tell itself.
   *
   * @param rateHz how many rows make a second, if they lie evenly; more than 0, else NaN
   * @param dates which number of a date is the day
   * @param decimal what parts the whole of a number from its fraction
   */
  public record Writing(double rateHz, Optional<Dates> dates, Optional<Decimal> decimal) {
    /**
     * Nothing is known of it.
     *
     * @return a writing that is found out from the file
     */
    public static Writing unknown() {
      return new Writing(Double.NaN, Optional.empty(), Optional.empty());
    }
  }

  /**
   * Options that leave the writing of tables to be found out.
   *
   * @param shape what the file holds
   * @param column the column of the levels
   * @param time the column of the times
   * @param unit the unit of the times
   * @param lit which way the level moves when the lamp comes on
   * @param from where the window starts
   * @param to where the window ends
   * @param targets the targets
   * @param events the events
   * @param covered the covered stretches
   */
  public ReadOptions(
      Optional<Shape> shape,
      Optional<String> column,
      Optional<String> time,
      Optional<Unit> unit,
      LightCurve.Lit lit,
      Optional<String> from,
      Optional<String> to,
      List<String> targets,
      List<String> events,
      List<String> covered) {
    this(shape, column, time, unit, lit, from, to, targets, events, covered, Writing.unknown());
  }

  /** Keeps copies of the lists. */
  public ReadOptions {
    targets = List.copyOf(targets);
    events = List.copyOf(events);
    covered = List.copyOf(covered);
  }

  /**
   * The same options with this window from 0.
   *
   * @param to where it ends
   * @return new options
   */
  public ReadOptions watched(String to) {
    return new ReadOptions(
        shape,
        column,
        time,
        unit,
        lit,
        Optional.empty(),
        Optional.of(to),
        targets,
        events,
        covered,
        writing);
  }

  /**
   * The same options for a table written so.
   *
   * @param how how it is written
   * @return new options
   */
  public ReadOptions written(Writing how) {
    return new ReadOptions(shape, column, time, unit, lit, from, to, targets, events, covered, how);
  }

  /**
   * Nothing was said.
   *
   * @return options that leave everything to be found out
   */
  public static ReadOptions none() {
    return new ReadOptions(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        LightCurve.Lit.BRIGHTER,
        Optional.empty(),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of());
  }
}

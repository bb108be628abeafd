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
    List<String> covered) {
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
        covered);
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

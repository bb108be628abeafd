package lampwise.light;

import java.util.Arrays;
import java.util.Optional;

/** Timed light levels, in order of time. Immutable. */
public final class LightCurve implements Recording {
  /** Which way the level moves when the lamp comes on. */
  public enum Lit {
    /** Up. */
    BRIGHTER,
    /** Down. */
    DARKER
  }

  private final Origin origin;
  private final Marks marks;
  private final Lit lit;
  private final double[] seconds;
  private final double[] levels;

  private LightCurve(Origin origin, Marks marks, Lit lit, double[] seconds, double[] levels) {
    this.origin = origin;
    this.marks = marks;
    this.lit = lit;
    this.seconds = seconds;
    this.levels = levels;
  }

  /**
   * Makes a light curve from copies of the arrays.
   *
   * @param origin where it came from
   * @param marks what was noted beside it
   * @param lit which way the level moves when the lamp comes on
   * @param seconds the times, finite and strictly rising; may be empty
   * @param levels the levels, as many, in any unit; NaN where the level is missing
   * @return the light curve
   * @throws RecordingException if the arrays differ in length, a time is not finite or not after
   *     the one before, or a level is infinite
   */
  public static LightCurve of(
      Origin origin, Marks marks, Lit lit, double[] seconds, double[] levels) {
    if (seconds.length != levels.length) {
      throw new RecordingException(
          "a light curve needs as many levels as times: "
              + levels.length
              + " and "
              + seconds.length);
    }
    for (int i = 0; i < seconds.length; i++) {
      RecordingException.finite(seconds[i], "the time of sample " + (i + 1));
      if (i > 0 && !(seconds[i] > seconds[i - 1])) {
        throw new RecordingException(
            "the times of a light curve must rise: sample " + (i + 1) + " is at " + seconds[i]);
      }
      if (Double.isInfinite(levels[i])) {
        throw new RecordingException("the level of sample " + (i + 1) + " is infinite");
      }
    }
    return new LightCurve(origin, marks, lit, seconds.clone(), levels.clone());
  }

  /**
   * The same levels with other marks.
   *
   * @param marks what was noted beside it
   * @return a new curve
   */
  public LightCurve withMarks(Marks marks) {
    return new LightCurve(origin, marks, lit, seconds, levels);
  }

  @Override
  public Origin origin() {
    return origin;
  }

  @Override
  public Marks marks() {
    return marks;
  }

  /**
   * Which way the level moves when the lamp comes on.
   *
   * @return brighter or darker
   */
  public Lit lit() {
    return lit;
  }

  /**
   * How many samples there are.
   *
   * @return zero or more
   */
  public int size() {
    return seconds.length;
  }

  /**
   * The time of a sample.
   *
   * @param index from 0 to {@code size() - 1}
   * @return seconds
   */
  public double seconds(int index) {
    return seconds[index];
  }

  /**
   * The level of a sample.
   *
   * @param index from 0 to {@code size() - 1}
   * @return the level in the recording's own unit; NaN where it is missing
   */
  public double level(int index) {
    return levels[index];
  }

  @Override
  public Optional<Window> window() {
    if (marks.window().isPresent() || seconds.length == 0) {
      return marks.window();
    }
    return Optional.of(new Window(seconds[0], seconds[seconds.length - 1]));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LightCurve that
        && origin.equals(that.origin)
        && marks.equals(that.marks)
        && lit == that.lit
        && Arrays.equals(seconds, that.seconds)
        && Arrays.equals(levels, that.levels);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * origin.hashCode() + Arrays.hashCode(seconds)) + Arrays.hashCode(levels);
  }

  @Override
  public String toString() {
    return "LightCurve[" + origin.name() + ", " + seconds.length + " samples]";
  }
}

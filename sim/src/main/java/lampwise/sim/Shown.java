package lampwise.sim;

import java.util.List;
import lampwise.light.Blink;

/**
 * What a lamp truly showed.
 *
 * @param scene what happened
 * @param blinks when it was on inside the window, in order and without overlap; the first may have
 *     begun before the window, the last may end after it, and a lamp that is steadily on is one
 *     blink; one without a beginning or end reaches 1 s beyond the window
 * @param clock how the unit's clock ran, as the ratio of a true duration to the printed one, at the
 *     start of the window and wherever it had changed; never empty
 */
public record Shown(Scene scene, List<Blink> blinks, List<ClockRate> clock) {
  /**
   * How the clock ran from a moment on.
   *
   * @param fromSeconds the moment
   * @param ratio the ratio of a true duration to the printed one, over zero
   */
  public record ClockRate(double fromSeconds, double ratio) {}

  /** Keeps copies of the lists. */
  public Shown {
    blinks = List.copyOf(blinks);
    clock = List.copyOf(clock);
  }
}

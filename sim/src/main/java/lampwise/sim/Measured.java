package lampwise.sim;

import java.util.List;
import lampwise.light.Window;

/**
 * What a light sensor measured, value by value, with what is true of each: what a recording holds
 * and more. Where a file is written on change, the values between two rows are here, too. Left out
 * are values that no row could show (lost, or above the range) and those during whose averaging a
 * hand hid the lamp for some of the time.
 *
 * @param window the window of the scene
 * @param values in order of their ends
 */
public record Measured(Window window, List<Value> values) {
  /**
   * One value.
   *
   * @param fromSeconds the true start of its averaging, before its end
   * @param toSeconds the true end
   * @param level the level as it was read: with noise, rounded
   * @param roomLux the true mean of all light but the lamp's in that time: the room with its drift,
   *     flicker and shadows
   */
  public record Value(double fromSeconds, double toSeconds, double level, double roomLux) {}

  /** Keeps a copy of the list. */
  public Measured {
    values = List.copyOf(values);
  }
}

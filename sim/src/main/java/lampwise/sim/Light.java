package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.Window;

/** Collects when a lamp is on, in order of time; light that runs on is one blink. */
final class Light {
  /** More blinks than this in one window are refused. */
  static final int MOST_BLINKS = 20_000_000;

  private final Window window;
  private final List<Blink> blinks = new ArrayList<>();
  private double on = Double.NaN;
  private double off = Double.NaN;

  Light(Window window) {
    this.window = window;
  }

  Window window() {
    return window;
  }

  /** The end of the last blink; NaN before there is one. */
  double end() {
    return off;
  }

  /**
   * Adds a stretch of light; what does not overlap the window is dropped.
   *
   * @param onSeconds its start, not before that of the one added before
   * @param offSeconds its end
   * @throws SimulationException if there are too many
   */
  void add(double onSeconds, double offSeconds) {
    double end = Math.max(offSeconds, Math.nextUp(onSeconds));
    if (!(end > window.fromSeconds() && onSeconds < window.toSeconds())) {
      return;
    }
    if (onSeconds <= off) {
      off = Math.max(off, end);
      return;
    }
    flush();
    on = onSeconds;
    off = end;
  }

  private void flush() {
    if (Double.isNaN(on)) {
      return;
    }
    if (blinks.size() >= MOST_BLINKS) {
      throw new SimulationException(
          "the lamp would blink more than " + MOST_BLINKS + " times in the window");
    }
    blinks.add(new Blink(on, off));
  }

  /** All blinks, in order. */
  List<Blink> blinks() {
    flush();
    on = Double.NaN;
    return blinks;
  }
}

package lampwise.light;

import java.util.List;
import java.util.Optional;

/**
 * Blink times inside a window.
 *
 * @param origin where it came from
 * @param marks what was noted beside it
 * @param blinks the blinks in order of their starts; may be empty
 */
public record BlinkLog(Origin origin, Marks marks, List<Blink> blinks) implements Recording {
  /** Keeps a sorted copy of the blinks. */
  public BlinkLog {
    blinks =
        blinks.stream().sorted((a, b) -> Double.compare(a.onSeconds(), b.onSeconds())).toList();
  }

  /**
   * A log of blink starts.
   *
   * @param marks what was noted beside it
   * @param onSeconds the starts, finite, in any order
   * @return the log
   */
  public static BlinkLog ofStarts(Marks marks, double... onSeconds) {
    return new BlinkLog(
        Origin.named("log"),
        marks,
        java.util.Arrays.stream(onSeconds).mapToObj(Blink::startingAt).toList());
  }

  /**
   * The window: as marked, else from the start of the first blink to the start of the last one (or
   * its end, where known). Without a stated window a log ends because the person stopped.
   */
  @Override
  public Optional<Window> window() {
    if (marks.window().isPresent() || blinks.isEmpty()) {
      return marks.window();
    }
    double to = blinks.get(0).onSeconds();
    for (Blink blink : blinks) {
      to = Math.max(to, blink.hasOff() ? blink.offSeconds() : blink.onSeconds());
    }
    return Optional.of(new Window(blinks.get(0).onSeconds(), to));
  }
}

package lampwise.light;

import java.util.Optional;

/** What was seen of one lamp. */
public sealed interface Recording permits BlinkLog, LightCurve, Description {
  /**
   * Where it came from.
   *
   * @return name, fixture and notes
   */
  Origin origin();

  /**
   * What was noted beside the light.
   *
   * @return window, targets, events and covered stretches
   */
  Marks marks();

  /**
   * The stretch that was watched: the one that was marked; else from the first to the last blink or
   * sample.
   *
   * @return the window; empty if none was marked and there is no blink or sample
   */
  Optional<Window> window();
}

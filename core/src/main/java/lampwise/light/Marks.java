package lampwise.light;

import java.util.List;
import java.util.Optional;

/**
 * What was noted beside the light itself.
 *
 * @param window the stretch that was watched; empty if it was not said
 * @param targets what is known of targets
 * @param events moments that were noted, in order of time
 * @param covered stretches in which the lamp was covered: in a light curve the level there is that
 *     of a dark lamp; in a blink log they were not watched
 */
public record Marks(
    Optional<Window> window, Targets targets, List<Event> events, List<Window> covered) {
  /** Keeps sorted copies of the lists. */
  public Marks {
    events =
        events.stream().sorted((a, b) -> Double.compare(a.atSeconds(), b.atSeconds())).toList();
    covered =
        covered.stream()
            .sorted((a, b) -> Double.compare(a.fromSeconds(), b.fromSeconds()))
            .toList();
  }

  /**
   * Nothing was noted.
   *
   * @return marks without window, targets not known, no events, nothing covered
   */
  public static Marks nothing() {
    return new Marks(Optional.empty(), Targets.unknown(), List.of(), List.of());
  }

  /**
   * Only the window was said.
   *
   * @param fromSeconds where it starts
   * @param toSeconds where it ends
   * @return marks with that window
   */
  public static Marks watched(double fromSeconds, double toSeconds) {
    return nothing().withWindow(new Window(fromSeconds, toSeconds));
  }

  /**
   * The same marks with this window.
   *
   * @param window the window
   * @return new marks
   */
  public Marks withWindow(Window window) {
    return new Marks(Optional.of(window), targets, events, covered);
  }

  /**
   * The same marks with these targets.
   *
   * @param targets the targets
   * @return new marks
   */
  public Marks withTargets(Targets targets) {
    return new Marks(window, targets, events, covered);
  }

  /**
   * The same marks with these events.
   *
   * @param events the events, in any order
   * @return new marks
   */
  public Marks withEvents(List<Event> events) {
    return new Marks(window, targets, events, covered);
  }
}

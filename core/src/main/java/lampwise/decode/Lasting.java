package lampwise.decode;

import java.util.List;
import java.util.Optional;
import lampwise.light.Window;

/**
 * How long a state lasts that is seen before or after another. Who records a change has mostly
 * watched both states for a while: so many cycles of each and more are all as likely, and of
 * shorter times the chance falls with the time.
 */
final class Lasting {
  /** So many cycles of a state are mostly seen (chosen). */
  static final double CYCLES = 2;

  private final double longest;
  private final Places places;
  private final Window window;

  /**
   * Prepares.
   *
   * @param all all that may be shown
   * @param places where it may change
   * @param window the stretch that was watched
   */
  Lasting(List<Way> all, Places places, Window window) {
    this.longest =
        all.stream()
            .flatMap(way -> way.train().stream())
            .mapToDouble(Train::cycleSeconds)
            .max()
            .orElse(0);
    this.places = places;
    this.window = window;
  }

  /**
   * Logarithm of how much rarer it is that a way lasts so long than that it lasts for long; 0 from
   * two cycles on, and for a train that does not repeat. A way without a train counts as the
   * longest cycle, before which nobody could tell it.
   *
   * @param seconds how long it lasts, above 0
   */
  double log(Way way, double seconds) {
    Optional<Train> train = way.train();
    double mostly = CYCLES * (train.isPresent() ? train.get().cycleSeconds() : longest);
    return seconds < mostly ? Math.log(seconds / mostly) : 0;
  }

  /** The same for a run that ends at a moment after its start. */
  double log(Run run, double until) {
    boolean first = run.start == Run.ORIGIN;
    double from = first ? window.fromSeconds() : places.seconds()[run.start];
    return log(run.shown.way(), until - from);
  }
}

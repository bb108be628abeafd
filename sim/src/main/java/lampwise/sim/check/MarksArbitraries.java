package lampwise.sim.check;

import java.util.List;
import java.util.Optional;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/** What is noted beside the light, for laws. It shrinks to nothing. */
public final class MarksArbitraries {
  private MarksArbitraries() {}

  /**
   * Marks without a window, at times such as occur: one target or two, an event or two, at most one
   * covered stretch, in steps of half a second from 0 to 60 s. Most often nothing is noted.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Marks> plausible() {
    return marks(Arbitraries.integers().between(0, 120).map(n -> n / 2.0));
  }

  /**
   * Any marks, at any times, the largest among them 10<sup>15</sup> s, with and without a window.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Marks> any() {
    return Combinators.combine(marks(times()), windows(times()).optional(0.7))
        .as((marks, window) -> window.map(marks::withWindow).orElse(marks));
  }

  /** Times of every size, those of a usual recording more often. */
  static Arbitrary<Double> times() {
    return Arbitraries.frequencyOf(
        Tuple.of(6, Arbitraries.integers().between(-5_000, 120_000).map(n -> n / 1000.0)),
        Tuple.of(2, Arbitraries.integers().between(0, 60).map(n -> n / 2.0)),
        Tuple.of(1, Arbitraries.of(0.0, 1e9, -1e9, 1e15, 1e-9)));
  }

  private static Arbitrary<Window> windows(Arbitrary<Double> times) {
    return Combinators.combine(times, times)
        .as((a, b) -> new Window(Math.min(a, b), Math.max(a, b)));
  }

  private static Arbitrary<Marks> marks(Arbitrary<Double> times) {
    Arbitrary<Targets> spans =
        windows(times)
            .map(MarksArbitraries::span)
            .list()
            .ofMaxSize(2)
            .map(all -> Targets.during(all.stream().flatMap(Optional::stream).toList()));
    Arbitrary<Targets> targets =
        Arbitraries.oneOf(
            Arbitraries.just(Targets.unknown()),
            Arbitraries.of(
                Targets.likely(), Targets.none(), Targets.during(List.of(TargetSpan.always()))),
            spans);
    Arbitrary<List<Event>> events =
        Combinators.combine(Arbitraries.of(Event.Kind.values()), times)
            .as(Event::new)
            .list()
            .ofMaxSize(2);
    Arbitrary<List<Window>> covered = windows(times).list().ofMaxSize(1);
    Arbitrary<Marks> some =
        Combinators.combine(targets, events, covered)
            .as((who, what, where) -> new Marks(Optional.empty(), who, what, where));
    return Arbitraries.oneOf(Arbitraries.just(Marks.nothing()), some);
  }

  private static Optional<TargetSpan> span(Window window) {
    return window.lengthSeconds() > 0
        ? Optional.of(new TargetSpan(window.fromSeconds(), window.toSeconds()))
        : Optional.empty();
  }
}

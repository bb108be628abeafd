package lampwise.sim.check;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/** Rhythms that a lamp might show. */
final class PlausibleRhythms {
  private static final double UNSAID = 0.25;

  private PlausibleRhythms() {}

  static Arbitrary<Rhythm> all() {
    return Arbitraries.frequencyOf(
        Tuple.of(1, Arbitraries.of(new Rhythm.Dark(), new Rhythm.Steady())),
        Tuple.of(6, groups()),
        Tuple.of(3, pairs()),
        Tuple.of(2, rates()),
        Tuple.of(1, sizes()),
        Tuple.of(1, winks()),
        Tuple.of(1, starts()),
        Tuple.of(1, answers()));
  }

  /** {@code 3 blinks 0.5 s apart every 9 s}. */
  private static Arbitrary<Rhythm> groups() {
    return RhythmArbitraries.meaningful(
        Combinators.combine(blinks(6), endings()).as((part, end) -> cycle(end, part)));
  }

  /** {@code 3 blinks 0.5 s apart then dark 1.2 s then 2 blinks 0.5 s apart every 9 s}. */
  private static Arbitrary<Rhythm> pairs() {
    Arbitrary<Optional<Length>> pauses = exact(5, 40).optional(1 - UNSAID);
    return RhythmArbitraries.meaningful(
        Combinators.combine(blinks(4), pauses, blinks(4), endings())
            .as(
                (first, pause, second, end) ->
                    pause.isEmpty()
                        ? cycle(end, first, second)
                        : cycle(end, first, new Part.Unlit(pause), second)));
  }

  /** {@code 2 to 3 blinks per second}, {@code slow blinks}. */
  private static Arbitrary<Rhythm> rates() {
    Arbitrary<Rate> words =
        Arbitraries.of(Rate.Form.ANY, Rate.Form.SLOW, Rate.Form.FAST).map(Rate::inWords);
    Arbitrary<Integer> tenths = Arbitraries.integers().between(2, 80);
    Arbitrary<Rate> numbers =
        Combinators.combine(tenths, Arbitraries.integers().between(0, 10))
            .as(
                (from, more) ->
                    new Rate(
                        more == 0 ? Rate.Form.EXACT : Rate.Form.RANGE,
                        from / 10.0,
                        (from + more) / 10.0,
                        Rate.Per.SECOND));
    return Arbitraries.oneOf(numbers, words)
        .map(rate -> new Rhythm.Blinking(List.of(), new Cycle.Rated(rate)));
  }

  /** {@code 1 long blink then 2 short blinks}. */
  private static Arbitrary<Rhythm> sizes() {
    Arbitrary<Integer> counts = Arbitraries.integers().between(1, 3);
    return RhythmArbitraries.meaningful(
        Combinators.combine(counts, counts, endings())
            .as((longs, shorts, end) -> cycle(end, sized(longs, Size.LONG), sized(shorts))));
  }

  private static Part sized(int count) {
    return sized(count, Size.SHORT);
  }

  private static Part sized(int count, Size size) {
    return new Part.Blinks(Count.of(count), size, Optional.empty(), Optional.empty());
  }

  /** {@code steady then dark 0.3 s every 8 s}. */
  private static Arbitrary<Rhythm> winks() {
    return RhythmArbitraries.meaningful(
        Combinators.combine(exact(1, 9), exact(10, 200))
            .as(
                (dark, cycle) ->
                    cycle(
                        new Ending.Every(cycle),
                        new Part.Lit(Optional.empty()),
                        new Part.Unlit(Optional.of(dark)))));
  }

  /** {@code first steady 5 s afterwards 1 blink every 10 s}. */
  private static Arbitrary<Rhythm> starts() {
    return RhythmArbitraries.meaningful(
        Combinators.combine(exact(5, 60), blinks(3), endings())
            .as(
                (lit, part, end) ->
                    () ->
                        new Rhythm.Blinking(
                            List.of(new Part.Lit(Optional.of(lit))),
                            new Cycle.Parts(List.of(part), end))));
  }

  /** {@code 2 blinks 0.3 s apart once}. */
  private static Arbitrary<Rhythm> answers() {
    return RhythmArbitraries.meaningful(blinks(4).map(part -> cycle(new Ending.Once(), part)));
  }

  private static Supplier<Rhythm> cycle(Ending ending, Part... parts) {
    return () -> new Rhythm.Blinking(List.of(), new Cycle.Parts(List.of(parts), ending));
  }

  private static Arbitrary<Part> blinks(int most) {
    Arbitrary<Integer> counts = Arbitraries.integers().between(1, most);
    Arbitrary<Optional<Length>> of = RhythmArbitraries.hundredths(5, 12).optional(UNSAID);
    Arbitrary<Optional<Length>> apart = RhythmArbitraries.hundredths(25, 90).optional(1 - UNSAID);
    return Combinators.combine(counts, of, apart)
        .as(
            (count, each, gap) ->
                new Part.Blinks(
                    Count.of(count), Size.UNSAID, each, count == 1 ? Optional.empty() : gap));
  }

  private static Arbitrary<Ending> endings() {
    Arbitrary<Ending> every = exact(10, 300).map(Ending.Every::new);
    Arbitrary<Ending> open = Arbitraries.just(new Ending.Repeating());
    return Arbitraries.frequencyOf(Tuple.of(3, every), Tuple.of(1, open));
  }

  /** Exact durations in tenths of a second. */
  private static Arbitrary<Length> exact(int from, int to) {
    return Arbitraries.integers().between(from, to).map(n -> Length.exactly(n / 10.0));
  }
}

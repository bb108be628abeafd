package lampwise.sim.check;

import java.util.ArrayList;
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
import lampwise.rhythm.RhythmException;
import lampwise.rhythm.Size;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tuple;

/** Rhythms and their parts for laws. They shrink to fewer parts, fewer blinks and round numbers. */
public final class RhythmArbitraries {
  /** So many candidates in a row may contradict themselves before the search is given up. */
  private static final int MOST_MISSES = 100_000;

  private static final Length ONE = Length.exactly(1);

  private RhythmArbitraries() {}

  /**
   * Any rhythm that a phrase can say: dark, steady, rates and cycles of every form, with and
   * without a prelude, durations from milliseconds to a week. Most of them no lamp ever showed.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Rhythm> any() {
    Arbitrary<Rhythm> lone = Arbitraries.of(new Rhythm.Dark(), new Rhythm.Steady());
    Arbitrary<List<Part>> preludes =
        Arbitraries.frequencyOf(
            Tuple.of(3, Arbitraries.just(List.<Part>of())), Tuple.of(1, parts(2)));
    Arbitrary<Rhythm> blinking =
        meaningful(
            Combinators.combine(preludes, cycles())
                .as((prelude, cycle) -> () -> new Rhythm.Blinking(prelude, cycle)));
    return Arbitraries.frequencyOf(Tuple.of(1, lone), Tuple.of(20, blinking)).withoutEdgeCases();
  }

  /**
   * Rhythms that a lamp might show and a person could follow for some minutes: one to six blinks in
   * a group, at most two groups, cycles from half a second to half a minute, durations in tenths
   * and hundredths of a second, some of them unsaid. Dark and steady are among them.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Rhythm> plausible() {
    return PlausibleRhythms.all();
  }

  /**
   * Keeps what can be built.
   *
   * @param candidates builders, some of which throw {@link RhythmException}
   */
  static Arbitrary<Rhythm> meaningful(Arbitrary<Supplier<Rhythm>> candidates) {
    return candidates
        .map(RhythmArbitraries::built)
        .filter(MOST_MISSES, Optional::isPresent)
        .map(Optional::orElseThrow);
  }

  private static Optional<Rhythm> built(Supplier<Rhythm> candidate) {
    try {
      return Optional.of(candidate.get());
    } catch (RhythmException contradiction) {
      return Optional.empty();
    }
  }

  private static Arbitrary<Cycle> cycles() {
    Arbitrary<Cycle> rated = rates().map(Cycle.Rated::new);
    Arbitrary<Cycle> parts = Combinators.combine(parts(4), endings()).as(Cycle.Parts::new);
    return Arbitraries.frequencyOf(Tuple.of(1, rated), Tuple.of(5, parts));
  }

  private static Arbitrary<Ending> endings() {
    return Arbitraries.oneOf(
        Arbitraries.just(new Ending.Repeating()),
        Arbitraries.just(new Ending.Once()),
        hundredths(200, 12000).map(Ending.Every::new),
        lengths().map(Ending.Every::new));
  }

  /**
   * Parts in an order that does not put two darks or two steadies side by side.
   *
   * @param most how many at most, one or more
   * @return the arbitrary
   */
  public static Arbitrary<List<Part>> parts(int most) {
    return part().list().ofMinSize(1).ofMaxSize(most).map(RhythmArbitraries::withoutDoubles);
  }

  private static List<Part> withoutDoubles(List<Part> parts) {
    List<Part> kept = new ArrayList<>();
    Part before = new Part.RatedFor(Rate.inWords(Rate.Form.ANY), ONE);
    for (Part part : parts) {
      boolean doubled =
          (before instanceof Part.Lit && part instanceof Part.Lit)
              || (before instanceof Part.Unlit && part instanceof Part.Unlit);
      if (!doubled) {
        kept.add(part);
        before = part;
      }
    }
    return kept;
  }

  /**
   * Any part.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Part> part() {
    Arbitrary<Part> rated = Combinators.combine(rates(), lengths()).as(Part.RatedFor::new);
    Arbitrary<Part> lit = lengths().optional(0.8).map(Part.Lit::new);
    Arbitrary<Part> unlit = lengths().optional(0.8).map(Part.Unlit::new);
    return Arbitraries.frequencyOf(
        Tuple.of(4, blinks()), Tuple.of(1, rated), Tuple.of(1, lit), Tuple.of(2, unlit));
  }

  private static Arbitrary<Part> blinks() {
    Arbitrary<Size> sizes =
        Arbitraries.frequency(
            Tuple.of(4, Size.UNSAID), Tuple.of(1, Size.SHORT), Tuple.of(1, Size.LONG));
    Arbitrary<Length> shorts = Arbitraries.oneOf(hundredths(1, 20), hundredths(1, 20), lengths());
    Arbitrary<Length> apart =
        Arbitraries.oneOf(hundredths(21, 200), hundredths(21, 200), lengths());
    return Combinators.combine(counts(), sizes, shorts.optional(0.4), apart.optional(0.6))
        .as(
            (count, size, of, gap) ->
                new Part.Blinks(count, size, of, count.max() == 1 ? Optional.empty() : gap));
  }

  /**
   * Any count, small ones more often.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Count> counts() {
    Arbitrary<Integer> few = Arbitraries.integers().between(1, 6);
    Arbitrary<Integer> any = Arbitraries.integers().between(1, Count.MOST);
    Arbitrary<Integer> more =
        Arbitraries.frequencyOf(Tuple.of(4, Arbitraries.just(0)), Tuple.of(1, few));
    return Combinators.combine(Arbitraries.frequencyOf(Tuple.of(8, few), Tuple.of(1, any)), more)
        .as((min, add) -> new Count(min, Math.min(Count.MOST, min + add)));
  }

  /**
   * Any rate, in numbers and in words.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Rate> rates() {
    Arbitrary<Double> numbers =
        Arbitraries.frequencyOf(
            Tuple.of(8, Arbitraries.integers().between(1, 500).map(n -> n / 10.0)),
            Tuple.of(1, doublesTo(Rate.MOST_PER_SECOND)));
    return Combinators.combine(
            Arbitraries.of(Rate.Form.class), numbers, numbers, Arbitraries.of(Rate.Per.class))
        .as(RhythmArbitraries::rate);
  }

  private static Rate rate(Rate.Form form, double a, double b, Rate.Per per) {
    return switch (form) {
      case ANY, SLOW, FAST -> Rate.inWords(form);
      case EXACT, ABOUT -> new Rate(form, a, a, per);
      case RANGE, ABOUT_RANGE ->
          a == b
              ? new Rate(Rate.Form.EXACT, a, a, per)
              : new Rate(form, Math.min(a, b), Math.max(a, b), per);
    };
  }

  /**
   * Any duration of any form: hundredths of a second, whole minutes and hours, and all doubles that
   * a duration may be.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Length> lengths() {
    Arbitrary<Double> seconds =
        Arbitraries.frequencyOf(
            Tuple.of(8, Arbitraries.integers().between(1, 3000).map(n -> n / 100.0)),
            Tuple.of(4, Arbitraries.integers().between(1, 300).map(n -> n / 1000.0)),
            Tuple.of(2, Arbitraries.integers().between(1, 200).map(n -> n * 60.0)),
            Tuple.of(2, Arbitraries.integers().between(1, 168).map(n -> n * 3600.0)),
            Tuple.of(1, doublesTo(Length.MOST_SECONDS)));
    return Combinators.combine(Arbitraries.of(Length.Form.class), seconds, seconds)
        .as(RhythmArbitraries::length);
  }

  /**
   * All doubles over zero up to a limit, each as likely: the bits of positive doubles are in order.
   */
  private static Arbitrary<Double> doublesTo(double most) {
    return Arbitraries.longs()
        .between(1, Double.doubleToLongBits(most))
        .withDistribution(RandomDistribution.uniform())
        .map(Double::longBitsToDouble);
  }

  /** Durations in hundredths of a second: mostly exact, some {@code about} or a range. */
  static Arbitrary<Length> hundredths(int from, int to) {
    Arbitrary<Double> seconds = Arbitraries.integers().between(from, to).map(n -> n / 100.0);
    Arbitrary<Length.Form> forms =
        Arbitraries.frequency(
            Tuple.of(4, Length.Form.EXACT),
            Tuple.of(1, Length.Form.ABOUT),
            Tuple.of(1, Length.Form.RANGE));
    return Combinators.combine(forms, seconds, seconds).as(RhythmArbitraries::length);
  }

  private static Length length(Length.Form form, double a, double b) {
    return switch (form) {
      case EXACT, ABOUT -> new Length(form, a, a);
      case OVER -> new Length(form, a, Double.POSITIVE_INFINITY);
      case UNDER -> new Length(form, 0, a);
      case RANGE, ABOUT_RANGE ->
          a == b ? Length.exactly(a) : new Length(form, Math.min(a, b), Math.max(a, b));
    };
  }
}

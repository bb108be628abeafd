package lampwise.sim.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/**
 * Code sheets of two to eight states for laws. The states are named {@code s1}, {@code s2} and so
 * on; two of them may share a rhythm. They shrink to fewer states of weight 1, seen always.
 */
public final class SheetArbitraries {
  /** How many states a sheet has at the least. */
  public static final int LEAST_STATES = 2;

  /** How many states a sheet has at the most. */
  public static final int MOST_STATES = 8;

  private SheetArbitraries() {}

  /**
   * Any sheet: any rhythms, seen whenever, weights from a thousandth to a thousand, a clock
   * tolerance of up to 25 %.
   *
   * @return the arbitrary
   */
  public static Arbitrary<CodeSheet> any() {
    return any(MOST_STATES);
  }

  static Arbitrary<CodeSheet> any(int most) {
    return sheets(
        most,
        RhythmArbitraries.any(),
        Arbitraries.of(Seen.values()),
        Arbitraries.of(1.0, 3.0, 0.5, 1000.0, 0.001),
        Arbitraries.integers().between(0, 25),
        Arbitraries.integers().between(1, 3000));
  }

  /**
   * Sheets such as a unit might have: plausible rhythms, most of them seen always, weights from 0.5
   * to 20, a clock tolerance of 0 to 10 %, blinks of 50 to 200 ms.
   *
   * @return the arbitrary
   */
  public static Arbitrary<CodeSheet> plausible() {
    Arbitrary<Seen> seen =
        Arbitraries.frequencyOf(
            Tuple.of(3, Arbitraries.just(Seen.ALWAYS)), Tuple.of(1, Arbitraries.of(Seen.values())));
    return sheets(
        MOST_STATES,
        RhythmArbitraries.plausible(),
        seen,
        Arbitraries.of(1.0, 1.0, 2.0, 0.5, 20.0),
        Arbitraries.of(5, 2, 10, 0),
        Arbitraries.integers().between(50, 200));
  }

  private static Arbitrary<CodeSheet> sheets(
      int most,
      Arbitrary<Rhythm> rhythms,
      Arbitrary<Seen> seen,
      Arbitrary<Double> weights,
      Arbitrary<Integer> percent,
      Arbitrary<Integer> blinkMillis) {
    Arbitrary<Entry> entries =
        Combinators.combine(rhythms, seen, weights, Arbitraries.of(Condition.values()))
            .as(Entry::new);
    return Combinators.combine(
            entries.list().ofMinSize(LEAST_STATES).ofMaxSize(most),
            percent,
            blinkMillis.optional(0.5))
        .as((states, clock, blink) -> sheet(states, clock / 100.0, blink));
  }

  private record Entry(Rhythm rhythm, Seen seen, double weight, Condition condition) {}

  private static CodeSheet sheet(List<Entry> entries, double clock, Optional<Integer> millis) {
    List<LampState> states = new ArrayList<>();
    for (Entry entry : entries) {
      String name = "s" + (states.size() + 1);
      states.add(state(name, entry.rhythm(), entry.condition(), entry.seen(), entry.weight()));
    }
    OptionalDouble blink =
        millis.isPresent() ? OptionalDouble.of(millis.get() / 1000.0) : OptionalDouble.empty();
    return sheet(clock, blink, states);
  }

  /** A state with nothing optional said. */
  static LampState state(
      String name, Rhythm rhythm, Condition condition, Seen seen, double weight) {
    return new LampState(
        name,
        rhythm,
        "meaning of " + name,
        condition,
        seen,
        weight,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** An invented sheet with nothing optional said. */
  static CodeSheet sheet(double clock, OptionalDouble blinkSeconds, List<LampState> states) {
    return new CodeSheet(
        "Unit of the property kit",
        Basis.INVENTED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        blinkSeconds,
        states);
  }
}

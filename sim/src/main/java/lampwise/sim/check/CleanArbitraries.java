package lampwise.sim.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Lamps that nobody need mistake, for laws. They shrink to two states of few blinks. */
public final class CleanArbitraries {
  private static final double MOST_CYCLE_SECONDS = 40;
  private static final int MOST_RUNGS = 6;
  private static final int MOST_STATES = 6;

  private CleanArbitraries() {}

  /**
   * Lamps with a clock that runs as printed: 2 to 6 states of 1 to 5 blinks, cycles from 2 to 40 s,
   * a tolerance of 2, 5 or 10 %.
   *
   * @return the arbitrary
   */
  public static Arbitrary<CleanSample> samples() {
    Arbitrary<Rung> rungs =
        Combinators.combine(
                Arbitraries.integers().between(1, 5),
                Arbitraries.integers().between(0, MOST_RUNGS - 1))
            .as(Rung::new);
    Arbitrary<Ladder> ladders =
        Combinators.combine(
                Arbitraries.of(5, 2, 10),
                Arbitraries.integers().between(20, 60),
                Arbitraries.integers().between(105, 150))
            .as(Ladder::new);
    return Combinators.combine(
            ladders,
            rungs.list().ofMinSize(2).ofMaxSize(MOST_STATES),
            Arbitraries.integers().between(0, MOST_STATES - 1),
            Arbitraries.integers().between(0, 999),
            Arbitraries.of(CleanSample.Form.values()))
        .as(CleanArbitraries::sample)
        .filter(1000, sample -> sample.codes().size() > 1)
        .withoutEdgeCases();
  }

  private static CleanSample sample(
      Ladder ladder, List<Rung> rungs, int index, int phase, CleanSample.Form form) {
    Set<CleanSample.Code> codes = new LinkedHashSet<>();
    rungs.forEach(rung -> ladder.code(rung).ifPresent(codes::add));
    return new CleanSample(
        ladder.percent() / 100.0,
        List.copyOf(codes),
        codes.isEmpty() ? 0 : index % codes.size(),
        phase / 1000.0,
        form,
        1);
  }

  /**
   * Lamps on a sheet to which a state is added that fits worse than the one shown: dark, steady, or
   * {@code fast blinks}, or a code on another rung, of weight 0.1 to 1000, anywhere in the sheet.
   *
   * @return the arbitrary
   */
  public static Arbitrary<GrownSample> grown() {
    Arbitrary<Rhythm> others =
        Arbitraries.of(
            new Rhythm.Dark(),
            new Rhythm.Steady(),
            new Rhythm.Blinking(List.of(), new Cycle.Rated(Rate.inWords(Rate.Form.FAST))));
    return Combinators.combine(
            samples(),
            Arbitraries.oneOf(Arbitraries.just(Optional.<Rhythm>empty()), others.map(Optional::of)),
            Arbitraries.of(1.0, 0.1, 10.0, 1000.0),
            Arbitraries.integers().between(0, MOST_STATES))
        .as(CleanArbitraries::grown)
        .withoutEdgeCases();
  }

  /** Without another rhythm the last code is taken out of the sheet and added again. */
  private static GrownSample grown(
      CleanSample sample, Optional<Rhythm> other, double weight, int place) {
    CleanSample small = sample;
    Rhythm rhythm;
    List<CleanSample.Code> codes = new ArrayList<>(sample.codes());
    if (other.isPresent()) {
      rhythm = other.get();
    } else {
      int last = codes.size() - 1;
      rhythm = codes.remove(sample.index() == last ? 0 : last).rhythm();
      small =
          new CleanSample(
              sample.clockTolerance(),
              codes,
              Math.min(sample.index(), codes.size() - 1),
              sample.phase(),
              sample.form(),
              sample.clock());
    }
    LampState added = SheetArbitraries.state("added", rhythm, Condition.OTHER, Seen.ALWAYS, weight);
    return new GrownSample(small, added, Math.min(place, codes.size()));
  }

  /** The number of blinks, and a cycle's place on the ladder. */
  private record Rung(int blinks, int step) {}

  /**
   * Cycles each of which is longer than the one before by the factor that keeps clocks apart, and
   * some per cent more.
   */
  private record Ladder(int percent, int firstTenths, int marginPercent) {
    Optional<CleanSample.Code> code(Rung rung) {
      double first = firstTenths / 10.0;
      double apart = hundredths(Math.max(0.25, first / 8));
      double ratio = (100.0 + percent) / (100.0 - percent);
      double cycle = first;
      for (int i = 0; i < rung.step(); i++) {
        cycle *= ratio * ratio * marginPercent / 100;
      }
      return cycle > MOST_CYCLE_SECONDS
          ? Optional.empty()
          : Optional.of(new CleanSample.Code(rung.blinks(), apart, hundredths(cycle)));
    }

    private static double hundredths(double seconds) {
      return BigDecimal.valueOf(seconds).setScale(2, RoundingMode.HALF_EVEN).doubleValue();
    }
  }
}

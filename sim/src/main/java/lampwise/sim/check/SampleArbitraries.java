package lampwise.sim.check;

import lampwise.sheet.CodeSheet;
import lampwise.sim.Chance;
import lampwise.sim.Labelled;
import lampwise.sim.Observer;
import lampwise.sim.Scene;
import lampwise.sim.Scenes;
import lampwise.sim.Simulator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/** What a decoder is given, for laws: a sheet and recordings, with and without their truth. */
public final class SampleArbitraries {
  private static final int MOST_RECORDINGS = 2;
  private static final int MOST_ODD_STATES = 3;
  private static final int LEAST_SECONDS = 5;
  private static final int MOST_SECONDS = 30;

  private SampleArbitraries() {}

  /**
   * Any sheet of two or three states with any recordings, from none to two of them.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Sample> any() {
    return Combinators.combine(
            SheetArbitraries.any(MOST_ODD_STATES),
            RecordingArbitraries.any().list().ofMaxSize(MOST_RECORDINGS))
        .as(Sample::new)
        .withoutEdgeCases();
  }

  /**
   * Plausible sheets with one or two recordings such as occur: two thirds show a state of the
   * sheet, the others no lamp in particular.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Sample> plausible() {
    Arbitrary<Sample> shown = labelled().map(LabelledSample::sample);
    Arbitrary<Sample> others =
        Combinators.combine(
                SheetArbitraries.plausible(),
                RecordingArbitraries.plausible().list().ofMinSize(1).ofMaxSize(2))
            .as(Sample::new);
    return Arbitraries.frequencyOf(Tuple.of(2, shown), Tuple.of(1, others)).withoutEdgeCases();
  }

  /**
   * Simulated recordings of 5 to 30 s: plausible sheets, each state as likely, in a scene in which
   * it is seen, any observer. They shrink to short windows and small seeds.
   *
   * @return the arbitrary
   */
  public static Arbitrary<LabelledSample> labelled() {
    return Combinators.combine(
            SheetArbitraries.plausible(),
            Arbitraries.integers().between(0, SheetArbitraries.MOST_STATES - 1),
            Arbitraries.integers().between(LEAST_SECONDS, MOST_SECONDS),
            ObserverArbitraries.any(),
            Arbitraries.integers().between(0, Integer.MAX_VALUE))
        .as(SampleArbitraries::simulated)
        .withoutEdgeCases();
  }

  private static LabelledSample simulated(
      CodeSheet sheet, int state, int seconds, Observer observer, int seed) {
    Chance chance = Chance.of(seed);
    int index = state % sheet.states().size();
    Scene scene = Scenes.showing(sheet, sheet.states().get(index), seconds, chance.branch("scene"));
    Labelled labelled = Simulator.record(scene, observer, chance);
    String how = seconds + " s by " + ObserverArbitraries.text(observer) + ", seed " + seed;
    return new LabelledSample(sheet, labelled, how);
  }
}

package lampwise.sim.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every law catches the decoder that breaks it, and no other law does. */
class WrongDecodersTest {
  private static final Map<Class<?>, String> CAUGHT_BY =
      Map.ofEntries(
          Map.entry(WrongContracts.Throws.class, "any recordings are answered"),
          Map.entry(WrongContracts.Overfull.class, "probabilities sum to one"),
          Map.entry(WrongContracts.Tires.class, "the same call gives the same answer"),
          Map.entry(WrongContracts.FromZero.class, "shifting time changes nothing but times"),
          Map.entry(
              WrongContracts.FirstComes.class,
              "relabelling and reordering states changes nothing but names"),
          Map.entry(WrongContracts.Decides.class, "an empty window decides nothing"),
          Map.entry(WrongContracts.Shy.class, "three clean cycles are decoded"),
          Map.entry(WrongContracts.StrictClock.class, "a clock within the tolerance is accepted"),
          Map.entry(
              WrongContracts.Proportions.class,
              "a clock far outside the tolerance is not accepted"),
          Map.entry(
              WrongContracts.Impatient.class,
              "more of the same lamp does not lower the expected probability of the truth"),
          Map.entry(
              WrongContracts.Believes.class,
              "a state that fits worse turns no right answer wrong"));

  static Stream<Arguments> wrongDecoders() {
    return CAUGHT_BY.entrySet().stream().map(e -> Arguments.of(e.getKey(), e.getValue()));
  }

  @ParameterizedTest
  @MethodSource("wrongDecoders")
  void theLawThatIsBrokenCatchesIt(Class<?> contract, String law) {
    ContractRun run = ContractRun.of(contract);
    assertEquals(Set.of(law), run.broken().keySet());
    assertTrue(run.skipped().isEmpty());
  }

  @Test
  void aSoundDecoderHoldsEveryLawAndEachHasAWrongOne() {
    ContractRun run = ContractRun.of(WrongContracts.Sound.class);
    assertEquals(Map.of(), run.broken());
    assertEquals(Set.copyOf(CAUGHT_BY.values()), run.held());
  }
}

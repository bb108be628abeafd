package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Where no lamp blinks, no blinking state is decoded; 1,000 of them are a study. */
class NoLampTest {
  private static final int EACH = 6;

  @ParameterizedTest
  @EnumSource
  void nothingIsReadWhereThereIsNothing(NoLamp kind) {
    Map<String, Integer> verdicts = NoLampStudy.verdicts(kind, 0, EACH);
    assertFalse(verdicts.containsKey("BLINKS"), () -> kind + " " + verdicts);
    assertEquals(EACH, verdicts.values().stream().mapToInt(Integer::intValue).sum());
  }
}

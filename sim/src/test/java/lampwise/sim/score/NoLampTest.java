package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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

  /**
   * Each was read as a lamp once: room light that sinks, hands at the window's start and end, three
   * faint bumps of the noise as far apart as a listed state's blinks.
   */
  @ParameterizedTest
  @CsvSource({
    "SUNSET, 3069",
    "SUNSET, 7040",
    "HANDS, 3059",
    "HANDS, 20863",
    "HANDS, 20984",
    "WANDERING, 3054",
    "WANDERING, 20008",
    "NOISE, 11002"
  })
  void whatWasOnceReadAsALamp(NoLamp kind, int number) {
    Map<String, Integer> verdicts = NoLampStudy.verdicts(kind, number, 1);
    assertFalse(verdicts.containsKey("BLINKS"), () -> kind + " " + verdicts);
    assertFalse(verdicts.containsKey("unlisted"), () -> kind + " " + verdicts);
  }
}

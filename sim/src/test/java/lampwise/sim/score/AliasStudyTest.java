package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A fast blink is never decoded as what its samples show; some hundreds are a study. */
class AliasStudyTest {
  private static final int EACH = 2;

  @ParameterizedTest
  @EnumSource
  void noAliasIsDecoded(AliasStudy.Kind kind) throws Exception {
    Map<String, Integer> verdicts = AliasStudy.verdicts(kind, EACH, 1125);
    assertEquals(7 * EACH, verdicts.values().stream().mapToInt(Integer::intValue).sum());
    assertFalse(verdicts.containsKey("slow"), () -> kind + " " + verdicts);
    // Of a listed state averaging may leave no change at all: that is not dark.
    boolean hidden = kind.isListed() && verdicts.containsKey("dark");
    assertFalse(hidden, () -> kind + " " + verdicts);
  }
}

package lampwise.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import lampwise.rhythm.Rhythm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What to do at the unit where the lamp alone cannot tell two states apart. */
class TellApartTest {
  private static LampState state(String name, Condition condition, Seen seen) {
    return new LampState(
        name,
        new Rhythm.Dark(),
        "M",
        condition,
        seen,
        1,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static String check(LampState first, LampState second) {
    return TellApart.check(first, second).orElse("-");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "IDLE | hold a hand before the sensor for 5 s, then stay away for 15 s | while nobody is"
            + " there",
        "TARGET | hold a hand before the sensor for 5 s, then stay away for 15 s | while a hand is"
            + " there",
        "AFTER_TARGET | hold a hand before the sensor for 5 s, then stay away for 15 s | after a"
            + " hand has left",
        "AFTER_FLUSH | look into the bowl or basin, then let it flush once | after a flush",
        "WHILE_RUNNING | look into the bowl or basin, then let it flush once | while water runs",
        "AFTER_POWER_UP | take the power off for 60 s, stand clear, and put it on again | after"
            + " power comes back",
        "AFTER_BUTTON | look into the bowl, then press the button once | after the button",
        "SET_UP | start the setting as the unit's own papers say | during set-up",
      })
  void theNarrowerStateIsProvoked(Seen seen, String act, String when) {
    LampState narrow = state("n", Condition.OTHER, seen);
    LampState always = state("a", Condition.OTHER, Seen.ALWAYS);
    String check = act + ": n is seen only " + when;
    assertEquals(check, check(narrow, always));
    assertEquals(check, check(always, narrow));
  }

  @Test
  void powerIsMeasuredWhereOneOfTwoIsAboutIt() {
    LampState ready = state("a", Condition.READY, Seen.ALWAYS);
    LampState low = state("b", Condition.POWER_LOW, Seen.ALWAYS);
    LampState missing = state("c", Condition.POWER_MISSING, Seen.ALWAYS);
    assertEquals(TellApart.MEASURE_POWER, check(ready, low));
    assertEquals(TellApart.MEASURE_POWER, check(missing, ready));
    assertEquals("-", check(low, missing));
    assertEquals("-", check(ready, state("d", Condition.OTHER, Seen.ALWAYS)));
  }

  @Test
  void whatIsAlwaysSeenNeedsNoAct() {
    assertEquals(Optional.empty(), TellApart.provoke(Seen.ALWAYS));
    assertEquals("at any time", TellApart.when(Seen.ALWAYS));
  }
}

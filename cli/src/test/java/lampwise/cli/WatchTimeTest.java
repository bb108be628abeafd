package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.file.SheetReader;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WatchTimeTest {
  /** Worked out by hand: three of the longest cycle a phrase allows, on an exact clock. */
  @ParameterizedTest
  @CsvSource({
    "1 blink every 3 s, 30",
    "1 blink every 10 s, 30",
    "1 blink every 12.1 s, 37",
    "1 blink every 25 to 30 s, 90",
    "1 blink every about 20 s, 72",
    "1 blink every over 20 s, 180",
    "1 blink every 2 min, 180",
    "dark, 30",
    "steady, 30",
    "steady 40 s once, 30",
    "2 blinks per second, 30",
    "3 blinks per minute, 60",
    "slow blinks, 30",
    "3 blinks then 2 blinks, 180",
    "1 blink of 1 s then dark 14 s, 45",
    "2 blinks of 1 s 3 s apart then dark 16 s, 60",
    "5 blinks per second for 3 s then dark 17 s, 60",
    "steady then dark 0.2 s, 180",
    "first steady 5 s afterwards 1 blink every 11 s, 38",
    "first steady 90 s afterwards 1 blink every 11 s, 93",
    "first steady 5 s afterwards dark, 180"
  })
  void threeOfTheSlowestCycle(String phrase, int expectedSeconds) throws PhraseException {
    assertEquals(expectedSeconds, WatchTime.seconds(sheet(0, phrase)));
  }

  @Test
  void theSlowestStateOnTheSlowestClockCounts() throws PhraseException {
    assertEquals(44, WatchTime.seconds(sheet(0.1, "1 blink every 13.3 s", "1 blink every 2 s")));
    assertEquals(33, WatchTime.seconds(SheetReader.demo()));
  }

  private static CodeSheet sheet(double clock, String... phrases) throws PhraseException {
    LampState[] states = new LampState[phrases.length];
    for (int i = 0; i < phrases.length; i++) {
      states[i] = LampState.of("s" + i, Phrase.parse(phrases[i]), "A state", Condition.OTHER);
    }
    return new CodeSheet(
        "Sheet made for a test",
        Basis.LABEL,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        OptionalDouble.empty(),
        List.of(states));
  }
}

package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How labels describe a lamp, each saying as a phrase or as one phrase for each state it speaks of.
 * The sayings are common practice, no source; their numbers are invented.
 */
class LabelSayingsTest {
  /** The saying, what of it belongs to the sheet's keys instead of the phrase, the phrases. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "one flash every 6 s | | 1 blink every 6 s",
        "two quick ones every 15 s | | 2 short blinks every 15 s",
        "three, pause, again | | 3 blinks repeating",
        "four 0.4 s apart, 3 s off | | 4 blinks 0.4 s apart then dark 3 s repeating",
        "two, pause, five, long pause | | 2 blinks then 5 blinks repeating",
        "one long, two short | | 1 long blink then 2 short blinks repeating",
        "0.5 s on, 0.5 s off | | steady 0.5 s then dark 0.5 s repeating",
        "three to four a second | | 3 to 4 blinks per second",
        "about 90 a minute | | about 90 blinks per minute",
        "once per second | | 1 blink per second",
        "lit 3 s when a hand comes | seen: target | steady 3 s once",
        "lit while a hand is there | seen: target | steady",
        "one for the user, five with low cells | seen: target | 1 blink once; 5 blinks once",
        "lit 2 s, then six, new cells | seen: after-power-up | steady 2 s then 6 blinks once",
        "two when the user has left | seen: after-target | 2 blinks once",
        "flashes while water runs | seen: while-running | blinks",
        "lit, off 0.3 s every 10 s | | steady then dark 0.3 s every 10 s",
        "lit, off now and then | | steady then dark repeating",
        "one a minute, in store | | 1 blink every 60 s; 1 blink per minute",
        "no light: no power, or resting | two states | dark",
        "the code three times, then none | | 4 blinks then 4 blinks then 4 blinks once",
        "the same with known pauses | | 4 blinks then dark 2 s then 4 blinks then dark 2 s then 4"
            + " blinks once",
        "twice a second for 20 s, button | seen: after-button | 2 blinks per second for 20 s once",
        "lit 5 s, then one every 10 s | seen: set-up | first steady 5 s afterwards 1 blink every 10"
            + " s",
        "slow means cells, fast the sensor | two states | slow blinks; fast blinks",
        "flashing | | blinks",
        "red flash fault, green flash ready | lamp: red, lamp: green | blinks",
        "answers users for 10 min | seen: target, means | 1 blink once; dark",
        "flashes until the cells are pulled | cleared-by | blinks",
        "as many as the range step | five states | 1 blink repeating; 2 blinks repeating; 3 blinks"
            + " repeating; 4 blinks repeating; 5 blinks repeating",
        "the same as one state | | 1 to 5 blinks repeating",
      })
  void isSayable(String saying, String key, String phrases) throws PhraseException {
    for (String phrase : phrases.split("; ")) {
      assertEquals(phrase, Phrase.print(Phrase.parse(phrase)), saying);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "red and green alternating | two colours cannot be said",
        "red then green blinks | two colours cannot be said",
        "two colours at once | two colours cannot be said",
        "red and amber together | two colours cannot be said",
        "dim glow | fading and dim light cannot be said",
        "blinks fading out | fading and dim light cannot be said",
        "fades in and out every 4 s | fading and dim light cannot be said",
        "random flicker | flicker without a pattern cannot be said",
        "flickers irregularly | flicker without a pattern cannot be said",
        "blinks faster the nearer the hand | a speed that changes",
        "blinks, quicker when the hand is closer | a speed that changes",
      })
  void cannotBeSaid(String phrase, String why) {
    PhraseException refused = assertThrows(PhraseException.class, () -> Phrase.parse(phrase));
    assertTrue(refused.reason().startsWith("a rhythm is one lamp, one colour, on or off: "));
    assertTrue(refused.reason().contains(why), refused::reason);
    assertTrue(refused.suggestion().isEmpty(), refused::toString);
  }

  /** Sayings typed as they stand on a label lead to the phrase that says them. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "One flash every 6 s | 1 blink every 6 s",
        "three flashes, pause, repeat | 3 blinks repeating",
        "four flashes 0.4 s apart, 3 s off | 4 blinks 0.4 s apart then dark 3 s repeating",
        "two, pause, five, long pause | 2 blinks then 5 blinks repeating",
        "0.5 s on, 0.5 s off | steady 0.5 s then dark 0.5 s repeating",
        "three to four flashes a second | 3 to 4 blinks per second",
        "about 90 flashes a minute | about 90 blinks per minute",
        "once per second | 1 blink per second",
        "twice a second for 20 s | 2 blinks per second for 20 s repeating",
        "one flash a minute | 1 blink per minute",
        "slow flash | slow blinks",
        "flashing | blinks",
        "no light | dark",
        "one long, two short | 1 long blink then 2 short blinks repeating",
      })
  void isLedToItsPhrase(String saying, String phrase) {
    PhraseException refused = assertThrows(PhraseException.class, () -> Phrase.parse(saying));
    assertEquals(phrase, refused.suggestion().orElse(""));
  }
}

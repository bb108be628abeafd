package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sayings in our own words; common practice, no source, their numbers are invented. */
class SayingsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "One flash every 6 s | 1 blink every 6 s",
        "a wink each 6 seconds | 1 blink every 6 s",
        "winks every 6 s | 1 blink every 6 s",
        "flashes once every 6 s | 1 blink every 6 s",
        "one flash about every eight seconds | 1 blink every about 8 s",
        "one flash every 7 or 8 s | 1 blink every 7 to 8 s",
        "one blip every second | 1 blink every 1 s",
        "two quick flashes every 15 s | 2 short blinks every 15 s",
        "quick flash every 5 s | 1 short blink every 5 s",
        "slow flash every 5 s | 1 blink every 5 s",
        "three flashes, pause, repeat | 3 blinks repeating",
        "flashes three times, pauses, repeats | 3 blinks repeating",
        "flashes twice, 4 s pause | 2 blinks then dark 4 s repeating",
        "four flashes 0.4 s apart, 3 s off | 4 blinks 0.4 s apart then dark 3 s repeating",
        "two, pause, five, long pause | 2 blinks then 5 blinks repeating",
        "one long, two short | 1 long blink then 2 short blinks repeating",
        "long flash, two short flashes | 1 long blink then 2 short blinks repeating",
        "one long, pause, two short | 1 long blink then dark then 2 short blinks repeating",
        "one long flash every 9 s | 1 blink every 9 s",
        "0.5 s on, 0.5 s off | steady 0.5 s then dark 0.5 s repeating",
        "on for half a second and off for half a second | steady 0.5 s then dark 0.5 s repeating",
        "0,5 s on, 0,5 s off | steady 0.5 s then dark 0.5 s repeating",
        "300 ms on, 2 s off | steady 0.3 s then dark 2 s repeating",
        "three to four flashes a second | 3 to 4 blinks per second",
        "about 90 flashes a minute | about 90 blinks per minute",
        "flashes about 90 times a minute | about 90 blinks per minute",
        "once per second | 1 blink per second",
        "flashes at 2 Hz | 2 blinks per second",
        "one flash a minute | 1 blink per minute",
        "twice every second | 2 blinks per second",
        "lit 3 s | steady 3 s once",
        "lit | steady",
        "the lamp stays on | steady",
        "lights for 3 s | steady 3 s once",
        "lit 2 s then six flashes | steady 2 s then 6 blinks repeating",
        "flashes | blinks",
        "keeps flashing | blinks",
        "flashes continuously | blinks",
        "flashing rapidly | fast blinks",
        "slow flash | slow blinks",
        "always lit, winks off 0.3 s every 10 s | steady then dark 0.3 s every 10 s",
        "always lit, winks off now and then | steady then dark repeating",
        "no light | dark",
        "lamp off | dark",
        "twice a second for 20 s | 2 blinks per second for 20 s once",
        "twice a second for 20 s, 5 s off | 2 blinks per second for 20 s then dark 5 s repeating",
        "first lit 1 s, then one flash every 9 s | first steady 1 s afterwards 1 blink every 9 s",
        "lit 5 s then twice a second | first steady 5 s afterwards 2 blinks per second",
        "4 flashes sent three times, then dark | 4 blinks then 4 blinks then 4 blinks once",
        "two flashes, 1.5 s off, repeated twice | 2 blinks then dark 1.5 s then 2 blinks once",
        "two flashes, then dark | 2 blinks once",
        "flashes twice and stops | 2 blinks once",
        "three flashes each 0.2 s long | 3 blinks of 0.2 s repeating",
        "three flashes of 0.2 s, 0.6 s apart, every 9 s | 3 blinks of 0.2 s 0.6 s apart every 9 s",
        "flashes 2 s apart | 1 blink every 2 s",
        "one flash, 4 s between | 1 blink then dark 4 s repeating",
        "two flashes 0.3 s between, every 8 s | 1 blink then dark 0.3 s then 1 blink every 8 s",
        "flash, flash, pause | 2 blinks repeating",
        "short-short-long | 2 short blinks then 1 long blink repeating",
        "flash, pause, flash, flash, long pause | 1 blink then 2 blinks repeating",
        "LED flashes 3x then pause | 3 blinks repeating",
        "on 1 s off 1 s | steady 1 s then dark 1 s repeating",
        "flashes four times, waits 3 seconds, and repeats | 4 blinks then dark 3 s repeating",
        "1 to 5 flashes | 1 to 5 blinks repeating",
        "4 blinks 0.5 s apart every 9 s | 4 blinks 0.5 s apart every 9 s",
      })
  void says(String saying, String phrase) throws PhraseException {
    assertEquals(phrase, Phrase.print(Sayings.read(saying).get(0)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lit 5 s, then one flash every 10 s | first steady 5 s afterwards 1 blink every 10 s | steady"
            + " 5 s then 1 blink every 10 s",
        "lit 1 s, then one flash every 10 s | steady 1 s then 1 blink every 10 s | first steady 1 s"
            + " afterwards 1 blink every 10 s",
        "two flashes, 4 s between | 2 blinks then dark 4 s repeating | 1 blink then dark 4 s then 1"
            + " blink repeating",
        "two flashes 0.3 s between | 1 blink then dark 0.3 s then 1 blink repeating | 2 blinks then"
            + " dark 0.3 s repeating",
      })
  void saysOneOfTwo(String saying, String first, String second) throws PhraseException {
    assertEquals(List.of(first, second), Sayings.read(saying).stream().map(Phrase::print).toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | nothing is said | 1",
        "code sent three times, then dark | which blinks the code has is not said | 1",
        "three flashes of hope | \"hope\" is not understood | 18",
        "flashes, then dark | how long it blinks at that rate is not said | 1",
        "one flash every so often | every how many seconds is not said | 17",
        "dim glow | fading and dim light cannot be said | 1",
        "red and green alternating | two colours cannot be said | 1",
        "random flicker | flicker without a pattern cannot be said | 1",
        "flashes faster the nearer the hand | a speed that changes | 1",
        "0 flashes | a number of blinks is whole | 1",
        "6 s every 6 s | what lasts so long is not said | 5",
        "five flashes sent | how often it is sent is not said | 18",
        "three flashes 2 s apart every 3 s | does not fit | 1",
      })
  void doesNotSay(String saying, String reason, int column) {
    PhraseException refused = assertThrows(PhraseException.class, () -> Sayings.read(saying));
    assertTrue(refused.reason().contains(reason), refused::reason);
    assertEquals(column, refused.column());
    assertFalse(refused.reason().contains("\n"));
  }

  @Test
  void aMisspeltPhraseIsSuggestedWhole() {
    PhraseException refused =
        assertThrows(PhraseException.class, () -> Sayings.read("3 blinks evry 7 s"));
    assertEquals("3 blinks every 7 s", refused.suggestion().orElse(""));
    PhraseException none = assertThrows(PhraseException.class, () -> Sayings.read("hope 3"));
    assertEquals("", none.suggestion().orElse(""));
  }

  @Test
  void tooLongIsRefused() {
    String words = "one flash, ".repeat(40);
    PhraseException refused = assertThrows(PhraseException.class, () -> Sayings.read(words));
    assertTrue(refused.reason().contains("at most 400 characters"), refused::reason);
  }

  @Property
  void aPhraseIsASaying(@ForAll("rhythms") Rhythm rhythm) throws PhraseException {
    String phrase = Phrase.print(rhythm);
    if (phrase.length() <= 400) {
      assertEquals(List.of(rhythm), Sayings.read(phrase));
    }
  }

  @Provide
  Arbitrary<Rhythm> rhythms() {
    return RhythmArbitraries.rhythms();
  }

  /** Any heap of words is read or refused, and what is read can be printed and read back. */
  @Property(tries = 2000)
  void isTotal(@ForAll("heaps") String said) throws PhraseException {
    List<Rhythm> rhythms;
    try {
      rhythms = Sayings.read(said);
    } catch (PhraseException e) {
      assertTrue(e.column() >= 1 && e.column() <= said.length() + 1, e::toString);
      assertFalse(e.reason().isBlank());
      return;
    }
    for (Rhythm rhythm : rhythms) {
      assertEquals(rhythm, Phrase.parse(Phrase.print(rhythm)));
    }
  }

  @Provide
  Arbitrary<String> heaps() {
    Arbitrary<String> words =
        Arbitraries.of(
            ("one two 3 0.5 1e 0 s ms second minute a the flash flashes winks off on lit dark every"
                    + " each per pause long short quick slow then , and or to - about half once twice"
                    + " times apart between for repeat always no first sent code stops hz . 7 12 x"
                    + " now \u00e9 \ud83d now-and-then again 99999999999999999999")
                .split(" "));
    return words.list().ofMinSize(0).ofMaxSize(9).map(list -> String.join(" ", list));
  }

  @Property
  void anyTextIsReadOrRefused(@ForAll String said) {
    try {
      assertFalse(Sayings.read(said).isEmpty());
    } catch (PhraseException e) {
      assertFalse(e.reason().isBlank());
    }
  }
}

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
import org.junit.jupiter.params.provider.ValueSource;

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
        "flash, flash | 2 blinks repeating",
        "flash, flash every 5 s | 2 blinks every 5 s",
        "flash then dark | 1 blink once",
        "flash 0.3 s every 5 s | 1 blink of 0.3 s every 5 s",
        "flash for 0.3 s | blinks for 0.3 s once",
        "0.3 s flash every 6 s | 1 blink of 0.3 s every 6 s",
        "0.3 s flash, 0.5 s off | 1 blink of 0.3 s then dark 0.5 s repeating",
        "long flash 0.8 s, short flash 0.2 s | 1 long blink of 0.8 s then 1 short blink of 0.2 s"
            + " repeating",
        "three flashes 0.3 s on, 2 s off | 3 blinks then steady 0.3 s then dark 2 s repeating",
        "two flashes for 0.2 s | 2 blinks of 0.2 s repeating",
        "lit, for 3 s | steady 3 s once",
        "one flash, 4 s apart | 1 blink every 4 s",
        "flashes, spaced 2 s | 1 blink every 2 s",
        "flashes, 4 s between | 1 blink then dark 4 s repeating",
        "3 to 4 flashes, 2 s between | 3 to 4 blinks then dark 2 s repeating",
        "lit 1 s, flashes, every 10 s | steady 1 s then 1 blink every 10 s",
        "lit 5 s, three flashes, every 6 s | steady 5 s then 3 blinks every 6 s",
        "first two flashes, then one flash every 10 s | first 2 blinks afterwards 1 blink every 10"
            + " s",
        "lit 5 s then slow flashes for 3 s, off 2 s | steady 5 s then slow blinks for 3 s then dark"
            + " 2 s repeating",
        "four flashes, 1 s off, repeated 1 time | 4 blinks then dark 1 s once",
        "two flashes, short pause, two flashes | 2 blinks then 2 blinks repeating",
        "two flashes then dark, repeats | 2 blinks repeating",
        "once | 1 blink once",
        "once every 5 s | 1 blink every 5 s",
        "flashes once | 1 blink once",
        "flashes once every second | 1 blink every 1 s",
        "two flashes, once | 2 blinks once",
        "two flashes, once every 9 s | 2 blinks then 1 blink every 9 s",
        "flashes every 5 s | 1 blink every 5 s",
        "flashes about 3 times | 3 blinks repeating",
        "twice every hour | 2 blinks every 60 min",
        "one flash about every 5 to 6 s | 1 blink every about 5 to 6 s",
        "one flash every 5 s to 6 s | 1 blink every 5 to 6 s",
        "about 3 to 4 flashes a second | about 3 to 4 blinks per second",
        "2 to 3 hz | 2 to 3 blinks per second",
        "about half a minute on | steady about 30 s once",
        "half an hour on | steady 30 min once",
        "1 to 100 flashes | 1 to 100 blinks repeating",
        "2 to 2 flashes | 2 blinks repeating",
        "constantly flashing | blinks",
        "flashes, always | blinks",
        "always dark | dark",
        "always on | steady",
        "constant light | steady",
        "two flashes 3 s off always | 2 blinks then dark 3 s repeating",
        "two flashes then always lit | 2 blinks then steady repeating",
        "no flash | dark",
        "never flashes | dark",
        "two flashes, no flash 3 s | 2 blinks then dark 3 s repeating",
        "short flashes | blinks",
        "lit .5 s | steady 0.5 s once",
        "lit 3 s, off 2 s. | steady 3 s then dark 2 s repeating",
        "flash, off 3 s | 1 blink then dark 3 s repeating",
        "flash, long pause | 1 blink repeating",
        "flash - flash | 2 blinks repeating",
        "flash, long flash | 1 short blink then 1 long blink repeating",
        "flashes every minute | 1 blink every 60 s",
        "one flash every half minute | 1 blink every 30 s",
        "pause 3 s, two flashes | dark 3 s then 2 blinks repeating",
      })
  void says(String saying, String phrase) throws PhraseException {
    assertEquals(phrase, Phrase.print(Sayings.read(saying).get(0)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lit 5 s, then one flash every 10 s | first steady 5 s afterwards 1 blink every 10 s |"
            + " steady 5 s then 1 blink every 10 s",
        "lit 1 s, then one flash every 10 s | steady 1 s then 1 blink every 10 s | first steady 1 s"
            + " afterwards 1 blink every 10 s",
        "two flashes, 4 s between | 2 blinks then dark 4 s repeating | 1 blink then dark 4 s then 1"
            + " blink repeating",
        "two flashes 0.3 s between | 1 blink then dark 0.3 s then 1 blink repeating | 2 blinks then"
            + " dark 0.3 s repeating",
        "two flashes, 1 s between | 1 blink then dark 1 s then 1 blink repeating | 2 blinks then"
            + " dark 1 s repeating",
        "two flashes, 1.1 s between | 2 blinks then dark 1.1 s repeating | 1 blink then dark 1.1 s"
            + " then 1 blink repeating",
        "two flashes, 0.3 s between, 2 s off | 1 blink then dark 0.3 s then 1 blink then dark 2 s"
            + " repeating | 2 blinks then dark 2.3 s repeating",
        "lit 2 s, then one flash every 10 s | first steady 2 s afterwards 1 blink every 10 s |"
            + " steady 2 s then 1 blink every 10 s",
        "lit 1.9 s, then one flash every 10 s | steady 1.9 s then 1 blink every 10 s | first steady"
            + " 1.9 s afterwards 1 blink every 10 s",
        "lit 5 s then two flashes every 6 s | first steady 5 s afterwards 2 blinks every 6 s |"
            + " steady 5 s then 2 blinks every 6 s",
      })
  void saysOneOfTwo(String saying, String first, String second) throws PhraseException {
    assertEquals(List.of(first, second), Sayings.read(saying).stream().map(Phrase::print).toList());
  }

  /** A lamp that goes off now and then is lit, in each way to say so and in no other sense. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "off 0.3 s every 10 s",
        "flashes off 0.3 s every 10 s",
        "lit, off 0.3 s every 10 s",
        "always lit, off 0.3 s every 10 s",
        "always lit off 0.3 s every 10 s",
        "always lit, winks off 0.3 s every 10 s",
      })
  void aDipIsNoDarkLamp(String saying) throws PhraseException {
    assertEquals(
        List.of("steady then dark 0.3 s every 10 s"),
        Sayings.read(saying).stream().map(Phrase::print).toList());
  }

  @Test
  void aKnownLightBeforeAKnownDarkIsOneCycle() throws PhraseException {
    assertEquals(
        List.of(Phrase.parse("steady 9 s then dark 1 s every 10 s")),
        Sayings.read("lit 9 s, off 1 s every 10 s"));
  }

  @Test
  void whatIsSentHasAtMostAHundredParts() throws PhraseException {
    Rhythm most = Sayings.read("two flashes, 1 s off, sent 50 times").get(0);
    Cycle.Parts cycle = (Cycle.Parts) ((Rhythm.Blinking) most).cycle();
    // The last dark goes on.
    assertEquals(99, cycle.parts().size());
    String more = "two flashes, 1 s off, sent 51 times";
    PhraseException refused = assertThrows(PhraseException.class, () -> Sayings.read(more));
    assertTrue(refused.reason().contains("what is sent so often"), refused::reason);
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
        "twice a second, three times a second | how long it blinks at that rate is not said | 1",
        "twice a second, two flashes | how long it blinks at that rate is not said | 1",
        "twice a second every 10 s | a rate and \"every\" do not go together | 1",
        "twice a second 2 s apart | a time belongs to blinks | 1",
        "one flash every 6 s every 7 s | \"every\" stands twice | 1",
        "two flashes off 0.3 s | how long the lamp is off and how often | 13",
        "two flashes an hour | a rate is per second or minute | 13",
        "once an hour | a rate is per second or minute | 6",
        "1 to 101 flashes | a number of blinks is whole, 1 to 100 | 1",
        "2 to 2.5 flashes | a number of blinks is whole | 1",
        "two blop | \"blop\" is not understood; did you mean \"blip\"? | 5",
        "lot 3 s | \"lot\" is not understood; expected blinks | 1",
        "litt 3 s | \"litt\" is not understood; expected blinks | 1",
        "winks now and then of hope | \"hope\" is not understood | 23",
        "lit 1.5.2 s | a number of blinks is whole | 5",
        "flashes every so often | every how many seconds is not said | 15",
        "long pause | nothing is said of the light | 1",
        "lit 5 s, 0.3 s off every 10 s | nothing in them could fill | 1",
        "one flash every 200 h | at most a week | 17",
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
    PhraseException two = assertThrows(PhraseException.class, () -> Sayings.read("flahes twice"));
    assertEquals("2 blinks repeating", two.suggestion().orElse(""));
    PhraseException per =
        assertThrows(PhraseException.class, () -> Sayings.read("1 flash per 3 s"));
    assertEquals("1 blink every 3 s", per.suggestion().orElse(""));
    PhraseException hour = assertThrows(PhraseException.class, () -> Sayings.read("once an hour"));
    assertEquals("1 blink every 60 min", hour.suggestion().orElse(""));
    PhraseException none = assertThrows(PhraseException.class, () -> Sayings.read("hope 3"));
    assertEquals("", none.suggestion().orElse(""));
  }

  @Test
  void tooLongIsRefused() throws PhraseException {
    String words = "one flash, ".repeat(40);
    PhraseException refused = assertThrows(PhraseException.class, () -> Sayings.read(words));
    assertTrue(refused.reason().contains("at most 400 characters"), refused::reason);
    assertEquals(1, Sayings.read("flash" + " ".repeat(394) + ".").size());
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
                    + " times apart between for repeat always no first sent code stops hz . 7 12 x now"
                    + " \u00e9 \ud83d now-and-then again 99999999999999999999")
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

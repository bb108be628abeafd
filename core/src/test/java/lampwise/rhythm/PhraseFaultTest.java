package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which phrases are refused: where, why, and what is suggested instead. */
class PhraseFaultTest {
  private static void isRefused(String phrase, int column, String reason, String suggestion) {
    PhraseException fault = assertThrows(PhraseException.class, () -> Phrase.parse(phrase));
    assertEquals(column, fault.column(), fault::getMessage);
    assertTrue(fault.reason().contains(reason), fault::getMessage);
    assertEquals(suggestion.equals("-") ? "" : suggestion, fault.suggestion().orElse(""));
    String better = suggestion.equals("-") ? "" : "; try \"" + suggestion + "\"";
    assertEquals("column " + column + ": " + fault.reason() + better, fault.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 blinks | 1 | at least one blink | dark",
        "dark 2 s then 0 blinks | 15 | at least one blink | dark 2 s then 1 blink repeating",
        "101 blinks | 1 | at most 100 | -",
        "99999999999999999999 blinks | 1 | at most 100 | -",
        "5 to 3 blinks | 1 | runs upwards | 3 to 5 blinks repeating",
        "3 to 3 blinks | 1 | one number | 3 blinks repeating",
        "2.5 blinks every 9 s | 1 | whole number | 2 to 3 blinks every 9 s",
        "2.0 blinks every 9 s | 1 | whole number | 2 blinks every 9 s",
        "about 3 blinks every 9 s | 1 | not \"about\" | 2 to 4 blinks every 9 s",
        "3 to 2 blinks per second | 1 | runs upwards | 2 to 3 blinks per second",
        "0 blinks per second | 1 | over 0 | -",
        "1001 blinks per second | 1 | at most 1000 per second | -",
        "60001 blinks per minute | 1 | at most 60000 per minute | -",
        "1 blink every 0 s | 15 | over 0 s | -",
        "1 blink every 8 to 169 h | 20 | at most a week | -",
        "1 blink every 9 to 7 s | 15 | runs upwards | 1 blink every 7 to 9 s",
        "1 blink every 7 to 7 s | 15 | one number | 1 blink every 7 s",
        "dark 1 s then dark 2 s then 1 blink | 15 | give their sum | dark 3 s then 1 blink"
            + " repeating",
        "1 blink then steady then steady | 26 | in a row | 1 blink then steady repeating",
        "1 blink then dark 0.1 s then dark 0.2 s | 30 | sum | 1 blink then dark 0.3 s repeating",
        "1 blink then dark then dark 2 s | 24 | in a row | -",
        "first dark 1 s then dark 1 s afterwards blinks | 21 | in a row | first dark 2 s afterwards"
            + " blinks",
        "first 1 blink then dark 2 s afterwards dark | 40 | in a row | first 1 blink afterwards"
            + " dark",
        "first steady afterwards steady | 25 | in a row | steady",
        "first dark 2 s afterwards dark 3 s then 1 blink | 27 | in a row | first dark 5 s"
            + " afterwards 1 blink then dark 3 s repeating",
        "dark 2 s then 1 blink then dark 1 s | 28 | begins and ends | 1 blink then dark 3 s"
            + " repeating",
        "steady 3 s then dark 1 s then steady 2 s | 31 | begins and ends | steady 5 s then dark 1 s"
            + " repeating",
        "first 1 blink afterwards dark 2 s then 1 blink then dark 1 s | 53 | begins and ends |"
            + " first 1 blink then dark 2 s afterwards 1 blink then dark 3 s repeating",
        "4 blinks 0.5 s apart every 1.5 s | 22 | at least 1.53 s and a pause | -",
        "3 blinks every 0.2 s | 10 | at least 0.27 s and a pause | -",
        "steady 3 s then dark 2 s every 4 s | 26 | at least 5 s, which | -",
        "steady 3 s then dark 2 s every 6 s | 26 | at most 5 s | -",
        "5 blinks per second for 3 s every 2.5 s | 29 | at least 2.8 s | -",
        "1 blink of 0.7 s then 1 blink of 0.1 s every 0.8 s | 40 | at least 0.8 s and a pause | -",
        "1 blink of 3 s every 3 s | 16 | and a pause | -",
        "3 blinks of 0.5 s 0.4 s apart | 13 | does not end before | -",
        "3 blinks of 0.5 s 0.5 s apart | 13 | does not end before | -",
        "1 blink 0.5 s apart | 9 | one blink has no next one | -",
        "steady 4 s | 1 | never goes off | steady 4 s once",
        "steady repeating | 1 | never goes off | steady",
        "steady 4 s every 9 s | 1 | never goes off | 1 blink of 4 s every 9 s",
        "first 1 blink afterwards steady 4 s | 26 | never goes off | first 1 blink afterwards"
            + " steady 4 s once",
        "dark 4 s | 1 | needs some light | dark",
        "dark once | 1 | needs some light | dark",
        "first 1 blink afterwards dark 4 s | 26 | needs some light | first 1 blink afterwards dark",
        "1 long blink every 3 s | 3 | something short | 1 blink every 3 s",
        "1 long blink then 2 blinks | 3 | something short | 1 long blink then 2 short blinks"
            + " repeating",
        "1 long blink of 0.2 s then 1 short blink of 0.3 s | 17 | longer than a short one | -",
        "fast blinks once | 13 | needs its time | -",
        "5 blinks per second once | 21 | needs its time | -",
        "slow blinks then fast blinks | 13 | needs its time | -",
        "fast blinks every 3 s | 13 | counted blinks | -",
        "blinks every 3 s | 8 | counted blinks | 1 blink every 3 s",
        "fast blinks repeating | 13 | goes on by itself | fast blinks",
        "blink then dark 3 s | 1 | how many | 1 blink then dark 3 s repeating",
        "1 blink then dark 1 to 2 s every 5 s | 28 | at most 4 s, | -",
        "3 blinks 0.5 s apart then dark 1 s every 9 s | 36 | at most 4 s, | -",
        "5 blinks per second for 3 s then dark 2 s every 6 s | 43 | at most 5.2 s, | -",
        "3 blinks then dark 1 s every 10 s | 24 | at most 9 s, | -",
        "2 blinks of 2 s then dark 1 s every 7 s | 31 | at most 6 s, | -",
        "2 to 2 blinks per second | 1 | one number | 2 blinks per second",
        "dark 84 h then dark 84 h then 1 blink | 16 | sum | dark 168 h then 1 blink repeating",
        "dark 84 h then dark 85 h then 1 blink | 16 | sum | -",
        "first 1 blink afterwards 1 long blink every 3 s | 28 | something short | first 1 short"
            + " blink afterwards 1 long blink every 3 s",
        "first 1 blink then 1 long blink afterwards dark | 22 | something short | first 1 short"
            + " blink then 1 long blink afterwards dark",
        "1 long blink of 0.2 s then 1 short blink of 0.2 s | 17 | longer than a short one | -",
      })
  void whatMeansNothing(String phrase, int column, String reason, String suggestion) {
    isRefused(phrase, column, reason, suggestion);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 blink every 0,5 s | 16 | point | 1 blink every 0.5 s",
        "0,5 | 2 | point | 0.5",
        "3 blinks,2 blinks | 9 | followed by a blank | 3 blinks then 2 blinks repeating",
        "1 blink every .5 s | 15 | begins with a digit | 1 blink every 0.5 s",
        "1 blink every 5 s. | 18 | the end | 1 blink every 5 s",
        "3 blnks evry 5 s | 3 | \"blnks\" where | 3 blinks every 5 s",
        "stady | 1 | \"stady\" where | steady",
        "2 blinks tehn 3 blinks | 10 | \"tehn\" where | 2 blinks then 3 blinks repeating",
        "3 flashes every 5 s | 3 | said \"blinks\" | 3 blinks every 5 s",
        "3 winks every 5 s | 3 | said \"blinks\" | 3 blinks every 5 s",
        "3 times every 5 s | 3 | said \"blinks\" | 3 blinks every 5 s",
        "1x every 5 s | 2 | said \"blinks\" | 1 blink every 5 s",
        "3 x blinks every 5 s | 3 | says nothing | 3 blinks every 5 s",
        "1 blink every 5 sec | 17 | said \"s\" | 1 blink every 5 s",
        "1 blink every 5 seconds | 17 | said \"s\" | 1 blink every 5 s",
        "1 blink every 5 minutes | 17 | said \"min\" | 1 blink every 5 min",
        "1 blink every second | 15 | a number and a unit | 1 blink every 1 s",
        "1 blink per 3 s | 9 | goes with \"second\" | 1 blink every 3 s",
        "2 blinks per sec | 14 | said \"second\" | 2 blinks per second",
        "2-3 blinks/min | 2 | said \"to\" | 2 to 3 blinks per minute",
        "on/off | 1 | said \"steady\" | steady then dark repeating",
        "on 2 s, off 3 s | 1 | said \"steady\" | steady 2 s then dark 3 s repeating",
        "0.5 s on, 1 s off | 1 | follows what it is the time of | steady 0.5 s then dark 1 s"
            + " repeating",
        "2 s flash every 9 s | 1 | follows what it is | 1 blink of 2 s every 9 s",
        "3 blinks pause 2 s | 10 | a pause is said | 3 blinks then dark 2 s repeating",
        "3 blinks, pause, 2 blinks | 11 | a pause is said | 3 blinks then 2 blinks repeating",
        "3 blinks then pause then 2 blinks | 15 | a pause is said | 3 blinks then dark then 2"
            + " blinks repeating",
        "3 blinks 2 blinks | 10 | \"then\" stands between | 3 blinks then 2 blinks repeating",
        "3 blinks steady 2 s | 10 | \"then\" | 3 blinks then steady 2 s repeating",
        "3 blinks followed by 2 blinks | 10 | said \"then\" | 3 blinks then 2 blinks repeating",
        "3 blinks 0.5 s | 15 | ends where \"apart\" | 3 blinks 0.5 s apart repeating",
        "1 blink 0.5 s every 3 s | 9 | said with \"of\" | 1 blink of 0.5 s every 3 s",
        "3 every 5 s | 3 | \"every\" where | 3 blinks every 5 s",
        "3 blinks every 5 | 17 | ends where a unit | 3 blinks every 5 s",
        "3 blinks every 3 s to 4 s | 16 | one unit | 3 blinks every 3 to 4 s",
        "3 blinks every 500 ms to 1 s | 16 | one unit | 3 blinks every 0.5 to 1 s",
        "3 blinks every over 3 to 4 s | 16 | goes with one number | 3 blinks every 3 to 4 s",
        "3 blinks every more than 3 s | 16 | said \"over\" | 3 blinks every over 3 s",
        "3 blinks repeating every 5 s | 20 | one ending | 3 blinks every 5 s",
        "3 blinks every 5 s then 2 blinks | 20 | after its ending | -",
        "steady for 3 s once | 8 | follows \"steady\" at once | steady 3 s once",
        "5 quick blinks | 3 | without a number | 5 blinks repeating",
        "5 short blinks per second | 3 | nothing of the blinks' length | 5 blinks per second",
        "3 red blinks | 3 | names no colour | 3 blinks repeating",
        "first 3 blinks then 2 blinks | 29 | \"afterwards\" | afterwards",
        "1 blink every 2 weeks | 17 | a unit (ms, s, min or h) | -",
        "no blinks | 1 | no light is said | dark",
        "3 blinks no | 10 | \"no\" where | -",
        "12,5 blinks per second | 3 | point | 12.5 blinks per second",
        "3,blinks | 2 | followed by a blank | 3 blinks repeating",
        "3 blinks every 5. s | 17 | \".\" says nothing here | 3 blinks every 5 s",
        "2 HZ | 3 | \"hz\" is said | 2 blinks per second",
        "3 blinks oxx | 10 | \"oxx\" where | -",
        "stdy | 1 | \"stdy\" where | steady",
        "1 blink every 5 k | 17 | \"k\" where a unit | -",
        "0.5 to 1 s on, 1 s off | 1 | follows what it is | steady 0.5 to 1 s then dark 1 s"
            + " repeating",
        "first 0.5 s on afterwards 3 blinks | 7 | follows what it is | first steady 0.5 s"
            + " afterwards 3 blinks repeating",
        "1 blink then 0.5 s on | 14 | follows what it is | 1 blink then steady 0.5 s repeating",
        "2 s blink every 9 s | 1 | follows what it is | 1 blink of 2 s every 9 s",
        "2 s every 9 s | 1 | follows what it is | -",
        "3 blinks 2 s pause then 2 blinks | 10 | follows what it is | 3 blinks then dark 2 s then 2"
            + " blinks repeating",
        "3 blinks 2 s off | 10 | follows what it is | 3 blinks then dark 2 s repeating",
        "1 blink every 3 and 4 s | 17 | said \"to\" | 1 blink every 3 to 4 s",
        "3 and 4 blinks | 3 | said \"then\" | 3 blinks then 4 blinks repeating",
        "3 blinks pause repeating | 10 | a pause is said | 3 blinks repeating",
        "3 blinks long pause 2 blinks | 10 | a pause is said | 3 blinks then 2 blinks repeating",
        "pause 3 blinks | 1 | a pause is said | then",
        "3 short pause | 3 | what is counted are missing | 3 blinks repeating",
        "3 blinks 0.5 s apart 0.5 s | 22 | \"0.5\" where \"then\" | then",
        "3 blinks for 2 s | 10 | \"for\" where \"then\" | -",
        "1 short every 3 s | 9 | \"every\" where \"blink\" | 1 short blink every 3 s",
        "2.5 | 4 | blinks per second | -",
        "quux | 1 | \"quux\" where blinks | -",
        "3 blinks then | 14 | ends where | -",
        "steady @ | 8 | \"@\" where | -",
        "steady ! | 8 | \"!\" says nothing here | steady",
        "steady \u007f | 8 | \"U+007F\" where | -",
        "steady \u2603 | 8 | \"U+2603\" where | -",
      })
  void whatCannotBeRead(String phrase, int column, String reason, String suggestion) {
    isRefused(phrase, column, reason, suggestion);
  }

  @Test
  void nothingIsNoRhythm() {
    isRefused("", 1, "nothing is said", "-");
    isRefused(" , ", 4, "nothing is said", "-");
  }

  @Test
  void aLongWordIsNotRepeatedInFull() {
    PhraseException fault =
        assertThrows(PhraseException.class, () -> Phrase.parse("a".repeat(100_000)));
    assertTrue(fault.getMessage().length() < 200);
    isRefused("x".repeat(24), 1, '"' + "x".repeat(24) + '"', "-");
    isRefused("x".repeat(25), 1, '"' + "x".repeat(24) + "...\"", "-");
  }

  @Test
  void aNumberHasAnEnd() {
    isRefused("1 blink every " + "1".repeat(401) + " s", 15, "at most 400 characters", "-");
    isRefused("1 blink every 0." + "0".repeat(390) + "1 s", 15, "over 0 s", "-");
  }

  /** Two million characters, which anything worse than linear would not finish in the time. */
  @Tag("long")
  @Test
  void longPhrasesTakeLinearTime() {
    List<String> hostile =
        List.of(
            "1 blink then ".repeat(160_000),
            "9".repeat(2_000_000),
            "flash, ".repeat(280_000),
            "a".repeat(2_000_000),
            ", ".repeat(1_000_000),
            "1 blink then dark ".repeat(110_000),
            "1 long blink of 1 s then 1 short blink of 0.1 s then ".repeat(40_000)
                + "dark then dark",
            "- ".repeat(1_000_000));
    for (String text : hostile) {
      assertTimeoutPreemptively(
          Duration.ofSeconds(20),
          () -> assertThrows(PhraseException.class, () -> Phrase.parse(text)));
    }
  }

  @Test
  void aTreeThatMeansNothingCannotBeBuilt() {
    Part blink = new Part.Blinks(Count.of(1), Size.UNSAID, Optional.empty(), Optional.empty());
    Part dark = new Part.Unlit(Optional.of(Length.exactly(2)));
    Part wrong =
        new Part.Blinks(Count.of(1), Size.UNSAID, Optional.empty(), Optional.of(Length.exactly(2)));
    assertNotBuilt("at least one part", List.of());
    assertNotBuilt("two \"dark\" in a row", List.of(blink, dark, dark));
    assertNotBuilt("begins and ends \"dark\"", List.of(dark, blink, dark));
    assertNotBuilt("needs some light", List.of(dark));
    assertNotBuilt("one blink has no next one", List.of(wrong, dark));
  }

  private static void assertNotBuilt(String reason, List<Part> parts) {
    Cycle cycle = new Cycle.Parts(parts, new Ending.Repeating());
    RhythmException fault =
        assertThrows(RhythmException.class, () -> new Rhythm.Blinking(List.of(), cycle));
    assertTrue(fault.getMessage().contains(reason), fault::getMessage);
  }
}

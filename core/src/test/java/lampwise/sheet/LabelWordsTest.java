package lampwise.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Phrase;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How labels speak, in our own short words: common practice, no source; their numbers are invented.
 */
class LabelWordsTest {
  /** The saying, its phrases, when seen, what it means, its condition, what clears it, the lamp. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "one flash every 6 s: normal | 1 blink every 6 s | - | normal | ready | - | -",
        "three, pause, repeat: new cells | 3 blinks repeating | - | new cells | power-low | - | -",
        "lit 3 s when a hand comes | steady 3 s once | target | - | target-seen | - | -",
        "lit 3 s when a hand is first seen | steady 3 s once | target | - | target-seen | - | -",
        "lit as long as a hand is there | steady | target | - | target-seen | - | -",
        "lit 2 s then six flashes after the cells go in | steady 2 s then 6 blinks once |"
            + " after-power-up | - | setting-up | - | -",
        "two flashes after the user walks away | 2 blinks once | after-target | - | - | - | -",
        "flashes while water runs | blinks | while-running | - | running | - | -",
        "one flash a minute: store mode | 1 blink per minute | - | store mode | held-off | - | -",
        "twice a second for 20 s after the button | 2 blinks per second for 20 s once |"
            + " after-button | - | - | - | -",
        "lit 5 s, then one flash every 10 s until set-up ends | first steady 5 s afterwards 1 blink"
            + " every 10 s | set-up | - | setting-up | - | -",
        "answers each user for the first 10 min after power-up, then dark | 1 blink once | target |"
            + " only for the first 10 min after power-up | target-seen | - | -",
        "flashes until the cells are pulled | blinks | - | - | - | the cells are pulled | -",
        "three flashes when cells are low | 3 blinks repeating | - | cells are low | power-low | -"
            + " | -",
        "green flash ready | blinks | - | ready | ready | - | green",
        "five flashes at power-up | 5 blinks once | after-power-up | - | setting-up | - | -",
        "a flash every 9 s when nobody is there | 1 blink every 9 s | idle | - | ready | - | -",
        "two flashes after a flush | 2 blinks once | after-flush | - | - | - | -",
        "flashes every 3 s - low battery | 1 blink every 3 s | - | low battery | power-low | - | -",
        "blinks 4 times when the sensor detects you | 4 blinks once | target | - | target-seen | -"
            + " | -",
        "solid red: fault | steady | - | fault | - | - | red",
        "lit during the flush | steady | while-running | - | running | - | -",
        "when the button is pressed, three quick flashes | 3 short blinks once | after-button | - |"
            + " - | - | -",
        "in standby one flash every 9 s | 1 blink every 9 s | idle | - | ready | - | -",
        "lit when a hand comes, then off | steady then dark repeating | target | - | target-seen |"
            + " - | -",
        "lit, when a hand comes, for 3 s | steady 3 s once | target | - | target-seen | - | -",
        "two flashes when a hand comes within 0.5 m | 2 blinks once | target | - | target-seen | -"
            + " | -",
        "two flashes when a hand comes after 3 s | 2 blinks once | target | - | target-seen | - |"
            + " -",
        "lit when a hand comes when water runs | steady | target | - | target-seen | - | -",
        "lit while a hand is there until it leaves | steady | target | - | target-seen | it leaves"
            + " | -",
        "two flashes after the button while water runs | 2 blinks once | after-button | - | - | - |"
            + " -",
        "two flashes for the first 10 min | 2 blinks once | after-power-up | only for the first 10"
            + " min | setting-up | - | -",
        "one flash for each user | 1 blink once | target | - | target-seen | - | -",
        "answers each user after the button | 1 blink once | after-button | - | - | - | -",
        "acknowledges every flush | 1 blink once | after-flush | - | - | - | -",
        "twice a second when a hand comes | 2 blinks per second | target | - | target-seen | - | -",
        "two flashes 3 s off when a hand comes | 2 blinks then dark 3 s repeating | target | - |"
            + " target-seen | - | -",
        "two flashes repeating when a hand comes | 2 blinks repeating | target | - | target-seen |"
            + " - | -",
        "two flashes until reset | 2 blinks repeating | - | - | - | reset | -",
        "two instead | 2 blinks repeating | - | - | - | - | -",
        "lit 1,5 s, 2 s off | steady 1.5 s then dark 2 s repeating | - | - | - | - | -",
        "red flash stand-by | blinks | - | stand-by | - | - | red",
        "dark - normal | dark | - | normal | ready | - | -",
        "one flash - every 3 s | 1 blink every 3 s | - | - | - | - | -",
        "one flash = ready | 1 blink repeating | - | ready | ready | - | -",
        "one flash indicates ready | 1 blink repeating | - | ready | ready | - | -",
        "one flash: hygiene flush | 1 blink repeating | - | hygiene flush | hygiene-flush | - | -",
        "one flash: set too far | 1 blink repeating | - | set too far | range-long | - | -",
        "one flash: set too near | 1 blink repeating | - | set too near | range-short | - | -",
        "one flash: solenoid open | 1 blink repeating | - | solenoid open | valve-circuit | - | -",
        "one flash: water runs | 1 blink repeating | - | water runs | running | - | -",
        "one flash: power-up | 1 blink repeating | - | power-up | - | - | -",
        "one flash: excellent | 1 blink repeating | - | excellent | - | - | -",
        "one flash: excellent cells | 1 blink repeating | - | excellent cells | power-low | - | -",
      })
  void isOneState(
      String said,
      String phrase,
      String seen,
      String means,
      String condition,
      String by,
      String lamp)
      throws LabelException {
    List<LabelEntry> entries = LabelWords.read(said);
    assertEquals(1, entries.size(), entries::toString);
    LabelEntry entry = entries.get(0);
    assertEquals(phrase, Phrase.print(entry.rhythms().get(0)));
    assertEquals(seen, entry.seen().map(Seen::word).orElse("-"));
    assertEquals(means, entry.means().orElse("-"));
    assertEquals(condition, entry.condition().map(Condition::word).orElse("-"));
    assertEquals(by, entry.clearedBy().orElse("-"));
    assertEquals(lamp, entry.lamp().orElse("-"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "red flash fault, green flash ready | blinks/-/fault/-/red | blinks/-/ready/ready/green",
        "slow flash means cells, fast flash means sensor | slow blinks/-/cells/power-low/- | fast"
            + " blinks/-/sensor/sensor-blocked/-",
        "slow: cells; fast: sensor | slow blinks/-/cells/power-low/- | fast"
            + " blinks/-/sensor/sensor-blocked/-",
        "one flash when the user is accepted, five instead when cells are low | 1 blink"
            + " once/target/-/target-seen/- | 5 blinks once/target/cells are low/power-low/-",
        "three flashes: cells low; two flashes: ready | 3 blinks repeating/-/cells low/power-low/-"
            + " | 2 blinks repeating/-/ready/ready/-",
        "red flash: fault; green flash: ready | blinks/-/fault/-/red | blinks/-/ready/ready/green",
        "one flash when a hand comes, two instead | 1 blink once/target/-/target-seen/- | 2 blinks"
            + " once/target/-/target-seen/-",
        "no light: cells dead, but also normal when idle | dark/-/cells dead/power-missing/- |"
            + " dark/idle/normal/ready/-",
      })
  void isTwoStates(String said, String first, String second) throws LabelException {
    assertEquals(
        List.of(first, second), LabelWords.read(said).stream().map(LabelWordsTest::shown).toList());
  }

  private static String shown(LabelEntry entry) {
    return String.join(
        "/",
        Phrase.print(entry.rhythms().get(0)),
        entry.seen().map(Seen::word).orElse("-"),
        entry.means().orElse("-"),
        entry.condition().map(Condition::word).orElse("-"),
        entry.lamp().orElse("-"));
  }

  @Test
  void aNumberOfFlashesIsAStateForEach() throws LabelException {
    List<LabelEntry> entries = LabelWords.read("Number of flashes is the range step, 1 to 5");
    assertEquals(5, entries.size());
    assertEquals("5 blinks repeating/-/the range step 5/setting-up/-", shown(entries.get(4)));
    assertEquals("1 blink repeating/-/the range step 1/setting-up/-", shown(entries.get(0)));
    assertEquals("one flash: the range step 1", entries.get(0).words());
    assertEquals("five flashes: the range step 5", entries.get(4).words());
    List<LabelEntry> ten = LabelWords.read("the number of flashes is the step, nine to ten");
    assertEquals("10 blinks repeating/-/the step 10/-/-", shown(ten.get(1)));
  }

  @Test
  void theLabelsOwnWordsAreKept() throws LabelException {
    assertEquals("One flash every 6 s", LabelWords.read("  One   flash every 6 s ").get(0).words());
    List<LabelEntry> two = LabelWords.read("Slow:  cells; fast: sensor");
    assertEquals("slow: cells", two.get(0).words());
  }

  @Test
  void aLabelHasAtMostFourHundredCharacters() throws LabelException {
    String label = "one flash: " + "x".repeat(389);
    assertEquals(1, LabelWords.read(label).size());
    LabelException refused = assertThrows(LabelException.class, () -> LabelWords.read(label + "x"));
    assertEquals("a label's words have at most 400 characters", refused.reason());
  }

  @Test
  void whatASheetCannotHoldIsNoted() throws LabelException {
    LabelEntry entry =
        LabelWords.read("answers each user for the first 10 min after power-up").get(0);
    assertEquals(
        List.of(
            "a sheet does not hold that it is so only for the first 10 min after power-up",
            "how the lamp answers is not said; one blink was taken"),
        entry.notes());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "red and green alternating | two colours",
        "red then green flashes | two colours",
        "red and amber at once | two colours",
        "red, green, red, green | two colours",
        "dim glow | fading and dim light",
        "fades in and out every 4 s | fading and dim light",
        "random flicker | flicker without a pattern",
        "flickers irregularly when wet | flicker without a pattern",
        "flashes faster the nearer the hand | a speed that changes",
        "code sent three times, then dark | which blinks the code has is not said",
        "three flashes evrey day | is not understood",
        "hello | is not understood",
        "'' | nothing is said",
        "when water runs | nothing is said",
        "two flashes after 0.5 s | \"after\" is not understood",
        "two flashes after 9 s | \"after\" is not understood",
        "two flashes after each flash | \"after\" is not understood",
        "red flash fault3 | \"fault\" is not understood",
        "red, then green | two colours",
        "red flash fault green flash ready | two colours",
        ": ready | \"ready\" is not understood",
        "Number of flashes is the range step, 1 to 11 | \"number\" is not understood",
        "Number of flashes is the range step, 5 to 1 | \"number\" is not understood",
        "Number of flashes shows the range step, 1 to 5 | \"number\" is not understood",
      })
  void isRefused(String said, String reason) {
    LabelException refused = assertThrows(LabelException.class, () -> LabelWords.read(said));
    assertTrue(refused.reason().contains(reason), refused::reason);
  }

  @Test
  void aMisspeltPhraseIsSuggested() {
    LabelException refused =
        assertThrows(LabelException.class, () -> LabelWords.read("three flahes every 7 s"));
    assertEquals("3 blinks every 7 s", refused.suggestion());
  }

  @Test
  void aNumberWhoseVerbStandsInTheRangeIsRefused() {
    assertThrows(LabelException.class, () -> LabelWords.read("number of one , is 1 to 5"));
  }

  @Property(tries = 2000)
  void isTotal(@ForAll("heaps") String said) {
    try {
      assertFalse(LabelWords.read(said).isEmpty());
    } catch (LabelException e) {
      assertFalse(e.reason().isBlank());
    }
  }

  @Provide
  Arbitrary<String> heaps() {
    Arbitrary<String> words =
        Arbitraries.of(
            List.of(
                "one",
                "flash",
                "two",
                "flashes",
                "when",
                "the",
                "user",
                "leaves",
                ",",
                ":",
                "means",
                "for the first",
                "after",
                "until",
                "red",
                "green",
                "instead",
                "but also",
                "number of",
                "is",
                "1 to 5",
                "lit",
                "3 s",
                "every",
                "\u0130",
                "=",
                "set-up",
                "after power-up"));
    return words.list().ofMinSize(0).ofMaxSize(9).map(list -> String.join(" ", list));
  }

  @Property
  void anyTextIsReadOrRefused(@ForAll String said) {
    Optional<LabelException> refused = Optional.empty();
    try {
      assertFalse(LabelWords.read(said).isEmpty());
    } catch (LabelException e) {
      refused = Optional.of(e);
    }
    assertFalse(refused.map(LabelException::reason).orElse("read").isBlank());
  }
}

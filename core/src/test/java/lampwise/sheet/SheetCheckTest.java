package lampwise.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetCheckTest {
  private static final SheetWarning SAME = new SheetWarning.SameRhythm("a", "b");
  private static final SheetWarning ROTATION = new SheetWarning.Rotation("a", "b");

  private static LampState state(String name, String phrase, Optional<String> lamp)
      throws PhraseException {
    return new LampState(
        name,
        Phrase.parse(phrase),
        "M",
        Condition.OTHER,
        Seen.ALWAYS,
        1,
        Optional.empty(),
        Optional.empty(),
        lamp);
  }

  private static List<SheetWarning> warnings(OptionalDouble blink, LampState... states) {
    return SheetCheck.warnings(
        new CodeSheet(
            "T",
            Basis.INVENTED,
            Optional.empty(),
            List.of(),
            List.of(),
            Optional.empty(),
            Optional.of("amber"),
            0.1,
            blink,
            List.of(states)));
  }

  private static List<SheetWarning> warnings(String a, String b) throws PhraseException {
    return warnings(
        OptionalDouble.of(0.1), state("a", a, Optional.empty()), state("b", b, Optional.empty()));
  }

  @ParameterizedTest
  @CsvSource({
    "dark, dark",
    "steady, steady",
    "1 blink every 3 s, 1 blink every 3000 ms",
    "1 blink every 3 s, 20 blinks per minute",
    "1 long blink of 0.5 s every 3 s, 1 short blink of 0.5 s every 3 s",
    "1 blink every about 5 s, 1 blink every 4 to 6 s",
    "3 blinks then 2 blinks, '3 blinks, then 2 blinks repeating'",
    "2 to 3 blinks per second, 2 to 3 blinks per second",
    "3 blinks 0.5 s apart then dark 7.9 s, 3 blinks 0.5 s apart every 9 s",
  })
  void oneRhythm(String a, String b) throws PhraseException {
    assertEquals(List.of(SAME), warnings(a, b));
  }

  @ParameterizedTest
  @CsvSource({
    "3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart then dark 6.3 s every 9 s,"
        + " 2 blinks 0.5 s apart then dark 6.3 s then 3 blinks 0.5 s apart every 9 s",
    // 3 blinks at 0, 0.5, 1.0, then 0.1 lit and 1 dark: 2 blinks at 2.1, 2.6, the next cycle at 9.
    "3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart every 9 s,"
        + " 2 blinks 0.5 s apart then dark 6.3 s then 3 blinks 0.5 s apart every 9 s",
    "3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart then dark 6.3 s,"
        + " 2 blinks 0.5 s apart then dark 6.3 s then 3 blinks 0.5 s apart every 9 s",
    "dark 1 s then 1 blink of 0.4 s then dark 2 s then 1 blink of 0.1 s,"
        + " 1 blink of 0.1 s then dark 1 s then 1 blink of 0.4 s then dark 2 s",
    "steady 1 s then dark 0.5 s then steady 2 s then dark 1.5 s,"
        + " steady 2 s then dark 1.5 s then steady 1 s then dark 0.5 s",
  })
  void oneCycleFromAnotherStart(String a, String b) throws PhraseException {
    assertEquals(List.of(ROTATION), warnings(a, b));
  }

  @ParameterizedTest
  @CsvSource({
    "dark, steady",
    "1 blink every 3 s, 1 blink every 3.1 s",
    "1 blink every 0.2 s, 1 blink every 0.21 s",
    "3 blinks then 2 blinks, 2 blinks then 3 blinks",
    "3 blinks 0.5 s apart every 9 s, 2 blinks 0.5 s apart every 9 s",
    "3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart every 9 s,"
        + " 2 blinks 0.5 s apart then dark 1 s then 3 blinks 0.5 s apart every 9 s",
    "3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart every 9 s,"
        + " 2 blinks 0.5 s apart then dark 6.3 s then 3 blinks 0.5 s apart once",
    "2 to 3 blinks 0.5 s apart every 9 s, 3 blinks 0.5 s apart every 9 s",
    "1 long blink then 1 short blink every 3 s, 1 short blink then 1 long blink every 4 s",
    "1 blink of 0.5 s every 3 s, 1 blink of 0.2 s every 3 s",
    "1 to 3 blinks then dark 1 s, 1 blink then dark 1 s",
    "1 blink then 1 blink every 3 s, 1 blink then 1 blink every 3.01 s",
    "1 blink every about 3 s, 1 blink every 3 s",
    "2 blinks per second for 2 s then dark 2 s, 2 blinks per second for 3 s then dark 2 s",
    "first steady 5 s afterwards 1 blink every 3 s, 1 blink every 4 s",
    "first steady 5 s afterwards 1 blink every 3 s, 1 blink every 3 s",
  })
  void otherRhythms(String a, String b) throws PhraseException {
    assertEquals(List.of(), warnings(a, b));
  }

  @Test
  void aPauseAfterABlinkOfUnknownLengthMakesNoRotation() throws PhraseException {
    LampState a =
        state(
            "a",
            "3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart every 9 s",
            Optional.empty());
    LampState b =
        state(
            "b",
            "2 blinks 0.5 s apart then dark 6.3 s then 3 blinks 0.5 s apart every 9 s",
            Optional.empty());
    assertEquals(List.of(), warnings(OptionalDouble.empty(), a, b));
    assertEquals(List.of(ROTATION), warnings(OptionalDouble.of(0.1), a, b));
  }

  /** Where neither says how long a blink is, the words for it must agree. */
  @Test
  void roundedTimesAreOneWhereTheBlinksAreAlike() throws PhraseException {
    LampState exact = state("a", "1 blink every 3 s", Optional.empty());
    OptionalDouble unsaid = OptionalDouble.empty();
    assertEquals(
        List.of(SAME),
        warnings(unsaid, exact, state("b", "1 blink every 3.01 s", Optional.empty())));
    assertEquals(
        List.of(),
        warnings(unsaid, exact, state("b", "1 blink of 0.1 s every 3.01 s", Optional.empty())));
    assertEquals(
        List.of(),
        warnings(
            unsaid,
            state("a", "1 long blink then dark 1 s then 1 short blink every 3 s", Optional.empty()),
            state(
                "b", "1 short blink then dark 1 s then 1 long blink every 3 s", Optional.empty())));
  }

  @Test
  void coloursTellLitStatesApart() throws PhraseException {
    LampState red = state("a", "1 blink every 3 s", Optional.of("red"));
    assertEquals(
        List.of(),
        warnings(OptionalDouble.empty(), red, state("b", "1 blink every 3 s", Optional.empty())));
    assertEquals(
        List.of(SAME),
        warnings(OptionalDouble.empty(), red, state("b", "1 blink every 3 s", Optional.of("red"))));
    assertEquals(
        List.of(SAME),
        warnings(
            OptionalDouble.empty(),
            state("a", "dark", Optional.of("red")),
            state("b", "dark", Optional.of("green"))));
    // The sheet's lamp is amber.
    LampState unsaid = state("a", "1 blink every 3 s", Optional.empty());
    assertEquals(
        List.of(),
        warnings(
            OptionalDouble.empty(), unsaid, state("b", "1 blink every 3 s", Optional.of("red"))));
    assertEquals(
        List.of(SAME),
        warnings(
            OptionalDouble.empty(), unsaid, state("b", "1 blink every 3 s", Optional.of("amber"))));
  }

  @Test
  void warningsSayBothNames() {
    assertEquals("a and b have one rhythm; the lamp alone cannot tell them apart", SAME.message());
    assertEquals(
        "a and b have one cycle with another start; once it repeats the lamp cannot tell them"
            + " apart",
        ROTATION.message());
  }

  @Test
  void everyPairIsToldInOrder() throws PhraseException {
    LampState[] states = {
      state("c", "dark", Optional.empty()),
      state("a", "steady", Optional.empty()),
      state("d", "dark", Optional.empty()),
      state("b", "dark", Optional.empty())
    };
    assertEquals(
        List.of(
            new SheetWarning.SameRhythm("c", "d"),
            new SheetWarning.SameRhythm("c", "b"),
            new SheetWarning.SameRhythm("d", "b")),
        warnings(OptionalDouble.empty(), states));
  }

  @Tag("long")
  @Test
  void aHundredLongStatesTakeAMomentOnly() throws PhraseException {
    List<LampState> states = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      states.add(
          state("s" + i, "100 blinks 0.2 s apart every " + (30 + 2 * i) + " s", Optional.empty()));
    }
    assertEquals(
        List.of(),
        assertTimeoutPreemptively(
            Duration.ofSeconds(60),
            () -> warnings(OptionalDouble.empty(), states.toArray(LampState[]::new))));
  }
}

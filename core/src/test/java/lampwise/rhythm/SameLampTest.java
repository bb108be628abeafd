package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which phrases describe the same light. */
class SameLampTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 blink every 7 s | 1 blink every 7.000000001 s",
        "60 blinks per minute | 1 blink per second",
        "1 blink per second | 1 blink every 1 s",
        "2 to 4 blinks per second | 1 blink every 0.25 to 0.5 s",
        "2 to 4 blinks per second | 120 to 240 blinks per minute",
        "slow blinks | 0.1 to 1 blinks per second",
        "1 blink every 500 ms | 1 blink every 0.5 s",
        "2 blinks 1 s apart every 2 s | 1 blink every 1 s",
        "2 blinks 0.5 s apart every 1 s | 120 blinks per minute",
        "1 blink of 3 s every 4 s | steady 3 s then dark 1 s",
        "1 blink of 3 s every 4 s | steady then dark 1 s every 4 s",
        "1 blink of 3 s every 4 s | steady 3 s then dark every 4 s",
        "1 blink of 3 s every 4 s | dark 1 s then steady 3 s",
        "steady 3 s then dark 1 s | steady 3 s then dark 1 s every 4 s",
        "1 blink of 60 ms every 25 to 30 s | 1 blink of 60 ms then dark 24.94 to 29.94 s",
        "steady then dark 0.2 s every 8 s | steady 7.8 s then dark 0.2 s",
        "2 blinks of 0.1 s 0.5 s apart every 5 s | 2 blinks of 0.1 s 0.5 s apart then dark 4.4 s",
        "2 blinks of 0.1 s 0.5 s apart then dark 4.4 s | 1 blink of 0.1 s then dark 0.4 s then 1"
            + " blink of 0.1 s then dark 4.4 s",
        "1 blink of 1 s then dark 1 s then 3 blinks of 0.2 s 0.5 s apart then dark 2 s | 3 blinks"
            + " of 0.2 s 0.5 s apart then dark 2 s then 1 blink of 1 s then dark 1 s",
        "5 blinks per second for 2 s once | 10 blinks 0.2 s apart once",
        "50 blinks per second for 2 s once | 100 blinks 0.02 s apart once",
        "steady 4 s once | 1 blink of 4 s once",
        "3 blinks once | first 3 blinks afterwards dark",
        "3 blinks then dark 5 s once | 3 blinks once",
        "first 3 blinks afterwards dark 2 s then steady 1 s | first 3 blinks then dark 2 s"
            + " afterwards steady 1 s then dark 2 s",
        "first steady 1 s then dark 1 s afterwards steady 1 s then dark 1 s | steady 1 s then"
            + " dark 1 s",
        "1 blink every about 5 s | 1 blink every 4 to 6 s",
        "1 long blink of 1 s then dark 1 s then 1 short blink of 0.2 s then dark 2 s | 1 blink of"
            + " 1 s then dark 1 s then 1 blink of 0.2 s then dark 2 s",
        "1 short blink of 0.2 s then dark 1 s then 1 blink of 0.2 s then dark 1 s | 1 blink of"
            + " 0.2 s every 1.2 s",
        "3 blinks then dark 1 s then 2 blinks then dark 4 s | 2 blinks then dark 4 s then 3"
            + " blinks then dark 1 s",
        "first 1 short blink of 0.2 s then dark 1 s afterwards 1 blink every 5 s | first 1 blink of"
            + " 0.2 s then dark 1 s afterwards 1 blink every 5 s",
        "1 long blink of 1 s then dark 1 s then 1 short blink of 0.2 s once | 1 blink of 1 s then"
            + " dark 1 s then 1 blink of 0.2 s once",
      })
  void theseAreTheSame(String a, String b) throws PhraseException {
    assertTrue(Rhythms.sameLamp(Phrase.parse(a), Phrase.parse(b)));
    assertTrue(Rhythms.sameLamp(Phrase.parse(b), Phrase.parse(a)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2 blinks 0.5 s apart every 5 s | 1 blink of 0.5 s every 5 s",
        "3 blinks then 2 blinks | 2 blinks then 3 blinks",
        "1 blink repeating | blinks",
        "1 blink repeating | 2 blinks repeating",
        "2 to 3 blinks every 7 s | 2 to 4 blinks every 7 s",
        "2 short blinks every 7 s | 2 blinks every 7 s",
        "1 blink every 7 s | 1 blink every 7 to 8 s",
        "1 blink every 7 s | 1 blink every 7.00001 s",
        "1 blink every 7 s | 1 blink every 7.0000001 s",
        "1 blink every 7 s | 1 blink of 0.1 s every 7 s",
        "1 blink every 7 s | 1 blink once",
        "3 blinks once | 3 blinks",
        "dark | steady",
        "dark | 1 blink once",
        "first steady 5 s afterwards 1 blink every 10 s | 1 blink every 10 s",
        "first steady 5 s afterwards 1 blink every 10 s | first steady 6 s afterwards 1 blink"
            + " every 10 s",
        "first dark 5 s afterwards 1 blink every 10 s | 1 blink every 10 s",
        "first dark 5 s afterwards blinks | first dark 6 s afterwards blinks",
        "first 3 blinks afterwards steady | first 3 blinks afterwards dark",
        "3 blinks then 2 blinks every 12 s | 3 blinks then 2 blinks every 13 s",
        "3 blinks then 2 blinks every 12 s | 3 blinks then 2 blinks repeating",
        "1 blink then 1 blink | 1 blink repeating",
        "1 long blink then 2 short blinks | 1 blink then 2 blinks",
        "1 short blink once | 1 blink once",
        "1 long blink of 1 s then 1 short blink of 0.2 s | 1 blink of 1 s then 1 blink of 0.2 s",
        "1 short blink of 0.2 s then 1 long blink of 1 s | 1 blink of 0.2 s then 1 blink of 1 s",
        "1 short blink then 1 short blink then 1 long blink | 2 short blinks then 1 long blink",
        "2 to 3 blinks every 7 s | 2 to 3 blinks every 8 s",
        "1 blink of 0.1 s then dark then 1 blink of 0.1 s then dark every 12 s | 1 blink of 0.1 s"
            + " then dark then 1 blink of 0.1 s then dark 11.9 s",
      })
  void theseAreNot(String a, String b) throws PhraseException {
    assertFalse(Rhythms.sameLamp(Phrase.parse(a), Phrase.parse(b)));
    assertFalse(Rhythms.sameLamp(Phrase.parse(b), Phrase.parse(a)));
  }

  @Provide
  Arbitrary<Rhythm> rhythms() {
    return RhythmArbitraries.rhythms();
  }

  /** Groups of said blinks, each with its dark: cycles that can begin with any of them. */
  @Provide
  Arbitrary<List<Part>> closedGroups() {
    Arbitrary<Part> blinks =
        Combinators.combine(
                Arbitraries.integers().between(1, 4), Arbitraries.integers().between(1, 3))
            .as(
                (count, tenths) ->
                    new Part.Blinks(
                        Count.of(count),
                        Size.UNSAID,
                        Optional.of(Length.exactly(tenths / 10.0)),
                        count == 1 ? Optional.empty() : Optional.of(Length.exactly(0.5))));
    Arbitrary<Part> dark =
        Arbitraries.integers()
            .between(1, 3)
            .map(n -> new Part.Unlit(Optional.of(Length.exactly(n))));
    return Combinators.combine(blinks, dark)
        .as((on, off) -> List.of(on, off))
        .list()
        .ofMinSize(1)
        .ofMaxSize(4)
        .map(groups -> groups.stream().flatMap(List::stream).toList());
  }

  @Property
  void everyRhythmIsTheSameLampAsItselfAndAsItsPhrase(@ForAll("rhythms") Rhythm rhythm)
      throws PhraseException {
    assertTrue(LampForm.of(rhythm).same(LampForm.of(Phrase.parse(Phrase.print(rhythm)))));
  }

  /** Few enough lamps that many of them are the same. */
  @Provide
  Arbitrary<Rhythm> fewLamps() {
    return Arbitraries.of(
            "1 blink every 1 s",
            "60 blinks per minute",
            "2 blinks 1 s apart every 2 s",
            "1 blink of 0.5 s every 1 s",
            "steady 0.5 s then dark 0.5 s",
            "dark 500 ms then 1 blink of 500 ms",
            "2 blinks of 0.5 s 1 s apart then dark 0.5 s",
            "1 blink repeating",
            "1 blink once",
            "first 1 blink afterwards dark")
        .map(SameLampTest::parsed);
  }

  private static Rhythm parsed(String phrase) {
    try {
      return Phrase.parse(phrase);
    } catch (PhraseException refused) {
      return fail(refused);
    }
  }

  @Property(tries = 1000)
  void theAnswerIsTheSameBothWaysRoundAndGoesOnFromLampToLamp(
      @ForAll("fewLamps") Rhythm a, @ForAll("fewLamps") Rhythm b, @ForAll("fewLamps") Rhythm c) {
    assertEquals(Rhythms.sameLamp(a, b), Rhythms.sameLamp(b, a));
    if (Rhythms.sameLamp(a, b)) {
      assertEquals(Rhythms.sameLamp(a, c), Rhythms.sameLamp(b, c));
    }
  }

  @Property
  void twoLampsAreTheSameBothWaysRound(@ForAll("rhythms") Rhythm a, @ForAll("rhythms") Rhythm b) {
    assertEquals(Rhythms.sameLamp(a, b), Rhythms.sameLamp(b, a));
  }

  @Property
  void aCycleMayBeginWithAnyOfItsParts(@ForAll("closedGroups") List<Part> parts, @ForAll int turn) {
    List<Part> turned = new ArrayList<>(parts);
    Collections.rotate(turned, turn);
    assertTrue(Rhythms.sameLamp(repeating(parts), repeating(turned)));
  }

  @Property
  void aCycleTwiceIsTheCycle(@ForAll("closedGroups") List<Part> parts) {
    List<Part> twice = new ArrayList<>(parts);
    twice.addAll(parts);
    assertTrue(Rhythms.sameLamp(repeating(parts), repeating(twice)));
  }

  @Property
  void oneMoreBlinkIsAnotherLamp(@ForAll("closedGroups") List<Part> parts) {
    List<Part> more = new ArrayList<>(parts);
    more.add(blink(0.7));
    more.add(new Part.Unlit(Optional.of(Length.exactly(9))));
    assertFalse(Rhythms.sameLamp(repeating(parts), repeating(more)));
  }

  private static Part blink(double seconds) {
    return new Part.Blinks(
        Count.of(1), Size.UNSAID, Optional.of(Length.exactly(seconds)), Optional.empty());
  }

  private static Rhythm repeating(List<Part> parts) {
    return new Rhythm.Blinking(List.of(), new Cycle.Parts(parts, new Ending.Repeating()));
  }
}

package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Laws that every phrase and every rhythm obeys. */
class RhythmLawsTest {
  @Provide
  Arbitrary<Rhythm> rhythms() {
    return RhythmArbitraries.rhythms();
  }

  @Provide
  Arbitrary<Length> lengths() {
    return RhythmArbitraries.lengths();
  }

  /** Words of the grammar, of people, numbers and signs in any order. */
  @Provide
  Arbitrary<String> salads() {
    Arbitrary<String> words =
        Arbitraries.oneOf(
            Arbitraries.of(Words.GRAMMAR),
            Arbitraries.of("1", "2", "3", "0.5", "0", "7", "120", "101", "2.5", "1e5", ".5", "0,5"),
            Arbitraries.of("blinks", "then", "s", "every", "dark", "blinks every", "2 blinks"),
            Arbitraries.of(
                "flash",
                "pause",
                "twice",
                "a",
                "second",
                "/",
                "-",
                ",",
                "on",
                "off",
                "long pause",
                "red",
                "dim",
                "seconds",
                "between",
                "and",
                "x",
                "once",
                "blnks",
                "\u00a0",
                "\u2013"));
    return words.list().ofMinSize(0).ofMaxSize(14).map(list -> String.join(" ", list));
  }

  /** Good phrases with one piece left out, doubled or replaced. */
  @Provide
  Arbitrary<String> spoilt() {
    return Combinators.combine(
            RhythmArbitraries.rhythms(),
            Arbitraries.integers().between(0, 1000),
            Arbitraries.of("", "", "x", " ", "s", "0", "flash", ",", "then", ".", "\ud83d\ude80"),
            Arbitraries.integers().between(0, 4))
        .as(
            (rhythm, place, piece, cut) -> {
              String phrase = Phrase.print(rhythm);
              int from = place % (phrase.length() + 1);
              int to = Math.min(phrase.length(), from + cut);
              return phrase.substring(0, from) + piece + phrase.substring(to);
            });
  }

  @Property(tries = 2000)
  void whatIsPrintedReadsBackEqual(@ForAll("rhythms") Rhythm rhythm) throws PhraseException {
    assertEquals(rhythm, Phrase.parse(Phrase.print(rhythm)));
  }

  @Property
  void equalRhythmsPrintAlikeWhateverTheCaseAndTheBlanks(@ForAll("rhythms") Rhythm rhythm)
      throws PhraseException {
    String phrase = Phrase.print(rhythm);
    StringBuilder shouted = new StringBuilder(",  ");
    for (char c : phrase.toCharArray()) {
      shouted.append(c == ' ' ? "\u00a0 \t" : String.valueOf(Character.toUpperCase(c)));
    }
    Rhythm same = Phrase.parse(shouted.append(" ,").toString());
    assertEquals(rhythm, same);
    assertEquals(rhythm.hashCode(), same.hashCode());
    assertEquals(phrase, Phrase.print(same));
  }

  @Property(tries = 1000)
  void noDurationIsPrintedWithAnExponentAndEachReadsBack(@ForAll("lengths") Length length)
      throws PhraseException {
    Rhythm rhythm =
        new Rhythm.Blinking(
            List.of(),
            new Cycle.Parts(
                List.of(new Part.Lit(java.util.Optional.of(length))), new Ending.Once()));
    String phrase = Phrase.print(rhythm);
    assertTrue(phrase.indexOf('E') < 0, phrase);
    assertEquals(rhythm, Phrase.parse(phrase));
  }

  @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
  void anyRowOfWordsIsARhythmOrAFaultInsideIt(@ForAll("salads") String text) {
    readOrRefused(text);
  }

  @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
  void anySpoiltPhraseIsARhythmOrAFaultInsideIt(@ForAll("spoilt") String text) {
    readOrRefused(text);
  }

  @Property
  void anyTextIsARhythmOrAFaultInsideIt(@ForAll String text) {
    readOrRefused(text);
  }

  private static void readOrRefused(String text) {
    try {
      Rhythm rhythm = Phrase.parse(text);
      String printed = Phrase.print(rhythm);
      assertEquals(rhythm, parsed(printed));
      assertEquals(printed, Phrase.print(parsed(printed)));
    } catch (PhraseException refused) {
      assertTrue(refused.column() >= 1 && refused.column() <= text.length() + 1, refused::toString);
      assertTrue(refused.reason().chars().allMatch(c -> c >= ' '), refused::toString);
      refused.suggestion().ifPresent(suggestion -> suggestionHolds(text, suggestion));
    }
  }

  /** A suggestion is a phrase in canonical form, or just the right words for the place. */
  private static void suggestionHolds(String text, String suggestion) {
    if (suggestion.equals(words(text))) {
      return;
    }
    assertEquals(suggestion, Phrase.print(parsed(suggestion)));
  }

  /** The right words for the place of the fault; empty if there are none or the text is right. */
  private static String words(String text) {
    try {
      PhraseParser.parse(text);
      return "";
    } catch (Fault fault) {
      return fault.words().orElse("");
    }
  }

  private static Rhythm parsed(String phrase) {
    try {
      return Phrase.parse(phrase);
    } catch (PhraseException refused) {
      return fail(phrase + ": " + refused.getMessage());
    }
  }
}

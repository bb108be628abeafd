package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Listed codes with other numbers of blinks. */
class VariantsTest {
  private static List<String> variants(String... phrases) {
    List<LampState> states =
        Stream.of(phrases)
            .map(
                phrase -> Sheets.state("s" + List.of(phrases).indexOf(phrase), phrase, Seen.ALWAYS))
            .toList();
    CodeSheet sheet = Sheets.of(0.05, OptionalDouble.empty(), states);
    return Variants.of(sheet, states.get(0)).stream().map(Phrase::print).toList();
  }

  @Test
  void oneGroupHasUpToTwoMoreOrLessButNeverOneBlink() {
    assertEquals(
        List.of(
            "2 blinks 0.6 s apart every 8 s",
            "4 blinks 0.6 s apart every 8 s",
            "5 blinks 0.6 s apart every 8 s"),
        variants("3 blinks 0.6 s apart every 8 s"));
  }

  @Test
  void whatTheSheetListsIsNoVariant() {
    assertEquals(
        List.of("2 blinks 0.6 s apart every 8 s", "5 blinks 0.6 s apart every 8 s"),
        variants("3 blinks 0.6 s apart every 8 s", "4 blinks 0.6 s apart every 8 s"));
  }

  @Test
  void whatTheSheetListsInOtherWordsIsNoVariant() {
    assertEquals(
        List.of("4 blinks 0.6 s apart every 8 s", "5 blinks 0.6 s apart every 8 s"),
        variants(
            "3 blinks 0.6 s apart every 8 s",
            "1 blink then dark 3 s then 1 blink every 8 s",
            "2 blinks 0.6 s apart then dark 3.3 s then 2 blinks 0.6 s apart every 8 s",
            "2 blinks 600 ms apart every 8000 ms"));
  }

  @Test
  void whatDoesNotFitTheCycleIsNoVariant() {
    assertEquals(
        List.of("2 blinks 0.6 s apart every 1.7 s"), variants("3 blinks 0.6 s apart every 1.7 s"));
  }

  @Test
  void ofTwoGroupsEachHasOneMoreOrLess() {
    List<String> variants =
        variants("2 blinks 0.45 s apart then dark 1.3 s then 3 blinks 0.45 s apart every 11 s");
    assertEquals(8, variants.size());
    assertEquals("1 blink then dark 1.3 s then 2 blinks 0.45 s apart every 11 s", variants.get(0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "dark",
        "steady",
        "1 blink every 3 s",
        "2 to 3 blinks 0.3 s apart every 8 s",
        "2 blinks per second",
        "steady 5 s then 8 blinks 0.3 s apart once",
        "first steady 5 s afterwards 3 blinks 0.3 s apart every 9 s"
      })
  void othersHaveNone(String phrase) {
    assertEquals(List.of(), variants(phrase));
  }
}

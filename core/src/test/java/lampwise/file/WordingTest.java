package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What messages show of a file, and the numbers and amounts in it. */
class WordingTest {
  @Test
  void aQuotationIsShortAndSafe() {
    assertEquals("\"x\"", Wording.quote("x"));
    String sixty = "a".repeat(60);
    assertEquals('"' + sixty + '"', Wording.quote(sixty));
    assertEquals('"' + sixty + "...\"", Wording.quote(sixty + "a"));
    assertEquals("\"\ufffdb\ufffd\ufffd\"", Wording.quote("\tb\u2028\ud83d"));
    assertEquals(
        "\"" + "\ud83d\ude00".repeat(60) + "...\"", Wording.quote("\ud83d\ude00".repeat(61)));
  }

  @Test
  void whatCannotBePrintedIsNamed() {
    assertEquals(Optional.empty(), Wording.unprintable("\u00e4 b"));
    assertEquals(Optional.of("U+0009"), Wording.unprintable("a\tb\n"));
    assertEquals(Optional.of("U+2029"), Wording.unprintable("a\u2029"));
    assertEquals(Optional.of("U+D83D"), Wording.unprintable("\ud83d"));
  }

  @Test
  void oneLineHasSingleBlanks() {
    assertEquals("a b c d", Wording.onOneLine(" \ta \n b\tc\r\nd "));
    assertEquals("", Wording.onOneLine(" \r\n"));
    assertEquals("a\u00a0b", Wording.onOneLine("a\u00a0b"));
    assertEquals("a, b", Wording.list(List.of("a", "b")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rythm | rhythm",
        "Rhythm | rhythm",
        "rhyhtm | rhythm",
        "label_says | label-says",
        "sen | seen",
        "sean | seen",
        "means | means",
        "mean | means",
        "rhy | rhythm",
        "rh | -",
        "zzzzzz | -",
        "s | -",
      })
  void theNearestKnownWordIsFound(String word, String nearest) {
    List<String> known = List.of("rhythm", "means", "seen", "label-says");
    assertEquals(nearest, Wording.nearest(word, known).orElse("-"));
  }

  @Test
  void ofTwoThatAreEquallyNearTheFirstIsFound() {
    assertEquals(Optional.of("cat"), Wording.nearest("bat", List.of("cat", "rat")));
    assertEquals(Optional.of("rat"), Wording.nearest("ratt", List.of("cats", "rat")));
  }

  @ParameterizedTest
  @CsvSource({
    "0,0",
    "007,7",
    "1.5,1.5",
    "0.25,0.25",
    "10,10",
    "9,9",
    ".5,NaN",
    "5.,NaN",
    "1.2.3,NaN",
    "-1,NaN",
    "+1,NaN",
    "1e3,NaN",
    "1/2,NaN",
    "1:2,NaN",
    "'',NaN"
  })
  void aNumberIsDigitsAndAPoint(String text, double value) {
    assertEquals(value, Quantities.number(text).orElse(Double.NaN));
  }

  @ParameterizedTest
  @CsvSource({"5 %,0.05", "5%,0.05", "0.1 %,0.001", "100 %,1", "5,NaN", "%,NaN", "-5 %,NaN"})
  void aPercentageIsAFraction(String text, double value) {
    assertEquals(value, Quantities.percentage(text).orElse(Double.NaN));
  }

  @ParameterizedTest
  @CsvSource({
    "120 ms,0.12",
    "120ms,0.12",
    "2 s,2",
    "1.5 min,90",
    "2 h,7200",
    "2,NaN",
    "2 m,NaN",
    "s,NaN",
    "2 sec,NaN"
  })
  void aTimeHasItsUnit(String text, double seconds) {
    assertEquals(seconds, Quantities.seconds(text).orElse(Double.NaN));
  }

  @ParameterizedTest
  @CsvSource({
    "6 L,6",
    "1 gal,3.785411784",
    "2gal,7.570823568",
    "1 ft3,28.316846592",
    "0.5 m3,500",
    "6,NaN",
    "6 l,NaN",
    "L,NaN",
    "-1 L,NaN"
  })
  void aVolumeIsInLitres(String text, double litres) {
    assertEquals(litres, Amount.litres(text).orElse(Double.NaN), 1e-12);
  }

  @Test
  void anAmountIsFinite() {
    assertEquals(Optional.of(new Amount(25, "psi")), Amount.of("25 psi", List.of("kPa", "psi")));
    assertEquals(Optional.empty(), Amount.of("25 bar", List.of("kPa", "psi")));
    assertEquals(Optional.empty(), Amount.of("9".repeat(400) + " L", List.of("L")));
    assertEquals(OptionalDouble.empty(), Amount.litres("9".repeat(400) + " L"));
  }
}

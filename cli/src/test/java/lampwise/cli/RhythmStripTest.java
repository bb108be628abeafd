package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;

class RhythmStripTest {
  private static final OptionalDouble NO_BLINK = OptionalDouble.empty();

  private static String text(String phrase, int columns) throws PhraseException {
    return RhythmStrip.text(Phrase.parse(phrase), NO_BLINK, columns);
  }

  private static Document svg(String phrase, double seconds) throws Exception {
    Rhythm rhythm = Phrase.parse(phrase);
    return parsed(RhythmStrip.svg(rhythm, OptionalDouble.of(0.1), seconds, 400, 34));
  }

  private static Document parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }

  private static int count(Document document, String tag) {
    return document.getElementsByTagName(tag).getLength();
  }

  @ParameterizedTest
  @CsvSource({
    "dark, ▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁",
    "steady, ████████████████████",
    "1 blink every 7 s, █▁▁▁▁▁▁▁▁▁█▁▁▁▁▁▁▁▁▁",
    "dark 2 s then steady 3 s, ▁▁▁▁██████▁▁▁▁██████",
    // The parts of a cycle in their order, each pause of unsaid length with its mark.
    "1 long blink then 2 short blinks, ███//▁█//▁█▁▁▁//▁▁▁▁",
    "first 2 blinks afterwards steady, █//▁█▁▁▁//▁▁▁▁██████",
    "steady 1 s then 2 blinks 0.5 s apart once, ██████▁▁//▁▁▁█▁▁█▁▁▁",
    // The last blink of a range is the one that may be missing.
    "2 to 3 blinks 0.6 s apart every 6 s, █▁█▁░▁▁▁▁▁▁▁▁▁█▁█▁░▁",
    // The middle of what is said as a range, with a mark.
    "1 blink every 4 to 6 s, █▁▁▁▁~▁▁▁▁█▁▁▁▁~▁▁▁▁",
    // A long pause is cut to make room for a whole cycle, and says how long it is.
    "3 blinks 0.3 s apart every 60 s, █▁█▁█▁▁▁▁59.3 s▁▁▁▁▁",
  })
  void theLineShowsTheRhythm(String phrase, String line) throws PhraseException {
    assertEquals(line, text(phrase, 20), phrase);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 20, 60, 200})
  void theLineIsAsWideAsAsked(int columns) throws PhraseException {
    for (String phrase : new String[] {"dark", "100 blinks", "1 blink every 2 h", "fast blinks"}) {
      assertEquals(columns, text(phrase, columns).length(), phrase);
    }
  }

  @Test
  void theSheetsBlinkIsTakenWhereThePhraseGivesNone() throws PhraseException {
    Rhythm rhythm = Phrase.parse("1 blink every 2 s");
    assertEquals("█▁▁▁▁▁▁▁▁▁", RhythmStrip.text(rhythm, NO_BLINK, 20).substring(0, 10));
    assertEquals("█████▁▁▁▁▁", RhythmStrip.text(rhythm, OptionalDouble.of(1), 20).substring(0, 10));
    assertEquals(
        "██▁▁▁▁▁▁▁▁",
        RhythmStrip.text(Phrase.parse("1 blink of 0.4 s every 2 s"), OptionalDouble.of(1), 20)
            .substring(0, 10));
  }

  @Test
  void thePictureHasABarForEachBlinkAndIsNamedByItsPhrase() throws Exception {
    Document picture = svg("3 blinks 0.5 s apart every 9 s", 18);
    assertEquals(6, count(picture, "rect"));
    assertEquals(
        "3 blinks 0.5 s apart every 9 s",
        picture.getElementsByTagName("title").item(0).getTextContent());
    assertEquals("18 s", picture.getElementsByTagName("text").item(1).getTextContent());
    assertEquals(3, count(svg("3 blinks 0.5 s apart every 9 s", 9), "rect"));
    assertEquals(0, count(svg("dark", 9), "rect"));
    assertEquals(1, count(svg("steady", 9), "rect"));
  }

  @Test
  void withoutATimeThePictureShowsTwoCyclesUnlessTheirBlinksWouldRunTogether() throws Exception {
    assertEquals(6, count(svg("3 blinks 0.5 s apart every 9 s", Double.NaN), "rect"));
    assertEquals(8, count(svg("8 blinks 0.3 s apart every 60 s", Double.NaN), "rect"));
  }

  @Test
  void whatIsNotSaidOrOnlyAboutIsMarkedByShape() throws Exception {
    // The base line alone; a gap and two strokes for each unsaid pause.
    assertEquals(1, count(svg("2 blinks 0.5 s apart every 9 s", 9), "path"));
    assertEquals(1 + 2 * 2, count(svg("2 blinks", Double.NaN), "path") - 2 * 2);
    String about = RhythmStrip.svg(Phrase.parse("1 blink every about 5 s"), NO_BLINK, 10, 400, 34);
    assertTrue(about.contains(">≈</text>"), about);
    String perhaps = RhythmStrip.svg(Phrase.parse("2 to 3 blinks"), NO_BLINK, 10, 400, 34);
    assertTrue(perhaps.contains("stroke-dasharray"), perhaps);
  }

  @Test
  void aPageCanHoldManyOfThem() throws PhraseException {
    String strip = RhythmStrip.svg(Phrase.parse("3 blinks"), NO_BLINK, 10, 400, 20);
    for (String never : new String[] {" id=", "<style", "href", "url(", "<?xml", "<text"}) {
      assertFalse(strip.contains(never), never);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1 blink every 168 h",
        "1000 blinks per second for 168 h then dark 1 s",
        "100 blinks",
        "first 1000 blinks per second for 168 h afterwards dark",
        "1 blink of 1 ms every 2 ms"
      })
  void itStaysSmallWhateverIsSaid(String phrase) throws Exception {
    Rhythm rhythm = Phrase.parse(phrase);
    assertEquals(60, RhythmStrip.text(rhythm, NO_BLINK, 60).length());
    for (double seconds : new double[] {Double.NaN, 0.001, 10, 1e9}) {
      String picture = RhythmStrip.svg(rhythm, NO_BLINK, seconds, 400, 34);
      assertTrue(picture.length() < 500_000, () -> phrase + ": " + picture.length());
      parsed(picture);
    }
  }
}

package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lampwise.file.ReadOptions.Writing;
import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The borders of what the readers of files take. */
class FileBordersTest {
  private static List<Recording> read(String text) throws Exception {
    return RecordingReader.read("r", text.getBytes(UTF_8), ReadOptions.none());
  }

  private static String refused(String text) {
    return assertThrows(FileException.class, () -> read(text)).getMessage();
  }

  private static Optional<Window> window(String text) throws Exception {
    return read(text).get(0).marks().window();
  }

  @Test
  void aLogMayBeginWithBlanks() throws Exception {
    Optional<Window> minute = Optional.of(new Window(0, 60));
    assertEquals(minute, window(" \t lampwise-log: 1\nwindow: 0 to 60 s\non 3.1\n"));
    String below = "\n lampwise-log: 1\non 3.1\n";
    assertEquals(
        "r:2:2: expected \"lampwise-log: 1\" in the first line, not below it", refused(below));
    assertTrue(refused("LAMPWISE-LOG: 1\non 3.1\n").contains("expected \"lampwise-log: 1\""));
  }

  @Test
  void aLogTakesNoOptionsOfTables() throws Exception {
    ReadOptions none = ReadOptions.none();
    Optional<ReadOptions.Dates> dates = Optional.of(ReadOptions.Dates.DMY);
    Optional<ReadOptions.Decimal> decimal = Optional.of(ReadOptions.Decimal.COMMA);
    Map<String, ReadOptions> options =
        Map.of(
            "--time", Readings.said().time("1").options(),
            "--column", Readings.said().column("1").options(),
            "--unit", Readings.said().unit(ReadOptions.Unit.MS).options(),
            "--rate", none.written(new Writing(50, Optional.empty(), Optional.empty())),
            "--dates", none.written(new Writing(Double.NaN, dates, Optional.empty())),
            "--decimal", none.written(new Writing(Double.NaN, Optional.empty(), decimal)));
    byte[] log = "lampwise-log: 1\nwindow: 0 to 60 s\non 3.1\n".getBytes(UTF_8);
    options.forEach(
        (option, given) ->
            assertEquals(
                option + " does not fit a Lampwise log, which itself says what it holds",
                assertThrows(OptionException.class, () -> RecordingReader.read("r", log, given))
                    .getMessage()));
    assertEquals(1, RecordingReader.read("r", log, none).size());
  }

  @Test
  void aTimeOfALogHasALimit() throws Exception {
    String head = "lampwise-log: 1\nwindow: 0 to ";
    assertEquals(Optional.of(new Window(0, 1e12)), window(head + "1000000000000 s\non 5\n"));
    assertTrue(refused(head + "1000000000001 s\non 5\n").contains("is too large for a time"));
    for (String bad : List.of("5.", ".5", "1.2.3", "--5", "5-", "-", "1e3", "+5")) {
      assertTrue(refused("lampwise-log: 1\non " + bad + "\n").contains("expected"), bad);
    }
    BlinkLog log = (BlinkLog) read("lampwise-log: 1\non -0.5 off -0\n").get(0);
    assertEquals(-0.5, log.blinks().get(0).onSeconds());
    assertEquals(0.0, log.blinks().get(0).offSeconds());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "15 | NONE",
        "1.5 | NONE",
        "1,5 | DECIMAL",
        "0,234 | DECIMAL",
        "1.234,5 | DECIMAL",
        "1,234 | OPEN",
        "12,345 | OPEN",
        "1,234.5 | THOUSANDS",
        "1,234,567 | THOUSANDS",
        "1,2,3 | NONE",
        "a,b | NONE",
      })
  void aCommaShowsWhatItParts(String cell, DecimalMark.Sign sign) {
    assertEquals(sign, DecimalMark.signOf(cell));
  }

  @Test
  void theFirstCellThatTellsDecides() {
    assertEquals(DecimalMark.Sign.NONE, DecimalMark.signOf(List.of(List.of("1", "2"))));
    assertEquals(
        DecimalMark.Sign.OPEN, DecimalMark.signOf(List.of(List.of("1,234", "2"), List.of("3"))));
    assertEquals(
        DecimalMark.Sign.DECIMAL,
        DecimalMark.signOf(List.of(List.of("1,234", "1,5"), List.of("1,234.5"))));
    assertEquals(
        DecimalMark.Sign.THOUSANDS, DecimalMark.signOf(List.of(List.of("1,234.5", "1,5"))));
    assertEquals(1.5, DecimalMark.COMMA.parse("1,5"));
    assertEquals(7, DecimalMark.COMMA.parse("7"));
    assertEquals(Double.NaN, DecimalMark.COMMA.parse("1.5,2"));
    assertEquals(Double.NaN, DecimalMark.COMMA.parse(".5,2"));
    assertEquals(1.5, DecimalMark.POINT.parse("1.5"));
  }

  private static ReadingOrder order(String... rows) {
    List<List<String>> cells = Stream.of(rows).map(row -> List.of(row.split("/", -1))).toList();
    return ReadingOrder.of(cells, DecimalMark.POINT);
  }

  @Test
  void numbersRiseOrFallInReadingOrder() {
    assertEquals(new ReadingOrder(4, 3, 0, 0, 0), order("1/2", "3/4"));
    assertEquals(new ReadingOrder(3, 2, 0, 0, 0), order("1/2", "3/"));
    assertEquals(new ReadingOrder(3, 2, 0, 1, 0), order("1/2", "/3"));
    assertEquals(new ReadingOrder(2, 0, 0, 1, 0), order("5/x", "5"));
    assertEquals(new ReadingOrder(4, 1, 2, 0, 0), order("3/2", "1/4"));
    assertEquals(new ReadingOrder(3, 2, 0, 0, 1), order("0:01/2", "0:03"));
    assertEquals(new ReadingOrder(4, 3, 0, 0, 2), order("0:01/0:02", "0:03/0:04"));
    assertTrue(order("1/2", "2/3").isRising());
    assertFalse(order("1/x", "2/3").isRising());
    assertFalse(order("1/1").isRising());
    assertFalse(order("2/1", "3").isRising());
    assertTrue(order("3/2", "2/1").isFalling());
    assertFalse(order("3/2", "x/1").isFalling());
    assertFalse(order("1/1").isFalling());
    assertFalse(order("2/1", "3").isFalling());
  }

  @ParameterizedTest
  @CsvSource({
    "1e9,0,0,1000000000",
    "1e9,2,1,1000000000.0",
    "1234567890.125,2,1,1234567890.13",
    "-1234567890.5,1,1,-1234567890.5",
    "999999999.5,1,0,999999999.5",
    "-0.0000001,6,0,0",
    "-0.0000001,6,1,0.0",
    "-0.5,6,0,-0.5",
    "0.05,2,0,0.05",
    "0.005,2,0,0.01",
    "0.0049,2,0,0",
    "12,3,1,12.0",
    "12.3450,3,1,12.345"
  })
  void aNumberHasAsManyDigitsAsItNeeds(double value, int most, int least, String text) {
    assertEquals(text, JsonNumber.of(value, most, least));
  }

  @Test
  void rowsThatCannotBeToldApartAreRefused() throws Exception {
    String close = "time_s,lux\n0,1\n0.2,2\n0.4,1\n0.6,2\n";
    assertEquals(4, ((LightCurve) read(close).get(0)).size());
    FileException fault =
        assertThrows(
            FileException.class,
            () -> Readings.curve(close, Readings.said().unit(ReadOptions.Unit.NS)));
    assertTrue(fault.getMessage().contains("under a billionth of a second apart"));
  }
}

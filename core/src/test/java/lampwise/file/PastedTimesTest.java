package lampwise.file;

import static java.lang.Double.NaN;
import static lampwise.file.Readings.ends;
import static lampwise.file.Readings.log;
import static lampwise.file.Readings.said;
import static lampwise.file.Readings.starts;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lampwise.file.ReadOptions.Shape;
import lampwise.file.ReadOptions.Unit;
import lampwise.light.BlinkLog;
import lampwise.light.Targets;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PastedTimesTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.3 3.5 6.5",
        "0.3,3.5,6.5",
        "0.3, 3.5, 6.5",
        "0.3;3.5; 6.5",
        "0.3\t3.5\t6.5",
        "0.3\n3.5\r\n6.5",
        "0.3\r3.5\r6.5\r",
        "\uFEFF0.3 3.5 6.5",
        "  0.3\u00A03.5  6.5  ",
        "0.3s 3.5 s, 6.50s",
        "# taps\n0.3 # the first\n// more\n3.5\n% more\n6.5",
        "1) 0.3   2) 3.5   3) 6.5",
        "1)0.3 2)3.5 3)6.5",
        "1. 0.3\n2. 3.5\n3. 6.5",
        "1: 0.3\n2: 3.5\n3: 6.5",
        "#1 0.3\n#2 3.5\n#3 6.5",
        "#1) 0.3 #2) 3.5 #3) 6.5",
        "0.3 +3.2 +3",
        "0.3 3.5 +3.0",
        "3e-1 3.5 6.5",
        "0,3 3,5 6,5",
        "0,3; 3,5; 6,5",
        "0,3;3,5;6,5",
        "time\n0.3\n3.5\n6.5",
        "Blinks seen:\n0.3 3.5 6.5",
        "6.5 3.5 0.3",
        "6.5\n3.5\n0.3",
        "0.3 3.5 3.5 6.5"
      })
  void readsEveryWritingOfTheSameTimes(String text) throws Exception {
    BlinkLog log = log(text);
    assertArrayEquals(new double[] {0.3, 3.5, 6.5}, starts(log), text);
    assertArrayEquals(new double[] {NaN, NaN, NaN}, ends(log));
    assertEquals(Targets.unknown(), log.marks().targets());
    assertEquals(Optional.empty(), log.marks().window());
    assertEquals("r.txt", log.origin().name());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "+3.2 +3",
        "0:00.3 0:03.5 0:06.5",
        "59:59.3, 60:02.5, 60:05.5",
        "0:59:59.3, 1:00:02.5, 1:00:05.5",
        "59:59.3, 1:00:02.5, 1:00:05.5",
        "12:00:01.1, 12:00:04.3, 12:00:07.3",
        "12:00:01.1 +3.2 +0:03",
        "23:59:58 00:00:01.2 00:00:04.2",
        "00:00:04.2 00:00:01.2 23:59:58",
        "1) 0:00.0   2) 0:03.2   3) 0:06.2",
        "10000 10003.2 10006.2",
        "1893456000 1893456003.2 1893456006.2"
      })
  void countsOtherWritingsFromTheFirstTime(String text) throws Exception {
    assertArrayEquals(new double[] {0, 3.2, 6.2}, starts(log(text)), 1e-6, text);
  }

  @Test
  void readsPairsOfOnAndOff() throws Exception {
    for (String text :
        List.of(
            "on 0.00 off 0.21\non 0.80 off 1.02\non 3.10",
            "on 0.00 off 0.21 on 0.80, off 1.02; on 3.10",
            "On: 0.00s Off: 0.21s ON= 0.80 OFF= 1.02 on: 3.1",
            "on 3.10\non 0.80 off 1.02\non 0.00 off 0.21",
            "on 3.10 off 1.02 on 0.80 off 0.21 on 0.00")) {
      BlinkLog log = log(text);
      assertArrayEquals(new double[] {0, 0.8, 3.1}, starts(log), text);
      assertArrayEquals(new double[] {0.21, 1.02, NaN}, ends(log), text);
    }
  }

  @Test
  void readsColumnsOfOnAndOffUnderTheirNames() throws Exception {
    BlinkLog log = log("on,off\n0.0,0.2\n3.1,3.3\n");
    assertArrayEquals(new double[] {0, 3.1}, starts(log));
    assertArrayEquals(new double[] {0.2, 3.3}, ends(log));
  }

  @Test
  void obeysTheShapeThatIsSaid() throws Exception {
    String text = "0.00 0.21\n0.80 1.02";
    assertArrayEquals(new double[] {0, 0.21, 0.8, 1.02}, starts(log(text, said().as(Shape.TIMES))));
    BlinkLog spans = log(text, said().as(Shape.SPANS));
    assertArrayEquals(new double[] {0, 0.8}, starts(spans));
    assertArrayEquals(new double[] {0.21, 1.02}, ends(spans));
    assertArrayEquals(
        new double[] {0, 3, 5.5, 5.9}, starts(log("3 2.5 0.4", said().as(Shape.GAPS))), 1e-12);
    assertArrayEquals(
        new double[] {3, 5.5, 5.9}, starts(log("3 +2.5 +0.4", said().as(Shape.GAPS))), 1e-12);
    assertArrayEquals(
        new double[] {NaN}, ends(log("3", said().as(Shape.SPANS))), "an odd time is an open blink");
  }

  @Test
  void takesTheUnitOfPlainNumbersFromTheOption() throws Exception {
    assertArrayEquals(new double[] {0.3, 3.5}, starts(log("300 3500", said().unit(Unit.MS))));
  }

  @Test
  void keepsNegativeSecondsAndOneTimeAlone() throws Exception {
    assertArrayEquals(new double[] {-0.5, 2}, starts(log("-0.5 2")));
    assertArrayEquals(new double[] {7.25}, starts(log("7.25")));
    assertArrayEquals(new double[] {9999.5, 10001}, starts(log("9999.5 10001")));
  }

  @Test
  void readsNothingAsAnEmptyLog() throws Exception {
    for (String text : List.of("", "\n\n", "# nothing seen\n", "\uFEFF")) {
      assertEquals(List.of(), log(text).blinks());
      assertEquals(Optional.empty(), log(text).window());
      assertEquals(Optional.of(new Window(0, 60)), log(text, said().to("60")).window());
    }
  }

  @Test
  void saysWhatItDid() throws Exception {
    assertNote("6.5 3.5 0.3", "reversed");
    assertNote("23:59:59 00:00:02", "midnight");
    assertNote("12:00:01 12:00:02", "count from the first one, 12:00:01");
    assertNote("0.3 0.3 1", "1 time stands twice");
    assertNote("+1 +2", "first blink is at 0 s");
    assertNote("on 1 off 1 on 2", "1 blink ends at the start");
    assertNote("0,3 3,5 6,5", "decimal point");
    assertNote("when?\n3 4", "heading");
    assertEquals(List.of(), log("0.3 3.5 6.5").origin().notes());
  }

  private static void assertNote(String text, String part) throws Exception {
    List<String> notes = log(text).origin().notes();
    assertTrue(notes.stream().anyMatch(note -> note.contains(part)), () -> text + ": " + notes);
  }
}

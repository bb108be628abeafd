package lampwise.file;

import static lampwise.file.Readings.curve;
import static lampwise.file.Readings.log;
import static lampwise.file.Readings.said;
import static lampwise.file.Readings.seconds;
import static lampwise.file.Readings.starts;
import static lampwise.file.Readings.wrongOption;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lampwise.file.ReadOptions.Shape;
import lampwise.light.BlinkLog;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

class MarkOptionsTest {
  private static final String TAPS = "0.3 3.5 6.5";
  private static final String CLOCK = "12:00:05 12:00:08.2 12:00:11";
  private static final String METER = "time_ms,lux\n20000,1\n20200,2\n20400,3\n20600,4\n";

  @Test
  void setsTheWindow() throws Exception {
    assertEquals(window(0, 60), log(TAPS, said().to("60")).window());
    assertEquals(window(-1, 60), log(TAPS, said().from("-1").to("60")).window());
    assertEquals(window(0.1, 6.5), log(TAPS, said().from("0.1")).window());
    assertEquals(window(0, 60), log(TAPS, said().to("1:00")).window());
    assertEquals(window(-1, 25), log(CLOCK, said().from("12:00:04").to("12:00:30")).window());
    assertEquals(window(0, 25), log(CLOCK, said().to("12:00:30")).window());
    assertEquals(window(0, 25), log(CLOCK, said().to("25")).window());
    assertEquals(
        window(-1, 8), log("23:59:56 00:00:03", said().from("23:59:55").to("00:00:04")).window());
    assertEquals(window(0, 57), log("0:03 0:06", said().from("0:03").to("0:01:00")).window());
    assertEquals(window(0, 60), log("", said().from("12:00:00").to("12:01:00")).window());
    assertEquals(window(5, 60), log("", said().from("5").to("60")).window());
    assertEquals(window(0, 10), log("1893456000 1893456005", said().to("1893456010")).window());
  }

  @Test
  void keepsWhatIsInsideTheWindow() throws Exception {
    BlinkLog log = log(TAPS, said().from("1").to("6.5"));
    assertArrayEquals(new double[] {3.5, 6.5}, starts(log));
    assertEquals(List.of("1 blink lies outside the window, left out"), log.origin().notes());
    assertEquals(List.of(), log(TAPS, said().from("20").to("30")).blinks());
    LightCurve curve = curve(METER, said().from("20.2").to("20.4"));
    assertArrayEquals(new double[] {20.2, 20.4}, seconds(curve));
    assertTrue(curve.origin().notes().contains("2 rows lie outside the window"));
    assertArrayEquals(
        new double[] {20.2, 20.4}, seconds(curve(METER, said().from("20150").to("20450"))));
  }

  @Test
  void setsTargets() throws Exception {
    assertEquals(Targets.unknown(), log(TAPS).marks().targets());
    assertEquals(Targets.none(), log(TAPS, said().targets("none")).marks().targets());
    assertEquals(
        Targets.during(List.of(TargetSpan.always())),
        log(TAPS, said().targets("all")).marks().targets());
    assertEquals(
        Targets.during(List.of(new TargetSpan(1, 2), new TargetSpan(3.5, 9))),
        log(TAPS, said().targets("3.5..9", "1..2")).marks().targets());
    assertEquals(
        Targets.during(List.of(new TargetSpan(0, 15))),
        log(CLOCK, said().targets("12:00:05..12:00:20")).marks().targets());
    LightCurve alone = curve(METER, said().targets("none"));
    assertEquals(Targets.none(), alone.marks().targets());
    assertEquals(List.of(), alone.origin().notes());
  }

  @Test
  void setsEventsAndCoveredStretches() throws Exception {
    assertEquals(
        List.of(new Event(Event.Kind.POWER_UP, -2), new Event(Event.Kind.DOOR, 12.5)),
        log(TAPS, said().events("door@12.5", "power-up@-2")).marks().events());
    assertEquals(
        List.of(new Event(Event.Kind.FLUSH, 3)),
        log(CLOCK, said().events("flush@12:00:08")).marks().events());
    assertEquals(List.of(new Window(1, 2)), log(TAPS, said().covered("1..2")).marks().covered());
  }

  @Test
  void namesTheOptionThatIsWrong() {
    assertWrong(said().from("soon"), "--from", "\"soon\" is not a time");
    assertWrong(said().from("NaN"), "--from", "not a finite time");
    assertWrong(said().to("1e15"), "--to", "too large");
    assertWrong(said().to("-1"), "--to", "before the start of the window at 0 s");
    assertWrong(said().from("9").to("4"), "--to", "before the start");
    assertWrong(said().from("9"), "--from", "add --to");
    assertWrong(said().to("12:00:30"), "--to", "the file has none");
    assertWrong(said().targets("9..4"), "--target", "must end after it starts");
    assertWrong(said().targets("4"), "--target", "expected none, all or A..B");
    assertWrong(said().targets("1..x"), "--target", "\"x\" is not a time");
    assertWrong(said().targets("none", "1..2"), "--target", "none and all");
    assertWrong(said().events("flush"), "--event", "expected NAME@T");
    assertWrong(said().events("fire@3"), "--event", "power-up, button, flush, door");
    assertWrong(said().events("door@x"), "--event", "\"x\" is not a time");
    assertWrong(said().covered("3"), "--covered", "expected A..B");
    assertWrong(said().covered("3..3"), "--covered", "must end after it starts");
    assertWrong(said().as(Shape.TIMES).column("2"), "--column", "--as levels");
  }

  @Test
  void namesTheOptionThatDoesNotFitTheFile() {
    assertPart("needs --to", wrongOption("", said().from("5")));
    assertPart("like the file's times", wrongOption(CLOCK, said().to("1:00")));
    assertPart("--as gaps", wrongOption("on 1 off 2", said().as(Shape.GAPS)));
    assertPart(
        "no column \"lx\"; there are column 1 (\"time_ms\"), column 2 (\"lux\")",
        wrongOption(METER, said().column("lx")));
    assertPart("no column \"3\"", wrongOption(METER, said().column("3")));
    assertPart("no column \"1.5\"", wrongOption(METER, said().time("1.5")));
    assertPart("--time and --column both name", wrongOption(METER, said().time("1").column("1")));
    assertPart(
        "holds no numbers", wrongOption("time,lux,who\n0.0,1,x\n0.1,2,y", said().column("who")));
    assertPart("the rows run from 20 to 20.6 s", wrongOption(METER, said().from("30").to("40")));
  }

  private static void assertWrong(Readings.Said said, String option, String part) {
    String message = wrongOption(TAPS, said);
    assertTrue(message.startsWith(option), message);
    assertPart(part, message);
  }

  private static void assertPart(String part, String message) {
    assertTrue(message.contains(part), message);
  }

  private static Optional<Window> window(double from, double to) {
    return Optional.of(new Window(from, to));
  }
}

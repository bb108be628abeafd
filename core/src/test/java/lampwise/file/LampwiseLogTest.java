package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static lampwise.file.Readings.said;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lampwise.Testdata;
import lampwise.file.ReadOptions.Shape;
import lampwise.file.ReadOptions.Unit;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Event.Kind;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.RecordingException;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

class LampwiseLogTest {
  private static final double NONE = Double.NaN;

  /** The README beside the file says the same in words. */
  @Test
  void readsVersionOneForEver() throws Exception {
    List<Recording> parts =
        LampwiseLog.read("format-1.log", Testdata.bytes("logs", "format-1.log"));
    assertEquals(5, parts.size());
    List<TargetSpan> spans =
        List.of(
            new TargetSpan(Double.NEGATIVE_INFINITY, 2.5),
            new TargetSpan(20, 28),
            new TargetSpan(55, Double.POSITIVE_INFINITY));
    List<Event> events =
        List.of(
            new Event(Kind.POWER_UP, 0),
            new Event(Kind.FLUSH, 29),
            new Event(Kind.BUTTON, 30.25),
            new Event(Kind.DOOR, 54));
    assertEquals(
        new BlinkLog(
            new Origin(
                "format-1.log",
                Optional.of("north-07"),
                List.of("recording 1 of 2 of north-07, from line 4")),
            new Marks(
                Optional.of(new Window(0, 60)),
                Targets.during(spans),
                events,
                List.of(new Window(0, 0.5), new Window(40, 42))),
            List.of(new Blink(3.1, 3.22), new Blink(6.25, NONE), new Blink(59.9, 60.1))),
        parts.get(0));
    assertEquals(
        new Description(
            new Origin(
                "format-1.log",
                Optional.of("north-07"),
                List.of("recording 2 of 2 of north-07, from line 20")),
            Marks.watched(-5, 40.125).withTargets(Targets.during(List.of(TargetSpan.always()))),
            "3 blinks then dark 1.2 s then 2 blinks every about 8 s"),
        parts.get(1));
    assertEquals(
        new BlinkLog(
            new Origin("format-1.log", Optional.of("Raum 12, Tür links"), List.of()),
            Marks.nothing().withTargets(Targets.none()),
            List.of(new Blink(-0.5, NONE), new Blink(4, 4.001))),
        parts.get(2));
    assertEquals(
        new Description(
            Origin.named("format-1.log"),
            Marks.watched(0, 30).withTargets(Targets.likely()),
            Description.NOTHING),
        parts.get(3));
    assertEquals(
        new BlinkLog(
            new Origin("format-1.log", Optional.of("south-01"), List.of()),
            Marks.nothing(),
            List.of()),
        parts.get(4));
  }

  @Test
  void theReaderOfRecordingsKnowsALogByItsFirstLine() throws Exception {
    for (String start : List.of("", "\uFEFF")) {
      for (String end : List.of("\n", "\r\n", "\r", "")) {
        String text = start + "lampwise-log: 1\non 3.1".replace("\n", end.isEmpty() ? "\n" : end);
        Recording log = Readings.read((text + end).getBytes(UTF_8), said());
        assertEquals(
            List.of(Blink.startingAt(3.1)), assertInstanceOf(BlinkLog.class, log).blinks());
      }
    }
    Recording nothing = Readings.read("lampwise-log: 1".getBytes(UTF_8), said());
    assertEquals(new BlinkLog(Origin.named("r.txt"), Marks.nothing(), List.of()), nothing);
  }

  @Test
  void optionsReplaceWhatTheLogSays() throws Exception {
    String log =
        "lampwise-log: 1\nwindow: 2 to 60 s\ntarget: 20 to 28 s\nevent: door at 3 s\n"
            + "covered: 40 to 41 s\non 3\non 50\n";
    assertEquals(new Window(2, 40), marks(log, said().to("40")).window().get());
    assertEquals(new Window(10, 60), marks(log, said().from("10")).window().get());
    assertEquals(new Window(0, 70), marks(log, said().from("0").to("70")).window().get());
    assertEquals(Targets.none(), marks(log, said().targets("none")).targets());
    assertEquals(List.of(new Event(Kind.FLUSH, 9)), marks(log, said().events("flush@9")).events());
    assertEquals(List.of(new Window(1, 2)), marks(log, said().covered("1..2")).covered());
    Marks kept = marks(log, said());
    assertEquals(kept.events(), marks(log, said().to("40")).events());
    assertEquals(kept.targets(), marks(log, said().covered("1..2")).targets());
    assertEquals(kept.covered(), marks(log, said().targets("all")).covered());

    BlinkLog cut =
        assertInstanceOf(BlinkLog.class, Readings.read(log.getBytes(UTF_8), said().to("40")));
    assertEquals(List.of(Blink.startingAt(3)), cut.blinks());
    assertEquals(List.of("1 blink lies outside the window, left out"), cut.origin().notes());
    assertEquals(
        new Window(0, 45),
        marks("lampwise-log: 1\nsaw: fast blinks", said().to("45")).window().get());
  }

  @Test
  void optionsThatSayWhatAFileHoldsAreRefusedBesideALog() {
    String log = "lampwise-log: 1\non 3";
    for (Readings.Said option :
        List.of(
            said().as(Shape.TIMES), said().column("2"), said().time("1"), said().unit(Unit.MS))) {
      String message = Readings.wrongOption(log, option);
      assertTrue(message.contains("does not fit a Lampwise log"), message);
    }
  }

  private static Marks marks(String log, Readings.Said options) throws Exception {
    return Readings.read(log.getBytes(UTF_8), options).marks();
  }

  @Test
  void writesTheCanonicalForm() {
    Marks marks =
        new Marks(
            Optional.of(new Window(-0.0, 60)),
            Targets.during(List.of(new TargetSpan(20, 28), new TargetSpan(40, 40.0001))),
            List.of(new Event(Kind.POWER_UP, 0)),
            List.of(new Window(0, 5)));
    Recording blinks =
        new BlinkLog(
            new Origin("a", Optional.of("north-07"), List.of("not written")),
            marks,
            List.of(new Blink(3.10, 3.2204), new Blink(6.25, NONE), new Blink(7, 7.0001)));
    Recording words =
        new Description(Origin.named("b"), Marks.watched(0, 40), "3 Blinks, every 8.0 s");
    assertEquals(
        """
        lampwise-log: 1
        fixture: north-07
        window: 0 to 60 s
        target: 20 to 28 s
        event: power-up at 0 s
        covered: 0 to 5 s
        on 3.1 off 3.22
        on 6.25
        on 7
        fixture:
        window: 0 to 40 s
        saw: 3 blinks every 8 s
        """,
        LampwiseLog.write(List.of(blinks, words)));
    assertEquals(
        "lampwise-log: 1\nwindow: 0 to 40 s\nsaw: 3 blinks every 8 s\n",
        LampwiseLog.write(List.of(words)));
  }

  @Test
  void refusesToWriteWhatALogCannotHold() {
    LightCurve curve =
        LightCurve.of(
            Origin.named("meter.csv"),
            Marks.nothing(),
            LightCurve.Lit.BRIGHTER,
            new double[] {0},
            new double[] {1});
    assertUnwritable("light levels of meter.csv", List.of(curve));
    assertUnwritable("at least one recording", List.of());
    assertUnwritable(
        "starts outside the window", List.of(BlinkLog.ofStarts(Marks.watched(0, 5), 6)));
    assertUnwritable(
        "starts while another is on", List.of(blinks("x", new Blink(1, 3), new Blink(2, 4))));
    assertUnwritable("too large", List.of(blinks("x", new Blink(1e13, NONE))));
    for (String fixture : List.of("", " x", "x\u00A0", "a\nb", "a\u2028b")) {
      assertUnwritable("a fixture's name", List.of(blinks(fixture)));
    }
    assertUnwritable(
        "no rhythm phrase",
        List.of(new Description(Origin.named("a"), Marks.nothing(), "0 blinks every 3 s")));
  }

  private static Recording blinks(String fixture, Blink... blinks) {
    return new BlinkLog(
        new Origin("a", Optional.of(fixture), List.of()), Marks.nothing(), List.of(blinks));
  }

  private static void assertUnwritable(String part, List<Recording> recordings) {
    String message =
        assertThrows(RecordingException.class, () -> LampwiseLog.write(recordings)).getMessage();
    assertTrue(message.contains(part), message);
  }
}

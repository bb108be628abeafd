package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwise.Testdata;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lampwise logs, read and written. */
class LampwiseLogTest {
  private static List<Recording> read(String text) throws Exception {
    return RecordingReader.read("a.log", text.getBytes(UTF_8), ReadOptions.none());
  }

  private static String faults(String text) {
    FileException e = assertThrows(FileException.class, () -> read(text));
    return e.faults().stream().map(FileFault::toString).collect(Collectors.joining("\n"));
  }

  @Test
  void theFileOfVersionOneIsReadForEver() throws Exception {
    List<Recording> read =
        RecordingReader.read(
            "format-1.log", Testdata.bytes("logs", "format-1.log"), ReadOptions.none());
    Origin north = new Origin("format-1.log", Optional.of("north-07"), List.of());
    Origin south = new Origin("format-1.log", Optional.of("south, by the door"), List.of());
    Marks marks =
        new Marks(
            Optional.of(new Window(0, 60)),
            Targets.during(List.of(new TargetSpan(20, 28))),
            List.of(new Event(Event.Kind.POWER_UP, 0), new Event(Event.Kind.FLUSH, 31.5)),
            List.of(new Window(50, 52.5)));
    assertEquals(
        List.of(
            new BlinkLog(north, marks, List.of(new Blink(3.1, 3.22), Blink.startingAt(6.25))),
            new Description(
                north, Marks.watched(0, 40).withTargets(Targets.none()), "3 blinks every 7 to 9 s"),
            new Description(
                south,
                Marks.nothing().withTargets(Targets.during(List.of(TargetSpan.always()))),
                "nothing")),
        read);
  }

  @Test
  void everyFaultIsToldWithItsPlace() {
    assertEquals(
        """
        a.log:3:1: unknown key "windwo"; expected on, fixture, window, target, event, covered, saw; \
        did you mean "window"?
        a.log:4:10: off must come after on
        a.log:5:4: "x" is no time; expected seconds
        a.log:6:8: "tea" is no event; expected power-up, button, flush, door
        a.log:7:8: "flashes" is said "blinks"; try "3 blinks repeating\"""",
        faults(
            """
            lampwise-log: 1
            fixture: a
            windwo: 0 to 5
            on 3 off 2
            on x
            event: tea at 4
            saw: 3 flashes
            """));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lampwise-log: 2 | a.log:1:15: this version is not known; expected 1",
        "lampwise-log: | a.log:1:14: the line ends; expected seconds",
        "lampwise-log: 1/window: 5 to 3 | a.log:2:14: must end after it starts",
        "lampwise-log: 1/window: 0 to 5/window: 0 to 6 | a.log:3:9: the window was said already",
        "lampwise-log: 1/window: 0 5 | a.log:2:11: \"5\" stands here; expected to",
        "lampwise-log: 1/target: none/target: 1 to 2 | a.log:3:9: none cannot stand beside other targets",
        "lampwise-log: 1/on 5/on 4 | a.log:3:4: the times step back; expected blinks in order",
        "lampwise-log: 1/window: 0 to 3/on 4 | a.log:3:4: the blink lies outside the window",
        "lampwise-log: 1/on NaN | a.log:2:4: \"NaN\" is no time; expected seconds",
        "lampwise-log: 1/on 1 up 2 | a.log:2:6: \"up 2\" is too much here",
        "lampwise-log: 1/saw: steady/on 1 | a.log:3:4: a part has blinks or one saw, not both",
        "lampwise-log: 1/on 1/saw: steady | a.log:3:6: a part has blinks or one saw, not both",
        "lampwise-log: 1/hello | a.log:2:1: expected a key with a colon, or on and a time",
        "lampwise-log: 1/fixture: | a.log:2:9: the name is missing; expected the fixture's name",
        "lampwise-log: 1/event: flush 4 | a.log:2:14: \"4\" stands here; expected at",
      })
  void aFaultIsOneLine(String log, String fault) {
    assertEquals(fault, faults(log.replace('/', '\n')));
  }

  @Test
  void anEmptyLogIsOneWithoutBlinks() throws Exception {
    assertEquals(
        List.of(new BlinkLog(Origin.named("a.log"), Marks.nothing(), List.of())),
        read("lampwise-log: 1\n"));
  }

  @Test
  void optionsStandInPlaceOfTheMarks() throws Exception {
    ReadOptions options = ReadOptions.none().watched("10");
    Recording read =
        RecordingReader.read(
                "a.log", "lampwise-log: 1\nwindow: 0 to 60\non 3\non 30\n".getBytes(UTF_8), options)
            .get(0);
    assertEquals(Optional.of(new Window(0, 10)), read.window());
    assertEquals(List.of(Blink.startingAt(3)), ((BlinkLog) read).blinks());
    assertEquals(List.of("1 blink lies outside the window"), read.origin().notes());
  }

  @Test
  void whatCannotBeWrittenIsRefused() {
    LightCurve curve =
        LightCurve.of(
            Origin.named("c"),
            Marks.nothing(),
            LightCurve.Lit.BRIGHTER,
            new double[] {0, 1},
            new double[] {1, 1});
    assertThrows(FileException.class, () -> LampwiseLog.write(List.of(curve)));
    Origin twoLines = new Origin("c", Optional.of("a\nb"), List.of());
    assertThrows(
        FileException.class,
        () -> LampwiseLog.write(List.of(new BlinkLog(twoLines, Marks.nothing(), List.of()))));
  }

  @Provide
  Arbitrary<List<Recording>> recordings() {
    Arbitrary<Double> times = Arbitraries.integers().between(0, 60_000).map(ms -> ms / 1000.0);
    Arbitrary<Window> windows =
        Combinators.combine(times, times)
            .as(
                (a, b) ->
                    new Window(Math.min(a, b), Math.rint(1000 * Math.max(a, b) + 500) / 1000));
    Arbitrary<Targets> targets =
        Arbitraries.oneOf(
            Arbitraries.of(Targets.unknown(), Targets.none()),
            windows
                .map(w -> new TargetSpan(w.fromSeconds(), w.toSeconds()))
                .list()
                .ofMinSize(1)
                .ofMaxSize(3)
                .map(Targets::during));
    Arbitrary<Marks> marks =
        Combinators.combine(
                targets,
                Combinators.combine(Arbitraries.of(Event.Kind.values()), times)
                    .as(Event::new)
                    .list()
                    .ofMaxSize(3),
                windows.list().ofMaxSize(2),
                Arbitraries.of(true, false))
            .as(
                (t, e, c, windowed) ->
                    new Marks(
                        windowed ? Optional.of(new Window(0, 100)) : Optional.empty(), t, e, c));
    Arbitrary<List<Blink>> blinks =
        Combinators.combine(times, Arbitraries.integers().between(0, 900))
            .as(
                (on, ms) ->
                    ms == 0
                        ? Blink.startingAt(on)
                        : new Blink(on, Math.rint(on * 1000 + ms) / 1000))
            .list()
            .ofMaxSize(8);
    Arbitrary<Origin> origins =
        Arbitraries.of("north-07", "basin 3", "é: x")
            .map(name -> new Origin("a.log", Optional.of(name), List.of()));
    Arbitrary<Recording> logs =
        Combinators.combine(origins, marks, blinks).as((o, m, b) -> new BlinkLog(o, m, b));
    Arbitrary<Recording> words =
        Combinators.combine(
                origins, marks, Arbitraries.of("nothing", "fast blinks", "2 blinks every 9 s"))
            .as((o, m, s) -> new Description(o, m, s));
    return Arbitraries.oneOf(logs, words).list().ofMinSize(1).ofMaxSize(4);
  }

  @Property
  void whatIsWrittenIsReadAgain(@ForAll("recordings") List<Recording> recordings) throws Exception {
    String text = LampwiseLog.write(recordings);
    List<Recording> rounded = new ArrayList<>(read(text));
    assertEquals(LampwiseLog.write(rounded), text);
    assertEquals(recordings.size(), rounded.size());
    for (int i = 0; i < rounded.size(); i++) {
      assertEquals(recordings.get(i).marks(), rounded.get(i).marks());
      assertEquals(recordings.get(i).origin(), rounded.get(i).origin());
      if (recordings.get(i) instanceof BlinkLog log) {
        List<Blink> again = ((BlinkLog) rounded.get(i)).blinks();
        assertEquals(log.blinks().size(), again.size());
        for (int k = 0; k < again.size(); k++) {
          assertEquals(log.blinks().get(k).onSeconds(), again.get(k).onSeconds(), 1e-9);
          assertEquals(log.blinks().get(k).offSeconds(), again.get(k).offSeconds(), 1e-9);
        }
      } else {
        assertTrue(rounded.get(i).equals(recordings.get(i)), text);
      }
    }
  }

  @Provide
  Arbitrary<String> nearlyLogs() {
    return Arbitraries.of(
            "on",
            "off",
            "3.1",
            "6",
            "fixture:",
            "a",
            "window:",
            "0",
            "to",
            "60",
            "s",
            "target:",
            "none",
            "all",
            "event:",
            "flush",
            "at",
            "covered:",
            "saw:",
            "nothing",
            "2 blinks",
            "\n",
            "\n",
            "\n",
            "#",
            ":",
            "NaN",
            "-1",
            "1e999",
            "é")
        .list()
        .ofMaxSize(40)
        .map(words -> "lampwise-log: 1\n" + String.join(" ", words));
  }

  @Property
  void anyTextGivesRecordingsOrAFault(@ForAll("nearlyLogs") String text) throws Exception {
    try {
      assertTrue(!read(text).isEmpty(), text);
    } catch (FileException e) {
      assertTrue(e.faults().stream().allMatch(f -> f.line() >= 1 && f.column() >= 1), text);
    }
  }
}

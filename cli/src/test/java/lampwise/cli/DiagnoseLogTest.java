package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.file.VisitLog;
import lampwise.service.Complaint;
import lampwise.service.Finding;
import lampwise.service.Outcome;
import lampwise.service.Visit;
import lampwise.sheet.FixtureKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A visit that closes ends in a row of the visit log. */
class DiagnoseLogTest {
  private static final List<String> CLOSED =
      List.of(
          "diagnose",
          "--kind",
          "water-closet",
          "--power",
          "cells",
          "--complaint",
          "weak",
          "--recent",
          "valve",
          "--found",
          "danger=none",
          "--found",
          "bowl=clear",
          "--worked",
          "diaphragm-kit");

  @TempDir private Path folder;

  private CommandRun run(String day, String input, List<String> start, String... more) {
    return run(day, Map.of(), input, start, more);
  }

  private CommandRun run(
      String day, Map<String, String> variables, String input, List<String> start, String... more) {
    List<String> args = new ArrayList<>(start);
    args.addAll(List.of(more));
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    Surroundings here =
        new Surroundings(
            new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
            new PrintWriter(out),
            new PrintWriter(err),
            folder,
            variables,
            false,
            Clock.fixed(Instant.parse(day + "T09:40:12Z"), ZoneOffset.UTC));
    int status = Main.run(args.toArray(String[]::new), here);
    return new CommandRun(status, out.toString(), err.toString());
  }

  private List<Visit> visits() throws Exception {
    return VisitLog.read(folder.resolve("visits.csv")).visits();
  }

  @Test
  void aScriptEndsInARow() throws Exception {
    CommandRun run =
        run(
            "2026-11-25",
            "",
            CLOSED,
            "--once",
            "--log",
            "visits.csv",
            "--fixture",
            "north-03",
            "--place",
            "Pier hall",
            "--who",
            "K. Orth",
            "--minutes",
            "25",
            "--part",
            "diaphragm or piston kit",
            "--before",
            "volume 3.1 L",
            "--after",
            "volume 6.0 L",
            "--note",
            "=quiet");
    assertEquals(0, run.status(), run.err());
    assertEquals("lampwise diagnose: row 1 of visits.csv: north-03, fixed\n", run.err());
    assertEquals(
        List.of(
            new Visit(
                "2026-11-25T09:40",
                "north-03",
                "Pier hall",
                Optional.of(FixtureKind.WATER_CLOSET),
                Optional.of(Complaint.WEAK),
                Visit.Lamp.unseen(),
                List.of(new Finding("danger", "none"), new Finding("bowl", "clear")),
                new Visit.Done(
                    visits().get(0).done().cause(),
                    List.of("diaphragm-kit"),
                    List.of("diaphragm or piston kit"),
                    OptionalDouble.of(25)),
                List.of("volume 3.1 L"),
                List.of("volume 6.0 L"),
                Outcome.FIXED,
                "K. Orth",
                "=quiet")),
        visits());
  }

  @Test
  void aLampThatWasReadStandsInTheRow() throws Exception {
    Files.writeString(folder.resolve("n03.txt"), "0.3 3.5 6.5 9.7 12.8 15.8 19.0 22.0\n");
    List<String> words = List.of("--log", "visits.csv", "--fixture", "north-03", "--demo");
    List<String> start =
        List.of(
            "diagnose", "--kind", "water-closet", "--power", "cells", "--complaint", "lamp-only");
    List<String> all = new ArrayList<>(start);
    all.addAll(words);
    CommandRun open =
        run("2026-11-25", "", all, "--session", "s.txt", "--sheet", "demo", "n03.txt");
    assertEquals(0, open.status(), open.err());
    assertFalse(Files.exists(folder.resolve("visits.csv")), "an open visit was written");
    CommandRun closed =
        run(
            "2026-11-26",
            "none\n",
            List.of("diagnose", "--session", "s.txt", "--over", "plumber"),
            "--demo",
            "--log",
            "visits.csv",
            "--fixture",
            "north-03");
    assertEquals(0, closed.status(), closed.err());
    Visit visit = visits().get(0);
    assertEquals(List.of("n03.txt"), visit.lamp().recordings());
    assertEquals("cells-low", visit.lamp().state());
    assertEquals("power-low", visit.lamp().condition());
    assertTrue(visit.lamp().probability().orElse(0) > 0.95);
    assertEquals(Outcome.HANDED_OVER, visit.outcome());
  }

  @Test
  void aSessionThatWasWrittenIsCorrectedAndKeepsWhatIsNotSaidAnew() throws Exception {
    String answers = "none\nvolume 3 L\nvolume 6 L\n20\nreseated\n";
    CommandRun first =
        run(
            "2026-11-25",
            answers,
            CLOSED,
            "--session",
            "s.txt",
            "--log",
            "visits.csv",
            "--fixture",
            "n03");
    assertEquals(0, first.status(), first.err());
    CommandRun second =
        run(
            "2026-11-25",
            "none\n\n\nabout 20\n22\n",
            List.of("diagnose", "--session", "s.txt"),
            "--log",
            "visits.csv",
            "--fixture",
            "n03");
    assertTrue(second.out().contains("Not understood: about 20"), second.out());
    assertEquals("lampwise diagnose: row 2 of visits.csv corrects row 1\n", second.err());
    CommandRun third =
        run(
            "2026-11-25",
            "",
            List.of("diagnose", "--session", "s.txt"),
            "--once",
            "--note",
            "better",
            "--log",
            "visits.csv",
            "--fixture",
            "n03");
    assertEquals(0, third.status(), third.err());
    assertEquals(1, visits().size());
    Visit visit = visits().get(0);
    assertEquals(List.of("volume 3 L"), visit.before());
    assertEquals(List.of("volume 6 L"), visit.after());
    assertEquals(OptionalDouble.of(22), visit.done().minutes());
    assertEquals(List.of(), visit.done().parts());
    assertEquals("better", visit.note());
  }

  @Test
  void aRepeatWithinThirtyDaysIsSaidFirst() {
    String[] log = {"--once", "--log", "visits.csv", "--fixture", "n03"};
    run("2026-11-25", "", CLOSED, log);
    List<String> next =
        List.of("diagnose", "--kind", "water-closet", "--complaint", "weak", "--once");
    String[] same = {"--log", "visits.csv", "--fixture", "n03"};
    CommandRun after = run("2026-12-25", "", next, same);
    assertTrue(
        after.out().startsWith("REPEAT: n03 was visited 30 days ago (2026-11-25): fixed; "),
        after.out());
    assertTrue(after.err().contains("not closed yet, no row was written"), after.err());
    assertTrue(run("2026-11-26", "", next, same).out().contains("visited yesterday"));
    assertFalse(run("2026-12-26", "", next, same).out().contains("REPEAT"));
    run("2026-11-27", "", CLOSED, log);
    assertTrue(
        run("2026-11-28", "", next, same).out().contains("2 times within 30 days, last yesterday"));
    CommandRun other = run("2026-11-26", "", next, "--log", "visits.csv", "--fixture", "n04");
    assertFalse(other.out().contains("REPEAT"), other.out());
  }

  @Test
  void sharesAreLearnedFromTheLog() {
    List<String> next =
        List.of("diagnose", "--kind", "water-closet", "--complaint", "weak", "--json");
    String before = run("2026-11-26", "", next).out();
    List<String> opened = new ArrayList<>(CLOSED);
    opened.set(opened.size() - 1, "open-stop");
    for (int i = 0; i < 5; i++) {
      run("2026-11-25", "", opened, "--once", "--log", "visits.csv", "--fixture", "n" + i);
    }
    String after = run("2026-11-26", "", next, "--learn", "visits.csv").out();
    assertFalse(before.equals(after), "nothing was learned");
    String said = run("2026-11-26", "", CLOSED, "--once", "--learn", "visits.csv").out();
    assertTrue(
        said.startsWith("Shares are learned from 5 visits to a water-closet in visits.csv, "),
        said);
    assertTrue(before.contains("\"learned_from\":null,\"repeats\":[],"), before);
    assertTrue(after.contains("\"learned_from\":5,\"repeats\":[],"), after);
    assertEquals("", JsonSchema.DIAGNOSIS.faults(after));
    List<String> urinal = List.of("diagnose", "--kind", "urinal", "--complaint", "weak", "--json");
    String alone = run("2026-11-26", "", urinal).out();
    assertEquals(
        alone.replace("\"learned_from\":null", "\"learned_from\":0"),
        run("2026-11-26", "", urinal, "--learn", "visits.csv").out(),
        "closets taught of urinals");
    CommandRun none = run("2026-11-26", "", next, "--learn", "none.csv");
    assertEquals(2, none.status());
    assertTrue(none.err().contains("could not be read: there is no such file"), none.err());
  }

  @Test
  void aSessionThatIsGoneOnWithLearnsForItsOwnKind() {
    List<String> opened = new ArrayList<>(CLOSED);
    opened.set(opened.size() - 1, "open-stop");
    for (int i = 0; i < 5; i++) {
      run("2026-11-25", "", opened, "--once", "--log", "visits.csv", "--fixture", "n" + i);
    }
    List<String> start = CLOSED.subList(0, CLOSED.size() - 2);
    assertEquals(0, run("2026-11-26", "", start, "--session", "s.txt").status());
    String[] learn = {"--json", "--learn", "visits.csv"};
    CommandRun whole = run("2026-11-26", "", start, learn);
    CommandRun gone = run("2026-11-26", "", List.of("diagnose", "--session", "s.txt"), learn);
    assertEquals(0, gone.status(), gone.err());
    assertTrue(gone.out().contains("\"learned_from\":5"), gone.out());
    assertEquals(whole.out(), gone.out());
  }

  @Test
  void jsonListsTheRepeats() {
    String[] log = {"--once", "--log", "visits.csv", "--fixture", "n03"};
    run("2026-11-25", "", CLOSED, log);
    run("2026-11-27", "", CLOSED, log);
    List<String> next =
        List.of("diagnose", "--kind", "water-closet", "--complaint", "weak", "--json");
    String[] same = {"--log", "visits.csv", "--fixture", "n03"};
    String both = run("2026-11-28", "", next, same).out();
    assertEquals("", JsonSchema.DIAGNOSIS.faults(both));
    assertTrue(both.contains("\"repeats\":[{\"when\":\"2026-11-25T09:40\",\"result\":\"fixed\""));
    assertTrue(both.contains("{\"when\":\"2026-11-27T09:40\",\"result\":\"fixed\",\"cause\":"));
    String late = run("2026-12-26", "", next, same).out();
    assertFalse(late.contains("2026-11-25T"), late);
    assertTrue(late.contains("2026-11-27T"), late);
    String other = run("2026-11-28", "", next, "--log", "visits.csv", "--fixture", "n04").out();
    assertTrue(other.contains("\"repeats\":[],"), other);
  }

  @Test
  void theEnvironmentMayNameTheLog() throws Exception {
    Map<String, String> variables = Map.of(DiagnoseLog.VARIABLE, "visits.csv");
    run("2026-11-25", variables, "", CLOSED, "--once");
    assertFalse(Files.exists(folder.resolve("visits.csv")), "a row without a fixture");
    run("2026-11-25", variables, "", CLOSED, "--once", "--fixture", "n03");
    assertEquals(1, visits().size());
  }

  @Test
  void aLogThatCannotBeWrittenLeavesTheSession() throws Exception {
    Files.writeString(folder.resolve("visits.csv"), "a,b\n");
    CommandRun run =
        run(
            "2026-11-25",
            "none\n\n\n\n\n",
            CLOSED,
            "--session",
            "s.txt",
            "--log",
            "other/visits.csv",
            "--fixture",
            "n03");
    assertEquals(1, run.status());
    assertEquals(
        folder.resolve("other/visits.csv")
            + ": could not be written, nothing was added: there is no such file or folder\n",
        run.err());
    assertTrue(Files.readString(folder.resolve("s.txt")).contains("tried: diaphragm-kit worked"));
    CommandRun foreign =
        run("2026-11-25", "", CLOSED, "--json", "--log", "visits.csv", "--fixture", "n03");
    assertEquals(1, foreign.status());
    assertTrue(foreign.err().contains("visits.csv:1:1: is no visit log"), foreign.err());
    assertEquals("a,b\n", Files.readString(folder.resolve("visits.csv")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--log visits.csv | --log needs --fixture ID, the fixture that the visit is to",
        "--log v --fixture n --minutes x | --minutes takes a number, not x",
        "--log v --fixture n --minutes -1 | --minutes takes 0 to 10000, not -1",
        "--log v --fixture n --before 410 | --before takes a name, a number and a unit,",
        "--log v --fixture n --after static | --after takes a name, a number and a unit,",
        "--tried descale-all | --tried: unknown remedy descale-all; ",
        "--over nobody | --over takes "
      })
  void whatIsWrongIsSaid(String options, String message) {
    CommandRun run = run("2026-11-25", "", CLOSED, ("--once " + options).split(" "));
    assertEquals(2, run.status());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().startsWith(message), run.err());
  }

  @ParameterizedTest
  @CsvSource({
    "static 410 kPa,true",
    "volume 6 L,true",
    "'hot water 43,5 C',true",
    "flow at the spout 5.7 L/min,true",
    "410 kPa,false",
    "static,false",
    "static 410,false",
    "'',false"
  })
  void aFigureHasANameANumberAndAUnit(String text, boolean is) {
    assertEquals(is, DiagnoseLog.isFigure(text));
  }
}

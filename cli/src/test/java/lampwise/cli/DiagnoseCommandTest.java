package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DiagnoseCommandTest {
  @TempDir Path folder;

  private CommandRun run(String input, String... more) {
    List<String> args = new ArrayList<>(List.of("diagnose"));
    args.addAll(List.of(more));
    return CommandRun.Setting.in(folder).run(input, args.toArray(String[]::new));
  }

  private CommandRun dead(String input, String... more) {
    List<String> args = new ArrayList<>(List.of("--kind", "urinal", "--complaint", "dead"));
    args.addAll(List.of(more));
    return run(input, args.toArray(String[]::new));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--json|--kind and --complaint are needed; --list shows the words",
        "--kind bath --once|--kind takes water-closet, urinal, faucet, not bath",
        "--kind urinal --complaint dead --found bowl --once"
            + "|--found takes CHECK=ANSWER, such as bowl=clear, not bowl",
        "--kind urinal --complaint dead --found bow=clear --once"
            + "|--found: unknown check bow; near: bowl",
        "--kind urinal --complaint dead --found bowl=empty --once"
            + "|--found: bowl has no answer empty; known: clear, slow, full, ?",
        "--kind urinal --complaint dead --found aerator=good --once"
            + "|the check aerator is not for this kind of fixture or power",
        "--kind urinal --complaint dead --saw nothing --watched 30 --once"
            + "|a recording needs the unit's code sheet: --sheet FILE",
        "--kind urinal --complaint dead --sheet demo --saw nothing --watched 30 --once"
            + "|the sheet is invented and says nothing of a real unit; --demo takes it for trying",
        "--kind urinal --complaint dead --sheet demo --demo -"
            + "|diagnose takes answers on standard input; name the recording",
        "--kind urinal --complaint temperature --once"
            + "|the guide has no cause for the complaint temperature of a urinal",
        "--kind urinal --complaint dead --tried moon --once|--tried: unknown remedy moon; known: ",
        "--kind urinal --complaint dead --have hammer --once"
            + "|--have: no remedy takes a part hammer; known: ",
        "--site none.yaml --list|none.yaml: no such file; expected the file of a site",
      })
  void wrongUseIsOneLine(String args, String said) {
    CommandRun run = run("", args.split(" ", -1));
    assertEquals(2, run.status());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().startsWith(said), run.err());
    assertEquals("", run.out());
  }

  @Test
  void theAnswersMayBePipedAndEndWhereTheyEnd() {
    CommandRun run = dead("none\nclear\nflushes\n", "--power", "cells");
    assertEquals(0, run.status());
    assertTrue(run.out().contains("CHECK: "), run.out());
    assertTrue(run.out().endsWith("not kept; --session FILE keeps it.\n"), run.out());
    run.outLines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void kindAndComplaintAreAskedForWhereTheyAreMissing() {
    CommandRun run = run("basin\nfaucet\ndead\nquit\n");
    assertEquals(0, run.status());
    assertTrue(run.out().startsWith("Kind (water-closet, urinal, faucet):\nKind ("), run.out());
    assertTrue(run.out().contains("[danger]"), run.out());
  }

  @Test
  void backAsksTheLastQuestionAgain() {
    List<String> lines = dead("none\nback\n").outLines();
    long asked = lines.stream().filter(line -> line.contains("[danger]")).count();
    assertEquals(2, asked, lines.toString());
    assertTrue(dead("back\n").out().contains("This is the first question."));
  }

  @Test
  void whatIsNotKnownIsNotAskedAgain() {
    CommandRun run = dead("none\nclear\n?\n?\n?\n?\n?\n?\n", "--power", "cells");
    List<String> asked = run.outLines().stream().filter(l -> l.startsWith("CHECK")).toList();
    assertEquals(asked.stream().distinct().toList(), asked);
    assertFalse(run.out().contains("Not understood"), run.out());
  }

  @Test
  void withoutALookIntoTheBowlNothingFlushes() {
    CommandRun run = dead("none\n?\n", "--power", "cells");
    assertTrue(run.out().contains("HAND OVER: to "), run.out());
    assertTrue(
        run.out().replaceAll("\\s+", " ").contains("nothing may flush before the bowl"), run.out());
  }

  @Test
  void aWrongWordIsAskedAgainAndCausesCanBeSeen() {
    CommandRun run = dead("perhaps\ncauses\nnone\n", "--power", "cells");
    assertTrue(run.out().contains("Not understood: perhaps."), run.out());
    assertTrue(run.out().contains("17 %  Cells run down: "), run.out());
  }

  @Test
  void aVisitCanBeLeftAndGoneOnWith() throws Exception {
    CommandRun left = dead("none\nquit\n", "--session", "s.txt", "--power", "mains");
    assertTrue(left.out().endsWith("The visit is kept in s.txt; call it again to go on.\n"));
    assertEquals(
        List.of(
            "lampwise-session: 1",
            "kind: urinal",
            "power: mains",
            "complaint: dead",
            "may: anyone, technician",
            "found: danger none"),
        Files.readAllLines(folder.resolve("s.txt")));
    CommandRun on = run("quit\n", "--session", "s.txt");
    assertFalse(on.out().contains("[danger]"), on.out());
    CommandRun twice = dead("", "--session", "s.txt");
    assertEquals(2, twice.status());
    assertEquals(
        "--kind stands in the session already; leave it out or name a new file\n", twice.err());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hello|s.txt:1:1: is no session; its first line must be lampwise-session: 1",
        "lampwise-session: 1;kind: urinal;complaint: dead;found: bowl"
            + "|s.txt:4:1: the value of found cannot be understood: bowl",
        "lampwise-session: 1;kind: urinal;complaint: dead;found: bowl moon"
            + "|s.txt:4:1: the check bowl has no answer moon",
        "lampwise-session: 1;kind: tub;complaint: dead|s.txt:1:1: kind cannot be tub",
        "lampwise-session: 1;kind: urinal;complaint: dead;lamp: power-low x"
            + "|s.txt:4:1: the value of lamp cannot be understood: power-low x",
        "lampwise-session: 1;kind: urinal;complaint: dead;colour: red"
            + "|s.txt:4:1: unknown key colour",
      })
  void aSpoiledSessionIsRefusedWithItsLine(String text, String said) throws Exception {
    Files.writeString(folder.resolve("s.txt"), text.replace(";", "\n") + "\n");
    CommandRun run = run("", "--session", "s.txt");
    assertEquals(2, run.status());
    assertEquals(said + "\n", run.err());
  }

  @Test
  void theLampIsWeighedAndAnInventedSheetIsNamedFirst() {
    String[] lamp = {
      "--power",
      "cells",
      "--sheet",
      "demo",
      "--demo",
      "--saw",
      "1 blink every 3.1 s",
      "--watched",
      "60",
      "--session",
      "lamp.txt"
    };
    CommandRun run = dead("causes\n", lamp);
    assertTrue(run.out().startsWith("[invented sheet] "), run.out());
    CommandRun again = run("", "--session", "lamp.txt", "--json");
    assertEquals(2, again.status(), "an invented sheet is refused later too");
    CommandRun json = run("", "--session", "lamp.txt", "--json", "--demo");
    assertTrue(json.out().contains("\"invented\":true"), json.out());
    assertTrue(json.out().contains("\"causes\":[{\"cause\":\"cells-low\""), json.out());
  }

  @Test
  void jsonSaysWhatToDoNext() {
    CommandRun run =
        dead(
            "",
            "--found",
            "danger=none",
            "--found",
            "bowl=clear",
            "--found",
            "override=runs",
            "--json");
    assertEquals(0, run.status());
    assertEquals(1, run.outLines().size());
    assertTrue(run.out().contains("\"next\":{\"do\":\"make-safe\",\"id\":\"running\""), run.out());
    assertTrue(run.out().contains("\"cautions\":[\"Know where the riser valve is"), run.out());
  }

  @Test
  void theListNamesWhatTheOptionsTake() {
    CommandRun run = run("", "--list", "--kind", "faucet", "--complaint", "temperature");
    assertEquals(0, run.status());
    for (String line :
        List.of("Complaints", "Recent work", "Causes", "Checks", "Remedies", "Parts", "Dangers")) {
      assertTrue(run.outLines().contains(line), line);
    }
    assertTrue(run.out().contains("  mixer-failed "), run.out());
    assertFalse(run.out().contains("  diaphragm-worn "), run.out());
    run.outLines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void theCautionsStandBeforeTheFirstStep() {
    CommandRun run = run("", "--kind", "urinal", "--complaint", "runs-on", "--once");
    List<String> lines = run.outLines();
    assertEquals("MAKE SAFE: Water runs and does not stop", lines.get(0));
    int caution = indexOf(lines, "  ! ");
    int step = indexOf(lines, "  1. ");
    assertTrue(caution > 0 && caution < step, run.out());
  }

  private static int indexOf(List<String> lines, String start) {
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(start)) {
        return i;
      }
    }
    return -1;
  }
}

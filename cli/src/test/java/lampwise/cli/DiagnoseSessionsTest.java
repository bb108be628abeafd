package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.file.GuideReader;
import lampwise.file.SessionFile;
import lampwise.file.VisitLog;
import lampwise.service.Act;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.Remedy;
import lampwise.service.Step;
import lampwise.service.Visit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whole visits, typed as a technician would: what is asked is answered as the fault at hand has it,
 * whatever the order. Common practice, no source.
 */
class DiagnoseSessionsTest {
  private static final int MOST_ANSWERS = 40;
  private static final String FIXTURE = "north-07";

  /** Parts as offered, figures before and after, minutes, a note. */
  private static final String CLOSING =
      "\nstatic 410 kPa\nstatic 400 kPa; volume 6 L\n35\nafter the ferry left\n";

  @TempDir Path folder;

  /** What was printed by the whole visit, and the visit itself. */
  private record Whole(String out, Diagnosis visit) {
    List<String> asked() {
      List<String> ids = new ArrayList<>();
      for (String line : out.lines().toList()) {
        boolean step =
            line.startsWith("CHECK:")
                || line.startsWith("REPAIR:")
                || line.startsWith("MAKE SAFE:");
        boolean bracket = line.endsWith("]") && line.contains("[");
        if (step && line.startsWith("MAKE")) {
          ids.add("safe");
        } else if (bracket && !line.contains("[ ]")) {
          ids.add(line.substring(line.lastIndexOf('[') + 1, line.length() - 1));
        }
      }
      return ids;
    }

    List<String> tried() {
      return visit.acts().stream()
          .filter(Act.Tried.class::isInstance)
          .map(act -> ((Act.Tried) act).remedy())
          .toList();
    }
  }

  /** Goes on with a session, answer by answer, until it is closed. */
  private Whole visit(Map<String, String> answers, String mends, String... options)
      throws Exception {
    StringBuilder out = new StringBuilder();
    String[] first = with(options, "--session", "visit.txt");
    CommandRun.Setting here = CommandRun.Setting.in(folder);
    CommandRun run = here.run("", first);
    assertEquals(0, run.status(), run.err());
    for (int i = 0; i < MOST_ANSWERS; i++) {
      Diagnosis visit = read();
      Step step = visit.next();
      String answer = answer(step, answers, mends);
      run =
          here.run(
              answer + "\n" + (closes(step, answer) ? CLOSING : ""),
              "diagnose",
              "--demo",
              "--session",
              "visit.txt",
              "--fixture",
              FIXTURE,
              "--log",
              "visits.csv");
      assertEquals(0, run.status(), run.err());
      assertFalse(run.out().contains("Not understood"), run.out());
      cautionsComeFirst(step, run.out().split("\n\n", 2)[0]);
      out.append(run.out().split("\n\n", 2)[0]).append('\n');
      run.outLines().forEach(line -> assertTrue(line.length() <= 80, line));
      if (run.out().contains("CLOSE: ")) {
        out.append(run.out().substring(run.out().indexOf("CLOSE: ")));
        assertRow();
        return new Whole(out.toString(), read());
      }
    }
    throw new AssertionError("not closed after " + MOST_ANSWERS + " answers: " + out);
  }

  /** Every caution of a repair stands before its first numbered line. */
  private static void cautionsComeFirst(Step step, String shown) {
    if (!(step instanceof Step.Mend mend)) {
      return;
    }
    List<String> lines = shown.lines().toList();
    int first = 0;
    while (first < lines.size() && !lines.get(first).startsWith("  1. ")) {
      first++;
    }
    assertTrue(first < lines.size(), shown);
    List<String> marks = lines.stream().filter(line -> line.startsWith("  ! ")).toList();
    assertEquals(mend.cautions().size(), marks.size(), shown);
    for (int i = 0; i < lines.size(); i++) {
      assertTrue(!lines.get(i).startsWith("  ! ") || i < first, shown);
    }
  }

  /** The bowl was found clear before anything that flushes; says how much flushed. */
  private static int flushedBehindTheBowl(Whole whole) {
    Guide guide = whole.visit().guide();
    boolean clear = false;
    int flushed = 0;
    for (Act act : whole.visit().acts()) {
      boolean flushes = false;
      if (act instanceof Act.Found found) {
        clear |= found.finding().equals(new Finding("bowl", "clear"));
        flushes = guide.check(found.finding().check()).orElseThrow().flushes();
      } else if (act instanceof Act.Tried tried) {
        flushes = guide.remedy(tried.remedy()).orElseThrow().flushes();
      }
      assertTrue(clear || !flushes, act + " before the bowl: " + whole.out());
      flushed += flushes ? 1 : 0;
    }
    return flushed;
  }

  /** The visit stands in one row of the log, with what was answered while closing. */
  private void assertRow() throws Exception {
    List<Visit> rows = VisitLog.read(folder.resolve("visits.csv")).visits();
    assertEquals(1, rows.size());
    Visit row = rows.get(0);
    Diagnosis closed = read();
    assertEquals(FIXTURE, row.fixture());
    assertEquals(((Step.Close) closed.next()).outcome(), row.outcome());
    assertEquals(Optional.of(closed.situation().complaint()), row.complaint());
    assertFalse(row.findings().isEmpty());
    assertEquals(List.of("static 410 kPa"), row.before());
    assertEquals(List.of("static 400 kPa", "volume 6 L"), row.after());
    assertEquals(OptionalDouble.of(35), row.done().minutes());
    assertEquals("after the ferry left", row.note());
  }

  private Diagnosis read() throws Exception {
    byte[] content = Files.readAllBytes(folder.resolve("visit.txt"));
    return SessionFile.read("visit.txt", content, GuideReader.builtIn());
  }

  private static String answer(Step step, Map<String, String> answers, String mends) {
    if (step instanceof Step.Look look) {
      return answers.getOrDefault(look.check().id(), usual(look));
    }
    if (step instanceof Step.Mend mend) {
      return fixes(mend.remedy(), mends) ? "yes" : "no";
    }
    return "yes";
  }

  private static boolean closes(Step step, String answer) {
    return step instanceof Step.HandOver || (step instanceof Step.Mend && answer.equals("yes"));
  }

  private static boolean fixes(Remedy remedy, String cause) {
    return remedy.fixes().getOrDefault(cause, 0.0) >= 0.5;
  }

  /** What is usual where the fault does not show. */
  private static String usual(Step.Look look) {
    List<Double> usual = look.check().usual();
    int best = 0;
    for (int i = 1; i < usual.size(); i++) {
      best = usual.get(i) > usual.get(best) ? i : best;
    }
    return Integer.toString(best + 1);
  }

  private static String[] with(String[] options, String... more) {
    List<String> all = new ArrayList<>(List.of("diagnose"));
    all.addAll(List.of(options));
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  private static Map<String, String> answers(String... pairs) {
    Map<String, String> answers = new HashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      answers.put(pairs[i], pairs[i + 1]);
    }
    return answers;
  }

  private static void before(List<String> order, String first, String second) {
    assertTrue(order.contains(first), first + " is missing: " + order);
    assertTrue(
        !order.contains(second) || order.indexOf(first) < order.indexOf(second),
        first + " must come before " + second + ": " + order);
  }

  @Test
  void deadUnit() throws Exception {
    Whole whole =
        visit(
            answers(
                "lamp-answers", "dark",
                "override", "nothing",
                "click", "none",
                "emitter", "nothing",
                "cells-load", "low",
                "cells-look", "right"),
            "cells-low",
            "--kind",
            "water-closet",
            "--power",
            "cells",
            "--complaint",
            "dead");
    assertTrue(whole.tried().contains("new-cells"), whole.out());
    before(whole.asked(), "bowl", "override");
    before(whole.asked(), "bowl", "new-cells");
    assertTrue(whole.out().contains("result: fixed"), whole.out());
    assertTrue(whole.out().contains("Housing shut, no lead pinched"), whole.out());
  }

  @Test
  void phantomFlush() throws Exception {
    Whole whole =
        visit(
            answers("when", "people", "view", "shiny", "tape", "quiet", "range", "right"),
            "reflector",
            "--kind",
            "water-closet",
            "--power",
            "cells",
            "--complaint",
            "phantom");
    assertTrue(
        whole.tried().contains("shield-view") || whole.tried().contains("set-range"), whole.out());
    assertTrue(flushedBehindTheBowl(whole) > 0, whole.out());
    assertTrue(whole.out().contains("result: fixed"), whole.out());
    assertTrue(whole.out().contains("No tape is left on the window"), whole.out());
  }

  @Test
  void runsOn() throws Exception {
    Whole whole =
        visit(
            answers("valve-inside", "grit", "reopen", "runs"),
            "valve-grit",
            "--kind",
            "urinal",
            "--power",
            "cells",
            "--complaint",
            "runs-on",
            "--recent",
            "water-off");
    assertEquals("safe", whole.asked().get(0), "the stop is closed before any question");
    before(whole.asked(), "stop-holds", whole.tried().get(0));
    assertTrue(whole.out().contains("result: "), whole.out());
    assertTrue(
        whole.out().contains("The stop holds, and stands open at its old number of turns"),
        whole.out());
  }

  @Test
  void lampWarnsButTheUnitWorks() throws Exception {
    Whole whole =
        visit(
            answers("cells-date", "old", "cells-load", "low"),
            "cells-low",
            "--kind",
            "urinal",
            "--power",
            "cells",
            "--complaint",
            "lamp-only",
            "--sheet",
            "demo",
            "--demo",
            "--saw",
            "1 blink every 3.1 s",
            "--watched",
            "60");
    assertEquals(List.of("new-cells"), whole.tried(), whole.out());
    assertTrue(flushedBehindTheBowl(whole) > 0, whole.out());
    assertTrue(whole.out().contains("Clears the warning: "), whole.out());
    assertTrue(whole.visit().acts().stream().anyMatch(Act.Lamp.class::isInstance));
    assertTrue(whole.out().contains("The lamp was read again"), whole.out());
  }

  @Test
  void weakFlushAfterADiaphragmChange() throws Exception {
    String[] options = {
      "--kind", "water-closet", "--power", "cells", "--complaint", "weak", "--recent", "valve"
    };
    Whole whole = visit(answers("stop-turns", "was-throttled"), "stop-throttled", options);
    assertEquals("open-stop", whole.tried().get(0), whole.out());
    before(whole.asked(), "bowl", "breaker-watch");
    before(whole.asked(), "bowl", "open-stop");
    assertTrue(whole.out().contains("result: fixed"), whole.out());
    String start = CommandRun.Setting.in(folder).run("", with(options, "--json")).out();
    assertTrue(
        start.indexOf("stop-throttled") < start.indexOf("not-seated")
            && start.indexOf("not-seated") < start.indexOf("diaphragm-worn"),
        "recent work first: " + start);
  }

  @Test
  void faucetWithoutHotWater() throws Exception {
    Whole whole =
        visit(
            answers(
                "pipes-warm", "hot-cold",
                "thermometer", "cold",
                "neighbours", "fine"),
            "side-lost",
            "--kind",
            "faucet",
            "--power",
            "mains",
            "--complaint",
            "temperature");
    assertTrue(whole.tried().contains("open-side"), whole.out());
    before(whole.asked(), "stop-holds", "open-side");
    assertTrue(whole.out().contains("The temperature was measured at the spout"), whole.out());
    assertTrue(whole.out().contains("result: fixed"), whole.out());
  }
}

package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwise.file.LampwiseLog;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.service.Fixture;
import lampwise.sheet.FixtureKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RoundTest {
  private static final String HOSTILE = "<img src=x onerror=alert(1)>\"'&";

  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.Setting.in(folder).run("", args);
  }

  private void write(String name, String text) throws IOException {
    Path path = folder.resolve(name);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private static String log(String fixture, double every) {
    StringBuilder log = new StringBuilder("lampwise-log: 1\n");
    log.append(fixture.isEmpty() ? "" : "fixture: " + fixture + "\n").append("window: 0 to 45 s\n");
    for (double at = 1; at < 45; at += every) {
      log.append("on ").append(Math.round(at * 100) / 100.0).append('\n');
    }
    return log.toString();
  }

  private void day() throws IOException {
    write("list.csv", "id,kind,power,sheet\nn-1,urinal,cells,demo\nn-10,urinal,cells,demo\n");
    write("day/N-10_idle.log", log("", 3.1));
    write("day/anything.log", log("n-1", 3.7));
    write("day/n-1 and n-2.log", log("n-3", 3.1));
    write("day/broken.log", "lampwise-log: 1\non 4 off 3\n");
    write("day/notes.md", "not a recording");
    write("day/.hidden", "not a recording");
  }

  @Test
  void theDemonstrationHasOneOfEach() {
    CommandRun run = run("round", "--demo");
    assertEquals(1, run.status());
    assertEquals("", run.err());
    List<String> lines = run.outLines();
    assertTrue(lines.get(0).startsWith("[invented sheet] Round of 2026-11-25"), run.out());
    assertTrue(lines.stream().allMatch(line -> line.length() <= Layout.WIDTH), run.out());
    for (String words :
        List.of(
            "18 fixtures, 17 readings; 9 jobs",
            "1. pier-04 (urinal, Pier hall, left urinal): runs-on",
            "  FIRST     make safe: Water runs and does not stop",
            "2. pier-03 (water-closet, Pier hall, stall 3, wide): dead",
            "  urgent    only-accessible, dead",
            "  repeat    2026-11-13: reset, watch; tried restart",
            "  - pier-02: undecided: ",
            "  - pier-05: undecided: ",
            "  - lounge-02: unlisted: ",
            "  - 3 x cell set (4 x LR6): pier-04, pier-01, deck-01",
            "  - deck-04, plumber: left on 2026-11-20: made safe",
            "  - deck-01 (water-closet, Car deck, stall 1)",
            "  - lobby-09.log: names the fixture lobby-09, not on the list",
            "  - crew-03.log: line 13, column 13: ")) {
      assertTrue(run.out().contains("\n" + words) || run.out().contains(words), words);
    }
    int cautions = run.out().indexOf("Before any work");
    assertTrue(cautions > 0 && cautions < run.out().indexOf("\n1. "), "cautions come first");
  }

  @Test
  void jsonHoldsToTheSchema() {
    CommandRun run = run("round", "--demo", "--json");
    assertEquals(1, run.outLines().size());
    assertEquals("", JsonSchema.ROUND.faults(run.out()), run.out());
    String spoiled = run.out().replace("\"do\":\"repair\"", "\"do\":\"guess\"");
    assertFalse(JsonSchema.ROUND.faults(spoiled).isEmpty());
  }

  @Test
  void threadsChangeNothing() {
    assertEquals(
        run("round", "--demo", "--json", "--threads", "1").out(),
        run("round", "--demo", "--json", "--threads", "7").out());
  }

  @Test
  void recordingsAreJoinedByWhatTheySayAndByTheirNames() throws IOException {
    day();
    CommandRun run = run("round", "day", "--fixtures", "list.csv", "--demo", "--csv");
    assertEquals(1, run.status(), run.err());
    List<String> rows = run.outLines();
    assertEquals(3, rows.size(), run.out());
    assertTrue(rows.get(1).contains(",n-1,") && rows.get(1).contains("sees-too-far"), run.out());
    assertTrue(rows.get(2).contains(",n-10,") && rows.get(2).contains("cells-low"), run.out());
    String text = run("round", "day", "--fixtures", "list.csv", "--demo").out();
    assertTrue(text.contains("n-1 and n-2.log: names the fixture n-3, not on the list"), text);
    assertTrue(text.contains("broken.log: line 2"), text);
    assertFalse(text.contains("notes.md"), text);
  }

  @Test
  void theLongestIdOfANameGoesFirst() {
    RoundJoin join = new RoundJoin(fixtures("a", "a-b", "north 7", "b-c"));
    assertEquals("a-b", joined(join, "x_A-B.csv"));
    assertEquals("north 7", joined(join, "2026 North 7 (2).txt"));
    assertEquals("none", joined(join, "north 77.txt"));
    assertEquals("none", joined(join, "a-b and b-c.txt"));
    assertEquals("a", joined(join, "a.txt"));
  }

  private static List<Fixture> fixtures(String... ids) {
    return Stream.of(ids)
        .map(
            id ->
                new Fixture(
                    id,
                    "",
                    FixtureKind.URINAL,
                    Optional.empty(),
                    "",
                    "",
                    "",
                    "",
                    false,
                    "",
                    "",
                    Optional.empty()))
        .toList();
  }

  private static String joined(RoundJoin join, String file) {
    BlinkLog log =
        new BlinkLog(Origin.named("x"), Marks.watched(0, 5), List.of(Blink.startingAt(1)));
    return join.of(file, log).fixture().map(fixture -> fixture.id()).orElse("none");
  }

  @Test
  void anInventedSheetNeedsToBeAskedFor() throws IOException {
    day();
    CommandRun run = run("round", "day", "--fixtures", "list.csv");
    assertEquals(2, run.status());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains("is invented"), run.err());
  }

  @Test
  void aFixtureWithoutASheetIsToldAtItsRecording() throws IOException {
    write("list.csv", "id,kind\nn-1,urinal\n");
    write("day/n-1.log", log("", 3.1));
    CommandRun run = run("round", "day", "--fixtures", "list.csv", "--day", "2026-11-25");
    assertEquals(1, run.status());
    assertTrue(run.out().contains("names no sheet for n-1; give --sheet FILE"), run.out());
  }

  @Test
  void wrongUseIsOneLineForEachFault() throws IOException {
    day();
    wrong("the list of fixtures is needed", "round", "day");
    wrong("which recordings is not said", "round", "--fixtures", "list.csv", "--demo");
    wrong("nowhere: no such folder", "round", "nowhere", "--fixtures", "list.csv", "--demo");
    wrong("--day takes a day", "round", "--demo", "--day", "25.11.2026");
    wrong("--json and --csv", "round", "--demo", "--json", "--csv");
    wrong("--threads takes a whole number", "round", "--demo", "--threads", "0");
    wrong("no such file", "round", "day", "--fixtures", "nolist.csv");
    wrong("--csv goes without --prepare", "round", "--demo", "--prepare", "--csv");
    write("bad.csv", "id,kind\nx,sink\n,urinal\n");
    assertEquals(2, run("round", "day", "--fixtures", "bad.csv").errLines().size());
  }

  private void wrong(String message, String... args) {
    CommandRun run = run(args);
    assertEquals(2, run.status(), run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
  }

  @Test
  void thePageNeedsNothingElse() throws IOException {
    assertEquals(1, run("round", "--demo", "--report", "r.html").status());
    String page = Files.readString(folder.resolve("r.html"));
    assertFalse(Pattern.compile("(?i)<script|<link|<img|url\\(|@import|src=").matcher(page).find());
    for (Matcher link = Pattern.compile("https?://[^\"]*").matcher(page); link.find(); ) {
      assertTrue(link.group().endsWith("/2000/svg"), link.group());
    }
    assertEquals(17, page.split("<svg ", -1).length - 2, "each recording once, one handed over");
    assertEquals(2, run("round", "--demo", "--report", "r.html").status());
    assertEquals(1, run("round", "--demo", "--report", "r.html", "--force").status());
  }

  @Test
  void cautionsStandBeforeSteps() throws IOException {
    run("round", "--demo", "--report", "r.html");
    String page = Files.readString(folder.resolve("r.html"));
    String job = page.substring(page.indexOf("id=\"job-8\""));
    int cautions = job.indexOf("<ul class=\"stop\">");
    assertTrue(cautions > 0 && cautions < job.indexOf("<ol>"), job);
  }

  @Test
  void handOversArePagesOfTheirOwn() throws IOException {
    assertEquals(1, run("round", "--demo", "--hand-over", "plumber").status());
    String page = Files.readString(folder.resolve("plumber/hand-over-deck-04.html"));
    assertTrue(page.contains("<h1>Hand-over to the plumber</h1>"), page);
    assertTrue(page.contains("stop closed, 3.5 turns; sign on the door"), page);
    assertTrue(page.contains("Car deck, red box"), page);
  }

  @Test
  void hostileNamesAreOnlyText() throws IOException {
    String cell = "\"=" + HOSTILE.replace("\"", "\"\"") + "\"";
    write(
        "list.csv",
        "id,kind,place,sheet,riser-valve,complaint\n"
            + cell
            + ",urinal,"
            + cell
            + ",demo,"
            + cell
            + ",dead\n");
    write(
        "day/x.log",
        LampwiseLog.write(
            List.of(
                new BlinkLog(
                    new Origin("x", Optional.of("=" + HOSTILE + "2"), List.of()),
                    Marks.watched(0, 5),
                    List.of(Blink.startingAt(1))))));
    CommandRun run =
        run("round", "day", "--fixtures", "list.csv", "--demo", "--csv", "--report", "r.html");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.outLines().get(1).startsWith("1,\"'=<img"), run.out());
    String page = Files.readString(folder.resolve("r.html"));
    assertFalse(page.contains("<img"), page);
    assertTrue(page.contains("&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;"), page);
  }

  @Test
  void preparesRouteKitAndCards() throws IOException {
    write(
        "list.csv",
        """
        id,place,kind,power,cells,sheet,last-cells,riser-valve,complaint
        c-1,"Crew corridor, left",faucet,cells,1 x CR-P2,basin.sheet.yaml,2023-01-02,,
        p-1,"Pier hall, basin",faucet,cells,1 x CR-P2,basin.sheet.yaml,2025-10-02,,
        c-2,"Crew corridor, right",faucet,cells,1 x CR-P2,basin.sheet.yaml,,cupboard B,runs-on
        """);
    Files.write(
        folder.resolve("basin.sheet.yaml"), RoundFiles.Demonstration.bytes("basin.sheet.yaml"));
    CommandRun run =
        run("round", "--prepare", "--fixtures", "list.csv", "--demo", "--report", "p.html");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.outLines().stream().allMatch(line -> line.length() <= 80), run.out());
    for (String words :
        List.of(
            "  1. Crew corridor: c-1, c-2 (runs-on)",
            "  2. Pier hall: p-1",
            "  - 2 x cell set (1 x CR-P2): c-1, c-2",
            "Card: Ferry terminal basin unit, green lamp",
            "  provoke: Hold a hand before the sensor for 5 s",
            "  - c-2: cupboard B")) {
      assertTrue(run.out().contains(words), words);
    }
    String page = Files.readString(folder.resolve("p.html"));
    assertEquals(2, page.split("<section>", -1).length - 1);
    assertFalse(page.contains("<script"), page);
  }
}

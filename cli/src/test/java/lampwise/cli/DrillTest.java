package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import lampwise.file.LampwiseLog;
import lampwise.file.SheetReader;
import lampwise.light.Recording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Whole runs of {@code drill}, good and bad. */
class DrillTest {
  private static final String PLAN = "<script type=\"application/json\" id=\"plan\">";

  @TempDir Path folder;
  private CommandRun.Setting here = CommandRun.Setting.in(Path.of(""));

  @BeforeEach
  void useFolder() {
    here = CommandRun.Setting.in(folder);
  }

  private CommandRun drill(String out, String... more) {
    List<String> words = new ArrayList<>(List.of("drill", "--sheet", "demo", "--out", out));
    words.addAll(List.of(more));
    return here.run("", words.toArray(String[]::new));
  }

  private Map<String, String> files(String out) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> paths = Files.list(folder.resolve(out))) {
      for (Path path : paths.toList()) {
        files.put(path.getFileName().toString(), Files.readString(path));
      }
    }
    return files;
  }

  static JsonNode plan(String page) {
    int start = page.indexOf(PLAN) + PLAN.length();
    String json = page.substring(start, page.indexOf("</script>", start));
    assertTrue(StandardCharsets.US_ASCII.newEncoder().canEncode(json), json);
    return new ObjectMapper().readTree(json);
  }

  @Test
  void writesPagePaperRecordingsChartsAndTruths() throws IOException {
    CommandRun run = drill("new/course", "--level", "4", "--seed", "7");
    assertEquals(0, run.status(), run.err());
    assertEquals("", run.err());
    assertTrue(run.outLines().get(0).endsWith("  [invented sheet]"), run.out());
    Map<String, String> files = files("new/course");
    assertEquals(2 + 2 * 12 + 1, files.size(), files.keySet().toString());
    assertEquals(12, plan(files.get("drill.html")).get("cases").size());
    List<String> truths = files.get("truth.jsonl").lines().toList();
    assertEquals(12, truths.size());
    for (int i = 1; i <= 12; i++) {
      String name = (i < 10 ? "case-0" : "case-") + i;
      byte[] log = files.get(name + ".log").getBytes(StandardCharsets.UTF_8);
      Recording recording =
          Witness.recording(new String(log, StandardCharsets.UTF_8).lines().toList());
      assertEquals(name, recording.origin().fixture().orElseThrow());
      assertTrue(recording.window().isPresent());
      JsonNode truth = new ObjectMapper().readTree(truths.get(i - 1));
      JsonNode unit = plan(files.get("drill.html")).get("cases").get(i - 1);
      int state = unit.get("lights").get(0).get("state").asInt();
      assertEquals(
          SheetReader.demo().states().get(state).name(),
          truth.get("acts").get(0).get("state").asString());
      assertEquals(name + ".log", truth.get("recording").asString());
    }
  }

  @Test
  void theSameSeedGivesTheSameBytesAndAnotherOthers() throws IOException {
    assertEquals(0, drill("a", "--seed", "3", "--level", "3", "--seats", "3").status());
    assertEquals(0, drill("b", "--seed", "3", "--level", "3", "--seats", "3").status());
    assertEquals(0, drill("c", "--seed", "4", "--level", "3", "--seats", "3").status());
    assertEquals(files("a"), files("b"));
    assertNotEquals(files("a").get("drill.html"), files("c").get("drill.html"));
    assertNotEquals(files("a").get("sheet.html"), files("c").get("sheet.html"));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void everyLevelHoldsWhatItSays(int level) throws IOException {
    assertEquals(0, drill("x", "--level", Integer.toString(level), "--count", "40").status());
    JsonNode plan = plan(files("x").get("drill.html"));
    int own = 0;
    int dark = 0;
    for (JsonNode unit : plan.get("cases")) {
      JsonNode asked = unit.get("lights").get(0);
      String seen = asked.get("seen").asString();
      boolean lit = asked.get("cycle").size() > 0;
      double off = Math.abs(unit.get("clock").asDouble() - 1);
      boolean rest = seen.equals("always") || seen.equals("idle");
      dark += lit ? 0 : 1;
      own += rest ? 0 : 1;
      assertTrue(off <= List.of(0.005, 0.025, 0.05, 0.05).get(level - 1) + 1e-4, "clock " + off);
      assertTrue(level > 2 || (rest && lit), "at rest and lit: " + unit);
      assertTrue(level > 1 || !unit.get("fast").asBoolean());
      assertTrue(level == 4 || lit, "dark: " + unit);
    }
    assertTrue(level != 3 || own >= 15, own + " that show only then");
    assertTrue(level != 4 || dark >= 4, dark + " dark");
  }

  @Test
  void anInventedSheetIsSaidOnEveryPage() throws IOException {
    assertEquals(0, drill("x", "--seats", "2", "--count", "3").status());
    Map<String, String> files = files("x");
    assertTrue(plan(files.get("drill.html")).get("invented").asBoolean());
    String paper = files.get("sheet.html");
    assertEquals(4, paper.split("<section>", -1).length - 1, "two seats, two keys");
    assertEquals(4, paper.split("INVENTED SHEET", -1).length - 1);
    assertTrue(files.get("case-01.svg").contains("(invented sheet)"));
    Files.writeString(
        folder.resolve("own.sheet.yaml"), CaptureTest.hostileSheet().replace("hacked", "h"));
    CommandRun own = here.run("", "drill", "--sheet", "own.sheet.yaml", "--out", "own");
    assertEquals(0, own.status(), own.err());
    assertFalse(own.out().contains("invented"));
    assertFalse(files("own").get("sheet.html").contains("INVENTED"));
  }

  @Test
  void everySeatHasCasesOfItsOwnAndItsKey() throws IOException {
    assertEquals(0, drill("x", "--seats", "3", "--count", "5", "--level", "2").status());
    String[] sections = files("x").get("sheet.html").split("<section>", -1);
    assertEquals(7, sections.length);
    for (int seat = 1; seat <= 3; seat++) {
      String questions = sections[seat];
      String key = sections[seat + 3];
      assertTrue(questions.contains("Read the lamp, seat " + seat + " of 3"));
      assertEquals(5, questions.split("<svg ", -1).length - 1);
      assertTrue(key.contains("Answer key, seat " + seat + " of 3"));
      assertEquals(6, key.split("<tr>", -1).length - 1);
      assertFalse(questions.contains("Two whole rounds"), "no answer beside the questions");
    }
    assertNotEquals(sections[1].substring(60), sections[2].substring(60));
  }

  /** On paper the fourth level cuts some strips short and leaves some darks without a check. */
  @Test
  void onPaperSomeCannotBeTold() throws IOException {
    assertEquals(0, drill("x", "--count", "60", "--level", "4").status());
    String key = files("x").get("sheet.html").split("<section>", -1)[2];
    assertTrue(key.contains("<b>watch longer (it would be "), key);
    assertTrue(key.contains("<b>undecided (resting or no-power; it is "), key);
  }

  @Test
  void oneStateIsEnough() throws IOException {
    Files.writeString(folder.resolve("h.sheet.yaml"), CaptureTest.hostileSheet());
    for (int level = 1; level <= 4; level++) {
      String out = "l" + level;
      CommandRun run =
          here.run("", "drill", "--sheet", "h.sheet.yaml", "--out", out, "--level", "" + level);
      assertEquals(0, run.status(), run.err());
      assertEquals(12, plan(files(out).get("drill.html")).get("cases").size());
    }
  }

  @Test
  void hostileTextsStayText() throws IOException {
    Files.writeString(folder.resolve("h.sheet.yaml"), CaptureTest.hostileSheet());
    assertEquals(0, here.run("", "drill", "--sheet", "h.sheet.yaml", "--out", "x").status());
    Map<String, String> files = files("x");
    String page = files.get("drill.html");
    assertEquals(2, page.split("<script", -1).length - 1, "script elements");
    assertEquals(CaptureTest.HOSTILE.replace("\u2028", ""), plan(page).get("title").asString());
    assertFalse(files.get("sheet.html").contains("<script"));
    assertTrue(files.get("sheet.html").contains("&lt;script&gt;"));
  }

  @Test
  void whatIsThereStaysUnlessForced() throws IOException {
    Files.createDirectory(folder.resolve("x"));
    Files.writeString(folder.resolve("x/case-02.log"), "mine");
    CommandRun refused = drill("x");
    assertEquals(2, refused.status());
    assertEquals("x: holds case-02.log already; --force writes over it\n", refused.err());
    assertEquals(Map.of("case-02.log", "mine"), files("x"));
    assertEquals(0, drill("x", "--force").status());
    assertTrue(files("x").get("case-02.log").startsWith("lampwise-log: 1"));
  }

  @Test
  void whatCannotBeWrittenLeavesNothing() throws IOException {
    Files.writeString(folder.resolve("file"), "");
    CommandRun below = drill("file/x");
    assertEquals(1, below.status());
    assertEquals(1, below.errLines().size(), below.err());
    assertTrue(below.err().startsWith("file/x: cannot be written"), below.err());
    // A file that stands where no file can be replaced: nothing made stays.
    Files.createDirectory(folder.resolve("y"));
    Files.createSymbolicLink(folder.resolve("y/truth.jsonl"), Path.of("no/such/place"));
    CommandRun half = drill("y", "--force");
    assertEquals(1, half.status());
    try (Stream<Path> left = Files.list(folder.resolve("y"))) {
      assertEquals(1, left.count());
    }
  }

  @Test
  void wrongUseIsOneLine() throws IOException {
    Files.writeString(folder.resolve("file"), "");
    Files.createDirectories(folder.resolve("d/sheet.html"));
    wrong("which sheet is not said; give --sheet FILE or", "drill", "--out", "x");
    wrong("where to write is not said; give --out DIR", "drill", "--sheet", "demo");
    wrong("file: is a file; --out takes a folder", "drill", "--sheet", "demo", "--out", "file");
    wrong("d: holds a folder named sheet.html", "drill", "--sheet", "demo", "--out", "d");
    wrong("\"\": is not the name of a folder", "drill", "--sheet", "demo", "--out", "");
    for (String wrong : List.of("0", "5", "-1", "two", "")) {
      wrong(
          "--level takes a whole number from 1 to 4, not ",
          "drill",
          "--sheet",
          "demo",
          "--out",
          "x",
          "--level",
          wrong);
    }
    wrong(
        "--count takes a whole number from 1 to 200",
        "drill",
        "--sheet",
        "demo",
        "--out",
        "x",
        "--count",
        "201");
    wrong(
        "--seats takes a whole number from 1 to 100",
        "drill",
        "--sheet",
        "demo",
        "--out",
        "x",
        "--seats",
        "0");
    wrong("--seed takes", "drill", "--sheet", "demo", "--out", "x", "--seed", "x");
    assertFalse(Files.exists(folder.resolve("x")));
  }

  private void wrong(String message, String... args) {
    CommandRun run = here.run("", args);
    assertEquals(2, run.status(), run.err());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
  }

  @Test
  void helpNamesEachOption() {
    CommandRun run = here.run("", "drill", "--help");
    assertEquals(0, run.status());
    for (String option :
        List.of("--sheet", "--count", "--level", "--seed", "--seats", "--out", "--force")) {
      assertTrue(run.out().contains(option), run.out());
    }
    assertTrue(run.outLines().stream().allMatch(line -> line.length() <= 80), run.out());
  }

  /**
   * The pages ask for nothing from outside, and name nothing there but the language of pictures.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {"://", " src=", "@import", "url(", "fetch(", "XMLHttp", "WebSocket", "{{"})
  void nothingComesFromOutside(String sign) throws IOException {
    assertEquals(0, drill("x", "--count", "2").status());
    for (String name : List.of("drill.html", "sheet.html")) {
      String page = files("x").get(name).replace("http://www.w3.org/2000/svg", "");
      assertFalse(page.contains(sign), name + " " + sign);
      assertTrue(page.contains("content=\"default-src 'none';"), "the page's own rule");
    }
  }

  /** A log is read again as it was written. */
  @Test
  void theRecordingsAreLogs() throws Exception {
    assertEquals(0, drill("x", "--level", "3").status());
    for (Map.Entry<String, String> file : files("x").entrySet()) {
      if (file.getKey().endsWith(".log")) {
        List<Recording> read =
            LampwiseLog.read(file.getKey(), file.getValue().getBytes(StandardCharsets.UTF_8));
        assertEquals(file.getValue(), LampwiseLog.write(read));
      }
    }
  }
}

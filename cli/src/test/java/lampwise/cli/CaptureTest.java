package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Whole runs of {@code capture}, good and bad. */
class CaptureTest {
  /** What would end the script element, start another one, or end the string. */
  static final String HOSTILE =
      "</script><script>window.hacked=1</script><!--\"'\\&{{plan}}$1\u2028é";

  private static final String PLAN = "<script type=\"application/json\" id=\"plan\">";

  @TempDir Path folder;
  private CommandRun.Setting here = CommandRun.Setting.in(Path.of(""));

  @BeforeEach
  void useFolder() {
    here = CommandRun.Setting.in(folder);
  }

  /** A sheet whose texts are hostile, as YAML. */
  static String hostileSheet() {
    String text = "'" + HOSTILE.replace("'", "''").replace("\u2028", "") + "'";
    return """
        lampwise-sheet: 1
        title: %s
        basis: label
        states:
          cells-low:
            rhythm: 1 blink every 20 s
            means: %s
            condition: power-low
            seen: idle
        """
        .formatted(text, text);
  }

  @Test
  void writesOnePageAndSaysWhere() throws IOException {
    CommandRun run = here.run("", "capture");
    assertEquals(new CommandRun(0, "written to capture.html; open it on the phone\n", ""), run);
    assertTrue(page("capture.html").startsWith("<!DOCTYPE html>"));
    assertEquals("", plan("capture.html").get("fixture").asString());
    assertTrue(plan("capture.html").get("sheet").isNull());

    CommandRun demo = here.run("", "capture", "--sheet", "demo", "--out", "demo.html");
    assertEquals(0, demo.status(), demo.err());
    assertEquals("written to demo.html; open it on the phone  [invented sheet]\n", demo.out());
    JsonNode sheet = plan("demo.html").get("sheet");
    assertTrue(sheet.get("invented").asBoolean());
    assertEquals(33, sheet.get("watchSeconds").asInt());
    assertEquals(14, sheet.get("states").size());
    assertEquals("1 blink every 3.1 s", sheet.get("states").get(0).get("rhythm").asString());
    assertEquals("", sheet.get("states").get(0).get("when").asString());
    assertEquals("somebody in range", sheet.get("states").get(3).get("when").asString());
  }

  @Test
  void theVariableNamesTheSheetToo() throws IOException {
    CommandRun run =
        new CommandRun.Setting(folder, Map.of("LAMPWISE_SHEET", "demo"), false).run("", "capture");
    assertEquals(0, run.status(), run.err());
    assertFalse(plan("capture.html").get("sheet").isNull());
  }

  @Test
  void standardOutputIsTheSamePage() throws IOException {
    CommandRun run = here.run("", "capture", "--fixture", "north-07", "--out", "-");
    assertEquals(0, run.status(), run.err());
    assertEquals("", run.err());
    here.run("", "capture", "--fixture", "north-07");
    assertEquals(page("capture.html"), run.out());
    assertFalse(Files.exists(folder.resolve("-")));
  }

  @Test
  void whatIsThereStaysUnlessForced() throws IOException {
    Path there = folder.resolve("capture.html");
    Files.writeString(there, "mine\n".repeat(20000));
    byte[] before = Files.readAllBytes(there);
    wrong("capture.html: is there already; --force writes over it", "capture");
    assertArrayEquals(before, Files.readAllBytes(there));
    assertEquals(0, here.run("", "capture", "--force").status());
    assertTrue(page("capture.html").startsWith("<!DOCTYPE html>"));
    assertFalse(page("capture.html").contains("mine\n"));
  }

  @Test
  void hostileTextsStayText() throws IOException {
    Files.writeString(folder.resolve("h.sheet.yaml"), hostileSheet());
    CommandRun run = here.run("", "capture", "--sheet", "h.sheet.yaml", "--fixture", HOSTILE);
    assertEquals(0, run.status(), run.err());
    String page = page("capture.html");
    assertEquals(2, page.split("<script", -1).length - 1, "script elements");
    assertEquals(2, page.split("</script", -1).length - 1, "ends of script elements");
    assertFalse(page.contains("hacked=1<"), page);
    JsonNode plan = plan("capture.html");
    assertEquals(HOSTILE, plan.get("fixture").asString());
    assertEquals(HOSTILE.replace("\u2028", ""), plan.get("sheet").get("title").asString());
    assertEquals(
        HOSTILE.replace("\u2028", ""),
        plan.get("sheet").get("states").get(0).get("means").asString());
    assertEquals("nobody in range", plan.get("sheet").get("states").get(0).get("when").asString());
    assertTrue(StandardCharsets.US_ASCII.newEncoder().canEncode(json(page)), json(page));
  }

  @Test
  void aFixtureIsOneLineOfEightyCharacters() throws IOException {
    assertEquals(0, here.run("", "capture", "--fixture", "  a\r\nwindow: 0\t\u0000 ").status());
    assertEquals("a window: 0", plan("capture.html").get("fixture").asString());
    String eighty = "\uD83D\uDEB0".repeat(80);
    assertEquals(0, here.run("", "capture", "--force", "--fixture", eighty).status());
    assertEquals(eighty, plan("capture.html").get("fixture").asString());
    wrong("--fixture takes at most 80 characters", "capture", "--fixture", eighty + "x");
  }

  @Test
  void wrongUseIsOneLine() throws IOException {
    Files.createDirectory(folder.resolve("sub"));
    wrong("sub: is a folder; --out takes the file to write", "capture", "--out", "sub");
    wrong("\"\": is a folder; --out takes the file to write", "capture", "--out", "");
    wrong("no/x.html: cannot be made; expected a path", "capture", "--out", "no/x.html");
    wrong("no.yaml: no such file; expected the file of a code", "capture", "--sheet", "no.yaml");
    wrong("Unmatched argument at index 0: 'FILE'", "capture", "FILE");
    wrong("Unknown option: '--json'", "capture", "--json");
    Files.writeString(folder.resolve("file"), "");
    CommandRun below = here.run("", "capture", "--out", "file/x.html");
    assertEquals(1, below.status());
    assertEquals("", below.out());
    assertEquals(1, below.errLines().size(), below.err());
    assertTrue(below.err().startsWith("file/x.html: cannot be written"), below.err());
  }

  @Test
  void faultsOfTheSheetAreSaidAndNothingIsWritten() throws IOException {
    Files.writeString(folder.resolve("bad.sheet.yaml"), "lampwise-sheet: 1\ntitle: x\nbasis: no\n");
    CommandRun run = here.run("", "capture", "--sheet", "bad.sheet.yaml");
    assertEquals(2, run.status());
    assertTrue(run.err().startsWith("bad.sheet.yaml:"), run.err());
    assertFalse(Files.exists(folder.resolve("capture.html")));
  }

  @Test
  void helpNamesEachOption() {
    CommandRun run = here.run("", "capture", "--help");
    assertEquals(0, run.status());
    for (String option : List.of("--sheet", "--fixture", "--out", "--force")) {
      assertTrue(run.out().contains(option), run.out());
    }
    assertTrue(run.outLines().stream().allMatch(line -> line.length() <= 80), run.out());
  }

  /** The page asks for nothing from outside, and names nothing there. */
  @ParameterizedTest
  @ValueSource(
      strings = {"://", " src=", "@import", "url(", "fetch(", "XMLHttp", "WebSocket", "{{"})
  void nothingComesFromOutside(String sign) {
    CommandRun run = here.run("", "capture", "--sheet", "demo", "--out", "-");
    assertFalse(run.out().contains(sign), sign);
    assertTrue(run.out().contains("content=\"default-src 'none'; "), "the page's own rule");
  }

  private void wrong(String message, String... args) {
    CommandRun run = here.run("", args);
    assertEquals(2, run.status(), run.err());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
  }

  private String page(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private JsonNode plan(String name) throws IOException {
    return new ObjectMapper().readTree(json(page(name)));
  }

  private static String json(String page) {
    int start = page.indexOf(PLAN) + PLAN.length();
    return page.substring(start, page.indexOf("</script>", start));
  }
}

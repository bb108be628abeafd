package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page of a round in a browser, with hostile names in it; skipped where there is none. */
class RoundLooksTest {
  private static final String HOSTILE =
      "=1+1\"><script>document.title='run'</script><img src='x' onerror='document.title=1'>";

  @TempDir static Path folder;
  private static Optional<Phone> started = Optional.empty();

  private final Phone phone = started.orElseThrow();

  @BeforeAll
  static void start() throws IOException {
    started = Phone.start(folder);
    Assumptions.assumeTrue(started.isPresent(), "no chromium and chromedriver here");
    String cell = '"' + HOSTILE.replace("\"", "\"\"") + '"';
    String list =
        new String(RoundFiles.Demonstration.bytes("fixtures.csv"), StandardCharsets.UTF_8);
    Files.writeString(
        folder.resolve("fixtures.csv"),
        list.replace("Upper lounge ceiling", cell)
            + cell
            + ","
            + cell
            + ",urinal,cells,"
            + cell
            + ",demo,,,no,,"
            + cell
            + ",runs-on\n");
    for (String name : new RoundFiles.Demonstration().names()) {
      Path file = folder.resolve("day").resolve(name);
      Files.createDirectories(file.getParent());
      Files.write(file, RoundFiles.Demonstration.bytes(name));
    }
    Files.write(
        folder.resolve("basin.sheet.yaml"), RoundFiles.Demonstration.bytes("basin.sheet.yaml"));
    Files.write(folder.resolve("visits.csv"), RoundFiles.Demonstration.bytes("visits.csv"));
    CommandRun run =
        CommandRun.Setting.in(folder)
            .run(
                "",
                "round",
                "day",
                "--fixtures",
                "fixtures.csv",
                "--log",
                "visits.csv",
                "--day",
                "2026-11-25",
                "--demo",
                "--report",
                "r.html");
    assertEquals(1, run.status(), run.err());
  }

  @AfterAll
  static void stop() {
    started.ifPresent(Phone::close);
  }

  private void open() {
    phone.open(folder.resolve("r.html").toUri().toString());
  }

  @ParameterizedTest
  @CsvSource({"320, 568", "360, 740", "1200, 900"})
  void everythingFitsAndStandsOut(int width, int height) {
    phone.screen(width, height);
    open();
    assertEquals(width + " x " + height, phone.text(CaptureLooksTest.SIZE));
    assertFalse(phone.holds(CaptureLooksTest.WIDE));
    assertEquals(List.of(), phone.script(CaptureLooksTest.FAINT));
  }

  /** The least height of a letter in a strip on a phone, in pixels. */
  @Test
  void stripsCanBeReadOnAPhone() {
    phone.screen(360, 740);
    open();
    assertEquals(
        true,
        phone.script(
            "return Array.from(document.querySelectorAll('svg text'))"
                + ".every((e) => e.getBoundingClientRect().height >= 9)"));
  }

  @Test
  void nothingIsAskedForAndNothingRuns() {
    phone.requests();
    phone.console();
    open();
    assertEquals("Round of 2026-11-25", phone.text("return document.title"));
    assertEquals(List.of(), phone.requests().stream().filter(a -> !a.endsWith("/r.html")).toList());
    assertEquals(List.of(), phone.console());
    assertEquals(0L, phone.script("return document.querySelectorAll('script, img').length"));
    assertTrue(phone.text("return document.body.innerText").contains("=1+1\"><script>"));
  }

  /** Every colour is a grey, so that a black printer loses nothing. */
  @Test
  void everyColourIsAGrey() {
    open();
    assertEquals(
        List.of(),
        phone.script(
            """
            const found = [];
            for (const e of document.querySelectorAll('*')) {
              const style = getComputedStyle(e);
              for (const c of [style.color, style.backgroundColor, style.fill, style.stroke,
                  style.borderTopColor]) {
                const v = (c.match(/[\\d.]+/g) || []).slice(0, 3);
                if (new Set(v).size > 1) found.push(e.tagName + ' ' + c);
              }
            }
            return found;
            """));
  }

  @Test
  void eachHandOverIsOnePrintedPage() {
    open();
    int all = pages("");
    int withoutOvers = pages(".over { display: none; }");
    Object overs = phone.script("return document.querySelectorAll('.over').length");
    assertEquals(1L, overs);
    assertTrue(withoutOvers > 2, withoutOvers + " pages without it");
    assertEquals(withoutOvers + 1, all);
  }

  private int pages(String style) {
    phone.script(
        "const s = document.createElement('style'); s.textContent = arguments[0];"
            + "document.head.append(s)",
        style);
    Object data = phone.command("Page.printToPDF", Map.of("preferCSSPageSize", true)).get("data");
    String pdf =
        new String(Base64.getDecoder().decode(String.valueOf(data)), StandardCharsets.ISO_8859_1);
    return pdf.split("/Type /Page\\b(?!s)", -1).length - 1;
  }
}

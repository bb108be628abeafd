package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetCardTest {
  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.Setting.in(folder).run("", args);
  }

  @Test
  void holdsEveryStateWithAStripAndTheNeedfulWords() throws IOException {
    CommandRun run = run("sheet", "demo", "--print", "card.html");
    assertEquals(0, run.status(), run.err());
    assertEquals("card.html is written; print it on one side, A4 or Letter\n", run.out());
    String page = Files.readString(folder.resolve("card.html"));
    CodeSheet demo = SheetReader.demo();
    assertEquals(demo.states().size(), page.split("<svg ", -1).length - 1);
    for (LampState state : demo.states()) {
      assertTrue(page.contains("<b>" + state.name() + "</b>"), state.name());
      assertTrue(page.contains(RhythmStrip.escaped(state.means())), state.means());
    }
    for (String words :
        List.of(
            "INVENTED SHEET",
            "Basis: invented",
            "Watch 35 s at least: three rounds of the slowest state.",
            "Hold a hand before the sensor for 5 s, then stay away for 15 s: resting while nobody"
                + " is there; target-seen while a hand is there.",
            "Take the power off for 60 s, stand clear, and put it on again: starting after power",
            "stand clear when power comes back",
            "Look into the bowl before any flush",
            "never film in an open washroom")) {
      assertTrue(page.contains(words), words);
    }
  }

  @Test
  void needsNothingElse() {
    String page = SheetCard.page(SheetReader.demo());
    assertFalse(Pattern.compile("(?i)<script|<link|<img|url\\(|@import|src=").matcher(page).find());
    for (Matcher link = Pattern.compile("https?://[^\"]*").matcher(page); link.find(); ) {
      // The name of the language of pictures, which nothing fetches.
      assertTrue(link.group().endsWith("/2000/svg"), link.group());
    }
  }

  @Test
  void watchesThreeRoundsOfTheSlowestState() throws FileException {
    assertEquals(35, SheetCard.watchSeconds(SheetReader.demo()));
    assertEquals(30, SheetCard.watchSeconds(sheet("1 blink every 6 s", "m")));
    assertEquals(200, SheetCard.watchSeconds(sheet("1 blink per minute", "m")));
    assertEquals(30, SheetCard.watchSeconds(sheet("dark", "m")));
    assertEquals(70, SheetCard.watchSeconds(sheet("3 blinks then dark 62 s once", "m")));
  }

  @Test
  void hostileTextsAreOnlyText() throws FileException {
    String page =
        SheetCard.page(
            sheet("1 blink every 6 s", "</td><script>alert(1)</script><img src=x> & \\\"'"));
    assertFalse(page.contains("<script"), page);
    assertFalse(page.contains("<img"), page);
    assertTrue(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), page);
    assertTrue(page.contains("<title>&lt;/td&gt;"), page);
    assertFalse(page.contains("INVENTED"));
  }

  private static CodeSheet sheet(String rhythm, String text) throws FileException {
    String yaml =
        """
        lampwise-sheet: 1
        title: "%2$s"
        basis: label
        note: "%2$s"
        cells: "%2$s"
        lamp: "%2$s"
        states:
          a:
            rhythm: %1$s
            means: "%2$s"
            condition: other
            label-says: "%2$s"
            cleared-by: "%2$s"
            lamp: "x%2$s"
        """
            .formatted(rhythm, text);
    return SheetReader.read("f", yaml.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void writesOverNothingWithoutForce() throws IOException {
    Path card = folder.resolve("card.html");
    Files.writeString(card, "mine");
    CommandRun refused = run("sheet", "demo", "--print", "card.html");
    assertEquals(2, refused.status());
    assertEquals("card.html: exists already; --force writes over it\n", refused.err());
    assertEquals("mine", Files.readString(card));
    assertEquals(0, run("sheet", "demo", "--print", "card.html", "--force").status());
    assertTrue(Files.readString(card).startsWith("<!DOCTYPE html>"));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(1, files.count());
    }
  }

  @Test
  void aSheetWithFaultsHasNoCard() throws IOException {
    Files.writeString(folder.resolve("bad.yaml"), "lampwise-sheet: 1\n");
    assertEquals(1, run("sheet", "bad.yaml", "--print", "card.html").status());
    assertFalse(Files.exists(folder.resolve("card.html")));
  }

  /** Prints the page as a browser does; skipped where there is none. */
  @ParameterizedTest
  @CsvSource({"A4, 595, 842", "Letter, 612, 792"})
  void theDemoCardIsOnePage(String size, int width, int height)
      throws IOException, InterruptedException {
    Optional<Path> browser = browser();
    assumeTrue(browser.isPresent(), "no chromium here");
    Path page = folder.resolve("card.html");
    Path pdf = folder.resolve("card.pdf");
    String html =
        SheetCard.page(SheetReader.demo()).replace("@page {", "@page { size: " + size + ";");
    Files.writeString(page, html);
    Process process =
        new ProcessBuilder(
                browser.get().toString(),
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-pdf-header-footer",
                "--user-data-dir=" + folder.resolve("profile"),
                "--print-to-pdf=" + pdf,
                page.toUri().toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("browser.txt").toFile())
            .start();
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      process.destroyForcibly();
    }
    assertTrue(Files.exists(pdf), Files.readString(folder.resolve("browser.txt")));
    String content = Files.readString(pdf, StandardCharsets.ISO_8859_1);
    assertEquals(1, Pattern.compile("/Type\\s*/Page\\b(?!s)").matcher(content).results().count());
    Matcher box = Pattern.compile("/MediaBox\\s*\\[0 0 ([0-9.]+) ([0-9.]+)\\]").matcher(content);
    assertTrue(box.find());
    assertEquals(width, Double.parseDouble(box.group(1)), 1);
    assertEquals(height, Double.parseDouble(box.group(2)), 1);
  }

  private static Optional<Path> browser() {
    String path = System.getenv().getOrDefault("PATH", "");
    return Stream.of(path.split(java.io.File.pathSeparator, -1))
        .flatMap(place -> Stream.of("chromium", "chromium-browser").map(Path.of(place)::resolve))
        .filter(Files::isExecutable)
        .findFirst();
  }
}

package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChartCommandTest {
  private static final String TAPS = "0.3 3.5 6.5 9.7 12.8 15.8 19.0 22.0";

  @TempDir private Path folder;

  private CommandRun chart(String... more) {
    return chartOf(TAPS, more);
  }

  private CommandRun chartOf(String input, String... more) {
    String[] args = Stream.concat(Stream.of("chart"), Stream.of(more)).toArray(String[]::new);
    return CommandRun.Setting.in(folder).run(input, args);
  }

  private Path file(String name, String content) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, content);
  }

  private List<String> pictures() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(path -> path.getFileName().toString())
          .filter(name -> ChartImage.of(name).isPresent())
          .sorted()
          .toList();
    }
  }

  @Test
  void drawsAFileUnderItsOwnNameInTheCurrentFolder() throws IOException {
    file("day/taps.txt", TAPS);
    CommandRun run = chart("--sheet", "demo", "day/taps.txt");
    assertEquals("", run.err());
    assertEquals(0, run.status());
    assertEquals(List.of("taps.png"), pictures());
    assertTrue(run.out().startsWith("taps.png: [invented sheet] cells-low ("), run.out());
    assertEquals(1000, ImageIO.read(folder.resolve("taps.png").toFile()).getWidth());
  }

  @Test
  void drawsStandardInputToTheFileThatWasAskedFor() throws IOException {
    CommandRun run = chart("--out", "Visit.SVG", "--width", "360", "--to", "24");
    assertEquals("Visit.SVG: 1 blink every 3.1 s\n", run.out());
    Pictures picture = Pictures.of(folder.resolve("Visit.SVG"));
    assertEquals("360", picture.document().getDocumentElement().getAttribute("width"));
    assertTrue(picture.texts().contains("1 blink every 3.1 s"));
  }

  @Test
  void aPictureThatExistsStaysUnlessForced() throws IOException {
    file("old.png", "mine");
    CommandRun run = chart("--out", "old.png");
    assertEquals(1, run.status());
    assertEquals(
        List.of("old.png: exists already; --force replaces it, --out names another file"),
        run.errLines());
    assertEquals("mine", Files.readString(folder.resolve("old.png")));
    assertEquals(0, chart("--out", "old.png", "--force").status());
    assertEquals(1000, ImageIO.read(folder.resolve("old.png").toFile()).getWidth());
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.jpg", "a", "png", ".", "a.png/", "a.svgz"})
  void anotherEndingIsWrongUse(String out) throws IOException {
    CommandRun run = chart("--out", out);
    assertEquals(2, run.status());
    assertEquals(
        List.of("--out takes a name that ends in .png or .svg, not " + out), run.errLines());
    assertEquals(List.of(), pictures());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "239", "4001", "wide", "1e3", "99999999999"})
  void anImpossibleWidthIsWrongUse(String width) {
    CommandRun run = chart("--width", width);
    assertEquals(2, run.status());
    assertEquals(List.of("--width takes 240 to 4000 pixels, not " + width), run.errLines());
  }

  @Test
  void aRefusedFileDoesNotStopTheOthers() throws IOException {
    file("good.txt", TAPS);
    file("bad.txt", "over all");
    file("also/good.txt", TAPS);
    CommandRun run = chart("good.txt", "bad.txt", "missing.txt", "also/good.txt");
    assertEquals(1, run.status());
    assertEquals(List.of("good-2.png", "good.png"), pictures());
    assertEquals(2, run.outLines().size(), run.out());
    assertEquals(2, run.errLines().size(), run.err());
    assertTrue(run.errLines().get(0).startsWith("bad.txt: "), run.err());
  }

  @Test
  void severalPicturesOfOneNameAreNumbered() throws IOException {
    file("a.txt", TAPS);
    file("b.txt", TAPS);
    assertEquals(
        0, chart("--together", "--sheet", "demo", "--out", "x.svg", "a.txt", "b.txt").status());
    assertEquals(List.of("x-2.svg", "x.svg"), pictures());
    assertTrue(
        Pictures.of(folder.resolve("x-2.svg")).texts().get(0).endsWith("; b.txt"),
        Pictures.of(folder.resolve("x-2.svg")).texts()::toString);
  }

  @Test
  void whatWasSaidIsDrawnToo() throws IOException {
    CommandRun run = chart("--saw", "3 blinks every 7 to 9 s", "--watched", "40", "--out", "s.svg");
    assertEquals(0, run.status(), run.err());
    assertTrue(Pictures.of(folder.resolve("s.svg")).texts().contains("as described"));
    assertEquals(2, chart("--saw", "3 winks", "--out", "t.svg").status());
  }

  @Test
  void aFolderThatIsNotThereIsSaid() {
    CommandRun run = chart("--out", "none/a.png");
    assertEquals(1, run.status());
    assertEquals(List.of("none/a.png: cannot be written: there is no such folder"), run.errLines());
  }

  @Test
  void theSameFileGivesTheSameBytes() throws IOException {
    assertEquals(0, chart("--out", "1.svg").status());
    assertEquals(0, chart("--out", "2.svg").status());
    assertArrayEquals(
        Files.readAllBytes(folder.resolve("1.svg")), Files.readAllBytes(folder.resolve("2.svg")));
  }

  @Test
  void everyOptionOfReadingIsTaken() {
    String help = chart("--help").out();
    for (String option :
        List.of(
            "--sheet",
            "--from",
            "--to",
            "--target",
            "--event",
            "--covered",
            "--as",
            "--column",
            "--time",
            "--unit",
            "--lit",
            "--together",
            "--saw",
            "--watched",
            "--out",
            "--width",
            "--force")) {
      assertTrue(help.contains(option), () -> option + " in " + help);
    }
  }
}

package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every command's help shows an example, and what it shows can be done. */
class HelpExamplesTest {
  private static final Path ROOT = CommandRun.root();

  private static final String SHEET =
      """
      lampwise-sheet: 1
      title: Invented for the examples
      basis: label
      states:
        cells-low:
          rhythm: 1 blink every 3.1 s
          means: Cells are low
          condition: power-low
        window-covered:
          rhythm: 3 blinks 0.5 s apart every 7 s
          means: Something covers the window
          condition: sensor-blocked
        resting:
          rhythm: dark
          means: Resting
          condition: ready
      """;

  /** What an example may read. The list of fixtures names a recording of the folder. */
  private static final Map<String, HelpExamples.Put> GIVEN =
      Map.of(
          "unit.sheet.yaml", text(SHEET),
          "tapped.txt", copy("testdata/recordings/cells-low-taps.txt"),
          "visits.csv", copy("testdata/visits/version-1.csv"),
          "fixtures.csv",
              path -> {
                text("id,kind,power,sheet\nnorth-03,urinal,cells,unit.sheet.yaml\n").into(path);
                text(SHEET).into(path.resolveSibling("unit.sheet.yaml"));
              },
          "day",
              path -> {
                Files.createDirectory(path);
                copy("testdata/recordings/cells-low-taps.txt").into(path.resolve("north-03.txt"));
              });

  /** What an example may make. */
  private static final List<String> MADE =
      List.of(
          "visit.svg",
          "unit-card.html",
          "basin.sheet.yaml",
          "round.html",
          "course",
          "made-up",
          "stall-3.txt");

  /** What is typed into the commands that ask, in any of their examples. */
  private static final Map<String, String> ANSWERS =
      Map.of(
          "diagnose", "none\nclear\n?\n?\n?\nyes\nnone\nvolume 3.1 L\nvolume 6.0 L\n15\nquiet\n",
          "sheet", "Basin\n\n\n\n1 blink every 4 s\n\n\n\n\n\ndone\n\n");

  private static final String SAMPLE =
      """
      Usage: lampwise decode [--json] [--sheet=FILE|demo] [--to=T] [FILE...]
            --sheet=FILE|demo   the sheet
            --to=T              the end
            --json              as JSON

      Example: lampwise decode --sheet demo \\
                 --to 12 --json tapped.txt
      Example of a pipe:
        printf '3.1 6.2' | lampwise decode --sheet own.yaml   # status 1
      """;

  @TempDir private Path folder;

  private static HelpExamples.Put copy(String file) {
    return path -> Files.copy(ROOT.resolve(file), path);
  }

  private static HelpExamples.Put text(String text) {
    return path -> Files.writeString(path, text);
  }

  private static String help(String... args) {
    CommandRun run = CommandRun.Setting.in(ROOT).run("", args);
    assertEquals(0, run.status(), run.err());
    return run.out();
  }

  /** The help of the program under an empty name, then that of each command. */
  private static Map<String, String> helps() {
    Map<String, String> helps = new LinkedHashMap<>();
    helps.put("", help("--help"));
    for (String command : HelpExamples.commands(helps.get(""))) {
      helps.put(command, help(command, "--help"));
    }
    return helps;
  }

  static Stream<HelpExamples.Example> examples() {
    Map<String, String> helps = helps();
    return helps.values().stream().flatMap(help -> HelpExamples.of(help, helps).stream());
  }

  @Test
  void everyHelpHasAnExample() {
    Map<String, String> helps = helps();
    assertTrue(helps.containsKey("decode"), "no list of commands in\n" + helps.get(""));
    List<String> without = new ArrayList<>();
    helps.forEach(
        (command, help) -> {
          if (HelpExamples.of(help, helps).stream()
              .noneMatch(e -> command.isEmpty() || e.call().args().get(0).equals(command))) {
            without.add(command);
          }
        });
    assertEquals(List.of(), without, "no example in the help of these commands");
  }

  @Test
  void everyHelpFitsIntoALine() {
    helps().values().stream()
        .flatMap(String::lines)
        .forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyExampleCanBeDone(HelpExamples.Example example) throws IOException {
    assertEquals("", faults(example));
  }

  private String faults(HelpExamples.Example example) throws IOException {
    String answers = ANSWERS.getOrDefault(example.call().args().get(0), "");
    return HelpExamples.faults(example, GIVEN, MADE, answers, folder);
  }

  @Test
  void theSampleIsUnderstood() {
    List<HelpExamples.Example> examples = HelpExamples.of(SAMPLE, Map.of("decode", SAMPLE));
    assertEquals(
        List.of(
            new HelpExamples.Example(
                new ShellExamples.Call(
                    "", List.of("decode", "--sheet", "demo", "--to", "12", "--json", "tapped.txt")),
                List.of("tapped.txt")),
            new HelpExamples.Example(
                new ShellExamples.Call("3.1 6.2", List.of("decode", "--sheet", "own.yaml"), 1),
                List.of("own.yaml"))),
        examples);
  }

  @Test
  void whatIsNoExampleIsNotPassedOver() {
    Map<String, String> helps = Map.of("decode", SAMPLE);
    for (String wrong :
        List.of(
            "Example: words alone\n",
            "Example: lampwise decoed a.txt\n",
            "Example: lampwise decode --tagret none a.txt\n",
            "Example: lampwise decode a.txt\n  lampwise decode b.txt\n")) {
      assertThrows(IllegalStateException.class, () -> HelpExamples.of(wrong, helps), wrong);
    }
  }

  @Test
  void aBrokenExampleIsTold() throws IOException {
    Map<String, String> helps = helps();
    Map<String, String> broken =
        Map.of(
            "lampwise decode --sheet unit.sheet.yaml felt.txt",
                "names felt.txt, which is not known",
            "lampwise decode --sheet demo --to soon tapped.txt", "status 2, not 0",
            "lampwise round --demo", "status 1, not 0");
    for (Map.Entry<String, String> wrong : broken.entrySet()) {
      HelpExamples.Example example = HelpExamples.of("Example: " + wrong.getKey(), helps).get(0);
      Path inside = Files.createTempDirectory(folder, "broken");
      String said = HelpExamples.faults(example, GIVEN, MADE, "", inside);
      assertFalse(said.isEmpty(), wrong.getKey());
      assertTrue(said.contains(wrong.getValue()), said);
    }
  }
}

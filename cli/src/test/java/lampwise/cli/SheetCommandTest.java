package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import lampwise.file.SheetReader;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetCommandTest {
  private static final CommandRun.Setting ROOT = CommandRun.Setting.in(CommandRun.root());

  @TempDir Path folder;

  @Test
  void theFirstLineIsTheAnswer() {
    CommandRun run = ROOT.run("", "sheet", "demo");
    assertEquals(0, run.status());
    assertEquals("", run.err());
    assertEquals("sheet is right: 14 states, 1 warning  [invented sheet]", run.outLines().get(0));
    CommandRun minimal = ROOT.run("", "sheet", "testdata/sheets/two-lamps.sheet.yaml");
    assertTrue(minimal.out().startsWith("sheet is right: "), minimal.out());
  }

  @Test
  void everyStateIsListedWithStripPhraseMeaningAndWhenItIsSeen() {
    String out = ROOT.run("", "sheet", "demo").out();
    String folded = out.replaceAll("\\s+", " ");
    for (LampState state : SheetReader.demo().states()) {
      assertTrue(out.contains("\n" + state.name() + ": "), state.name());
      assertTrue(folded.contains(state.means()), state.means());
    }
    assertTrue(
        out.contains("\nwindow-covered: 3 blinks 0.27 s apart every 10.3 s\n  \u2588\u2581"));
    assertTrue(folded.contains("running, seen while water runs"), out);
    assertTrue(folded.contains("cleared by: a shorter range setting"), out);
  }

  @Test
  void aWarningNamesTheCheckThatTellsThemApart() {
    String folded = ROOT.run("", "sheet", "demo").out().replaceAll("\\s+", " ");
    assertTrue(
        folded.contains(
            "warning: resting and no-power have one rhythm; the lamp alone cannot tell them apart;"
                + " hold a hand before the sensor for 5 s, then stay away for 15 s: resting is seen"
                + " only while nobody is there"),
        folded);
  }

  @Test
  void allLinesFitAndAreOfPlainLettersWhereBlocksCannotBeShown() {
    for (Map<String, String> variables :
        List.of(
            Map.<String, String>of(),
            Map.of("LC_ALL", "C"),
            Map.of("LANG", "en_GB.ISO-8859-1"),
            Map.of("TERM", "dumb"))) {
      CommandRun run = new CommandRun.Setting(folder, variables, true).run("", "sheet", "demo");
      for (String line : run.outLines()) {
        String plain = line.replace("\u001b[1m", "").replace("\u001b[0m", "");
        assertTrue(plain.length() <= 80, line);
        assertEquals(variables.isEmpty() || plain.chars().allMatch(c -> c < 0x7f), true, line);
      }
      assertEquals(variables.isEmpty(), run.out().contains("\u2588"));
      assertEquals(!variables.isEmpty(), run.out().contains("  ###"), run.out());
    }
    assertTrue(
        new CommandRun.Setting(folder, Map.of("LANG", "de_DE.UTF-8"), false)
            .run("", "sheet", "demo")
            .out()
            .contains("\u2588"));
  }

  @Test
  void colourIsForTerminalsAndNotWithNoColor() {
    CommandRun plain =
        new CommandRun.Setting(folder, Map.of("NO_COLOR", "1"), true).run("", "sheet", "demo");
    CommandRun strong = new CommandRun.Setting(folder, Map.of(), true).run("", "sheet", "demo");
    assertFalse(plain.out().contains("\u001b"));
    assertTrue(strong.out().startsWith("\u001b[1msheet is right"));
    assertFalse(ROOT.run("", "sheet", "demo").out().contains("\u001b"));
  }

  @Test
  void faultsAreALineEach() {
    CommandRun run = ROOT.run("", "sheet", "testdata/sheets/wrong-key.sheet.yaml");
    assertEquals(1, run.status());
    assertEquals("", run.out());
    assertEquals(5, run.errLines().size(), run.err());
    assertEquals(
        "testdata/sheets/wrong-key.sheet.yaml:2:1: unknown key \"tittle\"; did you mean"
            + " \"title\"?",
        run.errLines().get(1));
  }

  @Test
  void jsonIsOneObject() {
    CommandRun right = ROOT.run("", "sheet", "--json", "demo");
    assertEquals(0, right.status());
    assertEquals(1, right.outLines().size());
    String out = right.out();
    assertTrue(
        out.startsWith(
            "{\"lampwise-json\":1,\"file\":\"demo\",\"right\":true,\"sheet\":\"Ferry terminal"
                + " washroom unit, amber lamp\",\"basis\":\"invented\",\"clock\":0.05,"
                + "\"blink_s\":0.11,\"states\":[{\"state\":\"cells-low\",\"rhythm\":\"1 blink every"
                + " 3.1 s\""),
        out);
    assertTrue(
        out.contains(
            "\"warnings\":[{\"kind\":\"same-rhythm\",\"first\":\"resting\",\"second\":\"no-power\""),
        out);
    assertTrue(out.endsWith("\"faults\":[]}\n"), out);

    CommandRun refused = ROOT.run("", "sheet", "testdata/sheets/wrong-key.sheet.yaml", "--json");
    assertEquals(1, refused.status());
    assertEquals(1, refused.outLines().size());
    assertTrue(
        refused
            .out()
            .contains(
                "\"right\":false,\"sheet\":null,\"basis\":null,\"clock\":null,\"blink_s\":null,"
                    + "\"states\":null,\"warnings\":null,\"faults\":[{\"message\":\"the key"
                    + " \\\"title\\\" is missing\",\"line\":1,\"column\":1},"),
        refused.out());
    CommandRun missing = ROOT.run("", "sheet", "nowhere.yaml", "--json");
    assertTrue(missing.out().contains("\"line\":null,\"column\":null"), missing.out());
  }

  @Test
  void rotationsAreWarnedOf() throws IOException {
    Path file = folder.resolve("two.sheet.yaml");
    Files.writeString(
        file,
        """
        lampwise-sheet: 1
        title: Two of one cycle
        basis: invented
        blink: 0.1 s
        states:
          low:
            rhythm: 3 blinks 0.5 s apart then dark 1 s then 2 blinks 0.5 s apart then dark 4 s
            means: one
            condition: power-low
          gone:
            rhythm: 2 blinks 0.5 s apart then dark 4 s then 3 blinks 0.5 s apart then dark 1 s
            means: other
            condition: other
        """);
    CommandRun run = CommandRun.Setting.in(folder).run("", "sheet", "two.sheet.yaml");
    String folded = run.out().replaceAll("\\s+", " ");
    assertTrue(run.out().startsWith("sheet is right: 2 states, 1 warning"), run.out());
    assertTrue(
        folded.contains(
            "one cycle with another start; once it repeats the lamp cannot tell them"
                + " apart; measure the cells or the supply"),
        folded);
    CommandRun json = CommandRun.Setting.in(folder).run("", "sheet", "two.sheet.yaml", "--json");
    assertTrue(json.out().contains("{\"kind\":\"rotation\","), json.out());
  }

  @Test
  void theVariableNamesTheSheetWhereNoneIsGiven() {
    CommandRun run =
        new CommandRun.Setting(CommandRun.root(), Map.of("LAMPWISE_SHEET", "demo"), false)
            .run("", "sheet");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().startsWith("sheet is right: 14"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sheet | which sheet is not said",
        "sheet demo --json --print a.html | --json and --print do not go together",
        "sheet --new --json | --new goes without --json and --print",
        "sheet demo other | Unmatched argument",
        "sheet demo --print | Missing required parameter",
        "sheet demo --print nowhere/card.html | its folder does not exist",
        "sheet demo --print . | is a folder",
      })
  void wrongUseIsALineAndStatusTwo(String line, String message) {
    CommandRun run = CommandRun.Setting.in(folder).run("", line.split(" "));
    assertEquals(2, run.status(), run.out());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
  }

  @Test
  void aMissingFileIsRefused() {
    CommandRun run = CommandRun.Setting.in(folder).run("", "sheet", "none.yaml");
    assertEquals(1, run.status());
    assertTrue(run.err().startsWith("none.yaml: no such file"), run.err());
  }
}

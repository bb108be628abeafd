package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.rhythm.Phrase;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NewSheetTest {
  private static final String FILE = "unit.sheet.yaml";
  private static final String HEAD = "Unit\n\n\n\n";
  private static final String OFFERS = "\n\n\n\n\n";

  @TempDir Path folder;

  private CommandRun run(String answers, String... more) {
    return CommandRun.Setting.in(folder)
        .run(
            answers,
            Stream.concat(Stream.of("sheet", "--new"), Stream.of(more)).toArray(String[]::new));
  }

  private CodeSheet written() throws IOException, FileException {
    return SheetReader.read(FILE, Files.readAllBytes(folder.resolve(FILE)));
  }

  private void nothingIsLeft() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(), files.toList());
    }
  }

  @Test
  void everyAnswerCanBeOnesOwn() throws IOException, FileException {
    CommandRun run =
        run(
            """
            North wall, amber lamp
            manual
            5
            120 ms
            three flashes, pause, repeat: replace cells
            3 blinks 0.5 s apart every 9 s
            tired
            The cells are running down
            power-low
            2
            a wink each minute
            about one flash a minute

            stored
            In store
            11

            done

            """,
            FILE);
    assertEquals("", run.err());
    assertEquals(0, run.status(), run.out());
    CodeSheet sheet = written();
    assertEquals("North wall, amber lamp", sheet.title());
    assertEquals(Basis.MANUAL, sheet.basis());
    assertEquals(0.05, sheet.clockTolerance());
    assertEquals(0.12, sheet.blinkSeconds().orElse(0));
    LampState tired = sheet.states().get(0);
    assertEquals("tired", tired.name());
    assertEquals("3 blinks 0.5 s apart every 9 s", Phrase.print(tired.rhythm()));
    assertEquals("The cells are running down", tired.means());
    assertEquals(Condition.POWER_LOW, tired.condition());
    assertEquals(Seen.IDLE, tired.seen());
    assertEquals("three flashes, pause, repeat: replace cells", tired.labelSays().orElse(""));
    LampState stored = sheet.states().get(1);
    assertEquals("about 1 blink per minute", Phrase.print(stored.rhythm()));
    assertEquals(Condition.HELD_OFF, stored.condition());
  }

  @Test
  void theListIsShownBeforeItIsWritten() {
    CommandRun run =
        run(
            HEAD
                + "no light: cells dead, but also normal when idle\nyes\n"
                + OFFERS
                + OFFERS
                + "done\n\n",
            FILE);
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("\nsheet is right: 2 states, 1 warning\n"), run.out());
    assertTrue(run.out().contains("  warning: power-missing and ready have one rhythm"), run.out());
    assertTrue(
        run.out().indexOf("sheet is right") < run.out().indexOf("write it to, or back"), run.out());
    assertTrue(run.out().endsWith(FILE + " is written; try it with decode --sheet\n"), run.out());
    for (String line : run.outLines()) {
      assertTrue(line.length() <= 80, line);
    }
  }

  @Test
  void wrongAnswersAreAskedAgain() throws IOException, FileException {
    CommandRun run =
        run(
            """

            Unit
            invented
            label
            60 %
            x
            7 %
            long
            none
            done
            hello
            flashes in a rainbow
            one flash every 6 s
            dim glow
            3 blinks evry 7 s
            one blip every 8 s

            Not A Name
            unlisted
            first

            99
            ready
            never
            always
            one flash every 9 s

            first
            second



            done

            """,
            FILE);
    assertEquals(0, run.status(), run.out() + run.err());
    for (String said :
        List.of(
            "a sheet needs a title",
            "the basis is one of label, manual, observed",
            "a percentage is needed",
            "one time is needed",
            "a sheet needs at least one state",
            "cannot be taken: \"hello\" is not understood",
            "  cannot be taken: a rhythm is one lamp, one colour, on or off: fading",
            "perhaps: 3 blinks every 7 s",
            "  a name is lower-case letters",
            "  the name unlisted is reserved",
            "  the name first is another state's")) {
      assertTrue(run.out().replaceAll("\n *", " ").contains(said.strip()), said + run.out());
    }
    CodeSheet sheet = written();
    assertEquals(0.07, sheet.clockTolerance());
    assertEquals(
        List.of("first: 1 blink every 8 s", "second: 1 blink every 9 s"),
        sheet.states().stream().map(s -> s.name() + ": " + Phrase.print(s.rhythm())).toList());
  }

  @Test
  void backAndSkip() throws IOException, FileException {
    String answers =
        "back\nWrong\nback\nUnit\n\nback\nobserved\n\n\n" // back from the clock to the basis
            + "back\n0.2 s\n" // from the first state to the blink
            + "one flash every 6 s\nback\n" // from the phrase to the words
            + "one flash every 7 s\n\nlow\nback\nback\n1 blink every 7.5 s\nlower\n\n\n\n"
            + "two flashes\nskip\n"
            + "skip\n\n"
            + "three flashes\n"
            + OFFERS
            + "back\n" // the last state is taken out
            + "done\nback\n" // from the end to the list
            + "dark\n"
            + OFFERS
            + "done\n\n";
    CommandRun run = run(answers, FILE);
    assertEquals(0, run.status(), run.out() + run.err());
    CodeSheet sheet = written();
    assertEquals("Unit", sheet.title());
    assertEquals(Basis.OBSERVED, sheet.basis());
    assertEquals(0.2, sheet.blinkSeconds().orElse(0));
    assertEquals(
        List.of("lower: 1 blink every 7.5 s", "dark: dark"),
        sheet.states().stream().map(s -> s.name() + ": " + Phrase.print(s.rhythm())).toList());
  }

  @Test
  void oneOfSeveralPhrasesIsChosenByNumber() throws IOException, FileException {
    CommandRun run = run(HEAD + "lit 5 s, then one flash every 10 s\n2\n\n\n\n\ndone\n\n", FILE);
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("  1 first steady 5 s afterwards 1 blink every 10 s\n"));
    assertEquals(
        "steady 5 s then 1 blink every 10 s", Phrase.print(written().states().get(0).rhythm()));
  }

  @Test
  void severalStatesCanBeDeclined() throws IOException, FileException {
    CommandRun run =
        run(HEAD + "slow: cells; fast: sensor\nskip\nslow: cells\n" + OFFERS + "done\n\n", FILE);
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("this speaks of 2 states:\n  slow: cells\n  fast: sensor\n"));
    assertEquals(1, written().states().size());
  }

  @Test
  void colourAndWhatEndsItAreKept() throws IOException, FileException {
    CommandRun run =
        run(HEAD + "red flash until the cells are pulled\n" + OFFERS + "done\n\n", FILE);
    assertEquals(0, run.status(), run.err());
    LampState state = written().states().get(0);
    assertEquals("red", state.lamp().orElse(""));
    assertEquals("the cells are pulled", state.clearedBy().orElse(""));
  }

  @Test
  void nothingIsWrittenIfTheAnswersEnd() throws IOException {
    String whole = HEAD + "one flash every 6 s\n" + OFFERS + "done\n\n";
    for (int lines = 0; lines < whole.lines().count(); lines++) {
      String part = String.join("\n", whole.lines().limit(lines).toList());
      CommandRun run = run(lines == 0 ? "" : part + "\n", FILE);
      assertEquals(1, run.status(), part);
      assertEquals(
          "the answers ended before the sheet was done; nothing is written\n", run.err(), part);
      nothingIsLeft();
    }
    assertEquals(0, run(whole, FILE).status());
  }

  @Test
  void aFileThatExistsIsNotWrittenOver() throws IOException, FileException {
    Files.writeString(folder.resolve(FILE), "mine");
    CommandRun refused = run("", FILE);
    assertEquals(2, refused.status());
    assertEquals("", refused.out());
    assertEquals(FILE + ": exists already; --force writes over it\n", refused.err());
    String answers = HEAD + "one flash every 6 s\n" + OFFERS + "done\n";
    CommandRun other = run(answers + FILE + "\nother.yaml\n");
    assertEquals(0, other.status(), other.err());
    assertTrue(other.out().contains(FILE + ": exists already"), other.out());
    assertEquals("mine", Files.readString(folder.resolve(FILE)));
    assertTrue(Files.exists(folder.resolve("other.yaml")));
    assertEquals(0, run(answers + "\n", FILE, "--force").status());
    assertEquals(1, written().states().size());
  }

  @Test
  void theNameOfTheFileIsOfferedFromTheTitle() {
    CommandRun run =
        run(
            "Gr\u00f6\u00dfe 7: North Wall (left)!\n\n\n\none flash every 6 s\n"
                + OFFERS
                + "done\n\n");
    assertEquals(0, run.status(), run.err());
    assertTrue(Files.exists(folder.resolve("gr-e-7-north-wall.sheet.yaml")), run.out());
  }

  @Test
  void atATerminalTheAnswerStandsBehindTheQuestion() {
    CommandRun run =
        new CommandRun.Setting(folder, Map.of(), true).run("Unit\n", "sheet", "--new", FILE);
    assertTrue(run.out().contains("title, what the unit is: basis ("), run.out());
  }

  @Test
  void hostileAnswersAreOnlyText() throws IOException, FileException {
    byte[] answers =
        ("Unit: \u001b[31m # \"x\"\n\n\n\none flash every 6 s: &a *b !c\u0007 {[%@`\n"
                + OFFERS
                + "done\n\n")
            .getBytes(StandardCharsets.UTF_8);
    CommandRun run = CommandRun.Setting.in(folder).run(answers, "sheet", "--new", FILE);
    assertEquals(0, run.status(), run.err());
    assertFalse(run.out().contains("\u001b"));
    assertEquals("Unit: [31m # \"x\"", written().title());
    assertEquals("&a *b !c {[%@`", written().states().get(0).means());
    byte[] broken = {'U', (byte) 0xff, '\n'};
    assertEquals(1, CommandRun.Setting.in(folder).run(broken, "sheet", "--new", "b").status());
  }

  @Test
  void slugs() {
    assertEquals("replace-cells", NewState.slug("Replace cells", 3));
    assertEquals("a-b-c", NewState.slug("1 a, b - c d", 3));
    assertEquals("state", NewState.slug("12 %", 3));
  }
}

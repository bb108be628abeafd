package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole runs of {@code decode}, good and bad. */
class DecodeTest {
  private static final String SHEET =
      """
      lampwise-sheet: 1
      title: Sheet made for a test
      basis: label
      states:
        standing-by:
          rhythm: 2 blinks 0.6 s apart every 14 s
          means: Ready, nothing in range
          condition: ready
        cells-low:
          rhythm: 1 blink every 3 s
          means: Backup cells are running down
          condition: power-low
          label-says: one wink now and then
          cleared-by: new cells
      """;

  @TempDir Path folder;
  private CommandRun.Setting here = CommandRun.Setting.in(Path.of(""));

  @BeforeEach
  void writeFiles() throws IOException {
    here = CommandRun.Setting.in(folder);
    write("unit.sheet.yaml", SHEET);
    write("good.txt", log(3, 60));
  }

  /** Pairs of on and off of one blink every so many seconds. */
  private static String log(double every, int to) {
    StringBuilder log = new StringBuilder();
    for (double on = 1; on < to; on += every) {
      log.append("on ").append(on).append(" off ").append(on + 0.125).append('\n');
    }
    return log.toString();
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private CommandRun decode(String... args) {
    List<String> all = new ArrayList<>(List.of("decode", "--sheet", "unit.sheet.yaml"));
    all.addAll(List.of(args));
    return here.run("", all.toArray(new String[0]));
  }

  @Test
  void aGoodFileIsDecoded() {
    CommandRun run = decode("good.txt");
    assertEquals(0, run.status(), run.err());
    assertEquals("", run.err());
    assertTrue(run.out().startsWith("cells-low ("), run.out());
    assertTrue(run.out().contains("%): Backup cells are running down\n"), run.out());
    assertTrue(run.out().contains("\n  rests on    20 blinks in "), run.out());
    assertTrue(run.out().contains("\n  label says  one wink now and then\n"), run.out());
    assertTrue(run.out().contains("\nnext: "), run.out());
    assertTrue(run.outLines().size() < 15, run.out());
  }

  @Test
  void theSheetMayComeFromTheEnvironment() {
    CommandRun.Setting setting =
        new CommandRun.Setting(folder, Map.of("LAMPWISE_SHEET", "unit.sheet.yaml"), false);
    assertTrue(setting.run("", "decode", "good.txt").out().startsWith("cells-low ("));
    CommandRun.Setting missing =
        new CommandRun.Setting(folder, Map.of("LAMPWISE_SHEET", "none.yaml"), false);
    CommandRun run = missing.run("", "decode", "good.txt");
    assertEquals(2, run.status());
    assertTrue(run.err().contains("none.yaml: no such file"), run.err());
    assertTrue(run.err().contains("(named by LAMPWISE_SHEET)"), run.err());
  }

  @Test
  void theInventedSheetIsNamedInTheFirstLine() {
    CommandRun run = here.run("", "decode", "--sheet", "demo", "good.txt");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.outLines().get(0).endsWith("[invented sheet]"), run.out());
  }

  @Test
  void withoutSheetItSaysWhatItSawAndAsksForTheSheet() {
    CommandRun run = here.run("", "decode", "good.txt");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.outLines().get(0).contains("every 3 s"), run.out());
    assertTrue(run.out().contains("next: give the unit's code sheet"), run.out());
  }

  @Test
  void pastedTextIsCalledStandardInput() {
    CommandRun seen = here.run("1 4 7 10", "decode", "--json");
    assertEquals(0, seen.status(), seen.err());
    assertTrue(seen.out().startsWith("{\"lampwise-json\":1,\"recording\":\"-\","), seen.out());
    CommandRun bad = here.run("no numbers at all", "decode", "--json", "-");
    assertEquals(1, bad.status());
    assertEquals(1, bad.errLines().size(), bad.err());
    assertTrue(bad.err().startsWith("standard input"), bad.err());
    assertTrue(bad.out().contains("\"recording\":\"-\",\"error\":{"), bad.out());
  }

  @Test
  void aPersonIsToldHowToEndThePaste() {
    CommandRun.Setting typed = new CommandRun.Setting(folder, Map.of("NO_COLOR", "1"), true);
    CommandRun run = typed.run("1 4 7 10", "decode");
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains("Ctrl-D"), run.err());
    assertFalse(run.out().contains("\u001b"), run.out());
    CommandRun.Setting coloured = new CommandRun.Setting(folder, Map.of(), true);
    CommandRun strong = coloured.run("", "decode", "good.txt");
    assertEquals("", strong.err());
    assertTrue(strong.out().startsWith("\u001b[1m"), strong.out());
  }

  @Test
  void nothingSeenWhileWatchingIsAnEmptyLog() {
    CommandRun run = here.run("", "decode", "--to", "5", "--json");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("\"window_s\":[0.0,5.0]"), run.out());
    assertTrue(run.out().contains("\"blinks\":[]"), run.out());
  }

  @Test
  void anEmptyFileIsReadAndUnreadable() throws IOException {
    write("empty.txt", "");
    CommandRun run = decode("empty.txt");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().startsWith("unreadable: "), run.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no-such-file.txt",
        "sub",
        "binary.bin",
        "words.txt",
        "mixed.txt",
        "nan.txt",
        "pair.txt",
        "nul\u0000name"
      })
  void aBadFileIsOneLineAndTheOthersAreDecoded(String name) throws IOException {
    Files.createDirectory(folder.resolve("sub"));
    byte[] noise = new byte[4096];
    new Random(7).nextBytes(noise);
    Files.write(folder.resolve("binary.bin"), noise);
    write("words.txt", "it blinked now and then, I think\n");
    write("mixed.txt", "1.0\n4.0\n2.0\n9.0\n3.0\n");
    write("nan.txt", "time,level\n0.0,3\nNaN,4\n0.2,3\n0.3,3\n");
    write("pair.txt", "on 3 off 4\non 6 off 5\n");
    CommandRun run = decode("--json", "good.txt", name, "good.txt");
    assertEquals(1, run.status(), run.err());
    assertEquals(1, run.errLines().size(), run.err());
    assertFalse(run.err().contains("internal fault"), run.err());
    assertFalse(run.err().contains("\tat "), run.err());
    assertTrue(run.err().startsWith(Layout.clean(name)), run.err());
    assertEquals(3, run.outLines().size(), run.out());
    for (String line : run.outLines()) {
      assertEquals("", JsonSchema.READING.faults(line), line);
    }
    assertTrue(run.outLines().get(0).contains("\"state\":\"cells-low\""), run.out());
    assertTrue(run.outLines().get(1).contains("\"error\":{\"message\":\""), run.out());
    assertEquals(run.outLines().get(0), run.outLines().get(2));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--target=9..4",
        "--target=sometimes",
        "--event=dance@3",
        "--event=flush@",
        "--covered=5",
        "--to=NaN",
        "--from=soon"
      })
  void anOptionThatMeansNothingIsSaidOnce(String option) {
    CommandRun run = decode(option, "good.txt", "good.txt");
    assertEquals(2, run.status(), run.err());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(option.substring(0, option.indexOf('='))), run.err());
    assertEquals("", run.out());
  }

  @Test
  void aBadSheetIsSaidWithAllItsFaults() throws IOException {
    write(
        "bad.sheet.yaml",
        SHEET
                .replace("basis: label", "basis: hearsay")
                .replace("1 blink every 3 s", "0 blinks every 3 s")
            + "  cells-low:\n    rhythm: dark\n    means: again\n    condition: other\n");
    CommandRun run = here.run("", "decode", "--sheet", "bad.sheet.yaml", "good.txt");
    assertEquals(2, run.status());
    assertEquals("", run.out());
    assertEquals(3, run.errLines().size(), run.err());
    for (String line : run.errLines()) {
      assertTrue(line.matches("bad\\.sheet\\.yaml:\\d+:\\d+: .+"), line);
    }
    assertTrue(run.err().contains("hearsay"), run.err());
  }

  @Test
  void aMissingSheetIsWrongUse() {
    for (String name : List.of("none.sheet.yaml", "")) {
      CommandRun run = here.run("", "decode", "--sheet", name, "good.txt");
      assertEquals(2, run.status());
      assertEquals("", run.out());
      assertEquals(1, run.errLines().size(), run.err());
    }
  }

  @Test
  void severalFilesAreNamed() {
    CommandRun run = decode("good.txt", "good.txt");
    assertEquals(0, run.status());
    assertTrue(run.out().startsWith("good.txt: cells-low ("), run.out());
    assertTrue(run.out().contains("\n\ngood.txt: cells-low ("), run.out());
  }

  @Test
  void fixturesAreNamed() {
    Recording first = ofFixture("north-07");
    assertEquals("north-07: ", DecodeRun.prefix(first, false));
    assertEquals("round.txt, north-07: ", DecodeRun.prefix(first, true));
    assertDoesNotThrow(() -> DecodeRun.checkOneLamp(List.of(first, first)));
    UsageException fault =
        assertThrows(
            UsageException.class,
            () -> DecodeRun.checkOneLamp(List.of(first, ofFixture("south-01"))));
    assertTrue(fault.lines().get(0).endsWith("the fixtures north-07, south-01"));
  }

  private static Recording ofFixture(String fixture) {
    return new BlinkLog(
        new Origin("round.txt", Optional.of(fixture), List.of()), Marks.nothing(), List.of());
  }

  @Test
  void togetherIsOneAnswer() throws IOException {
    write("more.txt", log(3, 30));
    CommandRun run = decode("--together", "--json", "good.txt", "none.txt", "more.txt");
    assertEquals(1, run.status(), run.err());
    assertEquals(1, run.errLines().size(), run.err());
    assertEquals(2, run.outLines().size(), run.out());
    String line = run.outLines().get(1);
    assertTrue(line.contains("\"recording\":\"good.txt + more.txt\""), line);
    assertTrue(line.contains("\"state\":\"cells-low\""), line);
    assertEquals("", JsonSchema.READING.faults(line));
    CommandRun apart = here.run("", "decode", "--together", "good.txt", "more.txt");
    assertTrue(apart.out().contains("\n\nmore.txt: "), apart.out());
  }

  @Test
  void theTraceShowsWhereAFileWasRefused() {
    CommandRun run = decode("--trace", "none.txt");
    assertEquals(1, run.status());
    assertTrue(run.err().contains("\tat lampwise."), run.err());
  }

  @Test
  void anyBytesGiveAnAnswerOrOneLine() {
    Random random = new Random(20);
    for (int i = 0; i < 200; i++) {
      byte[] bytes = new byte[random.nextInt(60)];
      for (int k = 0; k < bytes.length; k++) {
        bytes[k] = (byte) "0123456789.,:;+- \n\tonf\"".charAt(random.nextInt(23));
      }
      CommandRun run = here.run(bytes, "decode", "--json");
      String what = new String(bytes, StandardCharsets.UTF_8);
      assertFalse(run.err().contains("internal fault"), what + "\n" + run.err());
      assertTrue(run.status() == 0 || run.errLines().size() == 1, what + "\n" + run.err());
      for (String line : run.outLines()) {
        assertEquals("", JsonSchema.READING.faults(line), line);
      }
    }
  }
}

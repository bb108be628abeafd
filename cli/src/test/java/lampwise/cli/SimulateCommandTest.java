package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.file.SheetReader;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Presets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SimulateCommandTest {
  private static final String HURRIED =
      "--state cells-low --seconds 60 --observer hurried --seed 7 --count 100";

  private static final List<String> GOLDEN =
      List.of(
          "exact a59c14796a8e1797",
          "careful 2ca44fc7f30c78fc",
          "hurried a5f24553d7958d1b",
          "careless 78753f428b038218",
          "fast bd61bc8f7d62d2c1",
          "camera 6291d08c4caea241",
          "meter bfbed755ddabdc50",
          "slow 414c4907ce7d9ccb",
          "faint aebe68614c32bc87",
          "words 5b4f4fecf65c3941",
          "changes a32ba1e49814e38c",
          "settings 93f45fe5a48f1073",
          "unrounded ed886cbed8b61ac3");

  @TempDir Path temp;

  /** Runs the command with the demo sheet; words are split at blanks. */
  private CommandRun simulate(String words, String... more) {
    List<String> args = new ArrayList<>(List.of("simulate", "--sheet", "demo"));
    args.addAll(Arrays.asList(words.split(" ")));
    args.addAll(List.of(more));
    return CommandRun.Setting.in(temp).run("", args.toArray(new String[0]));
  }

  /** Runs the command, which must write into a folder, and gives the files' names in order. */
  private List<String> made(String folder, String words, String... more) throws IOException {
    List<String> out = new ArrayList<>(List.of("--out", folder));
    out.addAll(List.of(more));
    CommandRun run = simulate(words, out.toArray(new String[0]));
    assertEquals("", run.err());
    assertEquals(0, run.status());
    return names(folder);
  }

  private List<String> names(String folder) throws IOException {
    try (Stream<Path> files = Files.list(temp.resolve(folder))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private String text(String folder, String file) throws IOException {
    return Files.readString(temp.resolve(folder).resolve(file));
  }

  private List<String> truths(String folder) throws IOException {
    return text(folder, "truth.jsonl").lines().toList();
  }

  private Recording recording(String folder, String file) throws Exception {
    byte[] content = Files.readAllBytes(temp.resolve(folder).resolve(file));
    List<Recording> all = RecordingReader.read(file, content, ReadOptions.none());
    assertEquals(1, all.size());
    return all.get(0);
  }

  /** A checksum of the names and bytes of all files of a folder. */
  private String checksum(String folder) throws IOException, NoSuchAlgorithmException {
    MessageDigest sum = MessageDigest.getInstance("SHA-256");
    for (String name : names(folder)) {
      sum.update((name + "\n").getBytes(StandardCharsets.UTF_8));
      sum.update(Files.readAllBytes(temp.resolve(folder).resolve(name)));
    }
    return HexFormat.of().formatHex(sum.digest());
  }

  @Test
  void writesTheSameRecordingsAndTruthsTwice() throws Exception {
    List<String> names = made("a", HURRIED);
    assertEquals(101, names.size());
    assertEquals("cells-low-hurried-001.log", names.get(0));
    assertEquals("cells-low-hurried-100.log", names.get(99));
    assertEquals("truth.jsonl", names.get(100));
    List<String> truths = truths("a");
    assertEquals(100, truths.size());
    for (int i = 0; i < 100; i++) {
      String truth = truths.get(i);
      assertEquals("", JsonSchema.TRUTH.faults(truth), truth);
      String start = "{\"lampwise-truth\":1,\"recording\":\"" + names.get(i) + "\",\"seed\":7,";
      assertTrue(truth.startsWith(start + "\"number\":" + (i + 1) + ","), truth);
      assertTrue(truth.contains("\"state\":\"cells-low\",\"condition\":\"power-low\","), truth);
      BlinkLog log = assertInstanceOf(BlinkLog.class, recording("a", names.get(i)));
      assertEquals(new Window(0, 60), log.marks().window().orElseThrow());
      assertFalse(log.blinks().isEmpty());
    }
    made("b", HURRIED);
    assertEquals(checksum("a"), checksum("b"));
    made("c", HURRIED.replace("--seed 7", "--seed 8"));
    assertNotEquals(checksum("a"), checksum("c"));
    assertNotEquals(text("a", names.get(0)), text("a", names.get(1)));
  }

  /**
   * All states before all observers, changes, words and settings: the checksums are the same on
   * every machine and Java version. They change only with the simulator itself.
   */
  @Test
  void theBytesAreTheSameOnEveryJava() throws Exception {
    Map<String, String> sums = new LinkedHashMap<>();
    for (String observer : Presets.names()) {
      made(observer, "--state all --seconds 30 --seed 1125 --observer " + observer);
      sums.put(observer, checksum(observer));
    }
    made("words", "--state all --seconds 45 --notes words --seed -3");
    sums.put("words", checksum("words"));
    made("changes", "--state cells-low --then starting@20 --then held-off@40 --notes holds");
    sums.put("changes", checksum("changes"));
    made(
        "settings",
        "--count 30 --seconds 40 --observer slow --set jitter=0.2 --set dead-s=0.1"
            + " --set hands=3 --set room-switch=0.5 --set phone-target=0.5 --set dropout=0.05"
            + " --set full-scale-lux=400 --set auto-range-lux=100",
        "--unlisted",
        "3 blinks then 2 blinks",
        "--unlisted",
        "fast blinks");
    sums.put("settings", checksum("settings"));
    made(
        "unrounded", "--count 30 --seconds 40 --observer hurried --notes holds --set rounding-s=0");
    sums.put("unrounded", checksum("unrounded"));
    assertEquals(
        GOLDEN,
        sums.entrySet().stream()
            .map(entry -> entry.getKey() + " " + entry.getValue().substring(0, 16))
            .toList());
  }

  @Test
  void aShorterRunIsTheBeginningOfALongerOne() throws Exception {
    made("long", HURRIED);
    made("short", HURRIED.replace("--count 100", "--count 3"));
    assertEquals(truths("long").subList(0, 3), truths("short"));
    for (String name : names("short").subList(0, 3)) {
      assertEquals(text("long", name), text("short", name));
    }
  }

  @Test
  void printsTheFirstOfThemWithoutAnythingElse() throws Exception {
    made("a", "--state coil-open --observer meter --seed 3 --count 2");
    CommandRun run = simulate("--state coil-open --observer meter --seed 3 --out -");
    assertEquals(0, run.status());
    assertEquals(text("a", "coil-open-meter-001.csv"), run.out());
    assertEquals("coil-open by meter  [invented sheet]", run.err().strip());
  }

  @Test
  void theFirstLineSaysThatTheSheetIsInvented() throws IOException {
    CommandRun run = simulate(HURRIED, "--out", "a/b");
    assertEquals(
        List.of(
            "100 recordings of cells-low by hurried  [invented sheet]",
            "  a/b/cells-low-hurried-001.log to cells-low-hurried-100.log",
            "  a/b/truth.jsonl"),
        run.outLines());
    Files.writeString(
        temp.resolve("own.yaml"),
        "lampwise-sheet: 1\ntitle: Own\nbasis: label\nstates:\n  low:\n    rhythm: 1 blink every"
            + " 4 s\n    means: Low\n    condition: power-low\n");
    CommandRun own =
        CommandRun.Setting.in(temp)
            .run("", "simulate", "--sheet", "own.yaml", "--state", "low", "--out", "c");
    assertEquals(
        List.of("1 recording of low by careful", "  c/low-careful-001.log", "  c/truth.jsonl"),
        own.outLines());
  }

  @Test
  void eachStateInTurnShowsAndSaysWithWhat() throws Exception {
    CodeSheet demo = SheetReader.demo();
    List<String> names = made("a", "--state all --count 2 --seconds 40 --observer exact");
    assertEquals(2 * demo.states().size() + 1, names.size());
    List<String> truths = truths("a");
    for (int i = 0; i < truths.size(); i++) {
      LampState state = demo.states().get(i % demo.states().size());
      String truth = truths.get(i);
      assertTrue(truth.contains("\"state\":\"" + state.name() + "\",\"condition\""), truth);
      boolean dark = state.condition().word().equals("ready") || state.name().equals("no-power");
      assertEquals(dark, truth.contains("\"blinks\":[]"), truth);
    }
    Recording hand = recording("a", "target-seen-exact-004.log");
    assertEquals(1, hand.marks().targets().spans().size());
    Recording power = recording("a", "starting-exact-009.log");
    assertEquals(
        List.of("power-up"),
        power.marks().events().stream().map(event -> event.kind().word()).toList());
  }

  @Test
  void withoutAStateItIsDrawnByWeight() throws Exception {
    made("a", "--count 60 --seconds 20");
    long kinds =
        truths("a").stream()
            .map(line -> line.replaceFirst(".*\"state\":\"([^\"]*)\",\"condition.*", "$1"))
            .distinct()
            .count();
    assertTrue(kinds >= 5 && kinds < 40, kinds + " states");
    CommandRun run = simulate("--out b");
    assertEquals(
        "1 recording of states drawn by weight by careful  [invented sheet]",
        run.outLines().get(0));
  }

  @Test
  void aPhraseIsUnlisted() throws Exception {
    List<String> names =
        made("a", "--observer exact", "--phrase", "2 blinks 0.3 s apart every 4 s");
    assertEquals(List.of("truth.jsonl", "unlisted-exact-001.log"), names);
    assertTrue(truths("a").get(0).contains("\"condition\":null,\"rhythm\":\"2 blinks 0.3 s apart"));
    int blinks = assertInstanceOf(BlinkLog.class, recording("a", names.get(1))).blinks().size();
    assertTrue(blinks >= 27 && blinks <= 34, blinks + " blinks in 60 s");
  }

  @Test
  void aRhythmOfTheSheetIsNotUnlisted() throws IOException {
    for (String option : List.of("--phrase", "--unlisted")) {
      CommandRun run = simulate("--out a", option, "1 blink every 3100 ms");
      assertEquals(2, run.status());
      assertEquals(
          option + ": 1 blink every 3100 ms: the sheet lists this rhythm; take --state cells-low",
          run.err().strip());
    }
    assertEquals(List.of(), names("."));
  }

  /** One in twenty; of 400 the share lies within 4 standard deviations of that: 2 to 38. */
  @Test
  void someOfTheMixAreUnlisted() throws IOException {
    made(
        "a",
        "--count 400 --seconds 5",
        "--unlisted",
        "2 blinks per second",
        "--unlisted",
        "steady");
    String all = String.join("\n", truths("a"));
    long unlisted = all.split("\"state\":\"unlisted\",\"condition", -1).length - 1;
    assertTrue(unlisted >= 2 && unlisted <= 38, unlisted + " of 400");
    assertTrue(all.contains("\"rhythm\":\"steady\"") && all.contains("2 blinks per second"));
  }

  @Test
  void whatALaterStateShowsWithHappensWhenItIsThere() throws Exception {
    made("a", "--state target-seen --then starting@20 --then target-seen@40 --observer exact");
    String truth = truths("a").get(0);
    Recording recording = recording("a", "target-seen-exact-001.log");
    double power = recording.marks().events().get(0).atSeconds();
    assertEquals(1, recording.marks().events().size());
    assertTrue(power >= 20 && power <= 24, truth);
    List<TargetSpan> targets = recording.marks().targets().spans();
    assertEquals(2, targets.size());
    assertTrue(targets.get(0).fromSeconds() >= 0 && targets.get(0).toSeconds() <= 20, truth);
    assertTrue(targets.get(1).fromSeconds() >= 40, truth);
    BlinkLog log = assertInstanceOf(BlinkLog.class, recording);
    for (double[] act : new double[][] {{0, 20}, {20, 40}, {40, 60}}) {
      assertTrue(
          log.blinks().stream()
              .anyMatch(blink -> blink.onSeconds() > act[0] && blink.onSeconds() < act[1]),
          truth);
    }
  }

  @Test
  void theLampChangesItsStateWhenItIsTold() throws Exception {
    made("a", "--state resting --then cells-low@20 --then held-off@50.5 --observer exact");
    String truth = truths("a").get(0);
    assertEquals("", JsonSchema.TRUTH.faults(truth));
    assertTrue(truth.contains("\"state\":\"cells-low\",\"condition\":\"power-low\""), truth);
    assertTrue(truth.contains("{\"from_s\":20.0,\"state\":\"cells-low\""), truth);
    assertTrue(truth.contains("{\"from_s\":50.5,\"state\":\"held-off\""), truth);
    BlinkLog log = assertInstanceOf(BlinkLog.class, recording("a", "resting-exact-001.log"));
    assertTrue(log.blinks().get(0).onSeconds() > 19.9, log.toString());
  }

  @Test
  void targetsAndEventsAreMarkedUnlessAskedNotTo() throws Exception {
    String words = "--state resting --target 5..8.5 --target 20..30 --event flush@31 --seconds 40";
    made("a", words);
    Recording marked = recording("a", "resting-careful-001.log");
    assertEquals(2, marked.marks().targets().spans().size());
    assertEquals(8.5, marked.marks().targets().spans().get(0).toSeconds());
    assertEquals(31, marked.marks().events().get(0).atSeconds());
    made("b", words + " --unmarked");
    Recording unmarked = recording("b", "resting-careful-001.log");
    assertEquals(Targets.unknown(), unmarked.marks().targets());
    assertEquals(List.of(), unmarked.marks().events());
    String truth = truths("b").get(0);
    assertTrue(truth.contains("\"marked\":false,\"targets_s\":[[5.0,8.5],[20.0,30.0]]"), truth);
    assertTrue(truth.contains("\"events\":[{\"event\":\"flush\",\"at_s\":31.0}]"), truth);
    made("c", "--state cells-low --target none");
    assertEquals(Targets.none(), recording("c", "cells-low-careful-001.log").marks().targets());
  }

  @Test
  void theClockWandersIfItIsTold() throws Exception {
    made("a", "--state cells-low --seconds 600");
    assertTrue(truths("a").get(0).matches(".*\"clock\":\\[\\{[^{]*\\}\\],.*"), truths("a").get(0));
    made("b", "--state cells-low --seconds 600 --wander 0.02");
    String clock = truths("b").get(0).replaceAll(".*\"clock\":\\[(.*?)\\],.*", "$1");
    assertEquals(10, clock.split("ratio", -1).length - 1, clock);
  }

  @ParameterizedTest
  @ValueSource(strings = {"taps", "holds", "words"})
  void aPersonNotesInTheWayThatIsAskedFor(String way) throws Exception {
    made("a", "--state coil-open --observer careful --notes " + way);
    Recording recording = recording("a", "coil-open-careful-001.log");
    assertTrue(truths("a").get(0).contains("\"noted_as\":\"" + way + "\""));
    if (way.equals("words")) {
      assertInstanceOf(Description.class, recording);
    } else {
      BlinkLog log = assertInstanceOf(BlinkLog.class, recording);
      assertEquals(way.equals("holds"), log.blinks().get(0).hasOff());
    }
  }

  @Test
  void aLightFileHasTheDecimalsOfItsStep() throws Exception {
    made("a", "--state cells-low --observer fast");
    assertTrue(text("a", "cells-low-fast-001.csv").matches("(?s).*,[0-9]+\\.[0-9]\n"));
    made("b", "--state cells-low --observer fast --set step-lux=0.25 --set noise-lux=0");
    String text = text("b", "cells-low-fast-001.csv");
    assertTrue(text.matches("(?s)time_s,lux\n.*,[0-9]+\\.(00|25|50|75)\n"), text);
    assertTrue(truths("b").get(0).contains("\"noise-lux\":0,"), truths("b").get(0));
    assertEquals(
        Targets.likely(),
        assertInstanceOf(LightCurve.class, recording("b", "cells-low-fast-001.csv"))
            .marks()
            .targets());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--state cels-low | --state: the sheet has no state cels-low; near: cells-low",
        "--state coil | near: coil-open, coil-shorted",
        "--state xyzzyx | known: cells-low, sees-too-far, ",
        "--state resting --phrase dark | --state, --phrase and --unlisted do not go together",
        "--phrase 0 | --phrase: 0: column 2: ",
        "--then resting | --then takes STATE@T, not resting",
        "--then restin@5 | --then: the sheet has no state restin; near: resting",
        "--then resting@x | --then resting takes a number, not x",
        "--then resting@60 | --then: resting@60 must come after 0 s and before the end at 60 s",
        "--then resting@9 --then resting@9 | must come after 9 s and before the end at 60 s",
        "--wander 1% | --wander takes a number, not 1%",
        "--wander 0.2 | --wander: the clock's wander must be 0 to 0.1: 0.2",
        "--seconds 0 | --seconds takes a number over 0 and at most 604800 (a week), not 0",
        "--seconds 1e9 | --seconds takes a number over 0 and at most 604800 (a week), not 1e9",
        "--seconds NaN | --seconds takes a number, not NaN",
        "--seconds 1e999 | --seconds takes a number, not 1e999",
        "--seconds 0.01 --observer slow | a window of 0.01 s is too short for 5 rows a second",
        "--target 5 | --target: \"5\" cannot be read; expected none, all or A..B",
        "--target none --target 3..4 | --target: none and all cannot stand beside other targets",
        "--target 3..6 --target 5..7 | targets must come one after the other",
        "--event knock@3 | --event: \"knock\" is no event; known are power-up, ",
        "--observer slwo | --observer: ",
        "--observer slow --notes taps | --notes goes with a person; slow is a light sensor",
        "--notes songs | --notes takes taps, holds, words, not songs",
        "--set missed | --set takes NAME=VALUE, not missed",
        "--set mised=0.1 | --set: there is no setting mised; near: missed",
        "--set missed=often | --set missed takes a number, not often",
        "--observer slow --set noise-lux=-1 | --set: noise-lux must be 0 to 10000, not -1",
        "--seed 1.5 | --seed takes a whole number from ",
        "--count 0 | --count takes a whole number from 1 to 1000000, not 0",
        "--count 1000000 --state all | at most 1000000 recordings are made in one go",
      })
  void whatCannotBeIsOneLineAndWritesNothing(String words, String message) throws IOException {
    CommandRun run = simulate(words, "--out", "a");
    assertEquals(2, run.status(), run.out());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
    assertEquals(List.of(), names("."));
  }

  @Test
  void whatIsMissingIsSaid() {
    CommandRun sheet = CommandRun.Setting.in(temp).run("", "simulate", "--out", "a");
    assertEquals(
        "which sheet is not said; give --sheet FILE, or --sheet demo", sheet.err().strip());
    assertEquals(2, sheet.status());
    CommandRun out = simulate("--seed 1");
    assertEquals("where to write is not said; give --out DIR, or --out -", out.err().strip());
    CommandRun several = simulate("--count 2 --out -");
    assertEquals("--out - prints one recording; several need a folder", several.err().strip());
    assertEquals(2, several.status());
  }

  @Test
  void filesAreWrittenOverOnlyIfAskedFor() throws Exception {
    made("a", "--state resting --count 2");
    String before = checksum("a");
    CommandRun run = simulate("--state resting --seed 2", "--out", "a");
    assertEquals(2, run.status());
    assertEquals("a: holds truth.jsonl already; --force writes over it", run.err().strip());
    Files.delete(temp.resolve("a/truth.jsonl"));
    CommandRun second = simulate("--state resting --count 3 --seed 2", "--out", "a");
    assertEquals(2, second.status());
    assertEquals(
        "a: holds resting-careful-001.log already; --force writes over it", second.err().strip());
    assertEquals(2, names("a").size());
    made("a", "--state resting --count 2", "--force");
    assertEquals(before, checksum("a"));
  }

  @Test
  void aFaultHalfWayLeavesNothing() throws Exception {
    Files.createDirectories(temp.resolve("a/resting-careful-002.log"));
    CommandRun run = simulate("--state resting --count 3", "--out", "a");
    assertEquals(2, run.status());
    assertEquals(List.of("resting-careful-002.log"), names("a"));
    Files.writeString(temp.resolve("file"), "");
    CommandRun file = simulate("--state resting", "--out", "file");
    assertEquals("file: is a file; --out takes a folder", file.err().strip());
    assertEquals(2, file.status());
    CommandRun below = simulate("--state resting", "--out", "file/b");
    assertEquals(1, below.status());
    assertEquals(1, below.errLines().size());
    assertTrue(below.err().startsWith("file/b: cannot be written"), below.err());
    CommandRun empty = simulate("--state resting", "--out", "");
    assertEquals("--out takes the name of a folder, not \"\"", empty.err().strip());
    assertEquals(List.of("a", "file"), names("."));
  }

  @Test
  void theListNamesEveryObserverAndSetting() {
    CommandRun run = CommandRun.Setting.in(temp).run("", "simulate", "--list");
    assertEquals(0, run.status());
    for (String name : Presets.names()) {
      assertTrue(run.out().contains(" " + name), name + " is missing in\n" + run.out());
      for (String setting : Presets.named(name).settings().keySet()) {
        assertTrue(
            run.outLines().stream().anyMatch(line -> line.startsWith(setting + " ")), setting);
      }
    }
    assertTrue(run.out().contains("\nnoise-lux         lux      1     1.5      2     3      2\n"));
    run.outLines().forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
  }

  @Test
  void theHelpNamesEachOptionAndObserver() {
    CommandRun run = CommandRun.Setting.in(temp).run("", "simulate", "--help");
    assertEquals(0, run.status());
    for (String option :
        List.of(
            "--sheet",
            "--state",
            "--phrase",
            "--then",
            "--seconds",
            "--target",
            "--event",
            "--unmarked",
            "--observer",
            "--notes",
            "--set",
            "--seed",
            "--wander",
            "--unlisted",
            "--count",
            "--out",
            "--force",
            "--list",
            "--trace")) {
      assertTrue(run.out().contains("\n      " + option), option + " is missing");
    }
    String joined = run.out().replaceAll("\\s+", " ");
    assertTrue(joined.contains(String.join(", ", Presets.names())), run.out());
    run.outLines().forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
  }
}

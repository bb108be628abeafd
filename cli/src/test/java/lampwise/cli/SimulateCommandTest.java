package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import lampwise.file.SheetReader;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Presets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SimulateCommandTest extends SimulateRuns {
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

package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwise.light.BlinkLog;
import lampwise.light.Window;
import lampwise.sim.Presets;
import org.junit.jupiter.api.Test;

/** What {@code simulate} writes: the same every time and everywhere, and never half. */
class SimulateBytesTest extends SimulateRuns {
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
}

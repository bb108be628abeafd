package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
  private static final String SHEET =
      """
      lampwise-sheet: 1
      title: Pump room unit
      basis: observed
      clock: 5 %
      states:
        ready:
          rhythm: 1 blink every 3.4 s
          means: Ready
          condition: ready
        cells-low:
          rhythm: 1 blink every 6.8 s
          means: Cells are low
          condition: power-low
        resting:
          rhythm: dark
          means: Resting
          condition: ready
        no-power:
          rhythm: dark
          means: No power
          condition: power-missing
        running:
          rhythm: 6 blinks per second
          means: Water runs
          condition: running
          seen: while-running
      """;

  @TempDir Path folder;

  private CommandRun plan(String... more) throws Exception {
    Files.writeString(folder.resolve("unit.sheet.yaml"), SHEET);
    String[] all = new String[more.length + 3];
    all[0] = "plan";
    all[1] = "--sheet";
    all[2] = "unit.sheet.yaml";
    System.arraycopy(more, 0, all, 3, more.length);
    return CommandRun.Setting.in(folder).run("", all);
  }

  @Test
  void saysHowLongAndWhatItCannotTell() throws Exception {
    CommandRun run = plan();
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().startsWith("Pump room unit\nBy taps, observer careful:"), run.out());
    assertTrue(run.out().contains("\ncells-low  "), run.out());
    assertTrue(
        run.out().contains("resting and no-power: the lamp is the same; measure the cells"),
        run.out());
    List<String> rows =
        run.outLines().stream().filter(line -> line.matches("[a-z-]+ +([0-9]+ s|-).*")).toList();
    List<Integer> seconds =
        rows.stream()
            .map(row -> row.split(" +", -1)[1].replace("-", "0"))
            .map(Integer::valueOf)
            .toList();
    assertEquals(5, rows.size(), run.out());
    assertEquals(seconds.stream().sorted(Comparator.reverseOrder()).toList(), seconds, run.out());
    assertTrue(run.out().contains("running: look into the bowl or basin"), run.out());
    run.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void theSensorIsSaidInTheJson() throws Exception {
    CommandRun run = plan("--rate", "10", "--json");
    assertEquals(0, run.status(), run.err());
    assertTrue(
        run.out()
            .startsWith(
                "{\"lampwise-json\":1,\"sheet\":\"Pump room unit\",\"basis\":\"observed\","
                    + "\"by\":\"a light sensor, 10 samples a second\",\"rate_hz\":10,"
                    + "\"sure\":0.99,\"pairs\":[{\"first\":\"ready\",\"second\":\"cells-low\","
                    + "\"seconds\":"),
        run.out());
    assertEquals(10, run.out().split("\"first\"").length - 1);
    assertEquals(1, run.out().lines().count());
  }

  @Test
  void wrongUseIsOneLine() throws Exception {
    refused("--rate takes a number, not x\n", "--rate", "x");
    refused("--rate: samples a second is 0.0; expected 0.1 to 1000000.0\n", "--rate", "0");
    refused(
        "--rate is a light sensor; it goes without --observer\n",
        "--rate",
        "10",
        "--observer",
        "exact");
    refused(
        "--observer takes a person here; for a light sensor give --rate HZ\n",
        "--observer",
        "fast");
    refused("--notes words cannot be planned; take taps or holds\n", "--notes", "words");
    CommandRun none = CommandRun.Setting.in(folder).run("", "plan");
    assertEquals(2, none.status());
    assertEquals("which sheet is not said; give --sheet FILE, or --sheet demo\n", none.err());
  }

  private void refused(String message, String... more) throws Exception {
    CommandRun run = plan(more);
    assertEquals(2, run.status(), run.out());
    assertEquals(message, run.err());
    assertEquals("", run.out());
  }
}

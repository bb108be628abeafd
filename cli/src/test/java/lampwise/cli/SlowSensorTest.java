package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code decode} says of a sensor that is too slow for a state of the sheet. */
class SlowSensorTest {
  private static final String SHEET =
      """
      lampwise-sheet: 1
      title: Fast and slow
      basis: observed
      clock: 5 %
      blink: 60 ms
      states:
        rapid:
          rhythm: 4.9 blinks per second
          means: flutters
          condition: other
        slow:
          rhythm: 1 blink of 3 s every 10 s
          means: a long light now and then
          condition: ready
        dark:
          rhythm: dark
          means: nothing
          condition: other
      """;

  @TempDir Path folder;

  /** 4.9 blinks a second, looked at five times a second: lit for 3 s of 10 s. */
  @BeforeEach
  void write() throws IOException {
    Random random = new Random(11);
    StringBuilder rows = new StringBuilder("time_s,lux\n");
    for (int i = 0; i < 300; i++) {
      double t = i * 0.2;
      double level = (t % 0.204 < 0.06 ? 140 : 100) + random.nextGaussian();
      rows.append(String.format(Locale.ROOT, "%.1f,%.1f%n", t, level));
    }
    Files.writeString(folder.resolve("rapid.csv"), rows);
    Files.writeString(folder.resolve("unit.sheet.yaml"), SHEET);
  }

  private CommandRun decode(String... options) {
    String[] all = new String[options.length + 4];
    all[0] = "decode";
    all[1] = "--sheet";
    all[2] = "unit.sheet.yaml";
    System.arraycopy(options, 0, all, 3, options.length);
    all[all.length - 1] = "rapid.csv";
    return CommandRun.Setting.in(folder).run("", all);
  }

  @Test
  void theTextNamesBothAndWhy() {
    CommandRun run = decode();
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().startsWith("undecided: "), run.out());
    String text = Layout.clean(run.out());
    assertTrue(text.contains("reason at 5 samples a second, rapid would look like slow"), text);
    assertTrue(
        text.contains("note at 5 samples a second, rapid cannot be told from slow or dark"), text);
    assertTrue(text.contains("sampled faster, rapid would no longer look like slow"), text);
    for (String line : run.outLines()) {
      assertTrue(line.length() <= Layout.WIDTH, line);
    }
  }

  @Test
  void theJsonHasItInReasonAndNotes() throws IOException {
    String json = decode("--json").out();
    assertEquals("", JsonSchema.READING.faults(json), json);
    assertTrue(json.contains("\"verdict\":\"undecided\""), json);
    assertTrue(
        json.contains("\"reason\":\"at 5 samples a second, rapid would look like slow\""), json);
    assertTrue(
        json.contains("\"at 5 samples a second, rapid cannot be told from slow or dark\""), json);
  }
}

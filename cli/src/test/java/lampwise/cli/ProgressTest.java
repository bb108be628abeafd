package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressTest {
  private final StringWriter err = new StringWriter();
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 1_000_000_000L);

  private Progress progress(boolean terminal) {
    return new Progress(
        new Surroundings(
            new ByteArrayInputStream(new byte[0]),
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            Path.of(""),
            Map.of(),
            terminal),
        200,
        nanos::get);
  }

  private void doneAt(Progress progress, int steps, double seconds) {
    nanos.addAndGet((long) (seconds * 1e9));
    progress.done(steps);
  }

  @Test
  void aShortRunSaysNothing() {
    Progress progress = progress(true);
    doneAt(progress, 1, 1);
    doneAt(progress, 200, 0.99);
    progress.end();
    assertEquals("", err.toString());
  }

  @Test
  void aLongRunSaysHowFarItIsAndTakesItAway() {
    Progress progress = progress(true);
    doneAt(progress, 99, 2.1);
    doneAt(progress, 100, 0.1);
    doneAt(progress, 120, 0.5);
    progress.end();
    assertEquals("\r99 of 200\r120 of 200\r          \r", err.toString());
  }

  @Test
  void whereNobodyLooksNothingIsSaid() {
    Progress progress = progress(false);
    doneAt(progress, 99, 60);
    progress.end();
    assertEquals("", err.toString());
  }
}

package lampwise.sim.check;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import example.NaiveContract;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A decoder of forty lines from elsewhere fails, and the samples say why in a few lines. */
class NaiveDecoderTest {
  private static final int MOST_LINES = 12;
  private static final int MOST_LETTERS = 600;

  private static final List<String> FAILED =
      List.of(
          "any recordings are answered",
          "probabilities sum to one",
          "an empty window decides nothing",
          "three clean cycles are decoded",
          "a clock within the tolerance is accepted",
          "a clock far outside the tolerance is not accepted",
          "a state that fits worse turns no right answer wrong");

  @Test
  void failsWithShortSamples() {
    ContractRun run = ContractRun.of(NaiveContract.class);
    assertTrue(run.broken().keySet().containsAll(FAILED), () -> "held: " + run.held());
    assertTrue(new TreeSet<>(run.held()).contains("the same call gives the same answer"));
    for (String law : FAILED) {
      String sample = shrunk(run.report(law));
      assertFalse(sample.isBlank(), law);
      assertTrue(sample.lines().count() <= MOST_LINES, () -> law + ":\n" + sample);
      assertTrue(sample.length() <= MOST_LETTERS, () -> law + ":\n" + sample);
    }
  }

  /** What stands between the headings of the shrunk sample and the original one. */
  private static String shrunk(String report) {
    int start = report.indexOf("Shrunk Sample");
    int end = report.indexOf("Original Sample");
    return start < 0 || end < start ? "" : report.substring(start, end).strip();
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Likelihoods averaged over noise settings. */
class SumsTest {
  private static Timing weighing(double weight) {
    return Timing.of(new Noise(0.05, 0.1, 0.01, 0, 0.05, 0, weight));
  }

  private static void add(Sums sums, int candidate, Timing timing, double log) {
    sums.add(candidate, timing, new double[] {log});
  }

  @Test
  void averagesByWeight() {
    Sums sums = new Sums(2, -50);
    add(sums, 0, weighing(3), Math.log(0.2));
    add(sums, 0, weighing(1), Math.log(0.6));
    assertEquals(Math.log(0.3), sums.mean(0), 1e-12);
    assertEquals(Double.NEGATIVE_INFINITY, sums.mean(1));
    assertEquals(Math.log(0.3), sums.best(), 1e-12);
    assertEquals(1, sums.bestTiming().any().weight());
  }

  @Test
  void whatFallsFarBehindIsHopeless() {
    Sums sums = new Sums(3, -500);
    add(sums, 0, weighing(1), -10);
    add(sums, 1, weighing(1), -10 - Sums.HOPELESS + 1);
    add(sums, 2, weighing(1), -10 - Sums.HOPELESS - 1);
    assertTrue(sums.isHopeful(0));
    assertTrue(sums.isHopeful(1));
    assertFalse(sums.isHopeful(2));
    assertTrue(sums.floor().log() < -10 - Sums.HOPELESS, "an average may lie above its terms");
    assertEquals(List.of(0, 1, 2), sums.bestFirst(3));
  }

  @Test
  void whatAnotherCandidateHasInAnyCaseCounts() {
    Sums sums = new Sums(1, -20);
    add(sums, 0, weighing(1), -20 - Sums.HOPELESS - 1);
    assertFalse(sums.isHopeful(0));
    assertEquals(-20 - Sums.HOPELESS, sums.floor().log(), 1e-12);
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Likelihoods averaged over noise settings. */
class SumsTest {
  private static final List<Timing> ONE = List.of(weighing(1));

  private static Timing weighing(double weight) {
    return Timing.of(new Noise(0.05, 0.1, 0.01, 0, 0.05, 0, weight));
  }

  private static void add(Sums sums, int candidate, Timing timing, double log) {
    sums.add(candidate, timing, new double[] {log});
  }

  @Test
  void averagesByWeight() {
    Sums sums = new Sums(2, List.of(weighing(3), weighing(1)), -50);
    add(sums, 0, weighing(3), Math.log(0.2));
    add(sums, 0, weighing(1), Math.log(0.6));
    assertEquals(Math.log(0.3), sums.mean(0), 1e-12);
    assertEquals(Double.NEGATIVE_INFINITY, sums.mean(1));
    assertEquals(Math.log(0.3), sums.best(), 1e-12);
    assertEquals(1, sums.bestTiming().any().weight());
  }

  @Test
  void whatFallsFarBehindIsHopeless() {
    Sums sums = new Sums(3, ONE, -500);
    add(sums, 0, weighing(1), -10);
    add(sums, 1, weighing(1), -10 - Sums.HOPELESS + 1);
    add(sums, 2, weighing(1), -10 - Sums.HOPELESS - 1);
    assertTrue(sums.isHopeful(0));
    assertTrue(sums.isHopeful(1));
    assertFalse(sums.isHopeful(2));
    assertEquals(-10 - Sums.HOPELESS, sums.floor().log(), 1e-12);
    assertEquals(List.of(0, 1), sums.hopeful(3));
  }

  @Test
  void theFloorIsBelowEveryAverageThatMatters() {
    Sums sums = new Sums(2, List.of(weighing(3), weighing(1)), -500);
    add(sums, 0, weighing(1), -10);
    add(sums, 0, weighing(3), -40);
    assertEquals(-10 - Math.log(4) - Sums.HOPELESS, sums.floor().log(), 1e-12);
    assertTrue(sums.floor().log() <= sums.best() - Sums.HOPELESS);
  }

  @Test
  void whatAnotherCandidateHasInAnyCaseCounts() {
    Sums sums = new Sums(1, ONE, -20);
    add(sums, 0, weighing(1), -20 - Sums.HOPELESS - 1);
    assertFalse(sums.isHopeful(0));
    assertEquals(-20 - Sums.HOPELESS, sums.floor().log(), 1e-12);
  }
}

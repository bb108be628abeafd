package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What a fold must reach to matter. */
class FloorTest {
  private static Front frontAt(double log) {
    Front front = new Front();
    front.offer(new double[] {log}, 0);
    return front;
  }

  @Test
  void whoFallsFarBehindTheBestFoldIsGivenUp() {
    Floor floor = new Floor(-100, 0, frontAt(30));
    assertEquals(30 - Sums.BEHIND, floor.at(0), 1e-12);
    assertEquals(30 - Sums.BEHIND, floor.of(-5).at(0), 1e-12, "a weight alone is not behind");
    assertEquals(Double.NEGATIVE_INFINITY, floor.at(1), "no fold went so far");
  }

  @Test
  void aWeightThatCountsLeavesLessToFallBehind() {
    Floor floor = new Floor(-100, 0, frontAt(30));
    assertEquals(30 - (Sums.BEHIND - 5), floor.of(-5).weighed().at(0), 1e-12);
    assertEquals(30 - 8, floor.of(-40).weighed().at(0), 1e-12, "whoever begins unlikely");
    assertEquals(-95, floor.of(-5).weighed().log(), 1e-12);
  }
}

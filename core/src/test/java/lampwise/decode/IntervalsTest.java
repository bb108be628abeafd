package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Times between blinks. */
class IntervalsTest {
  @Test
  void gapsOverMissedBlinksCountAsManyCycles() {
    double[] starts = {0, 0.2, 0.4, 0.8, 1.0, 1.6};
    assertEquals(0.2, Intervals.mean(starts, 0.23), 1e-12);
    assertEquals(0.2, Intervals.mean(starts, 0.17), 1e-12);
  }

  @Test
  void blinksThatAreMuchNearerAreLeftOut() {
    assertEquals(2, Intervals.mean(new double[] {0, 2, 2.1, 4.1}, 2.2), 1e-12);
    assertEquals(9, Intervals.mean(new double[] {0, 2}, 9), 1e-12);
    assertEquals(9, Intervals.mean(new double[] {0}, 9), 1e-12);
  }
}

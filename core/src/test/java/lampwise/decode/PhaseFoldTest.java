package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** A recording laid over itself. */
class PhaseFoldTest {
  private static int fullest(double[] starts, double period) {
    double[] phases = new double[starts.length];
    PhaseFold.lay(starts.clone(), phases, starts[0], period);
    return PhaseFold.fullest(phases, period, PhaseFold.width(period));
  }

  @Test
  void noPlaceIsFullerThanWhatIsCountedWithoutOrder() {
    Random random = new Random(1125);
    int tight = 0;
    for (int i = 0; i < 2000; i++) {
      double period = 0.13 + 20 * random.nextDouble() * random.nextDouble();
      double[] starts = random.doubles(2 + random.nextInt(60), 0, 90).sorted().toArray();
      if (i % 2 == 0) {
        for (int k = 0; k < starts.length; k++) {
          starts[k] = 1 + k * period + 0.02 * random.nextGaussian();
        }
      }
      int most = PhaseFold.mostAtPlace(starts, period, PhaseFold.width(period));
      int fullest = fullest(starts, period);
      assertTrue(most >= fullest, most + " counted, " + fullest + " at a place of " + period);
      tight += most == fullest ? 1 : 0;
    }
    assertTrue(tight > 1000, "as many as there are at a place in " + tight);
  }

  @Test
  void ofLongCyclesAllBlinksAreCounted() {
    assertEquals(2, PhaseFold.mostAtPlace(new double[] {0, 4e8}, 1e9, PhaseFold.width(1e9)));
  }

  @Test
  void aPlaceAtBothEndsOfTheCycleIsOne() {
    double[] starts = {1, 3.95, 7.05, 9.98, 13.02};
    assertEquals(5, fullest(starts, 3));
    assertEquals(5, PhaseFold.mostAtPlace(starts, 3, PhaseFold.width(3)));
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** Pulses of a chain that left no blink. */
class MissedTest {
  private static final Train TRAIN =
      new Train(new double[] {0, 0.6, 1.2}, new double[] {0.1, 0.1, 0.1}, 0, 8, 0.95, 1.05, 0);

  @Test
  void pulsesBeforeAChainAreLeftOnlyWhereItDoesNotMatter() {
    List<Noise> settings = Noise.ofPeople(0.01, false);
    int given = 0;
    for (Timing timing : Timing.of(settings)) {
      for (double time = 0.5; time < 90; time += 0.83) {
        double[] all = before(timing, time, timing.all(Double.NEGATIVE_INFINITY));
        for (double least : new double[] {-40, -12, -3}) {
          double[] here = before(timing, time, timing.all(least));
          boolean matters = false;
          for (double log : here) {
            matters |= log > least;
          }
          if (matters) {
            assertArrayEquals(all, here, "all of what matters is counted");
          }
          for (int s = 0; s < all.length; s++) {
            assertTrue(here[s] >= all[s]);
          }
          given += here[0] > all[0] ? 1 : 0;
        }
      }
    }
    assertTrue(given > 100, "given up " + given + " times");
  }

  private static double[] before(Timing timing, double time, double[] least) {
    Evidence evidence =
        new Evidence(new Window(0, 90), List.of(), List.of(), List.of(), 0.01, true, false);
    Density density = new Density(TRAIN, timing.any().sd());
    double[] logs = timing.all(0);
    Link link = new Link(0, 0, Line.through(time, 0), density, 0, timing.all(0));
    new Missed(TRAIN, evidence, timing).addBefore(link, logs, least);
    return logs;
  }
}

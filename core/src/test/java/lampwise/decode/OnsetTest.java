package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** Pulses before the first blink of a run. */
class OnsetTest {
  private static final Train TRAIN =
      new Train(new double[] {0, 0.6, 1.2}, new double[] {0.1, 0.1, 0.1}, 0, 8, 0.95, 1.05, 0);

  private static Onset onset(Noise noise) {
    Evidence evidence =
        new Evidence(
            new Window(0, 90),
            List.of(new Evidence.Note(70, Double.NaN, false, false, 1)),
            List.of(),
            List.of(noise),
            0.01,
            true,
            false);
    return new Onset(TRAIN, evidence, noise, 0, 70);
  }

  @Test
  void whatIsBelowTheLeastIsNeverSaidToBeAboveIt() {
    int given = 0;
    for (Noise noise : Noise.ofPeople(0.01, false)) {
      for (double from = 69; from >= 0; from -= 0.37) {
        double all = onset(noise).missedSince(from, Double.NEGATIVE_INFINITY);
        for (double least : new double[] {-30, -9, -2}) {
          double here = onset(noise).missedSince(from, least);
          assertTrue(here >= all - 1e-12);
          if (here > least) {
            assertEquals(all, here, "all of what matters is counted");
          }
          given += here > all ? 1 : 0;
        }
      }
    }
    assertTrue(given > 100, "given up " + given + " times");
  }
}

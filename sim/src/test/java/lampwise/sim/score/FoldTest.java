package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.sim.Chance;
import org.junit.jupiter.api.Test;

class FoldTest {
  private static final List<Fold.Stretch> STRETCHES =
      List.of(
          new Fold.Stretch(0.05, 0, 0),
          new Fold.Stretch(0.1, 0, 0),
          new Fold.Stretch(0.05, 1.5, 2.5),
          new Fold.Stretch(0.02, 0.4, 0.41),
          new Fold.Stretch(1e-4, 5, 6));

  /** The share of stretches up to one, by the middle rule. */
  private static double share(Fold.Stretch stretch, double to) {
    int fine = 400_000;
    double sum = 0;
    double width = (to - stretch.least()) / fine;
    for (int i = 0; i < fine; i++) {
      sum += stretch.density(stretch.least() + (i + 0.5) * width) * width;
    }
    return sum;
  }

  @Test
  void theDensityIntegratesToOne() {
    for (Fold.Stretch stretch : STRETCHES) {
      assertEquals(1, share(stretch, stretch.most()), 1e-4, stretch.toString());
    }
  }

  /** Clock and rate drawn evenly: the share of draws below a stretch is what the density says. */
  @Test
  void theDensityIsThatOfClockOverRate() {
    Fold.Stretch stretch = new Fold.Stretch(0.05, 1.5, 2.5);
    int draws = 100_000;
    for (double at : new double[] {0.41, 0.45, 0.55, 0.65}) {
      Chance chance = Chance.of(7);
      int below = 0;
      for (int i = 0; i < draws; i++) {
        double clock = chance.uniform(0.95, 1.05);
        below += clock / chance.uniform(1.5, 2.5) < at ? 1 : 0;
      }
      // Six standard deviations of a share of 100,000.
      assertEquals((double) below / draws, share(stretch, at), 0.0095, "below " + at);
    }
  }

  @Test
  void nothingLiesOutside() {
    Fold.Stretch stretch = new Fold.Stretch(0.05, 1.5, 2.5);
    assertEquals(0, stretch.density(stretch.least() * 0.999));
    assertEquals(0, stretch.density(stretch.most() * 1.001));
    assertTrue(stretch.density(0.5) > 0);
  }
}

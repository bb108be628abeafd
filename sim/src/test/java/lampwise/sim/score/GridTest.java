package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.sim.Chance;
import org.junit.jupiter.api.Test;

/** The sum over phase and stretch against a plain fine grid over the whole plane. */
class GridTest {
  private static final double FROM = 0;
  private static final double TO = 20;

  /** Every point of a fine grid, with the blinks laid out one by one. */
  private static double plain(Fold fold, Sighting sighting, double late, double gap, int fine) {
    double least = fold.stretch().least();
    double most = fold.stretch().most();
    double sum = 0;
    for (int i = 0; i < fine; i++) {
      double stretch = least + (i + 0.5) / fine * (most - least);
      for (int k = 0; k < fine; k++) {
        double phase = (k + 0.5) / fine;
        sum += fold.stretch().density(stretch) * at(fold, sighting, late, gap, phase, stretch);
      }
    }
    return sum * (most - least) / fine / fine;
  }

  private static double at(
      Fold fold, Sighting sighting, double late, double gap, double phase, double stretch) {
    double cycle = fold.cycle() * stretch;
    double first = (FROM + TO) / 2 - phase * cycle;
    while (first > FROM - cycle) {
      first -= cycle;
    }
    List<Double> begins = new ArrayList<>();
    List<Double> noted = new ArrayList<>();
    double dark = Double.NEGATIVE_INFINITY;
    for (double start = first; start <= TO; start += cycle) {
      for (int j = 0; j < fold.blinks(); j++) {
        double on = start + fold.on(j) * stretch;
        double end = start + fold.end(j) * stretch;
        if (on >= FROM && on <= TO) {
          begins.add(on);
          noted.add(on + (on - dark > gap ? late : 0));
        }
        dark = end > FROM ? end : Double.NEGATIVE_INFINITY;
      }
    }
    double[] on = begins.stream().mapToDouble(Double::doubleValue).toArray();
    double[] at = noted.stream().mapToDouble(Double::doubleValue).toArray();
    return Math.exp(
        sighting.log(at, on, on.length, new double[on.length], 0, Double.NEGATIVE_INFINITY));
  }

  private static double fast(Fold fold, Sighting sighting, double late, double gap) {
    Grid grid = new Grid(fold, new Taps(sighting, late, gap));
    double least = sighting.logAllStrays() - 40;
    return grid.logSum(grid.first(least), least, 40);
  }

  private static double[] taps(Fold fold, double sd, double late, int seed) {
    Chance chance = Chance.of(seed);
    double stretch = chance.uniform(fold.stretch().least(), fold.stretch().most());
    List<Double> taps = new ArrayList<>();
    double start = -chance.uniform() * fold.cycle() * stretch;
    for (double cycle = start; cycle < TO; cycle += fold.cycle() * stretch) {
      for (int j = 0; j < fold.blinks(); j++) {
        double tap = cycle + fold.on(j) * stretch + (j == 0 ? late : 0) + sd * chance.normal();
        if (tap >= FROM && tap <= TO && !chance.happens(0.1)) {
          taps.add(tap);
        }
      }
    }
    taps.add(chance.uniform(FROM, TO));
    return taps.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  private static void assertLikePlain(Fold fold, double sd, double late, int fine) {
    for (int seed = 0; seed < 4; seed++) {
      double[] taps = taps(fold, sd, late, seed);
      Sighting sighting = new Sighting(taps, FROM, TO, sd, 0.1, 0.02);
      double plain = Math.log(plain(fold, sighting, late, 1, fine));
      String said = "seed " + seed + ", taps " + Arrays.toString(taps);
      assertEquals(plain, fast(fold, sighting, late, 1), 0.02, said);
    }
  }

  @Test
  void singleBlinks() {
    Fold.Stretch stretch = new Fold.Stretch(0.05, 0, 0);
    assertLikePlain(new Fold(new double[] {0}, new double[] {0.1}, 3.4, stretch), 0.08, 0, 600);
  }

  @Test
  void groupsWithALateFirst() {
    Fold.Stretch stretch = new Fold.Stretch(0.05, 0, 0);
    Fold fold = new Fold(new double[] {0, 0.6, 1.2}, new double[] {0.1, 0.7, 1.3}, 8, stretch);
    assertLikePlain(fold, 0.1, 0.15, 600);
  }

  @Test
  void aRangeOfRates() {
    Fold fold = Fold.ofRate(0.4, 0.6, 0.1, 0.05, 1).get(0);
    assertLikePlain(fold, 0.1, 0, 800);
  }

  /** A tap from another rhythm: the sum stays right where the fit is bad. */
  @Test
  void anotherRhythm() {
    Fold.Stretch stretch = new Fold.Stretch(0.05, 0, 0);
    Fold fold = new Fold(new double[] {0}, new double[] {0.1}, 4.5, stretch);
    Sighting sighting = new Sighting(new double[] {1, 4.4, 7.9, 11.2}, FROM, TO, 0.08, 0.1, 0.02);
    double plain = Math.log(plain(fold, sighting, 0, 1, 800));
    assertEquals(plain, fast(fold, sighting, 0, 1), 0.02);
  }
}

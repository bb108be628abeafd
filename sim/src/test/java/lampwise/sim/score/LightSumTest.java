package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import lampwise.light.Blink;
import lampwise.light.Window;
import lampwise.sim.Chance;
import lampwise.sim.Measured;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sums of the reference for light sensors against plain ones. */
class LightSumTest {
  private static final double TO = 12;
  private static final Window WINDOW = new Window(0, TO);
  private static final double LAMP = 10;

  /** Every point of a fine grid, with the blinks laid out one by one. */
  private static double plain(
      Fold fold, List<Measured.Value> values, double sd, int stretches, int phases) {
    double least = fold.stretch().least();
    double most = fold.stretch().most();
    double log = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < stretches; i++) {
      double stretch = least + (i + 0.5) / stretches * (most - least);
      double density = Math.log(fold.stretch().density(stretch) * (most - least));
      for (int k = 0; k < phases; k++) {
        List<Blink> blinks = MadeValues.blinks(fold, (k + 0.5) / phases, stretch, TO);
        log = Logs.add(log, density + MadeValues.plain(values, blinks, LAMP, sd));
      }
    }
    return log - Math.log(stretches) - Math.log(phases);
  }

  /** With tables of what a blink is worth, and without: then times count as known better. */
  private static double fast(Fold fold, List<Measured.Value> values, double sd, double known) {
    Evidence evidence = new LightEvidence(new LightValues(values, LAMP, sd), WINDOW, known);
    Grid grid = new Grid(fold, evidence);
    return grid.logSum(grid.first(Double.NEGATIVE_INFINITY), Double.NEGATIVE_INFINITY, 16);
  }

  private static Fold pair(double apart, double cycle) {
    double[] on = {0, apart};
    double[] end = {0.1, apart + 0.1};
    return new Fold(on, end, cycle, new Fold.Stretch(0.05, 0, 0));
  }

  /** Shown and asked for: the same rhythm, or another; with noise so strong that all matters. */
  @ParameterizedTest
  @CsvSource({
    "0.3, 3.4, 3.4, 0.02, 0.01, 12",
    "0.3, 3.4, 3.0, 0.02, 0.01, 12",
    "0.15, 3.4, 3.4, 0.1, 0.1, 5",
    "0.15, 3.4, 2.9, 0.1, 0.1, 8",
    "0.3, 3.4, 3.4, 0.2, 0.15, 5",
  })
  void foldsAgainstAPlainSum(
      double apart, double shown, double asked, double every, double averaging, double sd) {
    List<Blink> blinks = MadeValues.blinks(pair(apart, shown), 0.3, 1.02, TO);
    List<Measured.Value> values = MadeValues.of(blinks, TO, every, averaging, LAMP, sd);
    Fold fold = pair(apart, asked);
    double plain = plain(fold, values, sd, 90, 700);
    double best = averaging * sd / LAMP / Math.sqrt(2 * Math.min(1, averaging / every));
    double known = Math.min(0.03, best);
    assertEquals(plain, fast(fold, values, sd, known), 0.03);
    assertEquals(plain, fast(fold, values, sd, known / 2), 0.03);
  }

  @Test
  void ratesAgainstAPlainSum() {
    Fold shown = new Fold(new double[] {0}, new double[] {0.1}, 0.8, new Fold.Stretch(0.05, 0, 0));
    List<Blink> blinks = MadeValues.blinks(shown, 0.3, 1, TO);
    List<Measured.Value> values = MadeValues.of(blinks, TO, 0.1, 0.1, LAMP, 8);
    for (Fold fold : Fold.ofRate(1.1, 1.4, 0.1, 0.05, 2)) {
      assertEquals(plain(fold, values, 8, 300, 90), fast(fold, values, 8, 0.03), 0.03);
    }
  }

  /** A lamp that adds nothing: whatever it shows, the values are as likely as in the dark. */
  @Test
  void aLampWithoutLightTellsNothing() {
    List<Measured.Value> values = MadeValues.of(List.of(), TO, 0.1, 0.1, 0, 5);
    LightValues none = new LightValues(values, 0, 5);
    Grid grid = new Grid(pair(0.3, 3.4), new LightEvidence(none, WINDOW, 0.03));
    double least = Double.NEGATIVE_INFINITY;
    assertEquals(0, grid.logSum(grid.first(least), least, 16), 1e-9);
    for (double rate : new double[] {0.3, 1, 8}) {
      assertEquals(0, new RandomLight(none, 0, TO, 0.01, 0.1, 0.05).log(rate), 1e-9);
    }
  }

  /**
   * Blinks in no order against the mean of the ratio over 100,000 draws of them: within five
   * standard errors.
   */
  @ParameterizedTest
  @CsvSource({"0.02, 0.01, 12", "0.1, 0.1, 6", "0.2, 0.15, 6"})
  void blinksInNoOrderAgainstDraws(double every, double averaging, double sd) {
    double to = 1.5;
    double rate = 2;
    List<Blink> shown = List.of(new Blink(0.4, 0.5), new Blink(0.57, 0.67), new Blink(1.2, 1.3));
    List<Measured.Value> made = MadeValues.of(shown, to, every, averaging, LAMP, sd);
    LightValues values = new LightValues(made, LAMP, sd);
    Chance chance = Chance.of(21);
    int draws = 100_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < draws; i++) {
      values.dark();
      double on = -2 + chance.waiting(rate);
      while (on < to) {
        values.lit(on, on + 0.1);
        on += 0.15 + chance.waiting(rate);
      }
      double ratio = Math.exp(values.log());
      sum += ratio;
      squares += ratio * ratio;
    }
    double mean = sum / draws;
    double error = Math.sqrt((squares / draws - mean * mean) / draws);
    double found = Math.exp(new RandomLight(values, 0, to, 0.002, 0.1, 0.05).log(rate));
    assertEquals(mean, found, 5 * error);
    assertEquals(0, error / mean, 0.05, "too rough to show anything");
  }
}

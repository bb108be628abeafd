package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import lampwise.sim.Chance;
import org.junit.jupiter.api.Test;

/** The prior of free rhythms: its densities against sums, its draws against its densities. */
class FreeFormTest {
  private static final double WINDOW = 20;

  /** The sum over all pauses and cycles, even in the logarithm, that go with these spacings. */
  private static double sum(FreeForm form, double... spacings) {
    int fine = 1000;
    double pauseWidth = Math.log(30 / 0.1) / fine;
    double cycleWidth = Math.log(70 / 0.05) / fine;
    double[] point = new double[form.size()];
    System.arraycopy(spacings, 0, point, 1, spacings.length);
    double sum = 0;
    for (int i = 0; i < fine; i++) {
      double pause = 0.1 * Math.exp((i + 0.5) * pauseWidth);
      for (int k = 0; k < fine; k++) {
        double cycle = 0.05 * Math.exp((k + 0.5) * cycleWidth);
        point[point.length - 2] = pause;
        point[point.length - 1] = cycle;
        // Every start within the cycle is as likely.
        double density = cycle * Math.exp(form.logPrior(point, WINDOW));
        sum += density * pause * pauseWidth * cycle * cycleWidth;
      }
    }
    return sum;
  }

  @Test
  void pausesAndCyclesSumToTheDensityOfTheSpacings() {
    double one = 1 / (0.5 * Math.log(3 / 0.12));
    double two = one / (0.3 * Math.log(3 / 0.12));
    assertEquals(one, sum(FreeForm.twoGroups(2, 3, true), 0.5), 0.01 * one);
    assertEquals(two, sum(FreeForm.twoGroups(3, 2, false), 0.5, 0.3), 0.01 * two);
  }

  /** As many draws have a short cycle as the density says. */
  @Test
  void drawsAreAsDenseAsStated() {
    for (FreeCycle cycles :
        List.of(new FreeCycle(0.1, 60), new FreeCycle(3, 60), new FreeCycle(15, 42))) {
      for (double to : new double[] {1, 6, 18, 30}) {
        Chance chance = Chance.of(7);
        int draws = 40_000;
        int below = 0;
        for (int i = 0; i < draws; i++) {
          below += cycles.draw(chance) < to ? 1 : 0;
        }
        double share = 0;
        int fine = 20_000;
        for (int i = 0; i < fine; i++) {
          share += Math.exp(cycles.logDensity((i + 0.5) * to / fine)) * to / fine;
        }
        // Five standard deviations of a share of 40,000.
        assertEquals((double) below / draws, share, 0.0125, cycles + " below " + to);
      }
    }
  }
}

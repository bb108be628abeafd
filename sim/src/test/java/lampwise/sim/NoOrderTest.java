package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.light.Blink;
import lampwise.sheet.Seen;
import org.apache.commons.statistics.distribution.ExponentialDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.junit.jupiter.api.Test;

/**
 * Blinks in no order are a Poisson process with a dead time: from start to start the blink, 0.05 s
 * of dark, and an exponential waiting time (Feller, An introduction to probability theory II,
 * chapter XI, on counters of the first type; from memory).
 */
class NoOrderTest {
  private static final double PER_SECOND = 1.3;
  private static final double DEAD_SECONDS = LampScenes.BLINK + 0.05;

  private static List<Blink> blinks(double seconds, double perSecond, long seed) {
    Scene scene = LampScenes.unlit(seconds, Act.random(perSecond));
    return Lamp.shine(scene, Chance.of(seed)).blinks();
  }

  /** About 5000 gaps, size 1 in 1000; a rate that is a tenth off would be seen. */
  @Test
  void gapsAreExponentialAfterTheDeadTime() {
    List<Blink> blinks = blinks(4600, PER_SECOND, 1);
    double[] waits = new double[blinks.size() - 1];
    for (int i = 0; i < waits.length; i++) {
      double gap = blinks.get(i + 1).onSeconds() - blinks.get(i).onSeconds();
      waits[i] = gap - DEAD_SECONDS;
      assertTrue(waits[i] >= -1e-9, "too early by " + waits[i]);
    }
    assertEquals(5000, waits.length, 300);
    Samples.assertFrom(ExponentialDistribution.of(1 / PER_SECOND), waits);
    Samples.assertNotFrom(ExponentialDistribution.of(1.1 / PER_SECOND), waits);
  }

  /**
   * In a stretch that begins when the lamp can blink again there are n or more with the probability
   * that n waiting times and n - 1 dead times fit in. 3000 lamps, size 1 in 1000; counts without a
   * dead time would be seen.
   */
  @Test
  void countsAreThoseOfAPoissonProcessWithDeadTime() {
    int most = 12;
    long[] observed = new long[most + 1];
    for (int lamp = 0; lamp < 3000; lamp++) {
      List<Blink> blinks = blinks(30, PER_SECOND, lamp);
      double from = blinks.get(0).onSeconds() + DEAD_SECONDS;
      long count =
          blinks.stream().filter(b -> b.onSeconds() > from && b.onSeconds() < from + 5).count();
      observed[(int) Math.min(most, count)]++;
    }
    assertTrue(Samples.probability(expected(DEAD_SECONDS, most), observed) > Samples.SIZE);
    assertTrue(Samples.probability(expected(0, most), observed) < Samples.SIZE);
  }

  private static double[] expected(double dead, int most) {
    double[] expected = new double[most + 1];
    double least = 1;
    for (int n = 0; n <= most; n++) {
      double more = n < most ? atLeast(n + 1, dead) : 0;
      expected[n] = 3000 * (least - more);
      least = more;
    }
    return expected;
  }

  private static double atLeast(int n, double dead) {
    double left = 5 - (n - 1) * dead;
    return GammaDistribution.of(n, 1 / PER_SECOND).cumulativeProbability(left);
  }

  @Test
  void aStateOfBlinksInNoOrderEndsToo() {
    Scene scene = LampScenes.unlit(60, Act.random(5), LampScenes.act("dark", Seen.ALWAYS).from(20));
    List<Blink> blinks = Lamp.shine(scene, Chance.of(1)).blinks();
    assertTrue(blinks.size() > 30, blinks::toString);
    assertTrue(blinks.get(blinks.size() - 1).offSeconds() <= 20);
  }
}

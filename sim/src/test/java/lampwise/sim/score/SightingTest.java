package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import lampwise.sim.Chance;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The density of taps against the plain sum over every way to give taps to blinks. */
class SightingTest {
  private static final double FROM = 0;
  private static final double TO = 6;
  private static final double NEVER = Double.NEGATIVE_INFINITY;

  private record Case(double[] taps, double[] blinks, double sd, double missed, double strays) {
    double log(double[] asides, double moved, double[] moves) {
      double[] noted = new double[blinks.length];
      for (int i = 0; i < noted.length; i++) {
        noted[i] = blinks[i] + moves[i];
      }
      return new Sighting(taps, FROM, TO, sd, missed, strays)
          .log(noted, noted, noted.length, asides, moved, NEVER);
    }

    double log() {
      return log(new double[blinks.length], 0, new double[blinks.length]);
    }

    /** Each blink in turn is missed (or its tap fell outside), or takes one of the free taps. */
    double bruteForce() {
      return Math.exp(-strays * (TO - FROM)) * from(0, new boolean[taps.length]);
    }

    private double from(int blink, boolean[] taken) {
      if (blink == blinks.length) {
        double strayed = 1;
        for (boolean tap : taken) {
          strayed *= tap ? 1 : strays;
        }
        return strayed;
      }
      NormalDistribution error = NormalDistribution.of(blinks[blink], sd);
      double outside = error.cumulativeProbability(FROM) + error.survivalProbability(TO);
      double sum = (missed + (1 - missed) * outside) * from(blink + 1, taken);
      for (int tap = 0; tap < taps.length; tap++) {
        if (!taken[tap]) {
          taken[tap] = true;
          sum += (1 - missed) * error.density(taps[tap]) * from(blink + 1, taken);
          taken[tap] = false;
        }
      }
      return sum;
    }
  }

  private static Case drawn(int seed) {
    Chance chance = Chance.of(seed);
    double[] taps = times(chance.below(6), chance);
    double[] blinks = times(chance.below(6), chance);
    return new Case(
        taps,
        blinks,
        chance.logUniform(0.05, 0.5),
        chance.uniform(0.01, 0.5),
        chance.uniform(0.01, 1));
  }

  private static double[] times(int count, Chance chance) {
    double[] times = new double[count];
    for (int i = 0; i < count; i++) {
      times[i] = chance.uniform(FROM, TO);
    }
    Arrays.sort(times);
    return times;
  }

  /**
   * Taps that cross over belong to the sum too: with errors to half a second many cases have some.
   * A tap 5.5 errors away counts as a stray, hence the tolerance.
   */
  @Test
  void theDensityIsTheSumOverAllAssignments() {
    for (int seed = 0; seed < 2000; seed++) {
      Case drawn = drawn(seed);
      assertEquals(Math.log(drawn.bruteForce()), drawn.log(), 1e-4, drawn + " seed " + seed);
    }
  }

  @Test
  void handCases() {
    // One tap on one blink: noted, or missed with a stray there.
    Case one = new Case(new double[] {3}, new double[] {3}, 0.1, 0.25, 0.5);
    double peak = 1 / (0.1 * Math.sqrt(2 * Math.PI));
    assertEquals(-3 + Math.log(0.75 * peak + 0.25 * 0.5), one.log(), 1e-9);
    // No blink: two strays in six seconds.
    Case none = new Case(new double[] {1, 2}, new double[] {}, 0.1, 0.25, 0.5);
    assertEquals(-3 + 2 * Math.log(0.5), none.log(), 1e-12);
    Sighting sighting = new Sighting(new double[] {1, 2}, 0, 6, 0.1, 0.25, 0.5);
    assertEquals(none.log(), sighting.logAllStrays(), 1e-12);
    // Random blinks, three quarters noted, add to the strays.
    assertEquals(-6 * 1.25 + 2 * Math.log(1.25), sighting.logRandom(1), 1e-12);
  }

  /** Whatever way the blinks lie within their asides, the density stays under the bound. */
  @Test
  void theBoundHoldsWhereverTheBlinksLie() {
    int tight = 0;
    for (int seed = 0; seed < 4000; seed++) {
      Case drawn = drawn(seed);
      Chance chance = Chance.of(seed).branch("moves");
      double aside = chance.logUniform(0.01, 1);
      int count = drawn.blinks().length;
      double[] asides = new double[count];
      Arrays.fill(asides, aside);
      double bound = drawn.log(asides, aside, new double[count]);
      for (int n = 0; n < 5; n++) {
        double[] moves = new double[count];
        for (int i = 0; i < count; i++) {
          moves[i] = chance.uniform(-aside, aside);
        }
        double[] moved = new double[count];
        for (int i = 0; i < count; i++) {
          moved[i] = drawn.blinks()[i] + moves[i];
        }
        double log = drawn.log(new double[count], 0, moves);
        assertTrue(log <= bound + 1e-6, drawn + " seed " + seed + ": " + log + " > " + bound);
        tight += log > bound - 0.5 ? 1 : 0;
      }
    }
    assertTrue(tight > 1000, "a bound that is always far off shows nothing: " + tight);
  }

  @Test
  void whatIsCutOffIsBelowTheLeast() {
    for (int seed = 0; seed < 2000; seed++) {
      Case drawn = drawn(seed);
      double[] still = new double[drawn.blinks().length];
      double exact = drawn.log();
      double least = exact + Chance.of(seed).uniform(-3, 3);
      double log =
          new Sighting(drawn.taps(), FROM, TO, drawn.sd(), drawn.missed(), drawn.strays())
              .log(drawn.blinks(), drawn.blinks(), still.length, still, 0, least);
      assertTrue(log == exact || (log == NEVER && exact < least), drawn + " seed " + seed);
    }
  }

  @Test
  void theUpperTailIsThatOfCommonsStatistics() {
    NormalDistribution normal = NormalDistribution.of(0, 1);
    for (double x = -8; x <= 8; x += 0.01) {
      assertEquals(normal.survivalProbability(x), Sighting.upperTail(x), 1.5e-7, "at " + x);
    }
  }
}

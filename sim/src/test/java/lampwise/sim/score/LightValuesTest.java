package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.sim.Chance;
import lampwise.sim.Measured;
import org.junit.jupiter.api.Test;

class LightValuesTest {
  private static final double LAMP = 20;
  private static final double SD = 4;

  /**
   * Two values of 0.1 s, room 100, lamp 20, noise 4. A blink from 0.05 to 0.125 s lights half of
   * the first, which adds 10 lux, and a quarter of the second, which adds 5. Levels 112 and 101:
   * (12 * 10 - 100 / 2) / 16 + (1 * 5 - 25 / 2) / 16 = 70 / 16 - 7.5 / 16.
   */
  @Test
  void aBlinkByHand() {
    List<Measured.Value> two =
        List.of(new Measured.Value(0, 0.1, 112, 100), new Measured.Value(0.1, 0.2, 101, 100));
    LightValues values = new LightValues(two, LAMP, SD);
    assertEquals((70 - 7.5) / 16, values.log(0.05, 0.125), 1e-12);
    assertEquals(0, values.log(0.3, 0.4));
    assertEquals(0, values.log(-0.2, -0.1));
    // All of both: (12 * 20 - 200) / 16 + (1 * 20 - 200) / 16.
    assertEquals((40 - 180) / 16.0, values.log(-1, 1), 1e-12);
  }

  private static List<Blink> any(Chance chance, double to) {
    List<Blink> blinks = new ArrayList<>();
    double on = chance.uniform(-0.2, 0.3);
    while (on < to) {
      double off = on + chance.uniform(0.02, 0.6);
      blinks.add(new Blink(on, off));
      on = off + chance.uniform(0.01, 0.8);
    }
    return blinks;
  }

  private static double log(LightValues values, List<Blink> blinks) {
    values.dark();
    blinks.forEach(blink -> values.lit(blink.onSeconds(), blink.offSeconds()));
    return values.log();
  }

  /** Against the quotient of densities, with values that several blinks share, and that overlap. */
  @Test
  void blinksAgainstDensities() {
    Chance chance = Chance.of(11);
    for (double averaging : new double[] {0.01, 0.09, 0.3}) {
      for (double every : new double[] {0.02, 0.1}) {
        List<Blink> shown = any(chance, 5);
        List<Measured.Value> made = MadeValues.of(shown, 5, every, averaging, LAMP, SD);
        LightValues values = new LightValues(made, LAMP, SD);
        for (int i = 0; i < 20; i++) {
          List<Blink> other = i == 0 ? shown : any(chance, 5);
          double plain = MadeValues.plain(made, other, LAMP, SD);
          assertEquals(plain, log(values, other), 1e-9 * (1 + Math.abs(plain)));
        }
      }
    }
  }

  /** No border can be moved so that a blink is worth more than the bound; one point is exact. */
  @Test
  void boundsAreAbove() {
    Chance chance = Chance.of(12);
    int exact = 0;
    for (double averaging : new double[] {0.01, 0.11, 0.2}) {
      List<Measured.Value> made = MadeValues.of(any(chance, 5), 5, 0.1, averaging, LAMP, SD);
      LightValues values = new LightValues(made, LAMP, SD);
      LightBounds bounds = new LightBounds(values);
      for (int i = 0; i < 300; i++) {
        double on = chance.uniform(-0.3, 5.2);
        double off = on + chance.uniform(0.05, 0.4);
        double aside = chance.uniform(0, 0.025);
        double most = bounds.most(on - aside, on + aside, off - aside, off + aside);
        for (int k = 0; k < 20; k++) {
          double worth =
              values.log(on + chance.uniform(-aside, aside), off + chance.uniform(-aside, aside));
          assertTrue(worth <= most + 1e-9, worth + " above " + most);
        }
        if (off - on > averaging) {
          assertEquals(values.log(on, off), bounds.most(on, on, off, off), 1e-9);
          exact++;
        }
      }
    }
    assertTrue(exact > 500, "only " + exact);
  }

  /**
   * Theory: folded on the true times, N blinks stand out by the root of N. With the matched sum S
   * of the blinks and its variance Q, both of the logarithm S - Q / 2 of the ratio, S / sqrt(Q) has
   * the mean sqrt(Q) and the deviation 1, and Q is N times that of one blink.
   */
  @Test
  void foldedBlinksStandOutByTheRootOfTheirNumber() {
    int tries = 400;
    double[] means = new double[3];
    for (int size = 0; size < 3; size++) {
      int count = 4 << 2 * size;
      List<Blink> blinks = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        blinks.add(new Blink(0.2 + i, 0.3 + i));
      }
      double sum = 0;
      double squares = 0;
      for (int i = 0; i < tries; i++) {
        List<Measured.Value> noisy = new ArrayList<>();
        Chance chance = Chance.of(i).branch(size);
        for (Measured.Value value : MadeValues.of(blinks, count, 0.02, 0.01, 3, 0)) {
          noisy.add(
              new Measured.Value(
                  value.fromSeconds(),
                  value.toSeconds(),
                  value.level() + 2 * chance.normal(),
                  value.roomLux()));
        }
        double variance =
            2 * log(new LightValues(MadeValues.of(blinks, count, 0.02, 0.01, 3, 0), 3, 2), blinks);
        double matched = log(new LightValues(noisy, 3, 2), blinks) + variance / 2;
        double standing = matched / Math.sqrt(variance);
        sum += standing;
        squares += standing * standing;
      }
      means[size] = sum / tries;
      // Five standard errors of a standard deviation of 400 values.
      assertEquals(1, Math.sqrt(squares / tries - means[size] * means[size]), 0.18);
    }
    // A blink of 0.1 s lights about five values by 1.5 deviations: the root of 11. The times of the
    // values are drawn anew for each number of blinks, so that not every blink has the same number.
    assertEquals(Math.sqrt(11 * 4), means[0], 0.8);
    assertEquals(2, means[1] / means[0], 0.1);
    assertEquals(2, means[2] / means[1], 0.05);
  }
}

package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;

/**
 * One cycle of a rhythm whose printed times are all known, and how far it may be stretched: by the
 * unit's clock, or by the clock and a range of rates together.
 */
final class Fold {
  private final double[] on;
  private final double[] end;
  private final double cycle;
  private final Stretch stretch;

  /** The ratios of true to printed durations that the clock may have. */
  private final double leastClock;

  private final double mostClock;

  /** The clock that a blink's length goes by; NaN where the stretch is nothing but the clock. */
  private final double ownClock;

  /**
   * A cycle.
   *
   * @param on when the blinks of a cycle begin
   * @param end when they end
   * @param cycle the cycle, start to start
   * @param stretch how the stretch is spread
   */
  Fold(double[] on, double[] end, double cycle, Stretch stretch) {
    this(on, end, cycle, stretch, stretch.least(), stretch.most(), Double.NaN);
  }

  private Fold(
      double[] on,
      double[] end,
      double cycle,
      Stretch stretch,
      double leastClock,
      double mostClock,
      double ownClock) {
    this.on = on.clone();
    this.end = end.clone();
    this.cycle = cycle;
    this.stretch = stretch;
    this.leastClock = leastClock;
    this.mostClock = mostClock;
    this.ownClock = ownClock;
  }

  int blinks() {
    return on.length;
  }

  /** When a blink of the cycle begins. */
  double on(int blink) {
    return on[blink];
  }

  /** When it ends. */
  double end(int blink) {
    return end[blink];
  }

  /** How long it is truly lit at a stretch: a rate does not change that, the clock does. */
  double lit(int blink, double stretch) {
    return (end[blink] - on[blink]) * (Double.isNaN(ownClock) ? stretch : ownClock);
  }

  /** The least of {@link #lit} with any clock. */
  double leastLit(int blink) {
    return (end[blink] - on[blink]) * leastClock;
  }

  /** The most of {@link #lit} with any clock. */
  double mostLit(int blink) {
    return (end[blink] - on[blink]) * mostClock;
  }

  /** The least dark between two blinks, or a little less; with any stretch and clock. */
  double leastDark() {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < on.length; i++) {
      double next = i + 1 < on.length ? on[i + 1] : on[0] + cycle;
      least = Math.min(least, (next - on[i]) * stretch.least() - mostLit(i));
    }
    return least;
  }

  double cycle() {
    return cycle;
  }

  Stretch stretch() {
    return stretch;
  }

  /**
   * How a stretch is spread.
   *
   * @param leastClock the least ratio of true to printed durations
   * @param mostClock the most, evenly spread above the least
   * @param slowest the lowest rate, cycles a second; 0 where the cycle has one length
   * @param fastest the highest rate, evenly spread above the lowest
   */
  record Stretch(double leastClock, double mostClock, double slowest, double fastest) {
    /** A clock that may run so far off either way, as a fraction. */
    Stretch(double clock, double slowest, double fastest) {
      this(1 - clock, 1 + clock, slowest, fastest);
    }

    double least() {
      return leastClock / (slowest > 0 ? fastest : 1);
    }

    double most() {
      return mostClock / (slowest > 0 ? slowest : 1);
    }

    /** A stretch: clock and rate drawn evenly. */
    double draw(Chance chance) {
      double clock = chance.uniform(leastClock, mostClock);
      return slowest > 0 ? clock / chance.uniform(slowest, fastest) : clock;
    }

    /**
     * The density at a stretch s. With a rate r and a clock c, both even, s = c / r, so that the
     * density is the integral over c of c / s^2, times the two even densities.
     */
    double density(double s) {
      if (!(slowest > 0)) {
        return 1 / (most() - least());
      }
      double low = Math.max(leastClock, slowest * s);
      double high = Math.min(mostClock, fastest * s);
      return high > low
          ? (high * high - low * low) / 2 / (s * s * (mostClock - leastClock) * (fastest - slowest))
          : 0;
    }
  }

  /** A rhythm with every duration known. */
  static Fold of(DrawnRhythm rhythm, double clock) {
    int count = rhythm.cycle().size();
    double[] on = new double[count];
    double[] end = new double[count];
    for (int i = 0; i < count; i++) {
      on[i] = rhythm.cycle().get(i).onSeconds();
      end[i] = on[i] + rhythm.cycle().get(i).lengthSeconds();
    }
    return new Fold(on, end, rhythm.cycleSeconds(), new Stretch(clock, 0, 0));
  }

  /**
   * Single blinks at a rate from a range, as folds that are equally likely: a blink's length goes
   * by the clock alone, of which each fold has an equal part and takes the middle.
   */
  static List<Fold> ofRate(
      double slowest, double fastest, double blink, double clock, int clockParts) {
    List<Fold> folds = new ArrayList<>();
    double part = 2 * clock / clockParts;
    for (int i = 0; i < clockParts; i++) {
      double low = 1 - clock + i * part;
      Stretch stretch = new Stretch(low, low + part, slowest, fastest);
      folds.add(
          new Fold(
              new double[] {0},
              new double[] {blink},
              1,
              stretch,
              1 - clock,
              1 + clock,
              low + part / 2));
    }
    return folds;
  }
}

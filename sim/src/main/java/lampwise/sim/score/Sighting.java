package lampwise.sim.score;

import java.util.Arrays;

/**
 * Taps of a person whose settings are known, and how likely they are when the lamp's blinks are
 * known. A blink is noted with a chance, at its own time with a normal error; other taps come at
 * random. Which tap belongs to which blink is not known: all ways to give taps to blinks are
 * summed, one blink one tap, in any order.
 */
final class Sighting {
  /** A tap can belong to a blink that is this many standard deviations away. */
  private static final double GATE = 5.5;

  /** Where a chance is zero, this takes its place, so that rounding makes nothing impossible. */
  private static final double LEAST_CHANCE = 1e-7;

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  /** Taps that may belong to one blink; more than these are never near one in a bench recording. */
  private static final int MOST_NEAR = 14;

  private final double[] taps;
  private final double from;
  private final double to;
  private final double sd;
  private final double missed;
  private final double strays;
  private final double logStray;

  /** Logarithm of the most that one tap can add to a density. */
  private final double logPeak;

  /**
   * The taps of a recording.
   *
   * @param taps when, in order
   * @param from start of the window
   * @param to end of the window
   * @param sd timing error, rounding included
   * @param missed chance that a blink is not noted
   * @param strays taps at random, per second
   */
  Sighting(double[] taps, double from, double to, double sd, double missed, double strays) {
    this.taps = taps.clone();
    this.from = from;
    this.to = to;
    this.sd = sd;
    this.missed = Math.max(missed, LEAST_CHANCE);
    this.strays = Math.max(strays, LEAST_CHANCE);
    this.logStray = Math.log(this.strays);
    this.logPeak = Math.max(0, Math.log(Math.max(this.strays, 1 / (sd * ROOT_TWO_PI)) + 1));
  }

  int count() {
    return taps.length;
  }

  double from() {
    return from;
  }

  double to() {
    return to;
  }

  double sd() {
    return sd;
  }

  /** The taps, counted from the middle of the window. */
  double[] fromMiddle() {
    double[] times = taps.clone();
    for (int i = 0; i < times.length; i++) {
      times[i] -= (from + to) / 2;
    }
    return times;
  }

  /**
   * About the logarithm of the density of the taps, if each belongs to the blink next to it.
   *
   * @param blinks how many blinks there are in the window
   * @param given how many of them have a tap
   * @param squares the sum of the squares of how far these taps are off, seconds squared
   */
  double logAbout(int blinks, int given, double squares) {
    return given * Math.log((1 - missed) / (sd * ROOT_TWO_PI))
        - squares / (2 * sd * sd)
        + Math.max(0, blinks - given) * Math.log(missed)
        + Math.max(0, taps.length - given) * logStray
        - strays * (to - from);
  }

  /** Logarithm of the density of the taps if the lamp never blinks. */
  double logAllStrays() {
    return logStrays(strays);
  }

  /** Logarithm of the density of the taps if blinks come at random, so many a second. */
  double logRandom(double perSecond) {
    return logStrays(strays + perSecond * (1 - missed));
  }

  private double logStrays(double rate) {
    return taps.length * StrictMath.log(rate) - rate * (to - from);
  }

  /**
   * Logarithm of the density of the taps for a lamp whose blinks are known, or a bound above it
   * where each blink may lie a little to either side.
   *
   * @param blinks when they begin and are noted on average (a late first tap included), in order;
   *     only the first {@code count} count
   * @param count how many
   * @param begins when they truly begin, in the same order: those outside the window are not noted
   * @param asides how far to either side of {@code blinks} each may lie; 0 for the density itself
   * @param moved how far to either side of {@code begins} each may lie
   * @param least a density below the exponential of this does not matter
   * @return the logarithm; negative infinity where it is certain to be below {@code least}
   */
  double log(
      double[] blinks, double[] begins, int count, double[] asides, double moved, double least) {
    double[] ways = new double[] {1};
    int low = 0;
    int high = 0;
    double log = -strays * (to - from);
    for (int j = 0; j < count; j++) {
      double blink = blinks[j];
      double aside = asides[j];
      double reach = GATE * sd + aside;
      boolean never = begins[j] + moved < from || begins[j] - moved > to;
      if (never) {
        continue;
      }
      boolean always = begins[j] - moved >= from && begins[j] + moved <= to;
      int start = low;
      while (start < high && taps[start] < blink - reach) {
        start++;
      }
      ways = close(ways, start - low);
      low = start;
      if (low == high) {
        while (low < taps.length && taps[low] < blink - reach) {
          log += logStray;
          low++;
        }
        high = low;
      }
      int before = high;
      while (high < taps.length && taps[high] <= blink + reach && high - low < MOST_NEAR) {
        high++;
      }
      if (high > before) {
        ways = Arrays.copyOf(ways, 1 << (high - low));
      }
      note(ways, low, high, blink, aside, always);
      double most = 0;
      for (double way : ways) {
        most = Math.max(most, way);
      }
      if (!(most > 0)) {
        return Double.NEGATIVE_INFINITY;
      }
      for (int k = 0; k < ways.length; k++) {
        ways[k] /= most;
      }
      log += Math.log(most);
      if (log + (taps.length - low) * logPeak < least) {
        return Double.NEGATIVE_INFINITY;
      }
    }
    ways = close(ways, high - low);
    return log + Math.log(ways[0]) + (taps.length - high) * logStray;
  }

  /** One more blink: missed, or noted by one of the taps that are still free. */
  private void note(double[] ways, int low, int high, double blink, double aside, boolean always) {
    double[] chances = new double[high - low];
    for (int k = 0; k < chances.length; k++) {
      double off = Math.max(0, Math.abs(taps[low + k] - blink) - aside) / sd;
      chances[k] = (1 - missed) * Math.exp(-off * off / 2) / (sd * ROOT_TWO_PI);
    }
    double unnoted = always ? missed + (1 - missed) * outside(blink, aside) : 1;
    for (int mask = ways.length - 1; mask >= 0; mask--) {
      double sum = ways[mask] * unnoted;
      for (int k = 0; k < chances.length; k++) {
        if ((mask >> k & 1) == 1) {
          sum += ways[mask ^ (1 << k)] * chances[k];
        }
      }
      ways[mask] = sum;
    }
  }

  /** Chance that the error carries a tap out of the window, so that it is not kept. */
  private double outside(double blink, double aside) {
    double near = Math.min(blink - from, to - blink) - aside;
    return near > GATE * sd ? 0 : Math.min(1, upperTail(near / sd));
  }

  /** Chance that a normal number is above a value (Zelen and Severo 1964, error below 1e-7). */
  static double upperTail(double x) {
    if (x < 0) {
      return 1 - upperTail(-x);
    }
    double t = 1 / (1 + 0.2316419 * x);
    double sum =
        t
            * (0.319381530
                + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    return Math.exp(-x * x / 2) / ROOT_TWO_PI * sum;
  }

  /** Leaves the first taps behind: those that are still free are strays. */
  private double[] close(double[] ways, int taken) {
    if (taken == 0) {
      return ways;
    }
    double[] rest = new double[Math.max(1, ways.length >> taken)];
    for (int mask = 0; mask < ways.length; mask++) {
      int free = taken - Integer.bitCount(mask & ((1 << taken) - 1));
      double value = ways[mask];
      for (int k = 0; k < free; k++) {
        value *= strays;
      }
      rest[mask >> taken] += value;
    }
    return rest;
  }
}

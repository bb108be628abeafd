package lampwise.sim;

import java.util.List;

/**
 * Pseudo-random numbers by the algorithm SplitMix64 (Steele, Lea and Flood, Fast splittable
 * pseudorandom number generators, OOPSLA 2014). The same seed gives the same numbers on every
 * machine and Java version: all arithmetic is integer, exactly rounded, or of {@link StrictMath}.
 *
 * <p>Not safe for use by several threads at once; give each its own {@linkplain #branch branch}.
 */
public final class Chance {
  private static final long GOLDEN = 0x9e3779b97f4a7c15L;
  private static final double UNIT = 0x1p-53;

  private final long seed;
  private long state;

  /** The second of a pair of normal numbers, kept for the next call; NaN if there is none. */
  private double spare = Double.NaN;

  private Chance(long seed) {
    this.seed = seed;
    this.state = seed;
  }

  /**
   * The numbers of a seed.
   *
   * @param seed any number
   * @return a new source at its start
   */
  public static Chance of(long seed) {
    return new Chance(mix(seed));
  }

  /** The numbers of a state that is not mixed first, as the algorithm's own examples have it. */
  static Chance ofState(long state) {
    return new Chance(state);
  }

  /**
   * A source of its own, which depends only on this source's seed and the given number: not on how
   * many numbers were drawn before.
   *
   * @param number any number
   * @return a new source at its start
   */
  public Chance branch(long number) {
    return new Chance(mix(seed ^ mix(number + GOLDEN)));
  }

  /**
   * A source of its own for a purpose.
   *
   * @param purpose its name
   * @return a new source at its start
   */
  public Chance branch(String purpose) {
    return branch(((long) purpose.length() << 32) ^ purpose.hashCode());
  }

  /**
   * The next 64 bits.
   *
   * @return any long
   */
  public long bits() {
    state += GOLDEN;
    return mix(state);
  }

  private static long mix(long value) {
    long z = value;
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }

  /**
   * A number from the unit interval.
   *
   * @return from 0 to below 1, a multiple of 2<sup>-53</sup>
   */
  public double uniform() {
    return (bits() >>> 11) * UNIT;
  }

  /**
   * A number from an interval, each as likely.
   *
   * @param from the lower border
   * @param to the upper border, not below the lower one
   * @return from {@code from} to {@code to}
   */
  public double uniform(double from, double to) {
    return from + (to - from) * uniform();
  }

  /**
   * A number from an interval, each ratio as likely.
   *
   * @param from the lower border, over zero
   * @param to the upper border, not below the lower one
   * @return from {@code from} to {@code to}
   */
  public double logUniform(double from, double to) {
    double value = StrictMath.exp(uniform(StrictMath.log(from), StrictMath.log(to)));
    return Math.min(to, Math.max(from, value));
  }

  /**
   * A whole number, each as likely.
   *
   * @param bound how many there are, one or more
   * @return from 0 to {@code bound - 1}
   */
  public int below(int bound) {
    return (int) (uniform() * bound);
  }

  /**
   * Whether something happens.
   *
   * @param probability from 0, never, to 1, always
   * @return true with that probability
   */
  public boolean happens(double probability) {
    return uniform() < probability;
  }

  /**
   * A normal number of mean 0 and standard deviation 1, by the polar method of Marsaglia and Bray
   * (SIAM Review 6, 1964).
   *
   * @return any finite number
   */
  public double normal() {
    if (!Double.isNaN(spare)) {
      double kept = spare;
      spare = Double.NaN;
      return kept;
    }
    double u;
    double v;
    double square;
    do {
      u = 2 * uniform() - 1;
      v = 2 * uniform() - 1;
      square = u * u + v * v;
    } while (square >= 1 || square == 0);
    double factor = Math.sqrt(-2 * StrictMath.log(square) / square);
    spare = v * factor;
    return u * factor;
  }

  /**
   * The time to the next of events that come at random, on average at a rate.
   *
   * @param perSecond the rate, over zero
   * @return seconds, over or equal to zero
   */
  public double waiting(double perSecond) {
    return -StrictMath.log(1 - uniform()) / perSecond;
  }

  /**
   * One of a list, by weights.
   *
   * @param weights a weight for each, zero or more, one of them over zero
   * @return the number of the one drawn, from 0
   */
  public int pick(List<Double> weights) {
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    double left = uniform() * sum;
    int last = 0;
    for (int i = 0; i < weights.size(); i++) {
      if (weights.get(i) > 0) {
        if (left < weights.get(i)) {
          return i;
        }
        last = i;
      }
      left -= weights.get(i);
    }
    return last;
  }
}

package lampwise.sim.score;

/** Sums of numbers of which only the logarithms are small enough. */
final class Logs {
  private Logs() {}

  /** Logarithm of the sum of two numbers, each given by its own; negative infinity is zero. */
  static double add(double a, double b) {
    double most = Math.max(a, b);
    return Double.isInfinite(most)
        ? most
        : most + StrictMath.log1p(StrictMath.exp(Math.min(a, b) - most));
  }

  /** The greatest of some logarithms. */
  static double most(double one, double... others) {
    double most = one;
    for (double other : others) {
      most = Math.max(most, other);
    }
    return most;
  }
}

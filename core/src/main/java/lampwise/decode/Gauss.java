package lampwise.decode;

/** The normal distribution and sums of logarithms. */
final class Gauss {
  private static final double LOG_SQRT_2PI = 0.5 * Math.log(2 * Math.PI);

  /** Upper tail at every 128th of a standard deviation up to 6; straight lines are good to 2e-6. */
  private static final int STEPS = 128;

  private static final double TABLE_END = 6;
  private static final double[] TABLE = table();

  /** Logarithm of the upper tail, so that straight lines are good to 2e-6 of it. */
  private static final int LOG_STEPS = 256;

  private static final double LOG_TABLE_END = 8;
  private static final double[] LOG_TABLE = logTable();

  /** An interval narrower than this has the density of its middle. */
  private static final double NARROW = 0.02;

  /** So much less (natural logarithm) a part of a sum does not show in it. */
  private static final double NEGLIGIBLE = 37;

  /** So far beyond a border there is less than a part of 2e-8 of what is beyond the border. */
  private static final double FAR = 6;

  private Gauss() {}

  private static double[] table() {
    double[] table = new double[((int) TABLE_END) * STEPS + 2];
    for (int i = 0; i < table.length; i++) {
      table[i] = upper(i / (double) STEPS);
    }
    return table;
  }

  private static double[] logTable() {
    double[] table = new double[((int) LOG_TABLE_END) * LOG_STEPS + 2];
    for (int i = 0; i < table.length; i++) {
      table[i] = Math.log(upper(i / (double) LOG_STEPS));
    }
    return table;
  }

  /** Logarithm of the upper tail for z of zero or more, to 2e-6. */
  private static double logUpper(double z) {
    if (!(z < LOG_TABLE_END)) {
      return Math.log(upper(z));
    }
    int at = (int) (z * LOG_STEPS);
    double part = z * LOG_STEPS - at;
    return LOG_TABLE[at] + part * (LOG_TABLE[at + 1] - LOG_TABLE[at]);
  }

  /** Logarithm of the probability of an interval above zero. */
  private static double logBeyond(double from, double to) {
    double all = logUpper(from);
    return to > from + FAR ? all : all + Math.log(1 - Math.exp(logUpper(to) - all));
  }

  /** Upper tail for z of zero or more, to 2e-6. */
  private static double roughUpper(double z) {
    if (!(z < TABLE_END)) {
      return 0;
    }
    int at = (int) (z * STEPS);
    double part = z * STEPS - at;
    return TABLE[at] + part * (TABLE[at + 1] - TABLE[at]);
  }

  /** Logarithm of the normal density at {@code deviation} from the mean. */
  static double logDensity(double deviation, double sd) {
    double z = deviation / sd;
    return -0.5 * z * z - Math.log(sd) - LOG_SQRT_2PI;
  }

  /** Probability that a standard normal value is at most z, to 2e-6. */
  static double cumulative(double z) {
    return z > 0 ? 1 - roughUpper(z) : roughUpper(-z);
  }

  /** Logarithm of the probability of the interval from a to b, a below b. */
  static double logBetween(double a, double b) {
    if (b - a < NARROW) {
      return b > a ? logDensity(0.5 * (a + b), 1) + Math.log(b - a) : Double.NEGATIVE_INFINITY;
    }
    if (a > 0) {
      return logBeyond(a, b);
    }
    return b < 0 ? logBeyond(-b, -a) : Math.log(1 - roughUpper(b) - roughUpper(-a));
  }

  /**
   * Probability above z, for z of zero or more: the power series of the error function near zero,
   * Laplace's continued fraction for the tail (Abramowitz and Stegun 26.2.11 and 26.2.14).
   */
  private static double upper(double z) {
    double density = Math.exp(-0.5 * z * z - LOG_SQRT_2PI);
    if (z < 3) {
      double term = z;
      double sum = z;
      for (int k = 3; term > 1e-16 * sum; k += 2) {
        term *= z * z / k;
        sum += term;
      }
      return 0.5 - density * sum;
    }
    double fraction = z;
    for (int k = 30; k >= 1; k--) {
      fraction = z + k / fraction;
    }
    return density / fraction;
  }

  /** Logarithm of the sum of two numbers given by their logarithms. */
  static double logAdd(double a, double b) {
    if (a < b) {
      return logAdd(b, a);
    }
    // Of a part below half a bit nothing is left.
    return b > a - NEGLIGIBLE ? a + Math.log(1 + Math.exp(b - a)) : a;
  }

  /** Logarithm of the sum of numbers given by their logarithms. */
  static double logSum(double[] logs) {
    double most = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      most = Math.max(most, log);
    }
    if (most == Double.NEGATIVE_INFINITY) {
      return most;
    }
    double sum = 0;
    for (double log : logs) {
      sum += log > most - NEGLIGIBLE ? Math.exp(log - most) : 0;
    }
    return most + Math.log(sum);
  }
}

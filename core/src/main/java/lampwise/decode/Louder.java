package lampwise.decode;

/**
 * How much louder the noise of a light curve may be than it was measured: each factor as likely as
 * the samples are with it where the lamp is dark. What a lamp seems to explain, a noise that was
 * taken too low explains too.
 *
 * @param logs for each factor the logarithm of its likelihood, for a dark lamp
 * @param logDark the logarithm of their sum
 */
@SuppressWarnings("ArrayRecordComponent") // Made and read once, inside the package.
record Louder(double[] logs, double logDark) {
  /** The factors, and how common each is: the measured noise has a spread of 9 %. */
  private static final double[] FACTORS = {1, 1.06, 1.12, 1.2};

  private static final double[] COMMON = {0.55, 0.25, 0.15, 0.05};

  static Louder of(LightSamples samples, Disturbed disturbed) {
    double[] logs = new double[FACTORS.length];
    double all = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(COMMON[i]);
      for (double value : samples.above()) {
        if (!Double.isNaN(value)) {
          double level = value / samples.noise();
          logs[i] += disturbed.logDensity(level / FACTORS[i]) - Math.log(FACTORS[i]);
          logs[i] -= disturbed.logDensity(level);
        }
      }
      all = Gauss.logAdd(all, logs[i]);
    }
    return new Louder(logs, all);
  }

  /**
   * What is known of a lamp for the measured noise, with louder noise summed over.
   *
   * @param log logarithm of a likelihood relative to a dark lamp
   * @param best logarithm of the greatest likelihood that it is a mean of: it shrinks with the
   *     square of the noise
   */
  double given(double log, double best) {
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      double shrunk = Math.max(0, best) * (1 - 1 / (FACTORS[i] * FACTORS[i]));
      sum = Gauss.logAdd(sum, logs[i] + log - shrunk);
    }
    return sum - logDark;
  }
}

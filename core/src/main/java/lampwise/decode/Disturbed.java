package lampwise.decode;

/**
 * The noise of a light curve with its rare, far disturbances: a mixture of a normal distribution
 * and of a wider one with heavy tails (Cauchy). How rare and how far they are is told by what lies
 * below the dark level, where no lamp has a part.
 *
 * @param share the chance that a sample is disturbed
 * @param reach how far disturbances reach, in deviations of the noise
 */
record Disturbed(double share, double reach) {
  private static final Disturbed USUAL = new Disturbed(0.003, 12);

  private static final double[] SHARES = {0.003, 0.01, 0.03, 0.1};
  private static final double[] REACHES = {12, 3};

  /** Others than the usual ones must be likelier by this logarithm (chosen: two settings). */
  private static final double SURE = 2;

  /** What explains the samples below the dark level best. */
  static Disturbed of(LightSamples samples) {
    Disturbed best = USUAL;
    double most = USUAL.logBelow(samples) + SURE;
    for (double reach : REACHES) {
      for (double share : SHARES) {
        Disturbed other = new Disturbed(share, reach);
        double log = other.logBelow(samples);
        if (log > most) {
          most = log;
          best = other;
        }
      }
    }
    return best;
  }

  private double logBelow(LightSamples samples) {
    double logWhole = Math.log((1 - share) * Math.sqrt(2 * Math.PI) + share * Math.PI);
    double sum = 0;
    for (double value : samples.above()) {
      if (value < 0) {
        sum += logDensity(value / samples.noise()) - logWhole;
      }
    }
    return sum;
  }

  /** Logarithm of the density, but for what is the same for all levels. */
  double logDensity(double deviations) {
    double square = deviations * deviations;
    double usual = (1 - share) * Math.exp(-0.5 * square);
    return Math.log(usual + share / reach / (1 + square / (reach * reach)));
  }
}

package lampwise.decode;

/**
 * Whether samples that fit a train of blinks fit a plain wave better: the slow beat of mains
 * flicker that a sensor of few samples sees. A lamp is dark between its blinks, a wave is below its
 * middle for as long as it is above.
 */
final class Beat {
  /** So much likelier, as a logarithm, must a wave be (chosen). */
  private static final double SURE = 6;

  /** Waves of the cycle and of its parts are tried, as long as two samples and two blinks. */
  private static final int LEAST_OF_EACH = 2;

  private static final int MOST_PARTS = 200;

  private Beat() {}

  /**
   * Whether a wave fits better.
   *
   * @param samples the samples
   * @param train the train that fits best
   * @param startSeconds the start of a cycle of it
   * @param stretch its stretch
   * @param blinkSeconds how long its blinks last
   */
  static boolean fitsBetter(
      LightSamples samples, Train train, double startSeconds, double stretch, double blinkSeconds) {
    double cycle = train.cycleSeconds() * stretch;
    double[] lit = new double[samples.seconds().length];
    for (int i = 0; i < lit.length; i++) {
      double end = samples.seconds()[i];
      double from = end - LightEvidence.AVERAGED * samples.periodSeconds();
      for (int pulse = 0; pulse < train.size(); pulse++) {
        double on = startSeconds + train.on(pulse) * stretch;
        on += Math.floor((end - on) / cycle) * cycle;
        lit[i] += Math.max(0, Math.min(end, on + blinkSeconds) - Math.max(from, on));
      }
    }
    double blinks = left(samples.above(), new double[][] {lit});
    double wave = Double.POSITIVE_INFINITY;
    double shortest = LEAST_OF_EACH * Math.max(samples.periodSeconds(), blinkSeconds);
    int most = Math.max(1, Math.min(MOST_PARTS, (int) (cycle / shortest)));
    for (int parts = 1; parts <= most; parts++) {
      double[][] both = new double[2][lit.length];
      for (int i = 0; i < lit.length; i++) {
        double angle = 2 * Math.PI * parts * (samples.seconds()[i] - startSeconds) / cycle;
        both[0][i] = Math.cos(angle);
        both[1][i] = Math.sin(angle);
      }
      wave = Math.min(wave, left(samples.above(), both));
    }
    int count = 0;
    for (double value : samples.above()) {
      count += Double.isNaN(value) ? 0 : 1;
    }
    return count * Math.log(blinks / wave) / 2 > SURE;
  }

  /** The squares that are left of values about their mean, shapes fitted one after the other. */
  private static double left(double[] values, double[][] shapes) {
    double[] rest = centred(values, values);
    for (double[] shape : shapes) {
      double[] about = centred(shape, values);
      double product = 0;
      double square = 0;
      for (int i = 0; i < rest.length; i++) {
        if (!Double.isNaN(rest[i])) {
          product += rest[i] * about[i];
          square += about[i] * about[i];
        }
      }
      double amount = square > 0 ? product / square : 0;
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= amount * about[i];
      }
    }
    double sum = 0;
    for (double value : rest) {
      sum += Double.isNaN(value) ? 0 : value * value;
    }
    return sum;
  }

  /** Less its mean where the other is known. */
  private static double[] centred(double[] values, double[] known) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(known[i])) {
        sum += values[i];
        count++;
      }
    }
    double[] about = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      about[i] = Double.isNaN(known[i]) ? Double.NaN : values[i] - sum / count;
    }
    return about;
  }
}

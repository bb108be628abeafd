package lampwise.decode;

import java.util.Arrays;

/**
 * How much more likely the samples are if a blink of a given length began at each time of a fine
 * grid than if none did, for lamps of several brightnesses (matched filter with heavy tails: a
 * mixture of the noise and of rare disturbances).
 *
 * @param fromSeconds the first time of the grid
 * @param stepSeconds from one time to the next
 * @param logRatios for each brightness the logarithms of the ratios along the grid
 * @param brightest the number of the brightest lamp that these samples could hold
 */
record LightEvidence(
    double fromSeconds, double stepSeconds, float[][] logRatios, int brightest) {
  /** Brightnesses: even in the logarithm, from this many standard deviations of the noise. */
  private static final double FAINTEST = 0.4;

  private static final double RATIO = 1.7;

  /** How many brightnesses; the brightest is 328 deviations. */
  static final int LAMPS = 13;

  /** The chance that a sample is disturbed, and how far disturbances reach, in deviations. */
  private static final double DISTURBED = 0.03;

  private static final double REACH = 12;

  /** The part of the time between samples over which a sensor averages, where it is not known. */
  private static final double AVERAGED = 0.7;

  static LightEvidence of(LightSamples samples, double blinkSeconds) {
    double[] seconds = samples.seconds();
    double averaging = AVERAGED * samples.periodSeconds();
    double step = Math.max(0.02, (blinkSeconds + averaging) / 8);
    double from = seconds[0] - averaging - blinkSeconds;
    int size = 1 + (int) Math.ceil((seconds[seconds.length - 1] - from) / step);
    double most = Arrays.stream(samples.above()).max().orElse(0) / samples.noise();
    float[][] logs = new float[LAMPS][];
    int brightest = 0;
    for (int k = 0; k < LAMPS; k++) {
      double lamp = FAINTEST * Math.pow(RATIO, k);
      double share = Math.min(1, blinkSeconds / averaging);
      if (k == 0 || 0.3 * lamp * share < most) {
        brightest = k;
        logs[k] = ratios(samples, blinkSeconds, averaging, lamp, from, step, size);
      }
    }
    return new LightEvidence(from, step, Arrays.copyOf(logs, brightest + 1), brightest);
  }

  private static float[] ratios(
      LightSamples samples,
      double blink,
      double averaging,
      double lamp,
      double from,
      double step,
      int size) {
    float[] logs = new float[size];
    double[] seconds = samples.seconds();
    for (int i = 0; i < seconds.length; i++) {
      double level = samples.above()[i] / samples.noise();
      double none = logDensity(level);
      // Blinks that end after this sample's averaging began and start before it ended.
      int first = Math.max(0, (int) Math.ceil((seconds[i] - averaging - blink - from) / step));
      int last = Math.min(size - 1, (int) Math.floor((seconds[i] - from) / step));
      for (int g = first; g <= last; g++) {
        double on = from + g * step;
        double lit = Math.min(seconds[i], on + blink) - Math.max(seconds[i] - averaging, on);
        if (lit > 0) {
          logs[g] += (float) (logDensity(level - lamp * lit / averaging) - none);
        }
      }
    }
    return logs;
  }

  private static double logDensity(double deviations) {
    double square = deviations * deviations;
    double usual = (1 - DISTURBED) * Math.exp(-0.5 * square);
    return Math.log(usual + DISTURBED / REACH / (1 + square / (REACH * REACH)));
  }

  /** The grid's time of a place. */
  double seconds(double place) {
    return fromSeconds + place * stepSeconds;
  }
}

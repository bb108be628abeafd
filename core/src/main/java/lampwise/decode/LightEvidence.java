package lampwise.decode;

import java.util.Arrays;
import java.util.List;

/**
 * How much more likely the samples are if a blink of a given length began at each time of a fine
 * grid than if none did, for lamps of several brightnesses (matched filter with heavy tails: a
 * mixture of the noise and of rare disturbances).
 *
 * @param fromSeconds the first time of the grid
 * @param stepSeconds from one time to the next
 * @param logRatios for each brightness from the faintest on the logarithms of the ratios along the
 *     grid
 * @param faintest the number of the faintest lamp that a sensor would be held to
 * @param told the number of the faintest lamp that is told from uneven noise
 * @param brightest the number of the brightest lamp that these samples could hold
 * @param reach the grid's steps in which two blinks share samples
 * @param louder how much louder the noise may be
 */
@SuppressWarnings("ArrayRecordComponent") // Long and read in inner loops, inside the package.
record LightEvidence(
    double fromSeconds,
    double stepSeconds,
    float[][] logRatios,
    int faintest,
    int told,
    int brightest,
    int reach,
    Louder louder) {
  /** Brightnesses: even in the logarithm, from this many standard deviations of the noise. */
  private static final double FAINTEST = 1;

  private static final double RATIO = 1.6;

  /**
   * A lamp whose single blink stands out less than this, in deviations of what all its samples tell
   * together, is not what a sensor was held to (chosen).
   */
  private static final double LEAST_BLINK = 2;

  /** A lamp whose single blink stands out less than this is not told from uneven noise (chosen). */
  private static final double TOLD_BLINK = 3;

  /** How many brightnesses; the brightest is 282 deviations. */
  static final int LAMPS = 13;

  /** How far a sample's share of a blink may be off, as a part of it (chosen). */
  private static final double UNSURE = 0.2;

  /** The part of the time between samples over which a sensor averages, where it is not known. */
  static final double AVERAGED = 0.7;

  static LightEvidence of(LightSamples samples, double blinkSeconds) {
    Disturbed disturbed = Disturbed.of(samples);
    double[] seconds = samples.seconds();
    double averaging = AVERAGED * samples.periodSeconds();
    double step = Math.max(0.02, (blinkSeconds + averaging) / 8);
    double from = seconds[0] - averaging - blinkSeconds;
    int size = 1 + (int) Math.ceil((seconds[seconds.length - 1] - from) / step);
    double most =
        Arrays.stream(samples.above()).filter(v -> !Double.isNaN(v)).max().orElse(0)
            / samples.noise();
    float[][] logs = new float[LAMPS][];
    double share = Math.min(1, blinkSeconds / averaging);
    double seen = Math.sqrt(share * blinkSeconds / samples.periodSeconds());
    int faintest = lamp(LEAST_BLINK / seen);
    int told = lamp(TOLD_BLINK / seen);
    int brightest = faintest;
    int reach = 4 + (int) Math.ceil((blinkSeconds + averaging) / step);
    for (int k = faintest; k < LAMPS; k++) {
      double lamp = FAINTEST * Math.pow(RATIO, k);
      if (k == faintest || 0.3 * lamp * share < most) {
        brightest = k;
        logs[k] =
            smoothed(ratios(samples, disturbed, blinkSeconds, averaging, lamp, from, step, size));
      }
    }
    return new LightEvidence(
        from,
        step,
        Arrays.copyOf(logs, brightest + 1),
        faintest,
        told,
        brightest,
        reach,
        Louder.of(samples, disturbed));
  }

  /** The number of the faintest lamp of so many deviations or more. */
  private static int lamp(double deviations) {
    int number = 0;
    while (number < LAMPS - 1 && FAINTEST * Math.pow(RATIO, number) < deviations) {
      number++;
    }
    return number;
  }

  private static float[] ratios(
      LightSamples samples,
      Disturbed disturbed,
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
      double none = disturbed.logDensity(level);
      // Blinks that end after this sample's averaging began and start before it ended.
      int first = Math.max(0, (int) Math.ceil((seconds[i] - averaging - blink - from) / step));
      int last = Math.min(size - 1, (int) Math.floor((seconds[i] - from) / step));
      for (int g = first; g <= last && !Double.isNaN(level); g++) {
        double on = from + g * step;
        double lit = Math.min(seconds[i], on + blink) - Math.max(seconds[i] - averaging, on);
        if (lit > 0) {
          double added = lamp * lit / averaging;
          double spread = Math.sqrt(1 + UNSURE * UNSURE * added * added);
          double with = disturbed.logDensity((level - added) / spread) - Math.log(spread);
          logs[g] += (float) (with - none);
        }
      }
    }
    return logs;
  }

  /** A blink may begin a few steps beside its pulse. */
  private static float[] smoothed(float[] logs) {
    float[] smooth = new float[logs.length];
    for (int g = 0; g < logs.length; g++) {
      float most = logs[g];
      for (int k = -2; k <= 2; k++) {
        most = Math.max(most, logs[Math.max(0, Math.min(logs.length - 1, g + k))]);
      }
      double sum = 0;
      for (int k = -2; k <= 2; k++) {
        float log = logs[Math.max(0, Math.min(logs.length - 1, g + k))];
        sum += (3 - Math.abs(k)) / 9.0 * Math.exp(log - most);
      }
      smooth[g] = (float) (most + Math.log(sum));
    }
    return smooth;
  }

  /** How many additions folding trains on all of it takes, for every brightness. */
  double work(List<Train> trains) {
    double sum = 0;
    for (Train train : trains) {
      sum += Folded.work(train, size(), stepSeconds);
    }
    return sum * (1 + brightest - faintest);
  }

  /** How many places the grid has. */
  int size() {
    return logRatios[faintest].length;
  }

  /** How many lamps are as likely before anything is seen. */
  int lamps() {
    return LAMPS - faintest;
  }

  /** The grid's time of a place. */
  double seconds(double place) {
    return fromSeconds + place * stepSeconds;
  }
}

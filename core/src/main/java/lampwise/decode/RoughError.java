package lampwise.decode;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * A rough look at how far blinks are off a rhythm, so that the settings of the noise that will fit
 * best are folded first: those far behind them are soon given up.
 */
final class RoughError {
  /** The next blink may be so many pulses on. */
  private static final int MOST_ON = 3;

  /** So many gaps between blinks show how far off they are. */
  private static final int MOST_GAPS = 40;

  private RoughError() {}

  /**
   * The settings of a stretch, those first whose timing error is like that of the nearest train.
   */
  static List<Noise> likeFirst(List<Train> trains, Evidence stretch) {
    double error = Double.POSITIVE_INFINITY;
    double[] starts = stretch.starts();
    for (Train train : trains) {
      error = Math.min(error, of(train, starts));
    }
    double least = Math.max(error, 1e-3);
    return stretch.settings().stream()
        .sorted(Comparator.comparingDouble(noise -> Math.abs(Math.log(noise.sd() / least))))
        .toList();
  }

  /** The usual error of a time, seconds; infinite if there are too few. */
  static double of(Train train, double[] starts) {
    int count = Math.min(MOST_GAPS, starts.length - 1);
    if (count < 2 || !train.repeats() || train.perCycle() == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double[] off = new double[count];
    Arrays.fill(off, Double.POSITIVE_INFINITY);
    for (int pulse = train.prelude(); pulse < train.size(); pulse++) {
      for (int next = pulse + 1; next <= pulse + MOST_ON; next++) {
        double gap = train.middle() * (train.on(next) - train.on(pulse));
        for (int i = 0; i < count; i++) {
          off[i] = Math.min(off[i], Math.abs(starts[i + 1] - starts[i] - gap));
        }
      }
    }
    // A gap is off by the errors of two times.
    return Spread.deviation(off) / Math.sqrt(2);
  }
}

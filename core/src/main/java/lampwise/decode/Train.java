package lampwise.decode;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A concrete pulse train: what a lamp of one rhythm does when every duration has a value. Pulses
 * are numbered; those of a repeating train without prelude run without border to both sides, number
 * 0 being the first of a cycle. Everything may run faster or slower by one factor, the stretch,
 * which is uniform between two borders (the unit's clock, and a range of rates or cycles).
 */
final class Train {
  /** Blinks farther apart than this, start to start, are not of one burst (chosen). */
  private static final double BURST_SECONDS = 1.1;

  /** Spacings that differ by less are the same, but for rounding. */
  private static final double SAME_SECONDS = 1e-6;

  /** Gaps of two trains that may look alike differ by this at the most, and by this part. */
  private static final double LIKE_SECONDS = 0.05;

  private static final double LIKE_FRACTION = 0.05;

  private static final double NO_STRETCH = 0.9999;

  private static final int NO_BORDER = Integer.MAX_VALUE / 2;

  private final double[] on;
  private final double[] length;
  private final int prelude;
  private final double cycleSeconds;
  private final double low;
  private final double high;
  private final double logWeight;
  private final boolean measured;
  private final int fitted;

  /** How many cycles a pulse is. */
  private final double cyclesPerPulse;

  /**
   * Makes one of arrays that nobody changes afterwards.
   *
   * @param on starts in seconds: first the pulses of the prelude, then those of one cycle; the
   *     start of the train is at 0
   * @param length how long each pulse lasts, NaN where unknown
   * @param prelude how many pulses come once before the cycle
   * @param cycleSeconds the time after which the cycle repeats; 0 if it does not
   * @param low the lower border of the stretch
   * @param high the upper border of the stretch, above the lower one
   * @param logWeight logarithm of the share of its rhythm's prior that this train stands for
   */
  Train(
      double[] on,
      double[] length,
      int prelude,
      double cycleSeconds,
      double low,
      double high,
      double logWeight) {
    this(on, length, prelude, cycleSeconds, low, high, logWeight, false, 0);
  }

  private Train(
      double[] on,
      double[] length,
      int prelude,
      double cycleSeconds,
      double low,
      double high,
      double logWeight,
      boolean measured,
      int fitted) {
    this.measured = measured;
    this.fitted = fitted;
    this.on = on;
    this.length = length;
    this.prelude = prelude;
    this.cycleSeconds = cycleSeconds;
    this.low = low;
    this.high = high;
    this.logWeight = logWeight;
    this.cyclesPerPulse = 1.0 / (on.length - prelude);
  }

  /** The same train, its lengths taken from the recording, so that they do not stretch. */
  Train measured() {
    return new Train(on, length, prelude, cycleSeconds, low, high, logWeight, true, fitted);
  }

  /**
   * The same train, some of its durations fitted to the recording: its weight is then to be had for
   * a timing error of one second, and shrinks with the error once for each of them.
   */
  Train fitted(int durations) {
    return new Train(on, length, prelude, cycleSeconds, low, high, logWeight, measured, durations);
  }

  /** Logarithm of the share of its rhythm's prior that it stands for under this noise. */
  double logWeight(Noise noise) {
    return logWeight + fitted * Math.log(noise.sd());
  }

  /** The same train with another share of the prior: its own times this. */
  Train weighed(double logShare) {
    return new Train(
        on, length, prelude, cycleSeconds, low, high, logWeight + logShare, measured, fitted);
  }

  /**
   * The same train of a lamp that was noted with the first blink of each burst so late, its times
   * being those that were noted: each burst begins so much earlier, and blinks that are evenly
   * spaced in it stay so.
   *
   * @param late seconds, 0 or more
   */
  Train notedLate(double late) {
    double[] starts = on.clone();
    for (int from = 0; from < on.length; ) {
      int to = from + 1;
      while (to < on.length && !opensBurst(to)) {
        to++;
      }
      boolean opens = opensBurst(from);
      boolean even = isEven(from, to);
      for (int i = from; opens && i < to; i++) {
        double part =
            even && to - from > 1 ? (double) (to - 1 - i) / (to - 1 - from) : i == from ? 1 : 0;
        starts[i] -= late * part;
      }
      from = to;
    }
    double zero = starts[0] - on[0];
    for (int i = 0; i < starts.length; i++) {
      starts[i] -= zero;
    }
    return new Train(starts, length, prelude, cycleSeconds, low, high, logWeight, measured, fitted);
  }

  /**
   * Whether it may look like another where the first blinks of bursts are noted late: both repeat,
   * with as many blinks in a cycle, two at least, and every gap beside no first blink is the same.
   */
  boolean mayLookLike(Train other) {
    boolean same =
        repeats()
            && other.repeats()
            && prelude == 0
            && other.prelude == 0
            && on.length > 1
            && on.length == other.on.length
            && low * cycleSeconds <= other.high * other.cycleSeconds
            && other.low * other.cycleSeconds <= high * cycleSeconds;
    double ratio = other.cycleSeconds / cycleSeconds;
    for (int i = 1; same && i < on.length; i++) {
      double gap = (on[i] - on[i - 1]) * ratio;
      double most = LIKE_SECONDS + LIKE_FRACTION * gap;
      most += opensBurst(i - 1) || opensBurst(i) ? NoiseGrid.MOST_LATE : 0;
      same = Math.abs(other.on[i] - other.on[i - 1] - gap) <= most;
    }
    return same;
  }

  /** The same train with a part of its stretch, and of its share of the prior. */
  Train within(double from, double to) {
    double share = Math.log((to - from) / (high - low));
    return new Train(
        on, length, prelude, cycleSeconds, from, to, logWeight + share, measured, fitted);
  }

  private boolean isEven(int from, int to) {
    for (int i = from + 2; i < to; i++) {
      if (Math.abs(on[i] - 2 * on[i - 1] + on[i - 2]) > SAME_SECONDS) {
        return false;
      }
    }
    return true;
  }

  /** When a pulse that ended at a time began, as far as its length does not stretch. */
  double unstretched(int pulse) {
    return measured ? length(pulse) : 0;
  }

  /** Where a pulse's end lies in the train, less what does not stretch. */
  double end(int pulse) {
    return measured ? on(pulse) : on(pulse) + length(pulse);
  }

  /** Pulses of the prelude and of one cycle. */
  int size() {
    return on.length;
  }

  int prelude() {
    return prelude;
  }

  double cycleSeconds() {
    return cycleSeconds;
  }

  double low() {
    return low;
  }

  double high() {
    return high;
  }

  double logWeight() {
    return logWeight;
  }

  /** The middle of the borders of the stretch. */
  double middle() {
    return 0.5 * (low + high);
  }

  boolean repeats() {
    return cycleSeconds > 0;
  }

  /** Pulses in one cycle. */
  int perCycle() {
    return on.length - prelude;
  }

  /** Number of the first pulse. */
  int first() {
    return prelude > 0 || !repeats() ? 0 : -NO_BORDER;
  }

  /** Number of the last pulse. */
  int last() {
    return repeats() && perCycle() > 0 ? NO_BORDER : on.length - 1;
  }

  /** Which of the {@link #size} pulses a pulse is a repeat of. */
  int index(int pulse) {
    int inCycle = pulse - prelude;
    boolean once = !repeats() || (inCycle < 0 && prelude > 0);
    return once ? pulse : prelude + Math.floorMod(inCycle, perCycle());
  }

  /** Start of a pulse. */
  double on(int pulse) {
    if (pulse >= 0 && pulse < on.length) {
      return on[pulse];
    }
    int inCycle = pulse - prelude;
    // From the middle of a pulse, so that rounding does not decide; quicker than a division.
    int cycles = (int) Math.floor((inCycle + 0.5) * cyclesPerPulse);
    return on[pulse - cycles * perCycle()] + cycles * cycleSeconds;
  }

  /** Whether a pulse is the first of a burst, after a dark of over a second. */
  boolean opensBurst(int pulse) {
    return pulse <= first() || on(pulse) - on(pulse - 1) > BURST_SECONDS;
  }

  /** How long it is dark before a pulse that is not the first. */
  double darkBefore(int pulse) {
    double lit = length(pulse - 1);
    return on(pulse) - on(pulse - 1) - (Double.isNaN(lit) ? 0 : lit);
  }

  /** Length of a pulse, NaN if unknown. */
  double length(int pulse) {
    return length[index(pulse)];
  }

  Train withoutPrelude() {
    if (prelude == 0) {
      return this;
    }
    double[] starts = Arrays.copyOfRange(on, prelude, on.length);
    double[] lengths = Arrays.copyOfRange(length, prelude, length.length);
    return new Train(starts, lengths, 0, cycleSeconds, low, high, logWeight, measured, fitted);
  }

  /** The pulses of one cycle that last so long, both borders included, or of unknown length. */
  Train only(double least, double most) {
    int[] kept =
        IntStream.range(prelude, on.length)
            .filter(i -> !(length[i] < least) && !(length[i] > most))
            .toArray();
    double[] starts = new double[kept.length];
    double[] lengths = new double[kept.length];
    for (int i = 0; i < kept.length; i++) {
      starts[i] = on[kept[i]];
      lengths[i] = length[kept[i]];
    }
    return new Train(starts, lengths, 0, cycleSeconds, low, high, logWeight, measured, fitted);
  }

  /**
   * A train that shows once, as one that repeats after so long that it is seen once at the most in
   * a stretch; its stretch is left out, for what shows once is short.
   *
   * @param seconds how long the stretch is
   */
  Train onceIn(double seconds) {
    double cycle = seconds + on[on.length - 1] + 1;
    return new Train(on, length, 0, cycle, NO_STRETCH, 1 / NO_STRETCH, logWeight, measured, fitted);
  }
}

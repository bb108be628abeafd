package lampwise.decode;

import java.util.Arrays;

/**
 * How the blinks of a recording are noted that the pulses of a train make: their times, lengths.
 */
final class Noted {
  /**
   * The errors of noted lengths are mostly the same for all blinks of a recording (the observer's
   * release, the sensor's averaging), so that together they count as this many.
   */
  private static final double LENGTHS_COUNTED = 8;

  /** A chance that a blink's noted length is simply wrong. */
  private static final double WRONG_LENGTH = 0.02;

  /** The most that a fitting length can add to it. */
  private static final double MOST_LENGTH = 6;

  private final Train train;
  private final Evidence evidence;
  private final Noise noise;
  private final double lengthShare;
  private final boolean lengthsNoted;

  /** What was worked out of {@link #lengthRatio}, by blink and pulse of the cycle; else NaN. */
  private final double[] lengthRatios;

  /** Prepares; of the noise only the errors of times and lengths count. */
  Noted(Train train, Evidence evidence, Noise noise) {
    this.train = train;
    this.evidence = evidence;
    this.noise = noise;
    this.lengthShare = Math.min(1, LENGTHS_COUNTED / Math.max(1, evidence.notes().size()));
    this.lengthsNoted = evidence.hasLengths();
    this.lengthRatios = new double[lengthsNoted ? evidence.notes().size() * train.size() : 0];
    Arrays.fill(lengthRatios, Double.NaN);
  }

  /** When a blink began, less what it was noted late as the first of a burst. */
  double began(Evidence.Note note, int pulse) {
    return train.opensBurst(pulse) ? beganLate(note) : note.on();
  }

  /** When a blink began that was noted as late as the first of a burst. */
  double beganLate(Evidence.Note note) {
    return note.on() - noise.firstLate();
  }

  /**
   * Whether a blink inside a burst may be noted as late as its first: whoever began to watch in the
   * middle of the burst is as surprised.
   */
  boolean mayBeFirstSeen(Evidence.Note note, int pulse) {
    if (noise.firstLate() == 0 || !evidence.stated() || note.onCut() || train.opensBurst(pulse)) {
      return false;
    }
    double earliest = beganLate(note) - train.darkBefore(pulse) * train.high();
    return earliest - 2 * Density.GATE * noise.sd() < evidence.window().fromSeconds();
  }

  /**
   * The chance that the pulse before one ended before the window, so that it was not seen.
   *
   * @param began when the one began
   */
  double noneSeenBefore(double began, int pulse) {
    double dark = train.darkBefore(pulse);
    double stretch = Missed.EVEN_SPREAD * dark * (train.high() - train.low());
    double spread = Math.sqrt(2 * noise.sd() * noise.sd() + stretch * stretch);
    double since = began - dark * train.middle() - evidence.window().fromSeconds();
    return Gauss.cumulative(-since / spread);
  }

  /** When a blink ended, less what of its length does not stretch. */
  double ended(Evidence.Note note, int pulse) {
    return note.off() - noise.late() - train.unstretched(pulse);
  }

  /** Whether a blink that began before the window can be placed by its end. */
  boolean endsKnown(Evidence.Note note, int pulse) {
    return note.onCut()
        && note.hasOff()
        && !note.offCut()
        && (!train.repeats() || train.length(pulse) < train.cycleSeconds())
        && longest(pulse) + 3 * noise.lengthSd(train.length(pulse)) >= note.length();
  }

  private double longest(int pulse) {
    return Math.max(train.unstretched(pulse), train.length(pulse) * Math.min(train.high(), 1.5));
  }

  /** Logarithm of the ratio of the densities of a blink's noted length: this pulse to a stray. */
  double lengthRatio(int index, int pulse) {
    if (!lengthsNoted) {
      return 0;
    }
    int at = index * train.size() + train.index(pulse);
    if (Double.isNaN(lengthRatios[at])) {
      lengthRatios[at] = ratio(evidence.notes().get(index), train.length(pulse));
    }
    return lengthRatios[at];
  }

  /** The most that it can be. */
  double mostLengthRatio() {
    return lengthsNoted ? MOST_LENGTH * lengthShare : 0;
  }

  private double ratio(Evidence.Note note, double length) {
    if (Double.isNaN(length) || !note.hasOff()) {
      return 0;
    }
    double sd = noise.lengthSd(length);
    if (note.onCut() || note.offCut()) {
      return note.length() > length + noise.late() + 3 * sd ? Math.log(WRONG_LENGTH) : 0;
    }
    double any = Strays.logLength(note.length());
    double right = Gauss.logDensity(note.length() - noise.late() - length, sd);
    double ratio =
        Gauss.logAdd(Math.log1p(-WRONG_LENGTH) + right, Math.log(WRONG_LENGTH) + any) - any;
    return lengthShare * ratio;
  }
}

package lampwise.decode;

/** Blinks that the lamp did not make: they come at random. */
final class Strays {
  /** Strays last up to this long. */
  private static final double MOST_SECONDS = 2;

  private Strays() {}

  /** Logarithm of the likelihood of blinks that are all strays. */
  static double log(Evidence evidence, Noise noise) {
    return log(evidence, noise, logLengths(evidence));
  }

  /** The same where the likelihood of the lengths is known. */
  static double log(Evidence evidence, Noise noise, double logLengths) {
    return evidence.notes().size() * Math.log(noise.strays())
        + logLengths
        - noise.strays() * evidence.watchedSeconds();
  }

  /** Logarithm of the likelihood of the lengths that were noted in full. */
  static double logLengths(Evidence evidence) {
    double sum = 0;
    for (Evidence.Note note : evidence.notes()) {
      if (note.hasOff() && !note.onCut() && !note.offCut()) {
        sum += logLength(note.length());
      }
    }
    return sum;
  }

  /**
   * Density of a stray's length: even in its logarithm up to two seconds, then soon rare, for a
   * reflection or a wrong tap does not last.
   */
  static double logLength(double seconds) {
    double log = -Math.log(8 * Math.max(seconds, 0.02));
    return seconds > MOST_SECONDS ? log - 3 * Math.log(seconds / MOST_SECONDS) : log;
  }
}

package lampwise.decode;

/**
 * What a fold must reach to matter; one that does not may come out lower than it is.
 *
 * @param log logarithm of a likelihood that does not matter
 * @param logWeight logarithm of what the likelihood is multiplied with
 * @param front how the best fold of the same blinks went
 * @param far how far behind it, but for the weight, nobody is expected to come up again
 */
record Floor(double log, double logWeight, Front front, double far) {
  /** Who is less likely than others to begin with still falls so far behind (natural logarithm). */
  private static final double LEAST_FAR = 8;

  Floor(double log, double logWeight, Front front) {
    this(log, logWeight, front, Sums.BEHIND);
  }

  /** Everything matters. */
  static Floor none() {
    return new Floor(Double.NEGATIVE_INFINITY, 0, new Front());
  }

  /** The floor of what is multiplied with a weight. */
  Floor of(double logFactor) {
    return new Floor(log - logFactor, logWeight + logFactor, front, far);
  }

  /** The floor of each of so many, none of which matters if their sum does not. */
  Floor ofEach(int count) {
    return new Floor(log - Math.log(count), logWeight, front, far);
  }

  /** The same where the weight counts as being behind. */
  Floor weighed() {
    return new Floor(log, logWeight, front, Math.max(LEAST_FAR, far + logWeight));
  }

  /** How likely the blinks up to one must be. */
  double at(int note) {
    return front.at(note) - far;
  }
}

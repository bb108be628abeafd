package lampwise.decode;

/**
 * What a fold must reach to matter; one that does not may come out lower than it is.
 *
 * @param log logarithm of a likelihood that does not matter
 * @param logWeight logarithm of what the likelihood is multiplied with
 * @param front how the best fold of the same blinks went
 */
record Floor(double log, double logWeight, Front front) {
  /** Everything matters. */
  static Floor none() {
    return new Floor(Double.NEGATIVE_INFINITY, 0, new Front());
  }

  /** The floor of what is multiplied with a weight. */
  Floor of(double logFactor) {
    return new Floor(log - logFactor, logWeight + logFactor, front);
  }

  /** The floor of each of so many, none of which matters if their sum does not. */
  Floor ofEach(int count) {
    return new Floor(log - Math.log(count), logWeight, front);
  }
}

package lampwise.decode;

import java.util.Optional;

/**
 * One way in which a candidate may show itself for a while.
 *
 * @param candidate its number in the order of the priors
 * @param train its pulse train; empty if nothing is shown, or blinks at random
 * @param randomPerSecond how often random blinks come; NaN if none do
 * @param logPrior logarithm of the way's share of all that may be
 */
record Way(int candidate, Optional<Train> train, double randomPerSecond, double logPrior) {
  static Way of(int candidate, Train train, double logPrior) {
    return new Way(candidate, Optional.of(train), Double.NaN, logPrior);
  }

  static Way dark(int candidate, double logPrior) {
    return new Way(candidate, Optional.empty(), Double.NaN, logPrior);
  }

  static Way random(int candidate, double perSecond, double logPrior) {
    return new Way(candidate, Optional.empty(), perSecond, logPrior);
  }

  boolean isRandom() {
    return !Double.isNaN(randomPerSecond);
  }
}

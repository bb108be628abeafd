package lampwise.decode;

/**
 * How the best fold so far went: logarithm of the likelihood of the blinks up to each. Who falls
 * far behind it on the way is not expected to come up again.
 */
final class Front {
  private double[] upTo = {};

  /** How likely the blinks up to this one were; negative infinity if that is not known. */
  double at(int note) {
    return note < upTo.length ? upTo[note] : Double.NEGATIVE_INFINITY;
  }

  /** Takes in how a fold of all blinks went, if it went better. */
  void offer(double[] logs, double logWeight) {
    int last = logs.length - 1;
    if (last >= 0 && logs[last] + logWeight > at(last)) {
      upTo = logs.clone();
      for (int i = 0; i < upTo.length; i++) {
        upTo[i] += logWeight;
      }
    }
  }
}

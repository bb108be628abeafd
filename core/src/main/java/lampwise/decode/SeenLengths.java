package lampwise.decode;

import java.util.Arrays;
import java.util.List;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Size;

/**
 * The lengths that a recording's blinks have, where the sheet says none.
 *
 * @param usual the median of all, NaN if no length was noted or there are clearly two
 * @param shorter the median of the shorter kind, NaN if no length was noted
 * @param longer the median of the longer kind, NaN if there is one kind only
 */
record SeenLengths(double usual, double shorter, double longer) {
  /** Logarithm of the part of a length's prior that a proposal uses up: even in the logarithm. */
  static final double LOG_SHARE =
      Math.log(
          2.5
              * Noise.LENGTH_FRACTION
              / Math.log(Limits.CYCLE_MOST_SECONDS / Limits.BLINK_LEAST_SECONDS));

  /** Two kinds of length differ by this factor at least. */
  private static final double KINDS_APART = 1.6;

  static SeenLengths of(List<Evidence.Note> notes) {
    double[] lengths = known(notes);
    if (lengths.length == 0) {
      return new SeenLengths(Double.NaN, Double.NaN, Double.NaN);
    }
    int cut = 0;
    double widest = KINDS_APART;
    for (int i = 1; i < lengths.length; i++) {
      double ratio = lengths[i] / lengths[i - 1];
      if (ratio > widest) {
        widest = ratio;
        cut = i;
      }
    }
    double all = median(lengths);
    if (cut == 0) {
      return new SeenLengths(all, all, Double.NaN);
    }
    double shorter = median(Arrays.copyOfRange(lengths, 0, cut));
    double longer = median(Arrays.copyOfRange(lengths, cut, lengths.length));
    return new SeenLengths(Double.NaN, shorter, longer);
  }

  /** The median of all lengths of whatever kind, NaN if no length was noted. */
  static double middle(List<Evidence.Note> notes) {
    return median(known(notes));
  }

  /** The lengths that were noted in full, sorted. */
  private static double[] known(List<Evidence.Note> notes) {
    return notes.stream()
        .filter(n -> n.hasOff() && !n.onCut() && !n.offCut())
        .mapToDouble(Evidence.Note::length)
        .sorted()
        .toArray();
  }

  /** The median of sorted values, the upper one of two; NaN if there is none. */
  static double median(double[] sorted) {
    return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
  }

  /** The length of blinks of a size, NaN if it was not seen. */
  double of(Size size) {
    return switch (size) {
      case LONG -> longer;
      case SHORT -> shorter;
      case UNSAID -> usual;
    };
  }
}

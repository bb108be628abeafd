package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.Window;

/** How long the lamp was on, and not hidden, within stretches that come one after another. */
final class LitTime {
  private final double[] on;
  private final double[] off;
  private final int[] blink;

  /** The first piece that ends after the last stretch began. */
  private int first;

  /**
   * Takes blinks and what hides the lamp.
   *
   * @param blinks the blinks, in order
   * @param hidden when the lamp is hidden, counted from {@code originSeconds}, in order of starts
   * @param originSeconds the time from which all others are counted
   */
  LitTime(List<Blink> blinks, List<Window> hidden, double originSeconds) {
    List<double[]> pieces = new ArrayList<>(blinks.size());
    int next = 0;
    for (int i = 0; i < blinks.size(); i++) {
      double start = blinks.get(i).onSeconds() - originSeconds;
      if (!blinks.get(i).hasOff()) {
        throw new SimulationException("the lamp went on at " + start + " s, but not off");
      }
      double end = blinks.get(i).offSeconds() - originSeconds;
      while (next < hidden.size() && hidden.get(next).toSeconds() <= start) {
        next++;
      }
      for (int h = next; h < hidden.size() && hidden.get(h).fromSeconds() < end; h++) {
        if (hidden.get(h).fromSeconds() > start) {
          pieces.add(new double[] {start, hidden.get(h).fromSeconds(), i});
        }
        start = Math.max(start, hidden.get(h).toSeconds());
      }
      if (end > start) {
        pieces.add(new double[] {start, end, i});
      }
    }
    on = pieces.stream().mapToDouble(piece -> piece[0]).toArray();
    off = pieces.stream().mapToDouble(piece -> piece[1]).toArray();
    blink = pieces.stream().mapToInt(piece -> (int) piece[2]).toArray();
  }

  /**
   * How long the lamp was on; the first time must not be before that of the call before.
   *
   * @param from the first time
   * @param to the second, after the first
   * @return seconds
   */
  double within(double from, double to) {
    while (first < off.length && off[first] <= from) {
      first++;
    }
    double sum = 0;
    for (int i = first; i < on.length && on[i] < to; i++) {
      sum += overlap(i, from, to);
    }
    return sum;
  }

  /** The first piece that ends after the last stretch began. */
  int first() {
    return first;
  }

  /** How many pieces there are. */
  int size() {
    return on.length;
  }

  /** The number of the blink that a piece belongs to. */
  int blink(int piece) {
    return blink[piece];
  }

  /** How much of a piece lies between two times; zero or less if none. */
  double overlap(int piece, double from, double to) {
    return Math.min(off[piece], to) - Math.max(on[piece], from);
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the state of a lamp may change: moments of the dark before, between and after blinks, dense
 * near blinks and thinner away from them, so that their number is linear in the blinks and grows
 * with the logarithm of a long dark.
 */
final class Places {
  /** How far the first moment after a blink is from it, and how fast the next ones thin out. */
  private static final double NEAREST_SECONDS = 0.35;

  private static final double THINNER = 1.4;

  private final double[] seconds;
  private final double[] widths;
  private final int[] first;

  private Places(double[] seconds, double[] widths, int[] first) {
    this.seconds = seconds;
    this.widths = widths;
    this.first = first;
  }

  /** The moments, in order; not to be changed. */
  double[] seconds() {
    return seconds;
  }

  /** The time around each that it stands for; not to be changed. */
  double[] widths() {
    return widths;
  }

  /** For each gap the number of its first moment; one more entry ends the last gap. */
  int[] first() {
    return first;
  }

  /** The moments of a stretch; gap number i ends with its blink of that number. */
  static Places of(Evidence evidence) {
    List<double[]> all = new ArrayList<>();
    int gaps = evidence.notes().size() + 1;
    int[] first = new int[gaps + 1];
    double from = evidence.window().fromSeconds();
    for (int gap = 0; gap < gaps; gap++) {
      first[gap] = all.size();
      boolean last = gap == gaps - 1;
      double to = last ? evidence.window().toSeconds() : evidence.notes().get(gap).on();
      add(from, to, all);
      if (!last) {
        Evidence.Note note = evidence.notes().get(gap);
        from = note.hasOff() ? Math.max(note.on(), note.off()) : note.on();
      }
    }
    first[gaps] = all.size();
    double[] seconds = all.stream().mapToDouble(place -> place[0]).toArray();
    double[] widths = all.stream().mapToDouble(place -> place[1]).toArray();
    return new Places(seconds, widths, first);
  }

  /** The moments of one dark, each in the middle of its own part of it. */
  private static void add(double from, double to, List<double[]> places) {
    double length = to - from;
    if (!(length > 0)) {
      return;
    }
    List<Double> reach = new ArrayList<>();
    for (double away = NEAREST_SECONDS; away < 0.5 * length; away *= THINNER) {
      reach.add(away);
    }
    List<Double> borders = new ArrayList<>();
    borders.add(from);
    reach.forEach(away -> borders.add(from + away));
    for (int i = reach.size() - 1; i >= 0; i--) {
      borders.add(to - reach.get(i));
    }
    borders.add(to);
    for (int i = 1; i < borders.size(); i++) {
      double width = borders.get(i) - borders.get(i - 1);
      if (width > 0) {
        places.add(new double[] {0.5 * (borders.get(i - 1) + borders.get(i)), width});
      }
    }
  }
}

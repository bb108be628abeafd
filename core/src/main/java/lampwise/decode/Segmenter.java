package lampwise.decode;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Window;

/**
 * Cuts a recording at the marks where the lamp's state changes: dynamic programming over cuts, each
 * stretch scored by the state that explains it best.
 */
final class Segmenter {
  /** Chance of a change where a target came or left or an event was noted. */
  private static final double AT_MARK = 0.3;

  private Segmenter() {}

  /** One place at which the state may change. */
  private record Place(double seconds, double chance) {}

  /** Scores a stretch: the logarithm of prior times likelihood of its best candidate. */
  interface Scorer {
    /** The best candidate's number and its score. */
    Best best(Evidence stretch);
  }

  /** A candidate's number in the sheet's order, and its score. */
  record Best(int candidate, double score) {}

  /** The stretches between marks in which one state shows, in order. */
  static List<Window> stretches(Evidence evidence, Marks marks, Scorer scorer) {
    Window window = evidence.window();
    List<Place> places = places(evidence, marks);
    if (places.isEmpty()) {
      return List.of(window);
    }
    int count = places.size() + 2;
    double[] at = new double[count];
    at[0] = window.fromSeconds();
    at[count - 1] = window.toSeconds();
    for (int i = 0; i < places.size(); i++) {
      at[i + 1] = places.get(i).seconds();
    }
    double[] sum = new double[count];
    int[] before = new int[count];
    int[] state = new int[count];
    for (int to = 1; to < count; to++) {
      sum[to] = Double.NEGATIVE_INFINITY;
      double kept = 0;
      for (int from = to - 1; from >= 0; from--) {
        double cut = from == 0 ? 0 : Math.log(places.get(from - 1).chance());
        Best best = scorer.best(evidence.within(at[from], at[to]));
        double score = sum[from] + cut + kept + best.score();
        if (score >= sum[to]) {
          sum[to] = score;
          before[to] = from;
          state[to] = best.candidate();
        }
        kept += from == 0 ? 0 : Math.log1p(-places.get(from - 1).chance());
      }
    }
    List<Window> stretches = new ArrayList<>();
    int next = -1;
    for (int to = count - 1; to > 0; to = before[to]) {
      double end = at[to];
      double start = at[before[to]];
      if (state[to] == next && !stretches.isEmpty()) {
        end = stretches.remove(stretches.size() - 1).toSeconds();
      }
      stretches.add(new Window(start, end));
      next = state[to];
    }
    Collections.reverse(stretches);
    return stretches;
  }

  private static List<Place> places(Evidence evidence, Marks marks) {
    List<Place> places = new ArrayList<>();
    for (TargetSpan span : marks.targets().spans()) {
      places.add(new Place(span.fromSeconds(), AT_MARK));
      places.add(new Place(span.toSeconds(), AT_MARK));
    }
    for (Event event : marks.events()) {
      places.add(new Place(event.atSeconds(), AT_MARK));
    }
    Window window = evidence.window();
    places.removeIf(p -> !(p.seconds() > window.fromSeconds() && p.seconds() < window.toSeconds()));
    places.sort((a, b) -> Double.compare(a.seconds(), b.seconds()));
    for (int i = places.size() - 1; i > 0; i--) {
      if (places.get(i).seconds() - places.get(i - 1).seconds() < 1e-9) {
        places.remove(i);
      }
    }
    return places;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** What ended at each of the places at which the state may change. */
final class Endings {
  private final Places places;

  /** Logarithm of the weight of everything up to a place, and the likeliest run that ends there. */
  private final double[] before;

  private final List<Optional<Run>> ending = new ArrayList<>();

  Endings(Places places) {
    this.places = places;
    this.before = new double[places.seconds().length];
  }

  /**
   * Takes in the next place.
   *
   * @param runs the runs that may end there
   * @param logs logarithms of their weights up to it
   * @param logRate logarithm of how often the state changes, per second
   */
  void add(List<Run> runs, double[] logs, double logRate) {
    int place = ending.size();
    int most = 0;
    for (int i = 0; i < logs.length; i++) {
      most = logs[i] > logs[most] ? i : most;
    }
    before[place] = Gauss.logSum(logs) + logRate + Math.log(places.widths()[place]);
    ending.add(logs.length == 0 ? Optional.empty() : Optional.of(runs.get(most)));
  }

  /** Logarithm of the weight of everything that ended at a place, for all that begins there. */
  double before(int place) {
    return before[place];
  }

  /** The greatest of these weights, from one place up to each later one. */
  double[] greatest(int from, int to) {
    double[] greatest = new double[to - from];
    for (int i = 0; i < greatest.length; i++) {
      double earlier = i > 0 ? greatest[i - 1] : Double.NEGATIVE_INFINITY;
      greatest[i] = Math.max(earlier, before[from + i]);
    }
    return greatest;
  }

  /** Whether another candidate was there before a way that begins at a place. */
  boolean changedBy(Shown shown, int start) {
    Optional<Run> earlier = ending.get(start);
    return earlier.isPresent()
        && (earlier.get().changed || candidate(earlier.get()) != shown.way().candidate());
  }

  /** How the clock ran up to a place. */
  Optional<Line> clockAt(int place) {
    return ending.get(place).flatMap(Run::clockAfter);
  }

  /** The same for a way whose times it sets. */
  Optional<Line> clockFor(Shown shown, int place) {
    return shown.timed() ? clockAt(place).filter(line -> line.varTrain() > 0) : Optional.empty();
  }

  /** Where the candidate changes, in order, on the way to a run. */
  List<Double> changes(Optional<Run> last) {
    List<Double> changes = new ArrayList<>();
    Optional<Run> run = last;
    while (run.isPresent() && run.get().start != Run.ORIGIN) {
      int start = run.get().start;
      Optional<Run> earlier = ending.get(start);
      if (earlier.isPresent() && candidate(earlier.get()) != candidate(run.get())) {
        changes.add(places.seconds()[start]);
      }
      run = earlier;
    }
    Collections.reverse(changes);
    return changes;
  }

  private static int candidate(Run run) {
    return run.shown.way().candidate();
  }
}

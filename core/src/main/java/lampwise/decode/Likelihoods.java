package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;

/** The likelihood of one recording, or of a stretch of it, under each candidate. */
final class Likelihoods {
  /** Rates of blinks without rhythm, per second: even in the logarithm between these. */
  private static final double LEAST_RATE = 0.05;

  private static final double MOST_RATE = 3;
  private static final int RATES = 24;

  /** Recordings with more blinks than this are tried on their beginning first. */
  private static final int MANY_BLINKS = 200;

  private final Listed listed;
  private final Evidence evidence;
  private final Varied varied;
  private final Showing showing;
  private final double[] logPriors;

  /** Prepares the likelihoods of a recording: a unit at rest shows that it sees a target. */
  Likelihoods(CodeSheet sheet, Evidence evidence, Marks marks) {
    this.listed = new Listed(sheet, evidence, marks);
    this.evidence = evidence;
    this.varied = new Varied(listed, evidence);
    this.showing = new Showing(listed, evidence.window(), true);
    this.logPriors = Arrays.stream(Posterior.priors(sheet)).map(Math::log).toArray();
  }

  private Likelihoods(Likelihoods other, Showing showing) {
    this.listed = other.listed;
    this.evidence = other.evidence;
    this.varied = other.varied;
    this.showing = showing;
    this.logPriors = other.logPriors;
  }

  /** The same, on the same pulse trains, for a unit that is dark while it sees a target. */
  Likelihoods unanswered() {
    return new Likelihoods(this, new Showing(listed, evidence.window(), false));
  }

  /** The pulse trains of a state; none if it is dark or steady. */
  List<Train> trains(int state) {
    return listed.trains(state);
  }

  /** What the states may show in a stretch. */
  List<Way> shows(Window stretch) {
    return listed.shows(stretch);
  }

  /** When a state's lamp can be seen, in each of the ways that the marks leave open. */
  List<Visibility> ways(int state) {
    return listed.ways(state);
  }

  /**
   * The unlisted rhythms that a recording proposes, and the variants of the states that fit best.
   *
   * @param logs logarithms of the states' likelihoods
   */
  List<FreeRhythms> unlisted(Evidence stretch, double[] logs) {
    List<FreeRhythms> all = new ArrayList<>(listed.without(FreeRhythms.propose(stretch)));
    // Folding a light curve is dear, and a rate's variants are many.
    all.addAll(varied.near(state -> !listed.isRate(state), state -> logs[state]));
    return all;
  }

  /** Logarithms of the likelihoods of the whole recording, in the order of the priors. */
  double[] whole() {
    return of(evidence);
  }

  /**
   * Logarithms of the likelihoods of a stretch, in the order of the priors, noise summed over. Of
   * many blinks the first tell which candidates are hopeless; the others see them all.
   */
  double[] of(Evidence stretch) {
    int states = listed.size();
    Evidence head = stretch.beginning(MANY_BLINKS);
    List<FreeRhythms> proposed = FreeRhythms.propose(head);
    List<Noise> settings =
        RoughError.likeFirst(proposed.stream().map(FreeRhythms::train).toList(), head);
    double random = noRhythm(head);
    Sums first = new Sums(states + 1, Timing.of(settings), random);
    addStates(first, listed.likeFirst(proposed), head);
    List<FreeRhythms> near = varied.near(first::isHopeful, first::mean);
    // Where no state fits, none of them tells which timing is the stretch's.
    boolean fits = first.best() > random;
    List<Timing> picking = fits ? List.of(first.bestTiming()) : first.timings();
    Unlisted free = addUnlisted(first, proposed, near, head, picking);
    Sums sums = first;
    if (stretch.notes().size() > MANY_BLINKS) {
      sums = new Sums(states + 1, first.timings(), noRhythm(stretch));
      addStates(sums, first.hopeful(states), stretch);
      if (first.isHopeful(states)) {
        free = addUnlisted(sums, FreeRhythms.propose(stretch), near, stretch, picking);
      }
    }
    double[] logs = logs(first, sums, noRhythm(stretch));
    // One blink alone is as late as any other.
    if (stretch.notes().size() < 2 || stretch.finer().isEmpty()) {
      return logs;
    }
    List<Integer> contenders = contenders(logs, proposed);
    if (contenders.size() < 2) {
      return logs;
    }
    Unlisted unlisted = free;
    Finer.Fold fold =
        (candidate, timing, floor) ->
            candidate < states
                ? showing.logs(candidate, stretch, timing, floor)
                : unlisted.logs(stretch, timing, floor);
    NoiseGrid grid = stretch.finer().get().get();
    return Finer.logs(grid, contenders, logPriors, logs, sums, fold);
  }

  /**
   * The candidates between which the noise may decide: those that are not far behind the best, and
   * the states that may look like it where a first blink is noted late.
   */
  private List<Integer> contenders(double[] logs, List<FreeRhythms> proposed) {
    int best = 0;
    for (int i = 1; i < logs.length; i++) {
      best = logPriors[i] + logs[i] > logPriors[best] + logs[best] ? i : best;
    }
    double most = logPriors[best] + logs[best];
    List<Integer> alike = best < listed.size() ? listed.alike(best) : listed.alike(proposed);
    return IntStream.range(0, logs.length)
        .filter(i -> Finer.isInDoubt(logPriors[i] + logs[i], most) || alike.contains(i))
        .boxed()
        .toList();
  }

  /** Adds states, the likeliest first, so that soon it is known what does not matter. */
  private void addStates(Sums sums, List<Integer> states, Evidence stretch) {
    for (int state : states) {
      for (Timing timing : sums.timings()) {
        sums.add(state, timing, showing.logs(state, stretch, timing, sums.floor()));
      }
    }
  }

  /**
   * Adds the unlisted rhythms, picked by how they fit under the timings that may be the stretch's.
   */
  private Unlisted addUnlisted(
      Sums sums,
      List<FreeRhythms> proposed,
      List<FreeRhythms> near,
      Evidence stretch,
      List<Timing> picking) {
    List<FreeRhythms> all = new ArrayList<>(listed.without(proposed));
    all.addAll(near);
    Unlisted free = Unlisted.of(all, stretch, picking, sums.floor());
    for (Timing timing : sums.timings()) {
      sums.add(listed.size(), timing, free.logs(stretch, timing, sums.floor()));
    }
    return free;
  }

  /** The averages, and of what was given up how far behind it is at least. */
  private double[] logs(Sums first, Sums sums, double noRhythm) {
    int states = listed.size();
    double[] logs = new double[states + 2];
    logs[states + 1] = noRhythm;
    double best = noRhythm;
    for (int i = 0; i <= states; i++) {
      logs[i] = first.isHopeful(i) ? sums.mean(i) : Double.NEGATIVE_INFINITY;
      best = Math.max(best, logs[i]);
    }
    for (int i = 0; i <= states; i++) {
      if (!(logs[i] > best - Sums.HOPELESS)) {
        double behind = Math.max(0, first.best() - first.mean(i));
        logs[i] = best - Sums.HOPELESS - Math.min(Sums.HOPELESS, behind);
      }
    }
    return logs;
  }

  /** Logarithm of the likelihood of blinks that come at random, their rate summed over. */
  static double noRhythm(Evidence stretch) {
    double sum = Double.NEGATIVE_INFINITY;
    double lengths = Strays.logLengths(stretch);
    for (int i = 0; i < RATES; i++) {
      double rate = LEAST_RATE * Math.pow(MOST_RATE / LEAST_RATE, (i + 0.5) / RATES);
      Noise random = new Noise(1, 0, rate, 0, 1, 0, 1);
      sum = Gauss.logAdd(sum, Strays.log(stretch, random, lengths) - Math.log(RATES));
    }
    return sum;
  }
}

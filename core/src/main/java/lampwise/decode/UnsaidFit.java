package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Size;

/**
 * Finds the durations of a rhythm that says none in a recording's own blinks. Runs of blinks that
 * could be one cycle, also with one blink missing or one too many, propose values; those that
 * explain most blinks are refined by least squares over all of them. Each becomes a pulse train
 * that stands for the prior's mass around it (Laplace's approximation).
 */
final class UnsaidFit {
  /** How far the stretch of a train reaches to either side; the cycle is integrated over it. */
  private static final double STRETCH = 0.05;

  /** Runs are taken from this many blinks at the beginning. */
  private static final int MOST_BEGINS = 40;

  /** Blinks that a proposal is tried on. */
  private static final int MOST_TRIED = 80;

  /** How far blinks may lie from a first proposal, and from refined values; seconds. */
  private static final double[] REACH = {0.14, 0.1, 0.07};

  /** The same as a part of the shortest step from one pulse to the next. */
  private static final double REACH_OF_STEP = 0.25;

  /** No pulse. */
  private static final int NONE = Integer.MIN_VALUE;

  private static final double MATCHED = 4.5;
  private static final double MISSED = -3;
  private static final int MOST_REFINED = 8;
  private static final int MOST_KEPT = 3;

  /** A proposal that cannot come nearer than this to the best one is not looked at. */
  private static final double HOPELESS = 40;

  /** Proposals this far below the best are left (natural logarithm). */
  private static final double WORSE = 12;

  private final UnsaidShape shape;
  private final double[] starts;
  private final double from;
  private final double to;
  private final SeenLengths seen;

  /** Which of two kinds of length each blink has, as far as that was noted. */
  private final List<Size> kinds;

  private UnsaidFit(UnsaidShape shape, Evidence evidence, SeenLengths seen) {
    this.shape = shape;
    List<Evidence.Note> notes = evidence.notes().stream().filter(note -> !note.onCut()).toList();
    boolean more = notes.size() > MOST_TRIED;
    notes = more ? notes.subList(0, MOST_TRIED) : notes;
    this.starts = notes.stream().mapToDouble(Evidence.Note::on).toArray();
    this.from = evidence.window().fromSeconds();
    this.to = more ? starts[MOST_TRIED - 1] : evidence.window().toSeconds();
    this.seen = seen;
    this.kinds = notes.stream().map(note -> kind(note, seen)).toList();
  }

  private static Size kind(Evidence.Note note, SeenLengths seen) {
    if (!note.hasOff() || note.offCut() || Double.isNaN(seen.longer())) {
      return Size.UNSAID;
    }
    double border = Math.sqrt(seen.shorter() * seen.longer());
    return note.length() < border ? Size.SHORT : Size.LONG;
  }

  /** Whether a blink can be a pulse of a cycle, by its length. */
  private boolean fits(int blink, int pulse) {
    Size size = shape.sizes().get(pulse);
    Size kind = kinds.get(blink);
    return size == kind || size == Size.UNSAID || kind == Size.UNSAID;
  }

  /** Values for what is not known. */
  private static final class Values {
    private final double phase;
    private final double cycle;
    private final double[] durations;
    private final double score;

    /**
     * Some values, of an array that nobody changes afterwards.
     *
     * @param phase when the first pulse of a cycle begins
     * @param cycle the cycle
     * @param durations spacings, then steps
     * @param score how well they explain the blinks, natural logarithm up to a constant
     */
    Values(double phase, double cycle, double[] durations, double score) {
      this.phase = phase;
      this.cycle = cycle;
      this.durations = durations;
      this.score = score;
    }

    double phase() {
      return phase;
    }

    double cycle() {
      return cycle;
    }

    double[] durations() {
      return durations;
    }

    double score() {
      return score;
    }
  }

  /** The trains of a shape; none where the recording holds no whole cycle. */
  static List<Train> of(UnsaidShape shape, Evidence evidence, SeenLengths seen) {
    return new UnsaidFit(shape, evidence, seen).trains();
  }

  private List<Train> trains() {
    List<Values> proposed = best(proposals(), MOST_REFINED);
    List<Values> refined = new ArrayList<>();
    for (Values values : proposed) {
      Values now = values;
      for (double reach : REACH) {
        now = refined(now, reach);
      }
      refined.add(now);
    }
    List<Train> trains = new ArrayList<>();
    double best = Double.NaN;
    for (Values values : best(refined, MOST_REFINED)) {
      boolean near = Double.isNaN(best) || values.score() > best - WORSE;
      Optional<Train> train = near && trains.size() < MOST_KEPT ? train(values) : Optional.empty();
      if (train.isPresent()) {
        best = Double.isNaN(best) ? values.score() : best;
        trains.add(train.get());
      }
    }
    return trains;
  }

  /** The best ones that differ, the best first. */
  private List<Values> best(List<Values> all, int most) {
    List<Values> sorted = new ArrayList<>(all);
    sorted.sort((a, b) -> Double.compare(b.score(), a.score()));
    List<Values> kept = new ArrayList<>();
    for (Values values : sorted) {
      if (kept.size() < most && kept.stream().noneMatch(other -> same(values, other))) {
        kept.add(values);
      }
    }
    return kept;
  }

  private static boolean same(Values a, Values b) {
    double apart = Math.abs(a.cycle() - b.cycle());
    for (int i = 0; i < a.durations().length; i++) {
      apart = Math.max(apart, Math.abs(a.durations()[i] - b.durations()[i]));
    }
    return apart < Math.min(REACH[REACH.length - 1], 0.1 * a.cycle());
  }

  /** Whether a recording may hold a whole cycle and the beginning of the next. */
  static boolean isEnough(UnsaidShape shape, Evidence evidence) {
    return evidence.starts().length > shape.pulses();
  }

  private List<Values> proposals() {
    Found found = new Found();
    int pulses = shape.pulses();
    for (int i = 0; i < Math.min(MOST_BEGINS, starts.length); i++) {
      run(i, -1, -1, found);
      for (int k = 0; k < pulses && pulses > 1; k++) {
        run(i, k, -1, found);
        if (k > 0) {
          run(i, -1, k, found);
        }
      }
    }
    return found.all;
  }

  /** What was proposed so far. */
  private static final class Found {
    private final List<Values> all = new ArrayList<>();
    private double best = Double.NEGATIVE_INFINITY;

    void add(Values values) {
      all.add(values);
      best = Math.max(best, values.score());
    }
  }

  /**
   * Proposes the run of blinks from one on as a cycle.
   *
   * @param missing the pulse that was not noted, or -1
   * @param stray the blink of the run that is none of the lamp, or -1
   */
  private void run(int begin, int missing, int stray, Found found) {
    List<double[]> rows = new ArrayList<>();
    List<Double> times = new ArrayList<>();
    int at = begin;
    for (int k = 0; k < shape.pulses(); k++) {
      if (k == missing) {
        continue;
      }
      at += at - begin == stray ? 1 : 0;
      if (at >= starts.length || !fits(at, k)) {
        return;
      }
      double[] row = new double[1 + shape.durations()];
      row[0] = 1;
      System.arraycopy(shape.features()[k], 0, row, 1, shape.durations());
      rows.add(row);
      times.add(starts[at++]);
    }
    double[] solved = LeastSquares.solve(rows, times);
    if (solved.length == 0) {
      return;
    }
    double[] durations = Arrays.copyOfRange(solved, 1, solved.length);
    for (double duration : durations) {
      if (!(duration > 0.02)) {
        return;
      }
    }
    double span = shape.on(shape.pulses() - 1, durations);
    int first = Math.max(begin + 1, at - 1);
    for (int next = first; next < Math.min(starts.length, at + 3); next++) {
      cycle(solved[0], starts[next] - solved[0], span, durations, found);
      cycle(solved[0], starts[next] - solved[0] - span, span, durations, found);
    }
  }

  private void cycle(double phase, double cycle, double span, double[] durations, Found found) {
    if (cycle > span + 0.05 && cycle > 0.1) {
      double most = shape.logPrior(durations, cycle, seen) + MATCHED * starts.length;
      if (most > found.best - HOPELESS) {
        found.add(scored(phase, cycle, durations, REACH[0]));
      }
    }
  }

  private Values scored(double phase, double cycle, double[] durations, double widest) {
    double reach = Math.min(widest, REACH_OF_STEP * shape.leastStep(durations, cycle));
    double sum = shape.logPrior(durations, cycle, seen);
    int[] given = given(phase, cycle, durations, 3 * reach);
    int pulses = shape.pulses();
    int matched = 0;
    for (int i = 0; i < given.length; i++) {
      if (given[i] != NONE) {
        double off = (starts[i] - at(given[i], phase, cycle, durations)) / reach;
        sum += MATCHED - 0.5 * off * off;
        matched++;
      }
    }
    double expected = 0;
    for (int k = 0; k < pulses; k++) {
      double on = phase + shape.on(k, durations);
      expected +=
          Math.floor((to - reach - on) / cycle) - Math.ceil((from + reach - on) / cycle) + 1;
    }
    sum += MISSED * Math.max(0, expected - matched);
    return new Values(phase, cycle, durations, sum);
  }

  /** Where each pulse lies in the cycle. */
  private double[] places(double[] durations) {
    double[] on = new double[shape.pulses()];
    for (int k = 0; k < on.length; k++) {
      on[k] = shape.on(k, durations);
    }
    return on;
  }

  private double at(int pulse, double phase, double cycle, double[] durations) {
    int turn = Math.floorDiv(pulse, shape.pulses());
    return phase + turn * cycle + shape.on(pulse - turn * shape.pulses(), durations);
  }

  /** The pulse that each blink is given to, one blink one pulse, or {@link #NONE}. */
  private int[] given(double phase, double cycle, double[] durations, double reach) {
    int[] given = new int[starts.length];
    Arrays.fill(given, NONE);
    int pulses = shape.pulses();
    double[] on = places(durations);
    for (int i = 0; i < starts.length; i++) {
      int turn = (int) Math.floor((starts[i] - phase) / cycle);
      double nearest = reach;
      double since = starts[i] - phase - turn * cycle;
      for (int pulse = -1; pulse <= pulses; pulse++) {
        int place = pulse < 0 ? pulses - 1 : pulse == pulses ? 0 : pulse;
        double shift = pulse < 0 ? -cycle : pulse == pulses ? cycle : 0;
        double off = Math.abs(since - shift - on[place]);
        if (off < nearest && fits(i, place)) {
          nearest = off;
          given[i] = turn * pulses + pulse;
        }
      }
      for (int k = i - 1; given[i] != NONE && k >= 0 && k >= i - 3; k--) {
        if (given[k] == given[i]) {
          double other = Math.abs(starts[k] - at(given[k], phase, cycle, durations));
          given[other <= nearest ? i : k] = NONE;
        }
      }
    }
    return given;
  }

  /** One row of the regression for each blink that has a pulse. */
  private List<double[]> rows(int[] given) {
    List<double[]> rows = new ArrayList<>();
    for (int pulse : given) {
      if (pulse != NONE) {
        int turn = Math.floorDiv(pulse, shape.pulses());
        double[] row = new double[2 + shape.durations()];
        row[0] = 1;
        row[1] = turn;
        double[] features = shape.features()[pulse - turn * shape.pulses()];
        System.arraycopy(features, 0, row, 2, features.length);
        rows.add(row);
      }
    }
    return rows;
  }

  private Values refined(Values values, double widest) {
    double least = shape.leastStep(values.durations(), values.cycle());
    double reach = Math.min(widest, REACH_OF_STEP * least);
    int[] given = given(values.phase(), values.cycle(), values.durations(), 2.5 * reach);
    List<Double> times = new ArrayList<>();
    for (int i = 0; i < given.length; i++) {
      if (given[i] != NONE) {
        times.add(starts[i]);
      }
    }
    double[] solved = LeastSquares.solve(rows(given), times);
    double[] durations =
        solved.length == 0 ? values.durations() : Arrays.copyOfRange(solved, 2, solved.length);
    double phase = solved.length == 0 ? values.phase() : solved[0];
    double cycle = solved.length == 0 ? values.cycle() : solved[1];
    boolean sound = cycle > shape.on(shape.pulses() - 1, durations) + 0.02 && cycle > 0.05;
    for (double duration : durations) {
      sound &= duration > 0.02;
    }
    return sound
        ? scored(phase, cycle, durations, reach)
        : scored(values.phase(), values.cycle(), values.durations(), reach);
  }

  /** The train of some values; empty if the blinks that fit do not determine them. */
  private Optional<Train> train(Values values) {
    int[] given =
        given(values.phase(), values.cycle(), values.durations(), 3 * REACH[REACH.length - 1]);
    List<double[]> all = rows(given);
    List<double[]> two = new ArrayList<>();
    for (int pulse : given) {
      if (pulse != NONE) {
        two.add(new double[] {1, at(pulse, 0, values.cycle(), values.durations())});
      }
    }
    double logAll = LeastSquares.logDeterminant(all);
    double logTwo = LeastSquares.logDeterminant(two);
    if (Double.isNaN(logAll) || Double.isNaN(logTwo)) {
      return Optional.empty();
    }
    int durations = shape.durations();
    double volume =
        0.5 * (durations * Math.log(2 * Math.PI) + logTwo - logAll) - Math.log(values.cycle());
    double logWeight =
        shape.logPrior(values.durations(), values.cycle(), seen)
            + Math.log(values.cycle() * 2 * STRETCH)
            + volume
            + shape.lengthsTaken(seen) * SeenLengths.LOG_SHARE;
    return Optional.of(
        new Train(
                places(values.durations()),
                shape.lengths(seen),
                0,
                values.cycle(),
                1 - STRETCH,
                1 + STRETCH,
                logWeight)
            .measured()
            .fitted(durations));
  }
}

package lampwise.decode;

import java.util.List;
import java.util.stream.IntStream;

/** Rehearsals of two rhythms, judged by who supposes some settings of the noise. */
final class Bout {
  /** This part of the length that is named is to be too short. */
  static final double SHORT = 0.7;

  /** Recordings of each state at the most, and how long all are together then, seconds. */
  private static final int MANY = 2000;

  private static final double TOGETHER_SECONDS = 60.0 * MANY;

  /** However long they are, so many at the most, and in any case so many at the least. */
  private static final int SEVERAL = 1000;

  private static final int SOME = 200;

  /** So many deviations show that more need not be looked at. */
  private static final double CLEAR = 2;

  /** A setting that adds so much less than others (natural logarithm) is not looked at closely. */
  private static final double NEGLIGIBLE = 8;

  /** What no chain of a fold reaches may be reached by the sum of as many as a fold has. */
  private static final double SLACK = 6;

  /** A recording that fits both this well alike (natural logarithm) does not tell them apart. */
  private static final double ALIKE = 0.05;

  private final List<Train> one;
  private final List<Train> two;
  private final Rehearsal rehearsal;
  private final boolean triggered;
  private final List<Timing> supposed;

  /** How many settings those are. */
  private final int settings;

  /** Logarithm of how common the commonest of them is. */
  private final double mostLogWeight;

  /**
   * Prepares.
   *
   * @param one what the lamp may do in one of the states; nothing if it is dark
   * @param two the same in the other
   * @param watching how is recorded
   * @param triggered whether each recording begins with what makes the lamp show
   * @param supposed the settings that the judge thinks possible
   */
  Bout(
      List<Train> one,
      List<Train> two,
      Watching watching,
      boolean triggered,
      List<Noise> supposed) {
    this.one = one;
    this.two = two;
    this.rehearsal = new Rehearsal(watching, triggered);
    this.triggered = triggered;
    // Those that are like the true ones first: beside them others soon matter little.
    this.supposed = Timing.of(supposed.stream().sorted(Noise.likeFirst(watching.noise())).toList());
    this.settings = supposed.size();
    this.mostLogWeight = Math.log(supposed.stream().mapToDouble(Noise::weight).max().orElseThrow());
  }

  /** How many recordings of a length are looked at where it is not clear before. */
  private static int many(double seconds) {
    return (int) Math.max(SEVERAL, Math.min(MANY, TOGETHER_SECONDS / seconds));
  }

  /** Whether no more than some recordings in a hundred are taken for the other's. */
  boolean isTold(double seconds) {
    int wrong = 0;
    double expected = 0;
    for (int i = 0; i < many(seconds); i++) {
      wrong += wrong(i, seconds);
      expected += 2 * (1 - RecordingPlan.SURE);
      if (i >= SOME && Math.abs(wrong - expected) > CLEAR * Math.sqrt(expected) + 1) {
        break;
      }
    }
    return wrong <= expected;
  }

  /**
   * Whether it tells more than is asked by at least as much as a part of it tells less: the product
   * of the two shares of errors is at most the square of what may be.
   */
  boolean isAmple(double seconds) {
    double whole = 0.5;
    double part = 0.5;
    double expected = 0.5;
    for (int i = 0; i < many(seconds); i++) {
      whole += wrong(i, seconds);
      part += wrong(i, SHORT * seconds);
      expected += 2 * (1 - RecordingPlan.SURE);
      double ratio = Math.log(whole * part / (expected * expected));
      if (i >= SOME && Math.abs(ratio) > CLEAR * Math.sqrt(1 / whole + 1 / part)) {
        break;
      }
    }
    return whole * part <= expected * expected;
  }

  /** Whether none of so many recordings of each is taken for the other's. */
  boolean areTold(double seconds, int count) {
    return IntStream.range(0, count).allMatch(i -> wrong(i, seconds) == 0);
  }

  /** How many of the two recordings of a number are taken for the other's. */
  private int wrong(int number, double seconds) {
    boolean first = isRight(rehearsal.of(one, number, seconds), one, two);
    boolean second = isRight(rehearsal.of(two, number, seconds), two, one);
    return (first ? 0 : 1) + (second ? 0 : 1);
  }

  private boolean isRight(Evidence evidence, List<Train> truth, List<Train> other) {
    double log = log(truth, evidence, Double.NEGATIVE_INFINITY);
    return log > log(other, evidence, log) + ALIKE;
  }

  /**
   * Logarithm of the likelihood, averaged over the settings but for a factor.
   *
   * @param enough what lies below this need not be known
   */
  private double log(List<Train> trains, Evidence evidence, double enough) {
    double least = enough - SLACK - Math.log(settings * Math.max(1, trains.size()));
    double sum = Double.NEGATIVE_INFINITY;
    for (Timing timing : supposed) {
      if (trains.isEmpty()) {
        sum = Gauss.logAdd(sum, logSum(timing, timing.strays(evidence)));
      }
      for (Train train : trains) {
        double matters = Math.max(least, sum - NEGLIGIBLE) - mostLogWeight - train.logWeight();
        Floor floor = new Floor(matters, 0, new Front());
        double[] logs = Fit.logLikelihoods(train, evidence, timing, triggered, floor);
        sum = Gauss.logAdd(sum, train.logWeight() + logSum(timing, logs));
      }
    }
    return sum;
  }

  private static double logSum(Timing timing, double[] logs) {
    double sum = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < logs.length; s++) {
      sum = Gauss.logAdd(sum, Math.log(timing.setting(s).weight()) + logs[s]);
    }
    return sum;
  }
}

package lampwise.decode;

import java.util.Arrays;
import java.util.List;

/** The likelihood of a stretch of a recording in which a lamp may show one pulse train. */
final class Fit {
  /** A marked target or event is followed by what it sets off within this time. */
  static final double TRIGGER_SECONDS = 3;

  /** How often something unmarked sets off a rhythm that shows once, per second. */
  private static final double UNMARKED_RATE = 1 / 60.0;

  /** Chance that a rhythm's prelude was over before the window began, if nothing was marked. */
  private static final double PRELUDE_OVER = 0.5;

  private Fit() {}

  /**
   * Logarithm of the likelihood.
   *
   * @param triggered whether the stretch begins with the target or event that makes the lamp show
   */
  static double logLikelihood(Train train, Evidence evidence, Noise noise, boolean triggered) {
    double strays = Chain.strays(evidence, noise);
    double from = evidence.window().fromSeconds();
    double to = evidence.window().toSeconds();
    if (!train.repeats()) {
      return strays + shows(train, evidence, noise, triggered);
    }
    if (train.prelude() == 0) {
      return strays + repeating(train, evidence, noise);
    }
    if (triggered) {
      return strays + starting(train, evidence, noise, from, from + TRIGGER_SECONDS);
    }
    double over = repeating(train.withoutPrelude(), evidence, noise);
    double whole = train.on(train.prelude()) + train.cycleSeconds();
    double within = starting(train, evidence, noise, from - whole, Math.max(to, from + 1));
    return strays
        + Gauss.logAdd(Math.log(PRELUDE_OVER) + over, Math.log(1 - PRELUDE_OVER) + within);
  }

  private static double repeating(Train train, Evidence evidence, Noise noise) {
    double sum = 0;
    for (Evidence piece : evidence.pieces()) {
      sum += unbroken(train, piece, noise);
    }
    return sum;
  }

  private static double unbroken(Train train, Evidence evidence, Noise noise) {
    Chain chain =
        new Chain(train, evidence, noise, -Math.log(train.cycleSeconds()), Double.NaN, Double.NaN);
    return sum(chain, chain.chains());
  }

  private static double starting(
      Train train, Evidence evidence, Noise noise, double from, double to) {
    List<Evidence> pieces = evidence.pieces();
    if (pieces.isEmpty()) {
      return 0;
    }
    Chain chain = new Chain(train, pieces.get(0), noise, -Math.log(to - from), from, to);
    double sum = sum(chain, chain.chains());
    for (Evidence later : pieces.subList(1, pieces.size())) {
      sum += unbroken(train.withoutPrelude(), later, noise);
    }
    return sum;
  }

  private static double sum(Chain chain, List<Link> links) {
    double sum = chain.logNothing();
    for (Link link : links) {
      sum = Gauss.logAdd(sum, link.weight());
    }
    return sum;
  }

  /**
   * A train that shows once after its trigger, and perhaps again later: a forward sum over the
   * blinks, each of which is a stray or begins a show.
   */
  private static double shows(Train train, Evidence evidence, Noise noise, boolean triggered) {
    int count = evidence.notes().size();
    double from = evidence.window().fromSeconds();
    double to = evidence.window().toSeconds();
    double[] before = new double[count + 1];
    double[] after = new double[count + 1];
    Arrays.fill(before, Double.NEGATIVE_INFINITY);
    Arrays.fill(after, Double.NEGATIVE_INFINITY);
    before[0] = 0;
    double reach = train.on(train.last()) * train.high() + TRIGGER_SECONDS;
    Chain marked =
        new Chain(train, evidence, noise, -Math.log(TRIGGER_SECONDS), from, from + TRIGGER_SECONDS);
    Chain unmarked = new Chain(train, evidence, noise, Math.log(UNMARKED_RATE), from - reach, to);
    for (int i = 0; i < count; i++) {
      before[i + 1] = Gauss.logAdd(before[i + 1], before[i]);
      after[i + 1] = Gauss.logAdd(after[i + 1], after[i]);
      if (triggered && before[i] > Double.NEGATIVE_INFINITY) {
        add(marked.chains(i, true), before[i], after);
      }
      List<Link> links = unmarked.chains(i, true);
      add(links, before[i], before);
      add(links, after[i], after);
    }
    if (!triggered) {
      return before[count];
    }
    return Gauss.logAdd(after[count], before[count] + marked.logNothing());
  }

  private static void add(List<Link> links, double log, double[] sums) {
    for (Link link : links) {
      sums[link.note + 1] = Gauss.logAdd(sums[link.note + 1], log + link.weight());
    }
  }
}

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
   * Logarithms of the likelihood, for each setting of a timing.
   *
   * @param triggered whether the stretch begins with the target or event that makes the lamp show
   * @param floor the least that matters
   */
  static double[] logLikelihoods(
      Train train, Evidence evidence, Timing timing, boolean triggered, Floor floor) {
    double[] strays = timing.strays(evidence);
    return sum(strays, beside(train, evidence, timing, triggered, floor));
  }

  /** The same for one setting. */
  static double logLikelihood(
      Train train, Evidence evidence, Noise noise, boolean triggered, Floor floor) {
    return logLikelihoods(train, evidence, Timing.of(noise), triggered, floor)[0];
  }

  /** The same beside the likelihood of strays alone. */
  private static double[] beside(
      Train train, Evidence evidence, Timing timing, boolean triggered, Floor floor) {
    double from = evidence.window().fromSeconds();
    double to = evidence.window().toSeconds();
    if (!train.repeats()) {
      return shows(train, evidence, timing, triggered);
    }
    if (train.prelude() == 0) {
      return repeating(train, evidence, timing, floor);
    }
    if (triggered) {
      return starting(train, evidence, timing, from, from + TRIGGER_SECONDS);
    }
    double[] over = repeating(train.withoutPrelude(), evidence, timing, Floor.none());
    double whole = train.on(train.prelude()) + train.cycleSeconds();
    double[] within = starting(train, evidence, timing, from - whole, Math.max(to, from + 1));
    double[] logs = new double[timing.size()];
    for (int s = 0; s < logs.length; s++) {
      logs[s] =
          Gauss.logAdd(Math.log(PRELUDE_OVER) + over[s], Math.log(1 - PRELUDE_OVER) + within[s]);
    }
    return logs;
  }

  private static double[] repeating(Train train, Evidence evidence, Timing timing, Floor floor) {
    List<Evidence> pieces = evidence.pieces();
    if (pieces.size() == 1) {
      return unbroken(train, pieces.get(0), timing, floor);
    }
    double[] sums = timing.all(0);
    for (Evidence piece : pieces) {
      sums = sum(sums, unbroken(train, piece, timing, Floor.none()));
    }
    return sums;
  }

  private static double[] unbroken(Train train, Evidence evidence, Timing timing, Floor floor) {
    Chain chain =
        new Chain(train, evidence, timing, -Math.log(train.cycleSeconds()), Double.NaN, Double.NaN);
    return sum(chain, timing, floor);
  }

  private static double[] starting(
      Train train, Evidence evidence, Timing timing, double from, double to) {
    List<Evidence> pieces = evidence.pieces();
    if (pieces.isEmpty()) {
      return timing.all(0);
    }
    Chain chain = new Chain(train, pieces.get(0), timing, -Math.log(to - from), from, to);
    double[] sums = sum(chain, timing, Floor.none());
    for (Evidence later : pieces.subList(1, pieces.size())) {
      sums = sum(sums, unbroken(train.withoutPrelude(), later, timing, Floor.none()));
    }
    return sums;
  }

  private static double[] sum(double[] a, double[] b) {
    double[] sums = a.clone();
    for (int s = 0; s < sums.length; s++) {
      sums[s] += b[s];
    }
    return sums;
  }

  private static double[] sum(Chain chain, Timing timing, Floor floor) {
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    for (Link link : chain.chains(floor)) {
      for (int s = 0; s < sums.length; s++) {
        sums[s] = Gauss.logAdd(sums[s], link.weight(s));
      }
    }
    double[] nothing = chain.logNothing(floor, sums);
    for (int s = 0; s < sums.length; s++) {
      sums[s] = Gauss.logAdd(sums[s], nothing[s]);
    }
    return sums;
  }

  /**
   * A train that shows once after its trigger, and perhaps again later: a forward sum over the
   * blinks, each of which is a stray or begins a show.
   */
  private static double[] shows(Train train, Evidence evidence, Timing timing, boolean triggered) {
    int count = evidence.notes().size();
    int settings = timing.size();
    double from = evidence.window().fromSeconds();
    double to = evidence.window().toSeconds();
    double[][] before = new double[count + 1][settings];
    double[][] after = new double[count + 1][settings];
    for (int i = 0; i <= count; i++) {
      Arrays.fill(before[i], i == 0 ? 0 : Double.NEGATIVE_INFINITY);
      Arrays.fill(after[i], Double.NEGATIVE_INFINITY);
    }
    double reach = train.on(train.last()) * train.high() + TRIGGER_SECONDS;
    double logMarked = -Math.log(TRIGGER_SECONDS);
    Chain marked = new Chain(train, evidence, timing, logMarked, from, from + TRIGGER_SECONDS);
    Chain unmarked = new Chain(train, evidence, timing, Math.log(UNMARKED_RATE), from - reach, to);
    for (int i = 0; i < count; i++) {
      for (int s = 0; s < settings; s++) {
        before[i + 1][s] = Gauss.logAdd(before[i + 1][s], before[i][s]);
        after[i + 1][s] = Gauss.logAdd(after[i + 1][s], after[i][s]);
      }
      if (triggered) {
        add(marked.chainsAt(i), before[i], after);
      }
      List<Link> links = unmarked.chainsAt(i);
      add(links, before[i], before);
      add(links, after[i], after);
    }
    if (!triggered) {
      return before[count];
    }
    double[] logs = after[count];
    double[] nothing = marked.logNothing();
    for (int s = 0; s < settings; s++) {
      logs[s] = Gauss.logAdd(logs[s], before[count][s] + nothing[s]);
    }
    return logs;
  }

  private static void add(List<Link> links, double[] logs, double[][] sums) {
    for (Link link : links) {
      double[] sum = sums[link.note + 1];
      for (int s = 0; s < sum.length; s++) {
        sum[s] = Gauss.logAdd(sum[s], logs[s] + link.weight(s));
      }
    }
  }
}

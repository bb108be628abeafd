package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Folds the blinks of a recording on a pulse train: the likelihood of the blinks, summed over every
 * way to give pulses to blinks in order, one blink one pulse, and over phase and stretch.
 *
 * <p>A link gives one blink to one pulse. Along a chain of links the times are a straight line in
 * the train's times (phase and slope) with normal errors, so that phase and stretch are summed in
 * closed form: phase uniform, stretch uniform between its borders. Blinks without a link are
 * strays, pulses without one are misses. This is multiple hypothesis tracking with Poisson clutter
 * (Reid 1979), with unlikely chains dropped.
 */
final class Chain {
  /**
   * Where nothing is watched no pulse is missed, and a fast train could be followed for ever; this
   * many pulses are.
   */
  private static final int MOST_SCANNED = 1000;

  /** How many chains are carried on. */
  private static final int BEAM = 24;

  /** Chains this much below the best one (natural logarithm) are dropped. */
  private static final double DROP = 12;

  /** A chain that begins or goes on this much below the best one so far is not looked at. */
  private static final double LATE_DROP = 14;

  /** Pulses are looked for this many standard deviations around a blink. */
  private static final double GATE = 4.5;

  /**
   * The errors of noted lengths are mostly the same for all blinks of a recording (the observer's
   * release, the sensor's averaging), so that together they count as this many.
   */
  private static final double LENGTHS_COUNTED = 8;

  /** Strays last up to this long. */
  private static final double STRAY_SECONDS = 2;

  /** Standard deviation of a value that lies evenly between two borders one apart. */
  private static final double EVEN_SPREAD = 1 / Math.sqrt(12);

  /** A chance that a blink's noted length is simply wrong. */
  private static final double WRONG_LENGTH = 0.02;

  /** The most that a fitting length can add to it. */
  private static final double MOST_LENGTH = 6;

  /** Chains whose lines are no farther apart than this, in standard deviations, go on as one. */
  private static final double SAME_LINE = 0.7;

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private final Train train;
  private final Evidence evidence;
  private final Noise noise;
  private final double logStart;
  private final double startFrom;
  private final double startTo;
  private final double logMatch;
  private final double logMiss;
  private final double lengthShare;
  private final boolean lengthsNoted;

  /** What was worked out of {@link #lengthRatio}, by blink and pulse of the cycle; else NaN. */
  private final double[] lengthRatios;

  /** Logarithm of the density of a time without an error. */
  private final double logHighest;

  /** The most that one more blink can add to the logarithm of a chain's weight. */
  private final double mostPerNote;

  /**
   * Prepares a fold.
   *
   * @param logStart logarithm of the density of the train's start
   * @param startFrom where the start can lie, for a train that has one
   * @param startTo where it can lie at the latest
   */
  Chain(
      Train train,
      Evidence evidence,
      Noise noise,
      double logStart,
      double startFrom,
      double startTo) {
    this.train = train;
    this.evidence = evidence;
    this.noise = noise;
    this.logStart = logStart;
    this.startFrom = startFrom;
    this.startTo = startTo;
    this.logMatch = Math.log((1 - noise.miss()) / noise.strays());
    this.logMiss = noise.logMissed();
    this.lengthShare = Math.min(1, LENGTHS_COUNTED / Math.max(1, evidence.notes().size()));
    this.lengthsNoted = evidence.hasLengths();
    this.lengthRatios = new double[lengthsNoted ? evidence.notes().size() * train.size() : 0];
    Arrays.fill(lengthRatios, Double.NaN);
    double lengths = lengthsNoted ? MOST_LENGTH * lengthShare : 0;
    this.logHighest = -Math.log(noise.sd() * ROOT_TWO_PI);
    this.mostPerNote = Math.max(0, logMatch + logHighest) + lengths;
  }

  /** Logarithm of the likelihood of blinks that are all strays. */
  static double strays(Evidence evidence, Noise noise) {
    double sum = -noise.strays() * evidence.watchedSeconds();
    for (Evidence.Note note : evidence.notes()) {
      sum += Math.log(noise.strays());
      if (note.hasOff() && !note.onCut() && !note.offCut()) {
        sum += logAnyLength(note.length());
      }
    }
    return sum;
  }

  /**
   * Density of a stray's length: even in its logarithm up to two seconds, then soon rare, for a
   * reflection or a wrong tap does not last.
   */
  private static double logAnyLength(double seconds) {
    double log = -Math.log(8 * Math.max(seconds, 0.02));
    return seconds > STRAY_SECONDS ? log - 3 * Math.log(seconds / STRAY_SECONDS) : log;
  }

  /** Chains with their finished weights, the empty chain left out. */
  List<Link> chains() {
    return chains(0, false, Double.NEGATIVE_INFINITY, false);
  }

  /**
   * The same, or none where they cannot reach a weight.
   *
   * @param floor logarithm of a weight that does not matter
   */
  List<Link> chains(double floor) {
    return chains(0, false, floor, true);
  }

  List<Link> chains(int from, boolean onlyThere) {
    return chains(from, onlyThere, Double.NEGATIVE_INFINITY, true);
  }

  /**
   * Chains whose first link is at {@code from} or later.
   *
   * @param onlyThere whether the first link must be at {@code from} itself
   * @param floor logarithm of a weight that does not matter
   */
  private List<Link> chains(int from, boolean onlyThere, double floor, boolean merged) {
    List<Link> active = new ArrayList<>(5 * BEAM);
    double end =
        onlyThere && !train.repeats()
            ? evidence.notes().get(from).on()
                + train.on(train.last()) * train.high()
                + 2 * GATE * noise.sd()
            : Double.POSITIVE_INFINITY;
    for (int i = from; i < evidence.notes().size(); i++) {
      if (evidence.notes().get(i).on() > end) {
        break;
      }
      double late = best(active) - LATE_DROP;
      List<Link> grown = new ArrayList<>(4 * BEAM);
      for (Link link : active) {
        extend(link, i, late, grown);
      }
      if (i == from || !onlyThere) {
        for (int pulse = anchorFrom(); pulse <= anchorTo(); pulse++) {
          anchor(i, pulse, late, grown);
        }
      } else if (active.isEmpty()) {
        break;
      }
      active.addAll(grown);
      prune(active, merged);
      if (!canReach(floor, active, evidence.notes().size() - 1 - i)) {
        return List.of();
      }
    }
    for (Link link : active) {
      link.score =
          link.logLinks
              + link.logLine
              + (link.line.points() > 2 ? head(link) : link.logHead)
              + tail(link);
    }
    return active;
  }

  /** Whether the chains so far, or one that begins later, may yet weigh as much as this. */
  private boolean canReach(double floor, List<Link> active, int notesLeft) {
    return Math.max(Math.max(0, logStart), best(active)) + notesLeft * mostPerNote > floor;
  }

  private static double best(List<Link> links) {
    double best = Double.NEGATIVE_INFINITY;
    for (Link link : links) {
      best = Math.max(best, link.score);
    }
    return best;
  }

  private int anchorFrom() {
    return Math.max(0, train.first());
  }

  private int anchorTo() {
    return train.prelude() > 0 && train.repeats()
        ? train.size() + 2 * train.perCycle() - 1
        : train.size() - 1;
  }

  /**
   * Drops what is unlikely.
   *
   * @param merged whether chains that give the last blink to the same pulse, and differ only in
   *     what was long ago, go on as the likeliest of them with the weight of all
   */
  private void prune(List<Link> links, boolean merged) {
    double best = Double.NEGATIVE_INFINITY;
    for (Link link : links) {
      link.score = link.logLinks + link.logLine + link.logHead + link.logSkipped;
      best = Math.max(best, link.score);
    }
    double dropped = best - DROP;
    int kept = 0;
    for (Link link : links) {
      if (link.score > dropped && !(merged && isMerged(link, links, kept))) {
        links.set(kept++, link);
      }
    }
    links.subList(kept, links.size()).clear();
    if (kept > BEAM) {
      double[] scores = new double[kept];
      for (int i = 0; i < kept; i++) {
        scores[i] = links.get(i).score;
      }
      Arrays.sort(scores);
      double least = scores[kept - BEAM];
      links.removeIf(link -> link.score < least);
    }
  }

  /** Merges a chain with the one of the first few that it goes on with, if there is one. */
  private boolean isMerged(Link link, List<Link> links, int few) {
    double reach = SAME_LINE * noise.sd();
    for (int i = few - 1; i >= 0; i--) {
      Link other = links.get(i);
      if (other.note == link.note
          && other.pulse == link.pulse
          && other.line.isNear(link.line, train.on(link.pulse), reach)) {
        links.set(i, link.with(other));
        return true;
      }
    }
    return false;
  }

  private void anchor(int index, int pulse, double least, List<Link> grown) {
    Evidence.Note note = evidence.notes().get(index);
    double half = note.onCut() ? Math.log(0.5) : 0;
    double length = half + lengthRatio(index, pulse);
    anchorAt(index, pulse, began(note, pulse), train.on(pulse), length, least, grown);
    if (endsKnown(note, pulse)) {
      anchorAt(index, pulse, ended(note, pulse), train.end(pulse), half, least, grown);
    }
  }

  /** When a blink began, less what it was noted late as the first of a burst. */
  double began(Evidence.Note note, int pulse) {
    boolean late = noise.firstLate() > 0 && train.opensBurst(pulse);
    return late ? note.on() - noise.firstLate() : note.on();
  }

  /** When a blink ended, less what of its length does not stretch. */
  private double ended(Evidence.Note note, int pulse) {
    return note.off() - noise.late() - train.unstretched(pulse);
  }

  /** Whether a blink that began before the window can be placed by its end. */
  private boolean endsKnown(Evidence.Note note, int pulse) {
    return note.onCut()
        && note.hasOff()
        && !note.offCut()
        && (!train.repeats() || train.length(pulse) < train.cycleSeconds())
        && longest(pulse) + 3 * noise.lengthSd(train.length(pulse)) >= note.length();
  }

  private double longest(int pulse) {
    return Math.max(train.unstretched(pulse), train.length(pulse) * Math.min(train.high(), 1.5));
  }

  private void anchorAt(
      int index,
      int pulse,
      double time,
      double inTrain,
      double logLength,
      double least,
      List<Link> grown) {
    if (logStart + logMatch + logLength < least) {
      return;
    }
    if (train.first() == 0) {
      double slack = GATE * noise.sd() + 1e-9;
      double latest = time - train.low() * inTrain + slack;
      double earliest = time - train.high() * inTrain - slack;
      if (latest < startFrom || earliest > startTo) {
        return;
      }
    }
    Link link = new Link(Optional.empty(), index, pulse, Line.through(time, inTrain));
    link.logLinks = logMatch + logLength;
    link.logLine = logStart;
    link.scanned = pulse + 1;
    link.logHead = head(link);
    if (link.logHead > -60) {
      grown.add(link);
    }
  }

  private void extend(Link link, int index, double least, List<Link> grown) {
    Evidence.Note note = evidence.notes().get(index);
    double margin = GATE * noise.sd() * Math.sqrt(1 + 1.0 / link.line.points());
    double[] slope = slopes(link);
    double skipped = link.logSkipped;
    double time = note.on() - noise.firstLate();
    double until = endsTime(note);
    int last = Math.min(train.last(), link.scanned + MOST_SCANNED);
    for (int pulse = link.scanned; pulse <= last; pulse++) {
      double ahead = train.on(pulse) - link.line.meanTrain();
      double low = link.line.meanTime() + ahead * (ahead > 0 ? slope[0] : slope[1]) - margin;
      double high = link.line.meanTime() + ahead * (ahead > 0 ? slope[1] : slope[0]) + margin;
      if (low > until) {
        break;
      }
      if (high >= time || until > time) {
        double half = note.onCut() ? Math.log(0.5) : 0;
        double length = lengthRatio(index, pulse);
        if (high >= time) {
          double began = began(note, pulse);
          grow(link, index, pulse, began, train.on(pulse), half + length, skipped, least, grown);
        }
        if (endsKnown(note, pulse)) {
          double end = train.end(pulse);
          grow(link, index, pulse, ended(note, pulse), end, half, skipped, least, grown);
        }
      }
      skipped += missed(link, slope, ahead);
      if (high < time && pulse == link.scanned) {
        link.scanned++;
        link.logSkipped = skipped;
      }
      if (skipped < link.logSkipped - 60 || skipped < -200) {
        break;
      }
    }
  }

  private double endsTime(Evidence.Note note) {
    return note.onCut() && note.hasOff() ? note.off() : note.on();
  }

  /** Where the slope of a chain can still lie. */
  private double[] slopes(Link link) {
    return link.line.slopes(train, GATE * noise.sd());
  }

  private void grow(
      Link link,
      int index,
      int pulse,
      double time,
      double inTrain,
      double logLength,
      double skipped,
      double least,
      List<Link> grown) {
    double logLinks = link.logLinks + skipped + logMatch + logLength;
    if (logLinks + link.logLine + link.logHead + logHighest < least) {
      return;
    }
    Line line = link.line.and(time, inTrain);
    double logLine = logStart + line.logDensity(train, noise.sd());
    if (logLine - link.logLine < -0.5 * GATE * GATE - 6
        || logLinks + logLine + link.logHead < least) {
      return;
    }
    Link next = new Link(Optional.of(link), index, pulse, line);
    next.logLine = logLine;
    next.logLinks = logLinks;
    next.logHead = link.logHead;
    next.scanned = pulse + 1;
    grown.add(next);
  }

  /** Logarithm of the chance that a pulse about this time left no blink. */
  private double missed(double time, double sd) {
    return noise.logMissed(evidence.watched(time, sd), logMiss);
  }

  /** Logarithm of the chance that no pulse before the chain left a blink. */
  private double head(Link link) {
    Link first = link;
    while (first.before.isPresent()) {
      first = first.before.get();
    }
    double sum = 0;
    double[] slope = slopes(link);
    int least = Math.max(train.first(), first.pulse - MOST_SCANNED);
    for (int pulse = first.pulse - 1; pulse >= least && sum > -60; pulse--) {
      double back = train.on(pulse) - link.line.meanTrain();
      double latest = link.line.meanTime() + slope[back > 0 ? 1 : 0] * back;
      if (latest + GATE * noise.sd() < evidence.window().fromSeconds()) {
        break;
      }
      sum += missed(link, slope, back);
    }
    return sum;
  }

  /** Logarithm of the chance that no pulse after the chain left a blink. */
  private double tail(Link link) {
    double sum = link.logSkipped;
    double[] slope = slopes(link);
    int last = Math.min(train.last(), link.scanned + MOST_SCANNED);
    for (int pulse = link.scanned; pulse <= last && sum > -200; pulse++) {
      double ahead = train.on(pulse) - link.line.meanTrain();
      double earliest = link.line.meanTime() + slope[ahead > 0 ? 0 : 1] * ahead;
      if (earliest - GATE * noise.sd() > evidence.window().toSeconds()) {
        break;
      }
      sum += missed(link, slope, ahead);
    }
    return sum;
  }

  /** The same for a pulse this far from the middle of a chain, whose slope is not known exactly. */
  private double missed(Link link, double[] slope, double away) {
    double time = link.line.meanTime() + 0.5 * (slope[0] + slope[1]) * away;
    double sd = noise.sd() + EVEN_SPREAD * (slope[1] - slope[0]) * Math.abs(away);
    return missed(time, sd);
  }

  /** Logarithm of the ratio of the densities of a blink's noted length: this pulse to a stray. */
  double lengthRatio(int index, int pulse) {
    if (!lengthsNoted) {
      return 0;
    }
    int at = index * train.size() + train.index(pulse);
    if (Double.isNaN(lengthRatios[at])) {
      lengthRatios[at] = ratio(evidence.notes().get(index), train.length(pulse));
    }
    return lengthRatios[at];
  }

  private double ratio(Evidence.Note note, double length) {
    if (Double.isNaN(length) || !note.hasOff()) {
      return 0;
    }
    double sd = noise.lengthSd(length);
    if (note.onCut() || note.offCut()) {
      return note.length() > length + noise.late() + 3 * sd ? Math.log(WRONG_LENGTH) : 0;
    }
    double any = logAnyLength(note.length());
    double right = Gauss.logDensity(note.length() - noise.late() - length, sd);
    double ratio =
        Gauss.logAdd(Math.log1p(-WRONG_LENGTH) + right, Math.log(WRONG_LENGTH) + any) - any;
    return lengthShare * ratio;
  }

  /**
   * Logarithm of the chance that no pulse of the train was noted, averaged over a repeating train's
   * phase.
   */
  double logNothing() {
    double expected =
        train.repeats() && train.perCycle() > 0
            ? evidence.window().lengthSeconds() / train.cycleSeconds() * train.perCycle()
            : 1;
    int phases = expected > 20 ? 3 : 24;
    double stretch = 0.5 * (train.low() + train.high());
    double sum = Double.NEGATIVE_INFINITY;
    double from = evidence.window().fromSeconds();
    for (int i = 0; i < phases; i++) {
      double part = (i + 0.5) / phases;
      double start;
      int pulse;
      if (train.first() == 0) {
        start = startFrom + part * (startTo - startFrom);
        pulse = 0;
      } else {
        start = from + part * train.cycleSeconds() * stretch;
        pulse = -train.perCycle();
      }
      double log = 0;
      int last = Math.min(train.last(), pulse + MOST_SCANNED);
      for (; pulse <= last && log > -80; pulse++) {
        double time = start + stretch * train.on(pulse);
        if (time > evidence.window().toSeconds()) {
          break;
        }
        log += missed(time, noise.sd());
      }
      sum = Gauss.logAdd(sum, log - Math.log(phases));
    }
    return sum;
  }
}

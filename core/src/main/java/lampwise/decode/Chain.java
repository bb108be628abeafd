package lampwise.decode;

import java.util.List;
import java.util.Optional;

/**
 * Folds the blinks of a recording on a pulse train: the likelihood of the blinks, summed over every
 * way to give pulses to blinks in order, one blink one pulse, and over phase and stretch; for all
 * settings of a timing at once.
 *
 * <p>A link gives one blink to one pulse. Along a chain of links the times are a straight line in
 * the train's times (phase and slope) with normal errors, so that phase and stretch are summed in
 * closed form: phase uniform, stretch uniform between its borders. Blinks without a link are
 * strays, pulses without one are misses. This is multiple hypothesis tracking with Poisson clutter
 * (Reid 1979), with unlikely chains dropped. Settings that differ in misses and strays alone give
 * the same lines, and other weights to them.
 */
final class Chain {
  private static final double LOG_HALF = Math.log(0.5);

  /** A line that one more blink spoils by more than this is not drawn. */
  private static final double SPOILT = 0.5 * Density.GATE * Density.GATE + 6;

  /** So much below the weight of strays (natural logarithm) nothing is looked at further. */
  private static final double HOPELESS = -60;

  /** Beside chains of such a weight (natural logarithm) it adds nothing that all may be strays. */
  private static final double PLENTY = 16;

  private final Train train;
  private final Evidence evidence;
  private final Timing timing;
  private final double sd;
  private final double logStart;
  private final double startFrom;
  private final double startTo;
  private final Noted noted;
  private final Missed missed;
  private final Density density;
  private final double[] logMatch;
  private final double[] logStray;
  private final double[] strayRate;

  /** For each setting the logarithm of the likelihood of blinks that are all strays. */
  private final double[] allStrays;

  /** The most that one more blink can add to the logarithm of a chain's weight. */
  private final double[] mostPerNote;

  /** The same under the setting for which it is most. */
  private final double mostOfAll;

  /** Weights of the chain that is being extended, and of it with one more link. */
  private final double[] now;

  private final double[] with;

  private final double[] everything;

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
      Timing timing,
      double logStart,
      double startFrom,
      double startTo) {
    this.train = train;
    this.evidence = evidence;
    this.timing = timing;
    this.sd = timing.any().sd();
    this.logStart = logStart;
    this.startFrom = startFrom;
    this.startTo = startTo;
    this.noted = new Noted(train, evidence, timing.any());
    this.missed = new Missed(train, evidence, timing);
    this.density = new Density(train, sd);
    this.logMatch = new double[timing.size()];
    this.logStray = new double[timing.size()];
    this.strayRate = new double[timing.size()];
    this.allStrays = timing.strays(evidence);
    this.mostPerNote = new double[timing.size()];
    this.now = new double[timing.size()];
    this.with = new double[timing.size()];
    this.everything = timing.all(Double.NEGATIVE_INFINITY);
    double most = 0;
    for (int s = 0; s < logMatch.length; s++) {
      logMatch[s] = timing.setting(s).logMatch();
      strayRate[s] = timing.setting(s).strays();
      logStray[s] = Math.log(strayRate[s]);
      mostPerNote[s] = Math.max(0, logMatch[s] + density.logHighest()) + noted.mostLengthRatio();
      most = Math.max(most, mostPerNote[s]);
    }
    this.mostOfAll = most;
  }

  /** Chains with their finished weights and their way back, the empty chain left out. */
  List<Link> chains() {
    return chains(0, false, Floor.none(), false);
  }

  /**
   * Chains with their finished weights, or none where they cannot reach a weight.
   *
   * @param floor the least likelihood that matters
   */
  List<Link> chains(Floor floor) {
    return chains(0, false, floor, true);
  }

  /** Chains with their finished weights whose first link is at a blink. */
  List<Link> chainsAt(int from) {
    return chains(from, true, Floor.none(), true);
  }

  private List<Link> chains(int from, boolean onlyThere, Floor floor, boolean merged) {
    double[] floors = above(floor);
    double[] strays = new double[floors.length];
    double[] fronts = new double[evidence.notes().size()];
    Beam beam = new Beam(train, sd, merged, floors, mostPerNote);
    double end =
        onlyThere && !train.repeats()
            ? evidence.notes().get(from).on()
                + train.on(train.last()) * train.high()
                + 2 * Density.GATE * sd
            : Double.POSITIVE_INFINITY;
    int notes = evidence.notes().size();
    for (int i = from; i < notes && evidence.notes().get(i).on() <= end; i++) {
      straysUpTo(i, strays);
      beam.next(notes - 1 - i, floor.at(i), strays);
      for (int k = 0; k < beam.old(); k++) {
        extend(beam.link(k), i, beam, merged);
      }
      if (i == from || !onlyThere) {
        for (int pulse = anchorFrom(); pulse <= anchorTo(); pulse++) {
          anchor(i, pulse, beam);
        }
      } else if (beam.old() == 0) {
        break;
      }
      beam.prune();
      if (!beam.canReach(Math.max(0, logStart))) {
        return List.of();
      }
      fronts[i] = beam.front();
    }
    if (!onlyThere) {
      floor.front().offer(fronts, floor.logWeight());
    }
    beam.links().forEach(this::finish);
    return beam.links();
  }

  /** For each setting how far a likelihood that does not matter lies above that of strays alone. */
  private double[] above(Floor floor) {
    double[] above = new double[allStrays.length];
    for (int s = 0; s < above.length; s++) {
      above[s] = floor.log() - allStrays[s];
    }
    return above;
  }

  /** Logarithm of the likelihood of the blinks up to one as strays, but for their lengths. */
  private void straysUpTo(int note, double[] logs) {
    double seconds = evidence.notes().get(note).on() - evidence.window().fromSeconds();
    for (int s = 0; s < logs.length; s++) {
      logs[s] = (note + 1) * logStray[s] - strayRate[s] * seconds;
    }
  }

  /** Looks again at the pulses before a chain, now that its line is known, and at those after. */
  private void finish(Link link) {
    if (link.line.points() > 2) {
      for (int s = 0; s < link.logs.length; s++) {
        link.logs[s] -= link.heads[s];
      }
      missed.addBefore(link, link.logs, everything);
    }
    missed.addAfter(link, link.logs);
  }

  private int anchorFrom() {
    return Math.max(0, train.first());
  }

  private int anchorTo() {
    return train.prelude() > 0 && train.repeats()
        ? train.size() + 2 * train.perCycle() - 1
        : train.size() - 1;
  }

  private void anchor(int index, int pulse, Beam beam) {
    Evidence.Note note = evidence.notes().get(index);
    double half = note.onCut() ? LOG_HALF : 0;
    double length = half + noted.lengthRatio(index, pulse);
    double time = noted.began(note, pulse);
    double inTrain = train.on(pulse);
    if (noted.mayBeFirstSeen(note, pulse)) {
      double late = noted.beganLate(note);
      double first = Math.log(noted.noneSeenBefore(late, pulse));
      anchorAt(index, pulse, late, inTrain, length + first, beam);
      double others = Math.log1p(-noted.noneSeenBefore(time, pulse));
      anchorAt(index, pulse, time, inTrain, length + others, beam);
    } else {
      anchorAt(index, pulse, time, inTrain, length, beam);
    }
    if (noted.endsKnown(note, pulse)) {
      anchorAt(index, pulse, noted.ended(note, pulse), train.end(pulse), half, beam);
    }
  }

  private void anchorAt(
      int index, int pulse, double time, double inTrain, double logLength, Beam beam) {
    if (beam.isLow(logMatch, logStart + logLength)) {
      return;
    }
    if (train.first() == 0) {
      double slack = Density.GATE * sd + 1e-9;
      double latest = time - train.low() * inTrain + slack;
      double earliest = time - train.high() * inTrain - slack;
      if (latest < startFrom || earliest > startTo) {
        return;
      }
    }
    double[] logs = logMatch.clone();
    Link link = new Link(index, pulse, Line.through(time, inTrain), density, logStart, logs);
    beam.room(logs, logStart + logLength, with);
    missed.addBefore(link, link.heads, with);
    boolean hopeless = true;
    for (int s = 0; s < logs.length; s++) {
      logs[s] += logLength + link.heads[s];
      hopeless &= link.heads[s] < HOPELESS;
    }
    if (!hopeless && !beam.isLow(logs, logStart)) {
      beam.add(link);
    }
  }

  private void extend(Link link, int index, Beam beam, boolean merged) {
    Evidence.Note note = evidence.notes().get(index);
    Line line = link.line;
    double margin = Density.GATE * sd * Math.sqrt(1 + 1.0 / line.points());
    double time = note.on() - timing.any().firstLate();
    double until = note.onCut() && note.hasOff() ? note.off() : note.on();
    int last = Math.min(train.last(), link.scanned + Missed.MOST_PULSES);
    System.arraycopy(link.logs, 0, now, 0, now.length);
    for (int pulse = link.scanned; pulse <= last; pulse++) {
      double inTrain = train.on(pulse);
      double ahead = inTrain - line.meanTrain();
      double low = line.meanTime() + ahead * (ahead > 0 ? link.low : link.high) - margin;
      double high = line.meanTime() + ahead * (ahead > 0 ? link.high : link.low) + margin;
      if (low > until) {
        break;
      }
      if (high >= time || until > time) {
        double half = note.onCut() ? LOG_HALF : 0;
        if (high >= time) {
          double length = half + noted.lengthRatio(index, pulse);
          grow(link, index, pulse, noted.began(note, pulse), inTrain, length, beam, merged);
        }
        if (noted.endsKnown(note, pulse)) {
          double ended = noted.ended(note, pulse);
          grow(link, index, pulse, ended, train.end(pulse), half, beam, merged);
        }
      }
      missed.add(link, inTrain, now);
      if (high < time && pulse == link.scanned) {
        link.scanned++;
        System.arraycopy(now, 0, link.logs, 0, now.length);
      } else if (beam.isLow(now, link.logLine + mostOfAll)) {
        break;
      }
    }
  }

  private void grow(
      Link link,
      int index,
      int pulse,
      double time,
      double inTrain,
      double logLength,
      Beam beam,
      boolean merged) {
    for (int s = 0; s < with.length; s++) {
      with[s] = now[s] + logMatch[s] + logLength;
    }
    if (beam.isLow(with, link.logLine + density.logHighest())) {
      return;
    }
    Line line = link.line.and(time, inTrain);
    double logLine = logStart + density.log(line);
    if (logLine < link.logLine - SPOILT || beam.isLow(with, logLine)) {
      return;
    }
    Optional<Link> before = merged ? Optional.empty() : Optional.of(link);
    beam.add(new Link(before, link, index, pulse, line, density, logLine, with.clone()));
  }

  /** For each setting the logarithm of the chance that no pulse of the train was noted. */
  double[] logNothing() {
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    int phases = missed.phases();
    double low = train.first() == 0 ? startFrom : evidence.window().fromSeconds();
    double high = train.first() == 0 ? startTo : low + train.cycleSeconds() * train.middle();
    for (int i = 0; i < phases; i++) {
      double[] logs = timing.all(-Math.log(phases));
      missed.addAll(low + (i + 0.5) / phases * (high - low), logs);
      for (int s = 0; s < logs.length; s++) {
        sums[s] = Gauss.logAdd(sums[s], logs[s]);
      }
    }
    return sums;
  }

  /**
   * The same, or nothing where it cannot matter.
   *
   * @param floor the least likelihood that matters
   * @param chains for each setting what is known already beside the likelihood of strays alone
   */
  double[] logNothing(Floor floor, double[] chains) {
    double[] above = above(floor);
    for (int s = 0; s < above.length; s++) {
      if (above[s] < 0 && chains[s] < PLENTY) {
        return logNothing();
      }
    }
    return everything.clone();
  }
}

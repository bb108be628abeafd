package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One pass over a stretch of a recording that sums over the changes of the lamp's state, under one
 * setting of the noise: at every place between blinks the state may end and another begin. The
 * chains of all states compete in one beam, each with the weight of all that came before it, so
 * that the work is linear in the blinks (the forward sums of a segment model, with unlikely chains
 * dropped).
 */
final class Switches {
  /** How far back from its first blink a state may have begun: so many places. */
  private static final int PLACES_BACK = 32;

  /** How many pulses after its last blink are looked at up to a place. */
  private static final int MOST_PULSES = 60;

  /** A line that one more blink spoils by more than this is not drawn. */
  private static final double SPOILT = 0.5 * Density.GATE * Density.GATE + 6;

  private static final double HOPELESS = -40;

  /** What is this much less likely than another (natural logarithm) does not show beside it. */
  private static final double NEGLIGIBLE = 10;

  /** Logarithm of how many places back may all be as likely, roughly. */
  private static final double FEW = 3;

  private final List<Shown> ways = new ArrayList<>();
  private final Evidence evidence;
  private final Noise noise;
  private final Places places;
  private final double logMatch;
  private final double logMiss;
  private final double logRate;
  private final double logStrays;
  private final Lasting lasting;
  private final Floor floor;

  /** The most that a blink can add to the logarithm of a weight. */
  private final double mostPerNote;

  /** How the pass went: logarithm of how likely the blinks up to each were. */
  private final double[] fronts;

  private final Endings endings;
  private double logChanged = Double.NEGATIVE_INFINITY;
  private double logUnchanged = Double.NEGATIVE_INFINITY;
  private Optional<Run> last = Optional.empty();

  /**
   * Makes the pass.
   *
   * @param all all that may be shown; their shares sum to at most 1
   * @param changesPerSecond how often the state changes
   * @param tolerance how far the unit's clock may run from the printed times, as a fraction
   * @param floor the least that matters
   */
  Switches(
      List<Way> all,
      Evidence evidence,
      Noise noise,
      double changesPerSecond,
      double tolerance,
      Floor floor) {
    this.evidence = evidence;
    this.noise = noise;
    this.places = Places.of(evidence);
    this.logMatch = noise.logMatch();
    this.logMiss = noise.logMissed();
    this.logRate = Math.log(changesPerSecond);
    this.logStrays = Strays.log(evidence, noise);
    this.lasting = new Lasting(all, places, evidence.window());
    this.floor = floor;
    this.fronts = new double[evidence.notes().size()];
    this.endings = new Endings(places);
    double most = 0;
    for (Way way : all) {
      Shown shown = new Shown(way, evidence, noise, tolerance);
      ways.add(shown);
      double log =
          shown.isTrain()
              ? logMatch + shown.density().logHighest() + shown.noted().mostLengthRatio()
              : logRandom(way);
      most = Math.max(most, log);
    }
    this.mostPerNote = most;
    pass();
  }

  /** Logarithm of the likelihood of all courses in which the state changes. */
  double logChanged() {
    return logChanged + logStrays;
  }

  /** The same of all in which it never changes. */
  double logUnchanged() {
    return logUnchanged + logStrays;
  }

  /** Where the candidate changes, in order, in the likeliest course in which it does. */
  List<Double> changes() {
    return endings.changes(last);
  }

  /** What a blink adds to the weight of blinks at random; nothing to that of a dark lamp. */
  private double logRandom(Way way) {
    return way.isRandom() ? Math.log(way.randomPerSecond() / noise.strays()) : 0;
  }

  private void pass() {
    double from = evidence.window().fromSeconds();
    double at = from;
    List<Run> runs = new ArrayList<>();
    for (Shown shown : ways) {
      if (!shown.isTrain()) {
        runs.add(new Run(shown, Run.ORIGIN, false, Optional.empty(), shown.way().logPrior()));
      }
    }
    int gaps = evidence.notes().size() + 1;
    for (int gap = 0; gap < gaps; gap++) {
      int first = places.first()[gap];
      int end = places.first()[gap + 1];
      double now = at;
      for (int place = first; place < end; place++) {
        age(runs, places.seconds()[place] - now);
        now = places.seconds()[place];
        end(runs, now);
      }
      List<Run> grown = new ArrayList<>();
      withoutBlink(first, end, now, grown);
      double to = gap < gaps - 1 ? evidence.notes().get(gap).on() : evidence.window().toSeconds();
      runs.addAll(grown);
      age(runs, to - now);
      at = to;
      if (gap < gaps - 1) {
        double strays = (gap + 1) * Math.log(noise.strays()) - noise.strays() * (at - from);
        runs = note(runs, gap, end, strays);
        if (runs.isEmpty()) {
          return;
        }
        fronts[gap] = Runs.best(runs) + strays;
      }
    }
    floor.front().offer(fronts, 0);
    double most = Double.NEGATIVE_INFINITY;
    for (Run run : runs) {
      double log = run.logWeight + skipped(run, at, HOPELESS);
      if (!run.changed) {
        logUnchanged = Gauss.logAdd(logUnchanged, log);
        continue;
      }
      log += lasting.log(run, at);
      logChanged = Gauss.logAdd(logChanged, log);
      if (log > most) {
        most = log;
        last = Optional.of(run);
      }
    }
  }

  /**
   * Takes in one blink: every run may have made it or not, and every state may begin with it.
   *
   * @param strays logarithm of how likely the blinks up to it are as strays
   */
  private List<Run> note(List<Run> runs, int index, int end, double strays) {
    int left = evidence.notes().size() - 1 - index;
    double hopeless =
        Math.max(floor.at(index) - strays, floor.log() - logStrays - left * mostPerNote);
    List<Run> grown = new ArrayList<>();
    int old = runs.size();
    double least = Runs.least(runs, hopeless);
    for (Run run : runs) {
      if (run.line.isPresent()) {
        extend(run, index, least, grown);
      } else {
        run.logWeight += logRandom(run.shown.way());
      }
    }
    runs.addAll(grown);
    least = Runs.least(runs, hopeless);
    int back = Math.max(0, end - PLACES_BACK);
    double[] most = endings.greatest(back, end);
    for (Shown shown : ways) {
      if (shown.isTrain()) {
        anchors(shown, index, back, most, least, runs);
      }
    }
    return Runs.pruned(runs, old, hopeless);
  }

  /** Blinks at random become the rarer the longer none comes. */
  private void age(List<Run> runs, double seconds) {
    for (Run run : runs) {
      Way way = run.shown.way();
      if (way.isRandom()) {
        run.logWeight -= (way.randomPerSecond() - noise.strays()) * seconds;
      }
    }
  }

  /** What ends at a place. */
  private void end(List<Run> runs, double seconds) {
    double[] logs = new double[runs.size()];
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      Run run = runs.get(i);
      boolean shows = run.score() > highest - NEGLIGIBLE;
      logs[i] =
          shows
              ? run.logWeight
                  + skipped(run, seconds, highest - NEGLIGIBLE - run.logWeight)
                  + lasting.log(run, seconds)
              : Double.NEGATIVE_INFINITY;
      highest = Math.max(highest, logs[i]);
    }
    endings.add(runs, logs, logRate);
  }

  /** States without a train that begin in a gap. */
  private void withoutBlink(int first, int end, double now, List<Run> grown) {
    for (Shown shown : ways) {
      if (shown.isTrain()) {
        continue;
      }
      Way way = shown.way();
      double random = way.isRandom() ? way.randomPerSecond() : noise.strays();
      double sum = Double.NEGATIVE_INFINITY;
      int start = first;
      for (int place = first; place < end; place++) {
        double since = now - places.seconds()[place];
        sum = Gauss.logAdd(sum, endings.before(place) - (random - noise.strays()) * since);
        start = endings.before(place) > endings.before(start) ? place : start;
      }
      if (sum > Double.NEGATIVE_INFINITY) {
        double log = sum + way.logPrior();
        grown.add(
            new Run(shown, start, endings.changedBy(shown, start), endings.clockAt(start), log));
      }
    }
  }

  /**
   * Runs of a state whose first blink is this one.
   *
   * @param back the earliest place at which it may have begun
   * @param most the greatest weight of what was before, from that place up to each later one
   */
  private void anchors(
      Shown shown, int index, int back, double[] most, double least, List<Run> grown) {
    Train train = shown.train();
    Noted noted = shown.noted();
    Evidence.Note note = evidence.notes().get(index);
    double logStart =
        train.repeats()
            ? -Math.log(train.cycleSeconds())
            : -Math.log(evidence.window().lengthSeconds() + train.on(train.last()));
    double half = note.onCut() ? Math.log(0.5) : 0;
    double prior = shown.way().logPrior() + logMatch + logStart + half;
    double highestBefore = most.length > 0 ? Math.max(0, most[most.length - 1]) : 0;
    for (int pulse = Math.max(0, train.first()); pulse < train.size(); pulse++) {
      double log = prior + noted.lengthRatio(index, pulse);
      if (log + highestBefore < least) {
        continue;
      }
      double time = noted.began(note, pulse);
      Line line = Line.through(time, train.on(pulse));
      Onset onset = new Onset(train, evidence, noise, pulse, time);
      double sum = Double.NEGATIVE_INFINITY;
      double highest = Double.NEGATIVE_INFINITY;
      int start = Run.ORIGIN;
      double missed = 0;
      for (int i = most.length - 1;
          i >= 0 && most[i] + missed > Math.max(highest - NEGLIGIBLE, least - log - FEW);
          i--) {
        missed = onset.missedSince(places.seconds()[back + i], HOPELESS);
        double with = endings.before(back + i) + missed;
        sum = Gauss.logAdd(sum, with);
        if (with > highest) {
          highest = with;
          start = back + i;
        }
      }
      if (start != Run.ORIGIN && log + sum >= least) {
        boolean changed = endings.changedBy(shown, start);
        grown.add(
            new Run(shown, start, changed, endings.clockFor(shown, start), log + sum, pulse, line));
      }
      if (log >= least) {
        sum = log + onset.missedSince(evidence.window().fromSeconds(), least - log);
        if (sum >= least) {
          grown.add(new Run(shown, Run.ORIGIN, false, Optional.empty(), sum, pulse, line));
        }
      }
    }
  }

  private double missed(double time, double sd, double inside) {
    return noise.logMissed(inside * evidence.watched(time, sd), logMiss);
  }

  /**
   * Logarithm of the chance that no further pulse of a run left a blink until a moment.
   *
   * @param least what does not matter if it is below, for which it may come out greater than it is
   */
  private double skipped(Run run, double until, double least) {
    double sum = run.logSkipped;
    if (until < run.quietUntil) {
      return sum;
    }
    int last = Math.min(run.shown.train().last(), run.scanned + MOST_PULSES);
    double enough = Math.max(HOPELESS, least);
    for (int pulse = run.scanned; pulse <= last && sum > enough; pulse++) {
      double inTrain = run.shown.train().on(pulse);
      double time = run.time(inTrain);
      double sd = run.sd(inTrain);
      double z = (until - time) / sd;
      if (z < -Run.QUIET) {
        break;
      }
      sum += missed(time, sd, Gauss.cumulative(z));
    }
    return sum;
  }

  private void extend(Run run, int index, double least, List<Run> grown) {
    Evidence.Note note = evidence.notes().get(index);
    if (note.on() < run.quietUntil) {
      return;
    }
    Train train = run.shown.train();
    Noted noted = run.shown.noted();
    Line line = run.line.orElseThrow();
    double margin = Density.GATE * noise.sd() * Math.sqrt(1 + 1.0 / line.points());
    double most = logMatch + run.shown.density().logHighest();
    double skipped = run.logSkipped;
    double early = note.on() - noise.firstLate();
    int last = Math.min(train.last(), run.scanned + MOST_PULSES);
    for (int pulse = run.scanned; pulse <= last && skipped > HOPELESS; pulse++) {
      double inTrain = train.on(pulse);
      double ahead = inTrain - line.meanTrain();
      double low = line.meanTime() + ahead * (ahead > 0 ? run.low : run.high) - margin;
      double high = line.meanTime() + ahead * (ahead > 0 ? run.high : run.low) + margin;
      if (low > note.on()) {
        break;
      }
      double log = run.logWeight + skipped + logMatch + noted.lengthRatio(index, pulse);
      if (high >= early && log - logMatch + most > least) {
        Line longer = line.and(noted.began(note, pulse), inTrain);
        double logLine = run.logLine(longer);
        log += logLine - run.logLine;
        if (logLine >= run.logLine - SPOILT && log > least) {
          grown.add(run.with(pulse, longer, logLine, log));
        }
      }
      skipped += missed(run.time(inTrain), run.sd(inTrain), 1);
      if (high < early && pulse == run.scanned) {
        run.pass(skipped);
      }
    }
  }
}

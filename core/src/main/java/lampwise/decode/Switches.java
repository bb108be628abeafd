package lampwise.decode;

import java.util.ArrayList;
import java.util.Collections;
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
  /** Chains this much below the best one (natural logarithm) are dropped. */
  private static final double DROP = 13;

  /** How many chains are carried on. */
  private static final int BEAM = 64;

  /** How far back from its first blink a state may have begun: so many places. */
  private static final int PLACES_BACK = 32;

  /** How many pulses before its first blink are looked at, and after its last up to a place. */
  private static final int MOST_PULSES = 60;

  /** Pulses are looked for this many standard deviations around a blink. */
  private static final double GATE = 4.5;

  private static final double HOPELESS = -40;

  private static final double EVEN_SPREAD = 1 / Math.sqrt(12);

  /** This many standard deviations before it is due a pulse is not waited for. */
  private static final double QUIET = 5;

  /** How well a clock keeps its rate, as a fraction. */
  private static final double CLOCK_KEPT = 0.003;

  private static final int ORIGIN = -1;

  /** A state that has lasted from a place on, as far as it explains the blinks by now. */
  private final class Run {
    final int way;

    /** The place at which it began, the likeliest one. */
    final int start;

    /** How the clock ran before it. */
    final Optional<Line> clock;

    /** Whether there was another candidate before it. */
    final boolean changed;

    /** The line through its blinks; empty if it has none. */
    final Optional<Line> line;

    double logWeight;

    /** Logarithm of the density of the times of its blinks, given the clock. */
    final double logLine;

    /** Borders of its slope. */
    final double low;

    final double high;

    /** The next pulse, and what was missed on the way to it. */
    int scanned;

    double logSkipped;

    /** Before this moment no further pulse is due. */
    double quietUntil;

    Run(int way, int start, double logWeight, Optional<Line> clock) {
      this.way = way;
      this.start = start;
      this.changed = changedBy(way, start);
      this.clock = clock;
      this.line = Optional.empty();
      this.logWeight = logWeight;
      this.logLine = 0;
      this.low = 1;
      this.high = 1;
      this.quietUntil = Double.POSITIVE_INFINITY;
    }

    Run(
        int way,
        int start,
        int pulse,
        Line line,
        double logWeight,
        double logLine,
        Optional<Line> clock) {
      this.way = way;
      this.start = start;
      this.changed = changedBy(way, start);
      this.clock = clock;
      this.line = Optional.of(line);
      this.logWeight = logWeight;
      this.logLine = logLine;
      Train train = ways.get(way).train().orElseThrow();
      double[] slopes = on(clock, line).slopes(train, GATE * noise.sd());
      this.low = slopes[0];
      this.high = slopes[1];
      this.scanned = pulse + 1;
      listen(train);
    }

    private void listen(Train train) {
      quietUntil =
          scanned > train.last()
              ? Double.POSITIVE_INFINITY
              : time(train, scanned) - QUIET * sd(train, scanned);
    }

    /** When a pulse is due. */
    double time(Train train, int pulse) {
      Line own = line.orElseThrow();
      return own.meanTime() + 0.5 * (low + high) * (train.on(pulse) - own.meanTrain());
    }

    /** How surely that is known. */
    double sd(Train train, int pulse) {
      Line own = line.orElseThrow();
      return noise.sd() + EVEN_SPREAD * (high - low) * Math.abs(train.on(pulse) - own.meanTrain());
    }

    double score() {
      return logWeight + logSkipped;
    }
  }

  private boolean changedBy(int way, int start) {
    Optional<Run> earlier = start == ORIGIN ? Optional.empty() : ending.get(start);
    return earlier.isPresent()
        && (earlier.get().changed || candidate(earlier.get()) != ways.get(way).candidate());
  }

  /** A line whose slope is known from an earlier one too: its sums with those of both. */
  private static Line on(Optional<Line> clock, Line line) {
    return clock
        .map(
            past ->
                new Line(
                    line.points(),
                    line.meanTime(),
                    line.meanTrain(),
                    past.varTime() + line.varTime(),
                    past.covariance() + line.covariance(),
                    past.varTrain() + line.varTrain()))
        .orElse(line);
  }

  /** Logarithm of the density of a run's times, what is known of the clock given. */
  private double logLine(Optional<Line> clock, Line line, Train train) {
    double log = on(clock, line).logDensity(train, noise.sd());
    return clock.isPresent() ? log - clock.get().logDensity(train, noise.sd()) : log;
  }

  /** How the clock ran up to the end of a run; a clock is not trusted to more than 0.3 %. */
  private Optional<Line> clock(Run run) {
    if (run.line.isEmpty() || !timed(run.way)) {
      return run.clock;
    }
    Line all = on(run.clock, run.line.get());
    double most = noise.sd() / CLOCK_KEPT;
    double part = Math.min(1, most * most / Math.max(all.varTrain(), 1e-9));
    return Optional.of(
        new Line(1, 0, 0, part * all.varTime(), part * all.covariance(), part * all.varTrain()));
  }

  /** Whether nothing but the clock changes the times of a way's train. */
  private boolean timed(int way) {
    return ways.get(way)
        .train()
        .map(train -> train.high() - train.low() <= 2 * tolerance + 1e-9)
        .orElse(false);
  }

  private final List<Way> ways;
  private final Evidence evidence;
  private final Noise noise;
  private final Places places;
  private final List<Optional<Chain>> chains = new ArrayList<>();
  private final double logMatch;
  private final double logMiss;
  private final double logRate;
  private final double tolerance;

  /** Logarithm of the weight of everything up to a place, and the likeliest run that ends there. */
  private final double[] before;

  private final List<Optional<Run>> ending = new ArrayList<>();
  private double logChanged = Double.NEGATIVE_INFINITY;
  private double logUnchanged = Double.NEGATIVE_INFINITY;
  private Optional<Run> last = Optional.empty();

  /**
   * Makes the pass.
   *
   * @param ways all that may be shown; their shares sum to at most 1
   * @param changesPerSecond how often the state changes
   * @param tolerance how far the unit's clock may run from the printed times, as a fraction
   */
  Switches(
      List<Way> ways, Evidence evidence, Noise noise, double changesPerSecond, double tolerance) {
    this.tolerance = tolerance;
    this.ways = ways;
    this.evidence = evidence;
    this.noise = noise;
    this.places = Places.of(evidence);
    this.logMatch = Math.log((1 - noise.miss()) / noise.strays());
    this.logMiss = noise.logMissed();
    this.logRate = Math.log(changesPerSecond);
    this.before = new double[places.seconds().length];
    for (Way way : ways) {
      chains.add(way.train().map(t -> new Chain(t, evidence, noise, 0, Double.NaN, Double.NaN)));
    }
    pass();
  }

  /** Logarithm of the likelihood of all courses in which the state changes. */
  double logChanged() {
    return logChanged + Chain.strays(evidence, noise);
  }

  /** The same of all in which it never changes. */
  double logUnchanged() {
    return logUnchanged + Chain.strays(evidence, noise);
  }

  /** Where the candidate changes, in order, in the likeliest course in which it does. */
  List<Double> changes() {
    List<Double> changes = new ArrayList<>();
    Optional<Run> run = last;
    while (run.isPresent() && run.get().start != ORIGIN) {
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

  private int candidate(Run run) {
    return ways.get(run.way).candidate();
  }

  private void pass() {
    double at = evidence.window().fromSeconds();
    List<Run> runs = new ArrayList<>();
    for (int way = 0; way < ways.size(); way++) {
      if (chains.get(way).isEmpty()) {
        runs.add(new Run(way, ORIGIN, ways.get(way).logPrior(), Optional.empty()));
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
        end(runs, place);
      }
      List<Run> grown = new ArrayList<>();
      withoutBlink(first, end, now, grown);
      double to = gap < gaps - 1 ? evidence.notes().get(gap).on() : evidence.window().toSeconds();
      runs.addAll(grown);
      age(runs, to - now);
      at = to;
      if (gap < gaps - 1) {
        runs = note(runs, gap, end);
      }
    }
    double most = Double.NEGATIVE_INFINITY;
    for (Run run : runs) {
      double log = run.logWeight + skipped(run, evidence.window().toSeconds());
      if (!run.changed) {
        logUnchanged = Gauss.logAdd(logUnchanged, log);
        continue;
      }
      logChanged = Gauss.logAdd(logChanged, log);
      if (log > most) {
        most = log;
        last = Optional.of(run);
      }
    }
  }

  /** Takes in one blink: every run may have made it or not, and every state may begin with it. */
  private List<Run> note(List<Run> runs, int index, int end) {
    List<Run> grown = new ArrayList<>();
    for (Run run : runs) {
      if (run.line.isPresent()) {
        extend(run, index, grown);
      } else if (ways.get(run.way).isRandom()) {
        run.logWeight += Math.log(ways.get(run.way).randomPerSecond() / noise.strays());
      }
    }
    runs.addAll(grown);
    double least = best(runs) - DROP;
    for (int way = 0; way < ways.size(); way++) {
      if (chains.get(way).isPresent()) {
        anchors(way, index, end, least, runs);
      }
    }
    return prune(runs);
  }

  /** Blinks at random become the rarer the longer none comes. */
  private void age(List<Run> runs, double seconds) {
    for (Run run : runs) {
      Way way = ways.get(run.way);
      if (way.isRandom()) {
        run.logWeight -= (way.randomPerSecond() - noise.strays()) * seconds;
      }
    }
  }

  /** What ends at a place. */
  private void end(List<Run> runs, int place) {
    double sum = Double.NEGATIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    Optional<Run> best = Optional.empty();
    for (Run run : runs) {
      double log = run.logWeight + skipped(run, places.seconds()[place]);
      sum = Gauss.logAdd(sum, log);
      if (log > most) {
        most = log;
        best = Optional.of(run);
      }
    }
    before[place] = sum + logRate + Math.log(places.widths()[place]);
    ending.add(best);
  }

  /** States without a train that begin in a gap. */
  private void withoutBlink(int first, int end, double now, List<Run> grown) {
    for (int way = 0; way < ways.size(); way++) {
      if (chains.get(way).isPresent()) {
        continue;
      }
      double random = ways.get(way).isRandom() ? ways.get(way).randomPerSecond() : noise.strays();
      double sum = Double.NEGATIVE_INFINITY;
      int start = first;
      for (int place = first; place < end; place++) {
        sum =
            Gauss.logAdd(
                sum, before[place] - (random - noise.strays()) * (now - places.seconds()[place]));
        start = before[place] > before[start] ? place : start;
      }
      if (sum > Double.NEGATIVE_INFINITY) {
        double log = sum + ways.get(way).logPrior();
        grown.add(new Run(way, start, log, clockAt(start)));
      }
    }
  }

  /** Runs of a state whose first blink is this one. */
  private void anchors(int way, int index, int end, double least, List<Run> grown) {
    Train train = ways.get(way).train().orElseThrow();
    Chain chain = chains.get(way).orElseThrow();
    Evidence.Note note = evidence.notes().get(index);
    double logStart =
        train.repeats()
            ? -Math.log(train.cycleSeconds())
            : -Math.log(evidence.window().lengthSeconds() + train.on(train.last()));
    double half = note.onCut() ? Math.log(0.5) : 0;
    double most = Double.NEGATIVE_INFINITY;
    int back = Math.max(0, end - PLACES_BACK);
    for (int place = back; place < end; place++) {
      most = Math.max(most, before[place]);
    }
    for (int pulse = Math.max(0, train.first()); pulse < train.size(); pulse++) {
      double log =
          ways.get(way).logPrior() + logMatch + logStart + half + chain.lengthRatio(index, pulse);
      if (log + Math.max(0, most) < least) {
        continue;
      }
      double time = chain.began(note, pulse);
      Line line = Line.through(time, train.on(pulse));
      Head head = new Head(train, pulse, time);
      double sum = Double.NEGATIVE_INFINITY;
      double highest = Double.NEGATIVE_INFINITY;
      int start = ORIGIN;
      double missed = 0;
      for (int place = end - 1; place >= back && missed > HOPELESS; place--) {
        missed = head.missedSince(places.seconds()[place]);
        double with = before[place] + missed;
        sum = Gauss.logAdd(sum, with);
        if (with > highest) {
          highest = with;
          start = place;
        }
      }
      if (log + sum >= least) {
        grown.add(new Run(way, start, pulse, line, log + sum, 0, clockFor(way, start)));
      }
      sum = log + head.missedSince(evidence.window().fromSeconds());
      if (sum >= least) {
        grown.add(new Run(way, ORIGIN, pulse, line, sum, 0, Optional.empty()));
      }
    }
  }

  private Optional<Line> clockAt(int place) {
    return ending.get(place).flatMap(this::clock);
  }

  /** The same for a way whose times it sets. */
  private Optional<Line> clockFor(int way, int place) {
    return timed(way) ? clockAt(place).filter(line -> line.varTrain() > 0) : Optional.empty();
  }

  /** The pulses before a run's first blink, looked at from there back. */
  private final class Head {
    private final Train train;
    private final int anchor;
    private final double anchorTime;
    private final double stretch;
    private final double open;
    private int next;
    private double sum;

    Head(Train train, int anchor, double anchorTime) {
      this.train = train;
      this.anchor = anchor;
      this.anchorTime = anchorTime;
      this.stretch = 0.5 * (train.low() + train.high());
      this.open = EVEN_SPREAD * (train.high() - train.low());
      this.next = anchor - 1;
    }

    /** Logarithm of the chance that none left a blink since a moment; earlier at every call. */
    double missedSince(double from) {
      int first = Math.max(train.first(), anchor - MOST_PULSES);
      double border = 0;
      for (int pulse = next; pulse >= first && sum > HOPELESS; pulse--) {
        double away = train.on(anchor) - train.on(pulse);
        double time = anchorTime - stretch * away;
        double sd = noise.sd() + open * away;
        double z = (time - from) / sd;
        if (z < -5) {
          break;
        }
        if (z > 5 && pulse == next) {
          sum += missed(time, sd, 1);
          next--;
        } else {
          border += missed(time, sd, Gauss.cumulative(z));
        }
      }
      return sum + border;
    }
  }

  private double missed(double time, double sd, double inside) {
    return noise.logMissed(inside * evidence.watched(time, sd), logMiss);
  }

  /** Logarithm of the chance that no further pulse of a run left a blink until a moment. */
  private double skipped(Run run, double until) {
    double sum = run.logSkipped;
    if (until < run.quietUntil) {
      return sum;
    }
    Train train = ways.get(run.way).train().orElseThrow();
    int last = Math.min(train.last(), run.scanned + MOST_PULSES);
    for (int pulse = run.scanned; pulse <= last && sum > HOPELESS; pulse++) {
      double time = run.time(train, pulse);
      double sd = run.sd(train, pulse);
      double z = (until - time) / sd;
      if (z < -QUIET) {
        break;
      }
      sum += missed(time, sd, Gauss.cumulative(z));
    }
    return sum;
  }

  private void extend(Run run, int index, List<Run> grown) {
    Evidence.Note note = evidence.notes().get(index);
    if (note.on() < run.quietUntil) {
      return;
    }
    Train train = ways.get(run.way).train().orElseThrow();
    Chain chain = chains.get(run.way).orElseThrow();
    Line line = run.line.orElseThrow();
    double margin = GATE * noise.sd() * Math.sqrt(1 + 1.0 / line.points());
    double skipped = run.logSkipped;
    double early = note.on() - noise.firstLate();
    int last = Math.min(train.last(), run.scanned + MOST_PULSES);
    for (int pulse = run.scanned; pulse <= last && skipped > HOPELESS; pulse++) {
      double ahead = train.on(pulse) - line.meanTrain();
      double low = line.meanTime() + ahead * (ahead > 0 ? run.low : run.high) - margin;
      double high = line.meanTime() + ahead * (ahead > 0 ? run.high : run.low) + margin;
      if (low > note.on()) {
        break;
      }
      if (high >= early) {
        Line longer = line.and(chain.began(note, pulse), train.on(pulse));
        double logLine = logLine(run.clock, longer, train);
        if (logLine - run.logLine >= -0.5 * GATE * GATE - 6) {
          double log = run.logWeight + skipped + logMatch + logLine - run.logLine;
          log += chain.lengthRatio(index, pulse);
          grown.add(new Run(run.way, run.start, pulse, longer, log, logLine, run.clock));
        }
      }
      skipped += missed(run.time(train, pulse), run.sd(train, pulse), 1);
      if (high < early && pulse == run.scanned) {
        run.scanned++;
        run.logSkipped = skipped;
        run.listen(train);
      }
    }
  }

  private static double best(List<Run> runs) {
    double best = Double.NEGATIVE_INFINITY;
    for (Run run : runs) {
      best = Math.max(best, run.score());
    }
    return best;
  }

  private static List<Run> prune(List<Run> runs) {
    double best = best(runs);
    List<Run> kept = new ArrayList<>();
    for (Run run : runs) {
      if (run.score() > best - DROP) {
        kept.add(run);
      }
    }
    if (kept.size() > BEAM) {
      kept.sort((a, b) -> Double.compare(b.score(), a.score()));
      kept = new ArrayList<>(kept.subList(0, BEAM));
    }
    return kept;
  }
}

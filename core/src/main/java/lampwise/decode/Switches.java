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
  private static final double DROP = 16;

  /** How many chains are carried on. */
  private static final int BEAM = 96;

  /** How far back from its first blink a state may have begun: so many places. */
  private static final int PLACES_BACK = 32;

  /** How many pulses before its first blink are looked at, and after its last up to a place. */
  private static final int MOST_PULSES = 60;

  /** Pulses are looked for this many standard deviations around a blink. */
  private static final double GATE = 4.5;

  private static final double HOPELESS = -40;

  private static final double EVEN_SPREAD = 1 / Math.sqrt(12);

  private static final int ORIGIN = -1;

  /** A state that has lasted from a place on, as far as it explains the blinks by now. */
  private static final class Run {
    final int way;

    /** The place at which it began, the likeliest one. */
    final int start;

    /** Its last blink's pulse and the line through all of its blinks; unused where none. */
    final int pulse;

    final Optional<Line> line;
    double logWeight;
    final double logLine;
    int scanned;
    double logSkipped;

    Run(int way, int start, int pulse, Optional<Line> line, double logWeight, double logLine) {
      this.way = way;
      this.start = start;
      this.pulse = pulse;
      this.line = line;
      this.logWeight = logWeight;
      this.logLine = logLine;
      this.scanned = pulse + 1;
    }

    double score() {
      return logWeight + logSkipped;
    }
  }

  private final List<Way> ways;
  private final Evidence evidence;
  private final Noise noise;
  private final Places places;
  private final List<Optional<Chain>> chains = new ArrayList<>();
  private final double logMatch;
  private final double logMiss;
  private final double logRate;

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
   */
  Switches(List<Way> ways, Evidence evidence, Noise noise, double changesPerSecond) {
    this.ways = ways;
    this.evidence = evidence;
    this.noise = noise;
    this.places = Places.of(evidence);
    this.logMatch = Math.log((1 - noise.miss()) / noise.strays());
    this.logMiss = Math.log(noise.miss());
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

  /** Where the candidate changes, in order, in the likeliest course of things. */
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
        runs.add(new Run(way, ORIGIN, 0, Optional.empty(), ways.get(way).logPrior(), 0));
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
      if (log > most) {
        most = log;
        last = Optional.of(run);
      }
      if (run.start == ORIGIN) {
        logUnchanged = Gauss.logAdd(logUnchanged, log);
      } else {
        logChanged = Gauss.logAdd(logChanged, log);
      }
    }
  }

  /** Takes in one blink: every run may have made it or not, and every state may begin with it. */
  private List<Run> note(List<Run> runs, int index, int end) {
    List<Run> grown = new ArrayList<>();
    for (Run run : runs) {
      if (run.line.isPresent()) {
        extend(run, run.line.get(), index, grown);
      } else if (ways.get(run.way).isRandom()) {
        run.logWeight += Math.log(ways.get(run.way).randomPerSecond() / noise.strays());
      }
    }
    for (int way = 0; way < ways.size(); way++) {
      if (chains.get(way).isPresent()) {
        anchors(way, index, end, grown);
      }
    }
    runs.addAll(grown);
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
        grown.add(new Run(way, start, 0, Optional.empty(), log, 0));
      }
    }
  }

  /** Runs of a state whose first blink is this one. */
  private void anchors(int way, int index, int end, List<Run> grown) {
    Train train = ways.get(way).train().orElseThrow();
    Chain chain = chains.get(way).orElseThrow();
    Evidence.Note note = evidence.notes().get(index);
    double logStart =
        train.repeats()
            ? -Math.log(train.cycleSeconds())
            : -Math.log(evidence.window().lengthSeconds() + train.on(train.last()));
    double half = note.onCut() ? Math.log(0.5) : 0;
    for (int pulse = Math.max(0, train.first()); pulse < train.size(); pulse++) {
      double time = chain.began(note, pulse);
      double log =
          ways.get(way).logPrior() + logMatch + logStart + half + chain.lengthRatio(note, pulse);
      Line line = Line.through(time, train.on(pulse));
      double[] head = new double[MOST_PULSES];
      int pulses = head(train, pulse, time, head);
      double sum = log + missedSince(evidence.window().fromSeconds(), time, train, head, pulses);
      if (sum > log + HOPELESS) {
        grown.add(new Run(way, ORIGIN, pulse, Optional.of(line), sum, 0));
      }
      sum = Double.NEGATIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      int start = ORIGIN;
      for (int place = end - 1; place >= Math.max(0, end - PLACES_BACK); place--) {
        double missed = missedSince(places.seconds()[place], time, train, head, pulses);
        double with = before[place] + missed;
        sum = Gauss.logAdd(sum, with);
        if (with > most) {
          most = with;
          start = place;
        }
        if (missed < HOPELESS) {
          break;
        }
      }
      if (start != ORIGIN) {
        grown.add(new Run(way, start, pulse, Optional.of(line), log + sum, 0));
      }
    }
  }

  /** When the pulses before this one came, the nearest first; returns how many there are. */
  private static int head(Train train, int pulse, double time, double[] times) {
    double stretch = 0.5 * (train.low() + train.high());
    int count = 0;
    for (int k = pulse - 1; k >= train.first() && count < times.length; k--) {
      times[count++] = time - stretch * (train.on(pulse) - train.on(k));
    }
    return count;
  }

  /** Logarithm of the chance that none of these pulses left a blink after a moment. */
  private double missedSince(double from, double anchor, Train train, double[] times, int count) {
    double open = EVEN_SPREAD * (train.high() - train.low()) * 2 / (train.high() + train.low());
    double sum = 0;
    for (int i = 0; i < count && sum > HOPELESS; i++) {
      double sd = noise.sd() + open * (anchor - times[i]);
      double z = (times[i] - from) / sd;
      if (z < -5) {
        break;
      }
      sum += missed(times[i], sd, Gauss.cumulative(z));
    }
    return sum;
  }

  private double missed(double time, double sd, double inside) {
    double watched = inside * evidence.watched(time, sd);
    if (watched >= 1) {
      return logMiss;
    }
    return watched <= 0 ? 0 : Math.log(1 - watched * (1 - noise.miss()));
  }

  /** Logarithm of the chance that no further pulse of a run left a blink until a moment. */
  private double skipped(Run run, double until) {
    if (run.line.isEmpty()) {
      return 0;
    }
    Train train = ways.get(run.way).train().orElseThrow();
    Line line = run.line.get();
    double[] slope = line.slopes(train, GATE * noise.sd());
    double sum = run.logSkipped;
    int last = Math.min(train.last(), run.scanned + MOST_PULSES);
    for (int pulse = run.scanned; pulse <= last && sum > HOPELESS; pulse++) {
      double ahead = train.on(pulse) - line.meanTrain();
      double time = line.meanTime() + 0.5 * (slope[0] + slope[1]) * ahead;
      double sd = noise.sd() + EVEN_SPREAD * (slope[1] - slope[0]) * Math.abs(ahead);
      double z = (until - time) / sd;
      if (z < -5) {
        break;
      }
      sum += missed(time, sd, Gauss.cumulative(z));
    }
    return sum;
  }

  private void extend(Run run, Line line, int index, List<Run> grown) {
    Train train = ways.get(run.way).train().orElseThrow();
    Chain chain = chains.get(run.way).orElseThrow();
    Evidence.Note note = evidence.notes().get(index);
    double margin = GATE * noise.sd() * Math.sqrt(1 + 1.0 / line.points());
    double[] slope = line.slopes(train, GATE * noise.sd());
    double skipped = run.logSkipped;
    double early = note.on() - noise.firstLate();
    int last = Math.min(train.last(), run.scanned + MOST_PULSES);
    for (int pulse = run.scanned; pulse <= last; pulse++) {
      double ahead = train.on(pulse) - line.meanTrain();
      double low = line.meanTime() + ahead * slope[ahead > 0 ? 0 : 1] - margin;
      double high = line.meanTime() + ahead * slope[ahead > 0 ? 1 : 0] + margin;
      if (low > note.on()) {
        break;
      }
      if (high >= early) {
        Line longer = line.and(chain.began(note, pulse), train.on(pulse));
        double logLine = longer.logDensity(train, noise.sd());
        if (logLine - run.logLine >= -0.5 * GATE * GATE - 6) {
          double log =
              run.logWeight
                  + skipped
                  + logMatch
                  + chain.lengthRatio(note, pulse)
                  + logLine
                  - run.logLine;
          grown.add(new Run(run.way, run.start, pulse, Optional.of(longer), log, logLine));
        }
      }
      double time = line.meanTime() + 0.5 * (slope[0] + slope[1]) * ahead;
      double sd = noise.sd() + EVEN_SPREAD * (slope[1] - slope[0]) * Math.abs(ahead);
      skipped += missed(time, sd, 1);
      if (high < early && pulse == run.scanned) {
        run.scanned++;
        run.logSkipped = skipped;
      }
      if (skipped < HOPELESS) {
        break;
      }
    }
  }

  private static List<Run> prune(List<Run> runs) {
    double best = Double.NEGATIVE_INFINITY;
    for (Run run : runs) {
      best = Math.max(best, run.score());
    }
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

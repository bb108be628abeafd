package lampwise.decode;

import java.util.List;
import java.util.Optional;

/** A state that has lasted from a place on, as far as it explains the blinks by now. */
final class Run {
  /** This many standard deviations before it is due a pulse is not waited for. */
  static final double QUIET = 5;

  /** The start of a run that goes on from before the stretch. */
  static final int ORIGIN = -1;

  /** How well a clock keeps its rate, as a fraction. */
  private static final double CLOCK_KEPT = 0.003;

  final Shown shown;

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

  /** The means of its line. */
  private final double meanTime;

  private final double meanTrain;

  /** The next pulse, and what was missed on the way to it. */
  int scanned;

  double logSkipped;

  /** Before this moment no further pulse is due. */
  double quietUntil;

  /** A run without blinks of its own. */
  Run(Shown shown, int start, boolean changed, Optional<Line> clock, double logWeight) {
    this(shown, start, changed, clock, logWeight, 0, Optional.empty(), 0);
  }

  /** A run whose first blink is given to a pulse. */
  Run(
      Shown shown,
      int start,
      boolean changed,
      Optional<Line> clock,
      double logWeight,
      int pulse,
      Line line) {
    this(shown, start, changed, clock, logWeight, pulse + 1, Optional.of(line), 0);
  }

  private Run(
      Shown shown,
      int start,
      boolean changed,
      Optional<Line> clock,
      double logWeight,
      int next,
      Optional<Line> line,
      double logLine) {
    this.shown = shown;
    this.start = start;
    this.changed = changed;
    this.clock = clock;
    this.line = line;
    this.logWeight = logWeight;
    this.logLine = logLine;
    this.scanned = next;
    if (line.isPresent()) {
      Line own = line.get();
      Line whole = on(clock, own);
      double reach = shown.density().reach(whole);
      this.low = shown.density().lowSlope(whole, reach);
      this.high = shown.density().highSlope(whole, reach);
      this.meanTime = own.meanTime();
      this.meanTrain = own.meanTrain();
    } else {
      this.low = 1;
      this.high = 1;
      this.meanTime = Double.NaN;
      this.meanTrain = Double.NaN;
    }
    listen();
  }

  /** The same run with one more blink. */
  Run with(int pulse, Line longer, double logLine, double logWeight) {
    return new Run(
        shown, start, changed, clock, logWeight, pulse + 1, Optional.of(longer), logLine);
  }

  /**
   * Merges it with one of these that end with the same blink and go on as it does, if there is one.
   */
  boolean isMerged(List<Run> runs, int from) {
    for (int i = from; i < runs.size(); i++) {
      Run other = runs.get(i);
      if (goesOnAs(other)) {
        Run likelier = other.logWeight < logWeight ? this : other;
        likelier.logWeight = Gauss.logAdd(logWeight, other.logWeight);
        runs.set(i, likelier);
        return true;
      }
    }
    return false;
  }

  private boolean goesOnAs(Run other) {
    return shown == other.shown
        && changed == other.changed
        && scanned == other.scanned
        && line.isPresent()
        && other.line.isPresent()
        && other
            .line
            .get()
            .isNear(line.get(), shown.train().on(scanned - 1), Beam.SAME_LINE * shown.sd());
  }

  private void listen() {
    quietUntil = Double.POSITIVE_INFINITY;
    if (line.isPresent() && scanned <= shown.train().last()) {
      double inTrain = shown.train().on(scanned);
      quietUntil = time(inTrain) - QUIET * sd(inTrain);
    }
  }

  /** Goes on to the next pulse. */
  void pass(double skipped) {
    scanned++;
    logSkipped = skipped;
    listen();
  }

  /** When a pulse of this time in the train is due. */
  double time(double inTrain) {
    return meanTime + 0.5 * (low + high) * (inTrain - meanTrain);
  }

  /** How surely that is known. */
  double sd(double inTrain) {
    double away = Math.abs(inTrain - meanTrain);
    return shown.sd() + Missed.EVEN_SPREAD * (high - low) * away;
  }

  /** Logarithm of what it weighs by now. */
  double score() {
    return logWeight + logSkipped;
  }

  /** Logarithm of the density of the times on a longer line, what is known of the clock given. */
  double logLine(Line longer) {
    double log = shown.density().log(on(clock, longer));
    return clock.isPresent() ? log - shown.density().log(clock.get()) : log;
  }

  /** How the clock ran up to its end; a clock is not trusted to more than 0.3 %. */
  Optional<Line> clockAfter() {
    if (line.isEmpty() || !shown.timed()) {
      return clock;
    }
    Line all = on(clock, line.get());
    double most = shown.sd() / CLOCK_KEPT;
    double part = Math.min(1, most * most / Math.max(all.varTrain(), 1e-9));
    return Optional.of(
        new Line(1, 0, 0, part * all.varTime(), part * all.covariance(), part * all.varTrain()));
  }

  /** A line whose slope is known from an earlier one too: its sums with those of both. */
  private static Line on(Optional<Line> clock, Line line) {
    if (clock.isEmpty()) {
      return line;
    }
    Line past = clock.get();
    return new Line(
        line.points(),
        line.meanTime(),
        line.meanTrain(),
        past.varTime() + line.varTime(),
        past.covariance() + line.covariance(),
        past.varTrain() + line.varTrain());
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One blink given to one pulse, with the line through all links up to it and what they weigh under
 * each setting of a timing.
 */
final class Link {
  /** The link before it; empty at the first, and where nobody asks for the way back. */
  final Optional<Link> before;

  final int note;
  final int pulse;
  final Line line;

  /** The pulse of the chain's first link. */
  final int firstPulse;

  /** Logarithm of the density of the times. */
  final double logLine;

  /** Borders of the line's slope. */
  final double low;

  final double high;

  /**
   * For each setting the logarithm of what the links weigh against strays, with the pulses missed
   * before, between and so far after them.
   */
  final double[] logs;

  /** For each setting what of it are the pulses before the first link, as they were first seen. */
  final double[] heads;

  /** The next pulse that may have a link. */
  int scanned;

  /** How it compares with the others of its beam. */
  double score;

  /** The first link of a chain. */
  Link(int note, int pulse, Line line, Density density, double logLine, double[] logs) {
    this(
        Optional.empty(),
        note,
        pulse,
        pulse,
        line,
        density,
        logLine,
        logs,
        new double[logs.length]);
  }

  /** One more link of a chain. */
  Link(
      Optional<Link> before,
      Link last,
      int note,
      int pulse,
      Line line,
      Density density,
      double logLine,
      double[] logs) {
    this(before, note, pulse, last.firstPulse, line, density, logLine, logs, last.heads);
  }

  private Link(
      Optional<Link> before,
      int note,
      int pulse,
      int firstPulse,
      Line line,
      Density density,
      double logLine,
      double[] logs,
      double[] heads) {
    this.before = before;
    this.note = note;
    this.pulse = pulse;
    this.firstPulse = firstPulse;
    this.line = line;
    this.logLine = logLine;
    this.logs = logs;
    this.heads = heads;
    this.scanned = pulse + 1;
    double reach = density.reach(line);
    this.low = density.lowSlope(line, reach);
    this.high = density.highSlope(line, reach);
  }

  /** The links of the chain that ends here, the last one first. */
  Iterable<Link> back() {
    List<Link> links = new ArrayList<>();
    Optional<Link> at = Optional.of(this);
    while (at.isPresent()) {
      links.add(at.get());
      at = at.get().before;
    }
    return links;
  }

  /** The likelier of two chains, by their scores, with the weight of both. */
  Link with(Link other) {
    Link likelier = score < other.score ? other : this;
    Link less = score < other.score ? this : other;
    double apart = Double.NaN;
    double more = 0;
    for (int s = 0; s < logs.length; s++) {
      double here = less.weight(s) - likelier.weight(s);
      if (here != apart) {
        apart = here;
        more = Gauss.logAdd(0, apart);
      }
      likelier.logs[s] += more;
    }
    return likelier;
  }

  /** Logarithm of the chain's weight under a setting against all blinks being strays. */
  double weight(int setting) {
    return logs[setting] + logLine;
  }

  /** When the chain has a pulse that lies at this time in its train, as far as is known. */
  double time(double inTrain) {
    return line.meanTime() + 0.5 * (low + high) * (inTrain - line.meanTrain());
  }

  /** The most probable stretch, or the middle of the borders where one link cannot tell. */
  double stretch(Train train) {
    return line.stretch(train);
  }
}

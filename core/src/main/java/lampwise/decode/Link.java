package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One blink given to one pulse, with the line through all links up to it and what they weigh. */
final class Link {
  final Optional<Link> before;
  final int note;
  final int pulse;
  final Line line;

  /** Logarithm of the weight of the links, and of the pulses missed between them. */
  double logLinks;

  /** Logarithm of the density of their times. */
  double logLine;

  /** Logarithm of the chance that no pulse before the first of them left a blink. */
  double logHead;

  /** The next pulse that may have a link, and what was missed on the way to it. */
  int scanned;

  double logSkipped;

  /** Logarithm of the weight against all blinks being strays. */
  double score;

  Link(Optional<Link> before, int note, int pulse, Line line) {
    this.before = before;
    this.note = note;
    this.pulse = pulse;
    this.line = line;
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
    double more = Math.log1p(Math.exp(-Math.abs(score - other.score)));
    likelier.logLinks += more;
    likelier.score += more;
    return likelier;
  }

  /** Logarithm of the chain's weight against all blinks being strays, once it is finished. */
  double weight() {
    return score;
  }

  /** The most probable stretch, or the middle of the borders where one link cannot tell. */
  double stretch(Train train) {
    return line.stretch(train);
  }
}

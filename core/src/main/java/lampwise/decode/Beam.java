package lampwise.decode;

import java.util.Arrays;
import java.util.List;

/**
 * The chains of a fold that are carried on. A chain stays for the sake of the setting for which it
 * matters most; what matters for none is dropped.
 */
final class Beam {
  /** How many chains are carried on. */
  private static final int MOST = 24;

  /** Chains this much below the best one (natural logarithm) are dropped. */
  private static final double DROP = 12;

  /** Chains whose lines are no farther apart than this, in standard deviations, go on as one. */
  static final double SAME_LINE = 0.7;

  private final Train train;
  private final double reach;
  private final boolean merged;

  /** For each setting a weight that does not matter, less what each blink to come can add. */
  private final double[] floors;

  private final double[] mostPerNote;

  /** For each setting a weight that is too far behind at the blink that is being taken in. */
  private final double[] behind;

  private Link[] links = new Link[4 * MOST];

  /** How many chains there are. */
  private int count;

  /** For each setting the logarithm of how likely the blinks so far are as strays. */
  private double[] strays;

  /** Logarithm of how likely the blinks so far are by the best chain, under any setting. */
  private double best = Double.NEGATIVE_INFINITY;

  /** For each setting a weight that is too low. */
  private final double[] low;

  /** The score of the worst chain after the last blink. */
  private double lowest;

  /** How many of the chains end before the blink that is being taken in. */
  private int old;

  /**
   * Begins with no chain.
   *
   * @param sd timing error, seconds
   * @param merged whether chains that give the last blink to the same pulse, and differ only in
   *     what was long ago, go on as the likeliest of them with the weight of all
   * @param floors logarithm of a weight that does not matter, for each setting
   * @param mostPerNote the most that one more blink adds to a weight, for each setting
   */
  Beam(Train train, double sd, boolean merged, double[] floors, double[] mostPerNote) {
    this.train = train;
    this.reach = SAME_LINE * sd;
    this.merged = merged;
    this.floors = floors;
    this.mostPerNote = mostPerNote;
    this.behind = new double[floors.length];
    this.strays = new double[floors.length];
    this.low = new double[floors.length];
  }

  List<Link> links() {
    return Arrays.asList(links).subList(0, count);
  }

  /** A chain by its number. */
  Link link(int number) {
    return links[number];
  }

  /** How many of the chains end before the blink that is being taken in; they come first. */
  int old() {
    return old;
  }

  /**
   * Begins with one more blink.
   *
   * @param least logarithm of how likely the blinks up to it must be
   * @param strays for each setting the same of these blinks as strays
   */
  void next(int notesLeft, double least, double[] strays) {
    this.strays = strays;
    old = count;
    for (int s = 0; s < low.length; s++) {
      behind[s] = Math.max(least - strays[s], floors[s] - notesLeft * mostPerNote[s]);
    }
    takeBest();
  }

  /**
   * Looks for the best chain, and takes as too low what is far below it. Where the beam was full,
   * who is no better than its last was soon falls out anyway.
   */
  private void takeBest() {
    double below = old < MOST ? DROP : Math.min(DROP, -lowest);
    best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      links[i].score = log(links[i]);
      best = Math.max(best, links[i].score);
    }
    for (int s = 0; s < low.length; s++) {
      low[s] = Math.max(best - strays[s] - below, behind[s]);
    }
  }

  /**
   * Logarithm of how likely a chain makes the blinks so far, under the setting that likes it most.
   */
  private double log(Link link) {
    double most = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < strays.length; s++) {
      most = Math.max(most, link.logs[s] + strays[s]);
    }
    return most + link.logLine;
  }

  /** Whether a chain of these weights plus this one would be dropped. */
  boolean isLow(double[] logs, double log) {
    for (int s = 0; s < low.length; s++) {
      if (logs[s] + log > low[s]) {
        return false;
      }
    }
    return true;
  }

  /** For each setting what, added to these weights and this one, is still too low. */
  void room(double[] logs, double log, double[] room) {
    for (int s = 0; s < low.length; s++) {
      room[s] = low[s] - logs[s] - log;
    }
  }

  /** Takes in a chain that gives a pulse to the blink that is being taken in. */
  void add(Link link) {
    if (count == links.length) {
      links = Arrays.copyOf(links, 2 * count);
    }
    links[count++] = link;
    double log = log(link);
    if (log > best) {
      best = log;
      for (int s = 0; s < low.length; s++) {
        low[s] = Math.max(low[s], best - strays[s] - DROP);
      }
    }
  }

  /** Drops what does not matter, and puts the best chain first, so that others are soon low. */
  void prune() {
    takeBest();
    int kept = 0;
    int fresh = 0;
    for (int i = 0; i < count; i++) {
      Link link = links[i];
      fresh = i == old ? kept : fresh;
      if (!isLow(link.logs, link.logLine) && !(merged && i >= old && isMerged(link, fresh, kept))) {
        links[kept++] = link;
      }
    }
    double least = kept > MOST ? leastOfMost(kept) : Double.NEGATIVE_INFINITY;
    lowest = 0;
    int all = kept;
    kept = 0;
    for (int i = 0; i < all; i++) {
      Link link = links[i];
      if (link.score < least) {
        continue;
      }
      lowest = Math.min(lowest, link.score - best);
      links[kept] = link;
      if (link.score > links[0].score) {
        links[kept] = links[0];
        links[0] = link;
      }
      kept++;
    }
    Arrays.fill(links, kept, count, null);
    count = kept;
  }

  /** The score of the last of the best chains. */
  private double leastOfMost(int kept) {
    double[] scores = new double[kept];
    for (int i = 0; i < kept; i++) {
      scores[i] = links[i].score;
    }
    return Largest.last(scores, MOST);
  }

  /** Merges a chain with one of these that it goes on with, if there is one. */
  private boolean isMerged(Link link, int from, int to) {
    for (int i = to - 1; i >= from; i--) {
      Link other = links[i];
      if (other.pulse == link.pulse && other.line.isNear(link.line, train.on(link.pulse), reach)) {
        links[i] = link.with(other);
        return true;
      }
    }
    return false;
  }

  /** Whether a chain so far, or one that begins later and weighs this, may yet matter. */
  boolean canReach(double begun) {
    for (int s = 0; s < strays.length; s++) {
      if (Math.max(begun, best - strays[s]) > behind[s]) {
        return true;
      }
    }
    return false;
  }

  /** Logarithm of how likely the blinks so far are at the best. */
  double front() {
    double front = best;
    for (double log : strays) {
      front = Math.max(front, log);
    }
    return front;
  }
}

package lampwise.decode;

import java.util.ArrayList;
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
  private static final double SAME_LINE = 0.7;

  private final Train train;
  private final double reach;
  private final boolean merged;

  /** For each setting a weight that does not matter, less what each blink to come can add. */
  private final double[] floors;

  private final double[] mostPerNote;

  /** For each setting a weight that is too far behind at the blink that is being taken in. */
  private final double[] behind;

  private final List<Link> links = new ArrayList<>(4 * MOST);

  /** For each setting the weight of the best chain, and one that is too low. */
  private final double[] best;

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
    this.best = new double[floors.length];
    this.low = new double[floors.length];
    Arrays.fill(best, Double.NEGATIVE_INFINITY);
  }

  List<Link> links() {
    return links;
  }

  /** How many of the chains end before the blink that is being taken in; they come first. */
  int old() {
    return old;
  }

  /**
   * Begins with one more blink.
   *
   * @param front logarithm of how likely the blinks up to it are at the best
   * @param strays for each setting the same of these blinks as strays
   */
  void next(int notesLeft, double front, double[] strays) {
    old = links.size();
    // Where the beam is full, who is not better than the last of it would fall out again.
    double least = old < MOST ? -DROP : Math.max(-DROP, lowest);
    for (int s = 0; s < low.length; s++) {
      behind[s] = Math.max(front - strays[s] - Sums.BEHIND, floors[s] - notesLeft * mostPerNote[s]);
      low[s] = Math.max(best[s] + least, behind[s]);
    }
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

  /** Takes in a chain that gives a pulse to the blink that is being taken in. */
  void add(Link link) {
    links.add(link);
    for (int s = 0; s < low.length; s++) {
      double log = link.weight(s);
      if (log > best[s]) {
        best[s] = log;
        low[s] = Math.max(low[s], log - DROP);
      }
    }
  }

  /** Drops what does not matter. */
  void prune() {
    int kept = 0;
    int fresh = 0;
    for (int i = 0; i < links.size(); i++) {
      Link link = links.get(i);
      if (i == old) {
        fresh = kept;
      }
      if (isLow(link.logs, link.logLine)) {
        continue;
      }
      double score = Double.NEGATIVE_INFINITY;
      for (int s = 0; s < best.length; s++) {
        score = Math.max(score, link.weight(s) - best[s]);
      }
      link.score = score;
      if (!(merged && i >= old && isMerged(link, fresh, kept))) {
        links.set(kept++, link);
      }
    }
    links.subList(kept, links.size()).clear();
    if (kept > MOST) {
      double[] scores = new double[kept];
      for (int i = 0; i < kept; i++) {
        scores[i] = links.get(i).score;
      }
      double least = Largest.last(scores, MOST);
      links.removeIf(link -> link.score < least);
    }
    bestFirst();
  }

  /** Notes the best weights, and puts the best chain first, so that the others are soon low. */
  private void bestFirst() {
    Arrays.fill(best, Double.NEGATIVE_INFINITY);
    int first = 0;
    lowest = 0;
    for (int i = 0; i < links.size(); i++) {
      Link link = links.get(i);
      for (int s = 0; s < best.length; s++) {
        best[s] = Math.max(best[s], link.weight(s));
      }
      first = link.score > links.get(first).score ? i : first;
      lowest = Math.min(lowest, link.score);
    }
    if (first > 0) {
      Link link = links.get(first);
      links.set(first, links.get(0));
      links.set(0, link);
    }
  }

  /** Merges a chain with one of these that it goes on with, if there is one. */
  private boolean isMerged(Link link, int from, int to) {
    for (int i = to - 1; i >= from; i--) {
      Link other = links.get(i);
      if (other.pulse == link.pulse && other.line.isNear(link.line, train.on(link.pulse), reach)) {
        links.set(i, link.with(other));
        return true;
      }
    }
    return false;
  }

  /** Whether a chain so far, or one that begins later and weighs this, may yet matter. */
  boolean canReach(double begun) {
    for (int s = 0; s < best.length; s++) {
      if (Math.max(begun, best[s]) > behind[s]) {
        return true;
      }
    }
    return false;
  }

  /** Logarithm of how likely the blinks so far are at the best. */
  double front(double[] strays) {
    double front = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < best.length; s++) {
      front = Math.max(front, Math.max(0, best[s]) + strays[s]);
    }
    return front;
  }
}

package lampwise.cli;

import java.util.List;
import java.util.Optional;
import lampwise.sim.score.Cell;
import lampwise.sim.score.Interval;
import lampwise.sim.score.Outcome;
import lampwise.sim.score.Tally;

/**
 * What became of one cell's recordings.
 *
 * @param cell the cell
 * @param outcomes the decoder's, by the recordings' numbers
 * @param reference the reference decoder's of the same recordings; empty without one
 */
record CellScore(Cell cell, List<Outcome> outcomes, Optional<List<Outcome>> reference) {
  /** The observer and the window. */
  String name() {
    return cell.observer() + " " + Fixed.of(cell.seconds(), 3, 0) + " s";
  }

  Tally tally() {
    return Tally.of(outcomes);
  }

  Optional<Tally> referenceTally() {
    return reference.map(Tally::of);
  }

  /** By how much the decoder is more often right than the reference. */
  Optional<Interval> difference() {
    return reference.map(others -> Interval.difference(outcomes, others));
  }
}

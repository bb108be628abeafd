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
 * @param told of the same recordings those of the reference that is told what is unlisted; empty
 *     without one
 * @param same those of the reference that has the same candidates; empty without one
 */
record CellScore(
    Cell cell, List<Outcome> outcomes, Optional<List<Outcome>> told, Optional<List<Outcome>> same) {
  /** The observer and the window. */
  String name() {
    return cell.observer() + " " + Fixed.of(cell.seconds(), 3, 0) + " s";
  }

  Tally tally() {
    return Tally.of(outcomes);
  }

  /** The reference to go by: with the same candidates if there is one. */
  Optional<List<Outcome>> reference() {
    return same.or(() -> told);
  }

  /** By how much the decoder is more often right than others on the same recordings. */
  Optional<Interval> difference(Optional<List<Outcome>> others) {
    return others.map(other -> Interval.difference(outcomes, other));
  }
}

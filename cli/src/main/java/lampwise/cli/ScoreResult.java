package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import lampwise.sim.score.Calibration;
import lampwise.sim.score.Interval;
import lampwise.sim.score.Outcome;
import lampwise.sim.score.Tally;

/**
 * All that a run of the command score found.
 *
 * @param sheet the sheet's title
 * @param invented whether the sheet is
 * @param decoder the name of the decoder's class
 * @param seed the seed
 * @param count how many recordings each cell has
 * @param own what the observer called own is made of; empty without one
 * @param unlisted whether only rhythms were shown that the sheet does not list
 * @param cells the cells in order
 */
record ScoreResult(
    String sheet,
    boolean invented,
    String decoder,
    long seed,
    int count,
    Optional<String> own,
    boolean unlisted,
    List<CellScore> cells) {

  /** The outcomes of all cells. */
  List<Outcome> outcomes() {
    return cells.stream().flatMap(cell -> cell.outcomes().stream()).toList();
  }

  Tally tally() {
    return Tally.of(outcomes());
  }

  Calibration calibration() {
    return Calibration.of(outcomes(), seed);
  }

  /** Of the cells with this reference: the decoder's outcomes, and the reference's of the same. */
  Compared compared(Function<CellScore, Optional<List<Outcome>>> which) {
    List<Outcome> own = new ArrayList<>();
    List<Outcome> reference = new ArrayList<>();
    for (CellScore cell : cells) {
      which
          .apply(cell)
          .ifPresent(
              others -> {
                own.addAll(cell.outcomes());
                reference.addAll(others);
              });
    }
    return new Compared(own, reference);
  }

  /** Outcomes of two decoders, of the same recordings in the same order. */
  record Compared(List<Outcome> own, List<Outcome> reference) {
    /** Only the recordings whose truth is one of the sheet's states, or only the others. */
    Compared listed(boolean listed) {
      return new Compared(only(own, listed), only(reference, listed));
    }

    /** The decoder's log loss less the reference's, paired; NaN if there are no recordings. */
    Interval logLossGap() {
      return Interval.mean(
          IntStream.range(0, own.size())
              .mapToDouble(i -> own.get(i).logLoss() - reference.get(i).logLoss())
              .toArray());
    }

    private static List<Outcome> only(List<Outcome> outcomes, boolean listed) {
      return outcomes.stream().filter(o -> o.isOfListedState() == listed).toList();
    }
  }
}

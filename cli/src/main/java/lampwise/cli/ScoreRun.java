package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import lampwise.decode.Decoder;
import lampwise.light.RecordingException;
import lampwise.sim.LightSensor;
import lampwise.sim.Mix;
import lampwise.sim.Person;
import lampwise.sim.SimulationException;
import lampwise.sim.score.Cell;
import lampwise.sim.score.LightReference;
import lampwise.sim.score.Outcome;
import lampwise.sim.score.Reference;
import lampwise.sim.score.Score;

/** Scores one cell after the other, the recordings of each on all cores. */
final class ScoreRun {
  private final Mix mix;
  private final long seed;
  private final int count;
  private final Score score;
  private final Progress progress;
  private final AtomicInteger done = new AtomicInteger();

  /** Gets ready; {@code progress} is told of every recording that is read. */
  ScoreRun(Mix mix, long seed, int count, Progress progress) {
    this.mix = mix;
    this.seed = seed;
    this.count = count;
    this.score = new Score(mix, seed);
    this.progress = progress;
  }

  /** A decoder failed, or a recording cannot be made; the message is one line. */
  static final class Failed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Failed(String message, RuntimeException cause) {
      super(message, cause);
    }
  }

  /**
   * Scores the cells.
   *
   * @param reference the kept answers of the reference decoder; empty if it is not asked for
   * @throws Failed if a decoder throws what it must not
   * @throws SimulationException if the reference does not cover the sheet or the observer
   */
  List<CellScore> cells(List<Cell> cells, Decoder decoder, Optional<StoredReference> reference) {
    List<CellScore> scores = new ArrayList<>();
    for (Cell cell : cells) {
      Optional<List<Outcome>> others = Optional.empty();
      if (reference.isPresent()) {
        IntFunction<double[]> best = best(cell);
        String key = StoredReference.key(mix, cell, seed);
        StoredReference stored = reference.get();
        others = Optional.of(all(number -> reference(best, stored, key, cell, number)));
      }
      scores.add(new CellScore(cell, all(number -> own(decoder, cell, number)), others));
    }
    return scores;
  }

  /** The best possible answers to a cell's recordings, by their numbers. */
  private IntFunction<double[]> best(Cell cell) {
    if (cell.watching() instanceof Person person) {
      Reference reference = new Reference(mix, person);
      return number -> score.answer(reference, cell, number);
    }
    LightReference reference = new LightReference(mix, (LightSensor) cell.watching());
    return number -> score.answer(reference, cell, number);
  }

  private List<Outcome> all(IntFunction<Outcome> one) {
    return IntStream.range(0, count).parallel().mapToObj(number -> counted(one, number)).toList();
  }

  private Outcome counted(IntFunction<Outcome> one, int number) {
    Outcome outcome = one.apply(number);
    synchronized (progress) {
      progress.done(done.incrementAndGet());
    }
    return outcome;
  }

  private Outcome reference(
      IntFunction<double[]> best, StoredReference stored, String key, Cell cell, int number) {
    Optional<double[]> kept = stored.answer(key, number);
    double[] answer = kept.isPresent() ? kept.get() : best.apply(number);
    if (kept.isEmpty()) {
      stored.keep(key, number, answer);
    }
    return score.outcome(answer, cell, number);
  }

  private Outcome own(Decoder decoder, Cell cell, int number) {
    try {
      return score.outcome(decoder, cell, number);
    } catch (SimulationException | RecordingException e) {
      throw e;
    } catch (RuntimeException e) {
      throw new Failed(
          decoder.getClass().getName()
              + " failed on recording "
              + number
              + " of "
              + new CellScore(cell, List.of(), Optional.empty()).name()
              + ": "
              + e,
          e);
    }
  }
}

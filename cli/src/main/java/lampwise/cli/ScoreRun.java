package lampwise.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import lampwise.cli.StoredReference.Kind;
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
   * @param reference the kept answers of the reference decoders; empty if they are not asked for
   * @throws Failed if a decoder throws what it must not
   * @throws SimulationException if the reference does not cover the sheet or the observer
   */
  List<CellScore> cells(List<Cell> cells, Decoder decoder, Optional<StoredReference> reference) {
    List<CellScore> scores = new ArrayList<>();
    for (Cell cell : cells) {
      Map<Kind, List<Outcome>> others =
          reference.map(stored -> others(cell, stored)).orElse(Map.of());
      Optional<List<Outcome>> told = Optional.ofNullable(others.get(Kind.TOLD));
      Optional<List<Outcome>> same = Optional.ofNullable(others.get(Kind.SAME));
      scores.add(new CellScore(cell, all(number -> own(decoder, cell, number)), told, same));
    }
    return scores;
  }

  /** What the references make of a cell's recordings; of a light sensor's only the one is told. */
  private Map<Kind, List<Outcome>> others(Cell cell, StoredReference stored) {
    IntFunction<Map<Kind, double[]>> best = best(cell);
    List<Kind> kinds =
        cell.watching() instanceof Person ? List.of(Kind.values()) : List.of(Kind.TOLD);
    String key = StoredReference.key(mix, cell, seed);
    List<Map<Kind, double[]>> answers = all(number -> answers(best, stored, key, kinds, number));
    Map<Kind, List<Outcome>> outcomes = new EnumMap<>(Kind.class);
    for (Kind kind : kinds) {
      outcomes.put(
          kind,
          IntStream.range(0, count)
              .parallel()
              .mapToObj(
                  number ->
                      score.outcome(
                          Objects.requireNonNull(answers.get(number).get(kind)), cell, number))
              .toList());
    }
    return outcomes;
  }

  /** The best possible answers to a cell's recordings, by their numbers. */
  private IntFunction<Map<Kind, double[]>> best(Cell cell) {
    if (cell.watching() instanceof Person person) {
      Reference reference = new Reference(mix, person);
      return number -> {
        Reference.Answers answers = score.answer(reference, cell, number);
        return Map.of(Kind.TOLD, answers.told(), Kind.SAME, answers.same());
      };
    }
    LightReference reference = new LightReference(mix, (LightSensor) cell.watching());
    return number -> Map.of(Kind.TOLD, score.answer(reference, cell, number));
  }

  private <T> List<T> all(IntFunction<T> one) {
    return IntStream.range(0, count).parallel().mapToObj(number -> counted(one, number)).toList();
  }

  private <T> T counted(IntFunction<T> one, int number) {
    T value = one.apply(number);
    synchronized (progress) {
      progress.done(done.incrementAndGet());
    }
    return value;
  }

  private static Map<Kind, double[]> answers(
      IntFunction<Map<Kind, double[]>> best,
      StoredReference stored,
      String key,
      List<Kind> kinds,
      int number) {
    Map<Kind, double[]> answers = new EnumMap<>(Kind.class);
    for (Kind kind : kinds) {
      stored.answer(key, kind, number).ifPresent(kept -> answers.put(kind, kept));
    }
    if (answers.size() < kinds.size()) {
      answers.putAll(best.apply(number));
      answers.forEach((kind, answer) -> stored.keep(key, kind, number, answer));
    }
    return answers;
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
              + new CellScore(cell, List.of(), Optional.empty(), Optional.empty()).name()
              + ": "
              + e,
          e);
    }
  }
}

package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.light.BlinkLog;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.Labelled;
import lampwise.sim.Scene;
import lampwise.sim.Simulator;

/**
 * Draws recordings and compares what decoders make of them with the truth. A recording depends on
 * the mix, the seed, the cell and its number alone, so that every decoder sees the same ones.
 */
public final class Score {
  private final Mix mix;
  private final long seed;

  /**
   * A score on a mix.
   *
   * @param mix what is shown
   * @param seed the seed of the recordings
   */
  public Score(Mix mix, long seed) {
    this.mix = mix;
    this.seed = seed;
  }

  /**
   * One of a cell's recordings.
   *
   * @param cell the cell
   * @param number the recording's number, from 0
   * @return the recording and its truth
   */
  public Labelled recording(Cell cell, int number) {
    Chance chance =
        Chance.of(seed).branch(cell.observer()).branch((long) (1000 * cell.seconds())).branch(number);
    Act act = mix.draw(chance.branch("act"));
    return Simulator.record(
        Scene.of(mix.sheet(), act, cell.seconds()), cell.watching(), chance);
  }

  /**
   * What a decoder makes of a cell's recordings; they are decoded side by side on all cores.
   *
   * @param decoder the decoder
   * @param cell the cell
   * @param from the first recording's number
   * @param to the number after the last one
   * @param done told of each recording that is done, from any thread
   * @return the outcomes in order
   */
  public List<Outcome> outcomes(
      Decoder decoder, Cell cell, int from, int to, Consumer<Integer> done) {
    return IntStream.range(from, to)
        .parallel()
        .mapToObj(
            number -> {
              Labelled labelled = recording(cell, number);
              Reading reading = decoder.decode(mix.sheet(), List.of(labelled.recording()));
              done.accept(number);
              return Outcome.of(labelled.truth().state(), reading);
            })
        .toList();
  }

  /**
   * The same for the reference decoder.
   *
   * @param reference the reference decoder for this mix and the cell's observer
   * @param cell the cell
   * @param from the first recording's number
   * @param to the number after the last one
   * @param done told of each recording that is done, from any thread
   * @return the outcomes in order; a candidate of at least 0.95 counts as decoded
   */
  public List<Outcome> outcomes(
      Reference reference, Cell cell, int from, int to, Consumer<Integer> done) {
    List<String> names = new ArrayList<>(mix.sheet().states().stream().map(LampState::name).toList());
    names.add(CodeSheet.UNLISTED);
    names.add(CodeSheet.NO_RHYTHM);
    return IntStream.range(from, to)
        .parallel()
        .mapToObj(
            number -> {
              Labelled labelled = recording(cell, number);
              double[] chances = reference.probabilities((BlinkLog) labelled.recording());
              done.accept(number);
              return Outcome.of(labelled.truth().state(), names, chances);
            })
        .toList();
  }
}

package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import lampwise.decode.Decoder;
import lampwise.light.BlinkLog;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Chance;
import lampwise.sim.Labelled;
import lampwise.sim.LightSensor;
import lampwise.sim.Mix;
import lampwise.sim.Scene;
import lampwise.sim.Simulator;

/**
 * Draws recordings and compares what decoders make of them with the truth. A recording depends on
 * the mix, the seed, the cell and its number alone, so that every decoder sees the same ones, in
 * any order and from any thread.
 */
public final class Score {
  private final Mix mix;
  private final long seed;
  private final List<String> names;

  /**
   * A score on a mix.
   *
   * @param mix what is shown
   * @param seed the seed of the recordings
   */
  public Score(Mix mix, long seed) {
    this.mix = mix;
    this.seed = seed;
    List<String> all = new ArrayList<>();
    mix.sheet().states().stream().map(LampState::name).forEach(all::add);
    all.add(CodeSheet.UNLISTED);
    all.add(CodeSheet.NO_RHYTHM);
    this.names = List.copyOf(all);
  }

  /**
   * All that may be the truth.
   *
   * @return the sheet's states in its order, then {@code unlisted}, then {@code no-rhythm}
   */
  public List<String> names() {
    return names;
  }

  /**
   * One of a cell's recordings.
   *
   * @param cell the cell
   * @param number the recording's number, from 0
   * @return the recording and its truth
   */
  public Labelled recording(Cell cell, int number) {
    Chance chance = chance(cell, number);
    return Simulator.record(scene(cell, chance), cell.watching(), chance);
  }

  private Chance chance(Cell cell, int number) {
    long millis = Math.round(1000 * cell.seconds());
    return Chance.of(seed).branch(cell.observer()).branch(millis).branch(number);
  }

  private Scene scene(Cell cell, Chance chance) {
    return mix.draw(cell.seconds(), chance.branch("scene"));
  }

  /**
   * What a decoder makes of a recording.
   *
   * @param decoder the decoder
   * @param cell the cell
   * @param number the recording's number, from 0
   * @return the outcome
   */
  public Outcome outcome(Decoder decoder, Cell cell, int number) {
    Labelled labelled = recording(cell, number);
    return Outcome.of(
        labelled.truth().state(), decoder.decode(mix.sheet(), List.of(labelled.recording())));
  }

  /**
   * The reference decoders' answers to a person's recording.
   *
   * @param reference the reference decoder for this mix and the cell's person
   * @param cell the cell; a person who taps watches
   * @param number the recording's number, from 0
   * @return for each reference the probability of each of {@link #names()}
   */
  public Reference.Answers answer(Reference reference, Cell cell, int number) {
    return reference.probabilities((BlinkLog) recording(cell, number).recording());
  }

  /**
   * The reference's answer to a light sensor's recording: to all that the sensor measured.
   *
   * @param reference the reference for this mix and the cell's sensor
   * @param cell the cell; a light sensor watches
   * @param number the recording's number, from 0
   * @return the probability of each of {@link #names()}
   */
  public double[] answer(LightReference reference, Cell cell, int number) {
    Chance chance = chance(cell, number);
    return reference.probabilities(
        Simulator.measured(scene(cell, chance), (LightSensor) cell.watching(), chance));
  }

  /**
   * What bare probabilities are worth; a listed state of at least 0.95 counts as decoded.
   *
   * @param probabilities the probability of each of {@link #names()}
   * @param cell the cell
   * @param number the recording's number, from 0
   * @return the outcome
   */
  public Outcome outcome(double[] probabilities, Cell cell, int number) {
    return Outcome.of(recording(cell, number).truth().state(), names, probabilities);
  }
}

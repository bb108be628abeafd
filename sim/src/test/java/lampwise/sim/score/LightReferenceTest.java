package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import lampwise.decode.LampDecoder;
import lampwise.light.Window;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.LightSensor;
import lampwise.sim.Measured;
import lampwise.sim.Mix;
import lampwise.sim.PlainSheet;
import lampwise.sim.Presets;
import lampwise.sim.Scene;
import lampwise.sim.SimulationException;
import lampwise.sim.Simulator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LightReferenceTest {
  private static final Mix BENCH = Bench.mix(Bench.sheet());

  private static LampState state(String phrase) {
    return PlainSheet.state("s" + phrase.replaceAll("[^a-z]+", "-"), phrase, Seen.ALWAYS, 1);
  }

  private static Mix only(OptionalDouble blink, String... phrases) {
    List<LampState> states = Arrays.stream(phrases).map(LightReferenceTest::state).toList();
    return new Mix(PlainSheet.of(0, blink, states), List.of(), List.of(), 0, 0);
  }

  private static Mix only(String... phrases) {
    return only(OptionalDouble.of(0.1), phrases);
  }

  private static Measured still(double seconds, double level) {
    List<Measured.Value> values = new ArrayList<>();
    for (int i = 0; i < 10 * seconds; i++) {
      values.add(new Measured.Value(i / 10.0, (i + 1) / 10.0, level, 150));
    }
    return new Measured(new Window(0, seconds), values);
  }

  /**
   * Dark or steady, four values of 151 lux in a room of 150, lamp 4, noise 2, steps of 2.4: the
   * variance is 4 + 2.4^2 / 12 = 4.48, and steady less dark 4 (1 * 4 - 8) / 4.48 = -16 / 4.48.
   */
  @Test
  void darkAgainstSteadyByHand() {
    LightSensor sensor =
        LightSensor.meter().with("lamp-lux", 4).with("noise-lux", 2).with("step-lux", 2.4);
    double[] chances =
        new LightReference(only("dark", "steady"), sensor).probabilities(still(0.4, 151));
    double steady = Math.exp(-16 / 4.48);
    assertArrayEquals(new double[] {1 / (1 + steady), steady / (1 + steady), 0, 0}, chances, 1e-9);
  }

  /**
   * A bright lamp that blinks every 20 s for 0.1 s or is dark, watched for 10 s, and nothing seen:
   * no part of a blink is in the window in 9.9 of 20 s. With even weights dark has 1 / (1 + 0.495).
   */
  @Test
  void noBlinkInHalfACycleByHand() {
    double[] chances =
        new LightReference(only("1 blink every 20 s", "dark"), LightSensor.fast())
            .probabilities(still(10, 150));
    assertEquals(1 / 1.495, chances[1], 2e-3);
    assertEquals(1, chances[0] + chances[1], 1e-12);
  }

  private static Measured recording(String phrase, LightSensor sensor, double seconds, int seed) {
    Act act = Act.of(state(phrase));
    return Simulator.measured(
        Scene.of(Bench.sheet(), act, seconds), sensor, Chance.of(Bench.SEED).branch(seed));
  }

  /** Without light, only what was probable before is left. */
  @Test
  void aLampWithoutLightLeavesThePriors() {
    LightSensor sensor = LightSensor.meter().with("lamp-lux", 0);
    double[] chances =
        new LightReference(BENCH, sensor)
            .probabilities(recording("1 blink every 3.4 s", sensor, 30, 1));
    assertArrayEquals(BENCH.priors(), chances, 1e-6);
  }

  @ParameterizedTest
  @ValueSource(strings = {"fast", "meter"})
  void aBrightLampIsCertain(String name) {
    LightSensor sensor = (LightSensor) Presets.named(name).with("lamp-lux", 100);
    LightReference reference = new LightReference(BENCH, sensor);
    List<LampState> states = Bench.sheet().states();
    for (int i = 0; i < states.size(); i++) {
      Scene scene = Scene.of(Bench.sheet(), Act.of(states.get(i)), 30);
      double[] chances = reference.probabilities(Simulator.measured(scene, sensor, Chance.of(i)));
      assertTrue(chances[i] > 0.999, states.get(i).name() + ": " + chances[i]);
    }
    Scene unlisted = Scene.of(Bench.sheet(), Act.unlisted(BENCH.unlisted().get(7)), 30);
    Scene random = Scene.of(Bench.sheet(), Act.random(1), 30);
    for (Scene scene : List.of(unlisted, random)) {
      double[] chances = reference.probabilities(Simulator.measured(scene, sensor, Chance.of(5)));
      int place = states.size() + (scene == random ? 1 : 0);
      assertTrue(chances[place] > 0.999, place + ": " + chances[place]);
    }
  }

  /** Where the lamp is bright and the decoder is certain, the bound says the same. */
  @ParameterizedTest
  @CsvSource({"fast, 25", "meter, 45"})
  void itAgreesWithTheDecoder(String name, double seconds) {
    Score score = new Score(BENCH, 99);
    Cell cell = new Cell(name, Presets.named(name), seconds);
    LightReference reference = new LightReference(BENCH, (LightSensor) cell.watching());
    LampDecoder decoder = new LampDecoder();
    int certain = 0;
    for (int i = 0; i < 10; i++) {
      Outcome own = score.outcome(decoder, cell, i);
      Outcome bound = score.outcome(score.answer(reference, cell, i), cell, i);
      if (own.answer().isPresent()) {
        certain++;
        assertEquals(own.top(), bound.top(), name + " " + i);
        assertEquals(own.topProbability(), bound.topProbability(), 0.05, name + " " + i);
      }
    }
    assertTrue(certain >= 7, "only " + certain);
  }

  @Test
  void aShiftOfAllTimesChangesNothing() {
    LightSensor sensor = LightSensor.slow().with("lamp-lux", 9);
    Measured at0 = recording("2 blinks 0.3 s apart every 8 s", sensor, 30, 3);
    List<Measured.Value> later = new ArrayList<>();
    for (Measured.Value value : at0.values()) {
      later.add(
          new Measured.Value(
              value.fromSeconds() + 4096,
              value.toSeconds() + 4096,
              value.level(),
              value.roomLux()));
    }
    LightReference reference = new LightReference(BENCH, sensor);
    double[] chances = reference.probabilities(at0);
    assertArrayEquals(
        chances, reference.probabilities(new Measured(new Window(4096, 4126), later)), 1e-6);
    assertTrue(Arrays.stream(chances).max().orElseThrow() < 0.999, Arrays.toString(chances));
  }

  /** Its own recordings are right as often as it says: five standard deviations, fixed seed. */
  @ParameterizedTest
  @CsvSource({"faint, 2.5, 10, 8", "slow, 25, 15, 40"})
  void itIsCalibrated(String name, double lamp, double seconds, int count) {
    Score score = new Score(BENCH, Bench.SEED);
    Cell cell = new Cell(name, Presets.named(name).with("lamp-lux", lamp), seconds);
    LightReference reference = new LightReference(BENCH, (LightSensor) cell.watching());
    List<Outcome> outcomes =
        IntStream.range(0, count)
            .parallel()
            .mapToObj(n -> score.outcome(score.answer(reference, cell, n), cell, n))
            .toList();
    long right = Stated.assertRightAsOftenAsStated(outcomes);
    assertTrue(right < 0.95 * count && right > 0.4 * count, "shows nothing: " + right);
  }

  @Test
  void whatIsNotCoveredIsSaid() {
    LightSensor sensor = LightSensor.meter();
    List<String> said = new ArrayList<>();
    for (Executable wrong :
        List.<Executable>of(
            () -> new LightReference(only("3 blinks once"), sensor),
            () -> new LightReference(only(OptionalDouble.empty(), "dark"), sensor),
            () -> new LightReference(BENCH, sensor.with("full-scale-lux", 300)),
            () -> new LightReference(BENCH, sensor.with("auto-range-lux", 300)),
            () ->
                new LightReference(BENCH, sensor.with("noise-lux", 40))
                    .probabilities(still(10, 150)))) {
      said.add(assertThrows(SimulationException.class, wrong).getMessage());
    }
    assertEquals(
        List.of(
            "the reference decoder does not cover \"once\": 3 blinks once",
            "the reference for light sensors needs a sheet that says how long a blink is",
            "the reference for light sensors does not cover full-scale-lux over 0",
            "the reference for light sensors does not cover auto-range-lux over 0",
            "the reference for light sensors does not cover a room below 5 deviations of the"
                + " noise"),
        said);
  }
}

package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.LightSensor;
import lampwise.sim.Scene;
import lampwise.sim.Simulator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Levels at the top of a sensor's range: the room's light hides the lamp, its own does not. */
class SaturatedSensorTest {
  private static final double SECONDS = 60;
  private static final int EACH = 4;
  private static final CodeSheet SHEET = Bench.sheet();

  private static Reading read(LightSensor sensor, String name, long seed) {
    LampState state = SHEET.state(name).orElseThrow();
    Scene scene =
        new Scene(
            new Window(0, SECONDS),
            List.of(Act.of(state)),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(0.03, 0),
            OptionalDouble.of(0.09));
    return new LampDecoder()
        .decode(SHEET, List.of(Simulator.record(scene, sensor, seed).recording()));
  }

  private static List<String> notes(Reading reading) {
    return reading.observations().get(0).notes().stream()
        .filter(note -> note.contains("top of its range"))
        .toList();
  }

  private static void assertDecoded(String state, Reading reading, String what) {
    Verdict.Decoded decoded =
        assertInstanceOf(Verdict.Decoded.class, reading.verdict(), () -> what + reading);
    assertEquals(state, decoded.state(), what);
  }

  private static LightSensor sensor(double hz) {
    return LightSensor.fast()
        .with("rate-hz", hz)
        .with("averaging-s", Math.min(0.1, 0.5 / hz))
        .with("drift-lux", 0);
  }

  /** Dark at 150 lux, the lamp 200 lux brighter, the sensor's top at 300. */
  @ParameterizedTest
  @ValueSource(doubles = {50, 20})
  void aLampThatReachesTheTopIsRead(double hz) {
    LightSensor sensor = sensor(hz).with("lamp-lux", 200).with("full-scale-lux", 300);
    for (String state : List.of("tick", "pair", "rapid")) {
      for (long seed = 0; seed < EACH; seed++) {
        Reading reading = read(sensor, state, seed);
        assertDecoded(state, reading, state + " " + hz + " " + seed);
        assertEquals(List.of(), notes(reading), state);
      }
    }
  }

  /** The room's light is switched once, from or to far above the top. */
  @ParameterizedTest
  @ValueSource(doubles = {50, 20})
  void whatTheRoomHidesIsLeftOut(double hz) {
    LightSensor sensor =
        sensor(hz)
            .with("lamp-lux", 40)
            .with("room-lux", 2000)
            .with("full-scale-lux", 1500)
            .with("room-switch", 1);
    int read = 0;
    int hidden = 0;
    for (long seed = 0; seed < EACH; seed++) {
      Reading reading = read(sensor, "tick", seed);
      List<String> notes = notes(reading);
      hidden += notes.size();
      assertTrue(notes.size() <= 1, notes::toString);
      if (reading.verdict() instanceof Verdict.Decoded decoded) {
        assertEquals("tick", decoded.state(), "seed " + seed);
        read++;
      }
    }
    assertTrue(hidden >= EACH - 2 && read >= EACH / 2, hidden + " hidden, " + read + " read");
  }

  @Test
  void nothingIsReadAtTheTop() {
    LightSensor sensor = sensor(20).with("room-lux", 90_000).with("full-scale-lux", 65_535);
    Verdict.Unreadable verdict =
        assertInstanceOf(Verdict.Unreadable.class, read(sensor, "tick", 1).verdict());
    assertEquals("the sensor is at the top of its range for 100 % of the window", verdict.reason());
  }

  /** Dark is within the noise of the top: blinks are cut off, and no blink is no sign of dark. */
  @ParameterizedTest
  @ValueSource(doubles = {50, 20})
  void aDarkLevelAtTheTopIsNotReadAsDark(double hz) {
    LightSensor sensor = sensor(hz).with("lamp-lux", 40).with("full-scale-lux", 150.3);
    for (long seed = 0; seed < EACH; seed++) {
      Reading reading = read(sensor, "tick", seed);
      assertInstanceOf(Verdict.Unreadable.class, reading.verdict(), "seed " + seed);
    }
  }

  /** The greatest of rounded levels is common where there is little noise: that is no top. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.2, 0.5, 1, 3})
  void roundedLevelsHaveNoTop(double noise) {
    for (double step : new double[] {0.1, 1}) {
      for (int onChange = 0; onChange <= 1; onChange++) {
        LightSensor sensor =
            sensor(10)
                .with("noise-lux", noise)
                .with("step-lux", step)
                .with("on-change", onChange)
                .with("shadows", 3)
                .with("drift-lux", 5);
        for (String state : List.of("dark", "tick")) {
          assertEquals(List.of(), notes(read(sensor, state, 3)), state);
        }
      }
    }
  }

  @Test
  void theBenchSensorsHaveNoTop() {
    for (LightSensor sensor :
        List.of(LightSensor.meter(), LightSensor.slow(), LightSensor.camera())) {
      for (long seed = 0; seed < EACH; seed++) {
        Reading reading = read(sensor, "tick", seed);
        assertFalse(reading.observations().isEmpty());
        assertEquals(List.of(), notes(reading), sensor.toString());
      }
    }
  }
}

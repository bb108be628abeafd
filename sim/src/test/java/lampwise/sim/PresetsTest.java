package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PresetsTest {
  @Test
  void nineNamesInOrder() {
    assertEquals(
        List.of(
            "exact", "careful", "hurried", "careless", "fast", "camera", "meter", "slow", "faint"),
        Presets.names());
  }

  /** The people of the project's bench; every other effect is off. */
  @ParameterizedTest
  @CsvSource({
    "exact,    0.01, 0,    0,    0,   0.001",
    "careful,  0.04, 0,    0.03, 0.3, 0.01",
    "hurried,  0.08, 0.1,  0.1,  1,   0.01",
    "careless, 0.08, 0.15, 0.2,  3,   0.01",
  })
  void peopleAreThoseOfTheBench(
      String name, double timing, double late, double missed, double strays, double rounding) {
    Person person = (Person) Presets.named(name);
    assertEquals(Person.Notes.TAPS, person.notes());
    Map<String, Double> settings = new TreeMap<>(person.settings());
    assertEquals(timing, settings.remove("timing-sd-s"));
    assertEquals(late, settings.remove("first-late-s"));
    assertEquals(missed, settings.remove("missed"));
    assertEquals(strays, settings.remove("strays-per-minute"));
    assertEquals(rounding, settings.remove("rounding-s"));
    assertEquals(1, settings.remove("slowest-burst-gap-s"));
    settings.forEach((setting, value) -> assertEquals(0, value, setting));
    assertEquals(
        List.of(timing, late, missed, strays, rounding, 1.0),
        List.of(
            person.timingSd(),
            person.firstLateSeconds(),
            person.missed(),
            person.straysPerMinute(),
            person.roundingSeconds(),
            person.burstGapSeconds()));
  }

  @Test
  void sensorsAreTheirOwn() {
    assertEquals(LightSensor.fast(), Presets.named("fast"));
    assertEquals(LightSensor.camera(), Presets.named("camera"));
    assertEquals(LightSensor.meter(), Presets.named("meter"));
    assertEquals(LightSensor.slow(), Presets.named("slow"));
    assertEquals(LightSensor.faint(), Presets.named("faint"));
  }

  @Test
  void anUnknownNameListsTheNearOnesAndAll() {
    SimulationException thrown =
        assertThrows(SimulationException.class, () -> Presets.named("hurry"));
    assertEquals(
        "there is no observer named hurry; known: exact, careful, hurried, careless, fast, camera,"
            + " meter, slow, faint",
        thrown.getMessage());
    thrown = assertThrows(SimulationException.class, () -> Presets.named("care"));
    assertEquals(
        "there is no observer named care; near: careful, careless; known: exact, careful, hurried,"
            + " careless, fast, camera, meter, slow, faint",
        thrown.getMessage());
  }
}

package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** What a sensor measured, beside what it wrote of that. */
class MeasuredTest {
  private static final Shown SHOWN =
      Watched.lamp(60, Watched.flashes(20, 0.3, 2.5, 0.5, Chance.of(1)));

  private static List<Measured.Value> values(LightSensor sensor, Shown shown) {
    return sensor.measured(shown, Chance.of(5)).values();
  }

  @Test
  void everyRowIsAValue() {
    LightSensor sensor = LightSensor.fast().with("shadows", 3);
    LightCurve curve = Watched.curve(sensor, SHOWN, 5);
    List<Measured.Value> values = values(sensor, SHOWN);
    assertEquals(curve.size(), values.size());
    for (int i = 0; i < curve.size(); i++) {
      assertEquals(curve.seconds(i), values.get(i).toSeconds(), 1e-6);
      assertEquals(curve.level(i), values.get(i).level());
      assertEquals(0.01, values.get(i).toSeconds() - values.get(i).fromSeconds(), 1e-12);
    }
  }

  /** A row written on change holds for the values up to the next one. */
  @Test
  void whatIsNotWrittenIsMeasured() {
    LightSensor sensor = LightSensor.meter();
    LightCurve curve = Watched.curve(sensor, SHOWN, 5);
    List<Measured.Value> values = values(sensor, SHOWN);
    assertTrue(values.size() > curve.size(), values.size() + " and " + curve.size());
    int row = 0;
    for (Measured.Value value : values) {
      while (row + 1 < curve.size() && curve.seconds(row + 1) <= value.toSeconds() + 1e-6) {
        row++;
      }
      assertEquals(curve.level(row), value.level(), "at " + value.toSeconds() + " s");
    }
    assertEquals(curve.size() - 1, row);
  }

  /** Without noise, a level is the room and the lamp's share. */
  @Test
  void theRoomIsTheRest() {
    LightSensor sensor =
        Watched.plain(10, 0.1)
            .with("jitter", 0.08)
            .with("shadows", 6)
            .with("flicker-lux", 5)
            .with("flicker-hz", 118)
            .with("drift-lux", 10);
    int lit = 0;
    for (Measured.Value value : values(sensor, SHOWN)) {
      double seconds =
          SHOWN.blinks().stream()
              .mapToDouble(
                  b ->
                      Math.min(b.offSeconds(), value.toSeconds())
                          - Math.max(b.onSeconds(), value.fromSeconds()))
              .filter(overlap -> overlap > 0)
              .sum();
      double lamp = 20 * seconds / (value.toSeconds() - value.fromSeconds());
      assertEquals(value.level(), value.roomLux() + lamp, 0.0006);
      lit += lamp > 0 ? 1 : 0;
    }
    assertTrue(lit > 50, "lit " + lit);
  }

  @Test
  void whatAHandHidesIsLeftOut() {
    LightSensor sensor = Watched.plain(10, 0.1).with("hands", 20);
    List<Measured.Value> all = values(sensor.with("hands", 0), SHOWN);
    List<Measured.Value> values = values(sensor, SHOWN);
    assertTrue(values.size() < all.size() - 50, values.size() + " of " + all.size());
    for (Measured.Value value : values) {
      assertEquals(150, value.roomLux(), 1e-9, "at " + value.toSeconds() + " s");
    }
  }

  @Test
  void lostAndRepeatedRowsAreNoValues() {
    LightSensor sensor = Watched.plain(50, 0.2).with("dropout", 0.3);
    List<Measured.Value> values = values(sensor, SHOWN);
    // 60 s at a pace of 0.2 s; a value is lost only where all of its ten rows are.
    assertEquals(299, values.size(), 1);
    LightSensor single = Watched.plain(5, 0.1);
    assertEquals(
        Watched.curve(single.with("dropout", 0.3), SHOWN, 5).size(),
        values(single.with("dropout", 0.3), SHOWN).size());
  }

  /** The simulator's values belong to its recording of the same arguments. */
  @Test
  void theSimulatorGivesTheSame() {
    Chance chance = Chance.of(9);
    LightSensor sensor = LightSensor.camera();
    Labelled labelled = Simulator.record(Watched.scene(20), sensor, chance);
    LightCurve curve = (LightCurve) labelled.recording();
    List<Double> levels = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      levels.add(curve.level(i));
    }
    Measured measured = Simulator.measured(Watched.scene(20), sensor, chance);
    assertEquals(levels, measured.values().stream().map(Measured.Value::level).toList());
    assertEquals(new Window(0, 20), measured.window());
  }
}

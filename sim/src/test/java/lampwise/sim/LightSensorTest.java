package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LightSensorTest {
  /** The project's bench: every number of its table of sensors. */
  @ParameterizedTest
  @CsvSource({
    "fast,   50, 0.010, 20, 150, 1,   0.1, 0, 3,  0, 0",
    "camera, 30, 0.016, 10, 120, 1.5, 0.1, 0, 25, 1, 0",
    "meter,  10, 0.100, 30, 200, 2,   1,   1, 15, 1, 4",
    "slow,   5,  0.150, 40, 300, 3,   1,   1, 30, 3, 6",
    "faint,  50, 0.010, 3,  150, 2,   0.1, 0, 5,  0, 0",
  })
  void presetsAreThoseOfTheBench(
      String name,
      double rate,
      double averaging,
      double lamp,
      double room,
      double noise,
      double step,
      double onChange,
      double drift,
      double shadows,
      double flicker) {
    Map<String, Double> expected = new LinkedHashMap<>();
    expected.put("rate-hz", rate);
    expected.put("jitter", 0.08);
    expected.put("averaging-s", averaging);
    expected.put("dead-s", 0.0);
    expected.put("dropout", 0.0);
    expected.put("lamp-lux", lamp);
    expected.put("room-lux", room);
    expected.put("noise-lux", noise);
    expected.put("step-lux", step);
    expected.put("full-scale-lux", 0.0);
    expected.put("auto-range-lux", 0.0);
    expected.put("on-change", onChange);
    expected.put("change-threshold", 0.0);
    expected.put("change-lux", 0.0);
    expected.put("drift-lux", drift);
    expected.put("flicker-hz", 120.0);
    expected.put("flicker-off-hz", 0.1);
    expected.put("flicker-lux", flicker);
    expected.put("shadows", shadows);
    expected.put("hands", 0.0);
    expected.put("room-switch", 0.0);
    expected.put("phone-target", 0.0);
    Map<String, Double> settings = preset(name).settings();
    assertEquals(expected, settings);
    assertEquals(List.copyOf(expected.keySet()), List.copyOf(settings.keySet()));
  }

  private static LightSensor preset(String name) {
    return switch (name) {
      case "fast" -> LightSensor.fast();
      case "camera" -> LightSensor.camera();
      case "meter" -> LightSensor.meter();
      case "slow" -> LightSensor.slow();
      default -> LightSensor.faint();
    };
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "noise-lux | -1   | noise-lux must be 0 to 10000, not -1",
        "noise-lux | NaN  | noise-lux must be 0 to 10000, not NaN",
        "rate-hz   | 0    | rate-hz must be 0.01 to 1000, not 0",
        "step-lux  | 0    | step-lux must be 0.001 to 1000, not 0",
        "on-change | 0.5  | on-change must be 0 or 1, not 0.5",
        "shadows   | 1e99 | shadows must be 0 to 30, not 1.0E99",
      })
  void settingsOutOfRange(String setting, double value, String message) {
    assertEquals(
        message,
        assertThrows(SimulationException.class, () -> LightSensor.fast().with(setting, value))
            .getMessage());
  }

  @Test
  void settingsThatDoNotExist() {
    String message =
        assertThrows(SimulationException.class, () -> LightSensor.fast().with("noise", 1))
            .getMessage();
    assertEquals(
        "there is no setting of a light sensor named noise; near: noise-lux; known: "
            + String.join(", ", LightSensor.fast().settings().keySet()),
        message);
  }

  @Test
  void aWindowTooShortForTheSampling() {
    LightSensor sensor = Watched.plain(0.1, 0.01);
    assertEquals(
        "a window of 20 s is too short for 0.1 rows a second: it must be at least 30.01 s",
        assertThrows(
                SimulationException.class, () -> sensor.observe(Watched.lamp(20), Chance.of(1)))
            .getMessage());
    for (int seed = 0; seed < 500; seed++) {
      LightSensor least = sensor.with("jitter", 0.3);
      assertTrue(Watched.curve(least, Watched.lamp(30.02), seed).size() >= 2);
    }
  }

  @Test
  void aWindowTooLong() {
    assertThrows(
        SimulationException.class,
        () -> Watched.plain(1000, 0.001).observe(Watched.lamp(1e6), Chance.of(1)));
  }

  @Test
  void aLampThatNeverGoesOff() {
    Shown shown = Watched.lamp(10, List.of(Blink.startingAt(3)));
    assertThrows(SimulationException.class, () -> LightSensor.fast().observe(shown, Chance.of(1)));
  }

  @Test
  void levelsAreRoomAndLamp() {
    LightCurve curve = Watched.curve(Watched.plain(50, 0.01), Watched.lamp(10, 4, 6), 5);
    for (int i = 0; i < curve.size(); i++) {
      double at = curve.seconds(i);
      double lit = Math.min(6, at) - Math.max(4, at - 0.01);
      assertEquals(150 + 20 * Math.max(0, lit) / 0.01, curve.level(i), 0.003, "at " + at);
    }
    assertTrue(curve.size() >= 498, "rows: " + curve.size());
    assertEquals(curve.seconds(0), curve.window().orElseThrow().fromSeconds());
  }

  @Test
  void theSameSeedGivesTheSame() {
    Shown shown = Watched.lamp(60, 10, 10.1, 20, 20.1);
    for (String name : List.of("fast", "camera", "meter", "slow", "faint")) {
      assertEquals(
          Watched.curve(preset(name), shown, 11), Watched.curve(preset(name), shown, 11), name);
      assertNotEquals(
          Watched.curve(preset(name), shown, 11), Watched.curve(preset(name), shown, 12), name);
    }
  }

  @Test
  void oneEffectLeavesTheOthersAsTheyWere() {
    Shown shown = Watched.lamp(60, 10, 10.1);
    LightCurve without = Watched.curve(LightSensor.fast(), shown, 3);
    LightCurve with = Watched.curve(LightSensor.fast().with("noise-lux", 0), shown, 3);
    assertEquals(without.size(), with.size());
    for (int i = 0; i < with.size(); i++) {
      assertEquals(without.seconds(i), with.seconds(i));
      assertEquals(without.level(i), with.level(i), 6);
    }
  }

  @Test
  void marksSayWhatIsKnown() {
    LightSensor sensor = LightSensor.fast();
    Scene scene = Watched.scene(10);
    assertEquals(Targets.likely(), targets(sensor, scene));
    List<TargetSpan> spans = List.of(new TargetSpan(2, 3));
    List<Event> events = List.of(new Event(Event.Kind.POWER_UP, 1));
    assertEquals(Targets.likely(), targets(sensor, scene.with(spans, events, false)));
    Labelled noted = observed(sensor, scene.with(spans, events, true));
    assertEquals(Targets.during(spans), noted.recording().marks().targets());
    assertEquals(events, noted.recording().marks().events());
    assertEquals(Optional.empty(), noted.recording().marks().window());
    assertEquals(
        Optional.of(10.0),
        observed(sensor.with("on-change", 1), scene)
            .recording()
            .marks()
            .window()
            .map(Window::toSeconds));
  }

  private static Labelled observed(LightSensor sensor, Scene scene) {
    return sensor.observe(
        new Shown(scene, List.of(), List.of(new Shown.ClockRate(0, 1))), Chance.of(1));
  }

  private static Targets targets(LightSensor sensor, Scene scene) {
    return observed(sensor, scene).recording().marks().targets();
  }

  @Test
  void thePhoneAsTarget() {
    Scene scene = Watched.scene(10);
    assertEquals(scene, LightSensor.fast().joining(scene, Chance.of(1)));
    LightSensor close = LightSensor.fast().with("phone-target", 1);
    assertEquals(List.of(TargetSpan.always()), close.joining(scene, Chance.of(1)).targets());
    LightSensor often = LightSensor.fast().with("phone-target", 0.3);
    int count = 0;
    for (int i = 0; i < 2000; i++) {
      count += often.joining(scene, Chance.of(i)).targets().size();
    }
    // 2000 draws at 0.3: standard deviation 20.
    assertEquals(600, count, 80);
  }

  /** What a lamp shows to a target alone, it shows to a phone that is one. */
  @Test
  void thePhoneMakesTheLampShow() throws PhraseException {
    Act act =
        new Act(
            Double.NEGATIVE_INFINITY,
            "target-seen",
            new Show.Rhythmic(Phrase.parse("2 blinks per second")),
            Seen.TARGET);
    Scene scene = Watched.scene(30).withActs(List.of(act));
    Labelled away = Simulator.record(scene, LightSensor.fast(), 5);
    assertEquals(List.of(), away.truth().shown().blinks());
    Labelled close = Simulator.record(scene, LightSensor.fast().with("phone-target", 1), 5);
    assertEquals(60, close.truth().shown().blinks().size(), 2);
    assertEquals(Targets.likely(), close.recording().marks().targets());
  }

  @Test
  void missedBlinksMovedNoRow() {
    // A row every half second, whose averaging takes a tenth of it.
    Shown shown = Watched.lamp(100, Watched.flashes(90, 0.05, 1, 0.5, Chance.of(4)));
    Labelled labelled = Watched.plain(2, 0.05).observe(shown, Chance.of(4));
    LightCurve curve = (LightCurve) labelled.recording();
    List<Blink> unmoved =
        shown.blinks().stream().filter(blink -> !moves(curve, blink, 0.05, 0.0005)).toList();
    assertEquals(unmoved, labelled.truth().missed());
    assertTrue(unmoved.size() > 50 && unmoved.size() < 90, "missed: " + unmoved.size());
  }

  private static boolean moves(LightCurve curve, Blink blink, double averaging, double least) {
    for (int i = 0; i < curve.size(); i++) {
      double to = Math.min(curve.seconds(i), blink.offSeconds());
      double from = Math.max(curve.seconds(i) - averaging, blink.onSeconds());
      if (20 * (to - from) / averaging >= least) {
        return true;
      }
    }
    return false;
  }

  @Test
  void blinksOutsideTheWindowAreNotMissed() {
    Shown shown =
        new Shown(
            new Scene(
                new Window(5, 8),
                Watched.scene(1).acts(),
                List.of(),
                List.of(),
                false,
                new Scene.Clock(0, 0),
                OptionalDouble.empty()),
            List.of(new Blink(4.99, 5.00001)),
            List.of(new Shown.ClockRate(5, 1)));
    assertEquals(List.of(), LightSensor.fast().observe(shown, Chance.of(1)).truth().missed());
  }

  /** Rounded to tenths: less than half a step may show by chance, but is nothing seen. */
  @Test
  void aBlinkMustMoveARowByHalfAStep() {
    Shown shown = Watched.lamp(10, 3, 4);
    LightSensor sensor = LightSensor.fast();
    assertEquals(
        shown.blinks(),
        sensor.with("lamp-lux", 0.049).observe(shown, Chance.of(1)).truth().missed());
    assertEquals(
        List.of(), sensor.with("lamp-lux", 0.051).observe(shown, Chance.of(1)).truth().missed());
  }

  @Test
  void aLampOfNoLightIsMissed() {
    Shown shown = Watched.lamp(10, 3, 4, 5, 6);
    assertEquals(
        shown.blinks(),
        LightSensor.fast().with("lamp-lux", 0).observe(shown, Chance.of(1)).truth().missed());
    assertEquals(List.of(), LightSensor.fast().observe(shown, Chance.of(1)).truth().missed());
  }
}

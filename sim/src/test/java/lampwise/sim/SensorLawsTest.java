package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** What holds for any settings, any blinks and any seed. */
class SensorLawsTest {
  private static final double SECONDS = 40;

  @Property
  void everyRecordingIsWhole(
      @ForAll("sensors") LightSensor sensor, @ForAll("lamps") Shown shown, @ForAll long seed) {
    Labelled labelled = sensor.observe(shown, Chance.of(seed));
    LightCurve curve = (LightCurve) labelled.recording();
    double step = sensor.settings().get("step-lux");
    double full = sensor.settings().get("full-scale-lux");
    for (int i = 0; i < curve.size(); i++) {
      assertTrue(shown.scene().window().contains(curve.seconds(i)));
      assertTrue(curve.level(i) >= 0);
      assertTrue(full == 0 || curve.level(i) <= full + step / 2);
      assertEquals(Math.rint(curve.level(i) / step), curve.level(i) / step, 1e-6);
    }
    assertTrue(shown.blinks().containsAll(labelled.truth().missed()));
    assertEquals(shown, labelled.truth().shown());
    assertTrue(labelled.truth().added().stream().allMatch(at -> at >= 0 && at <= SECONDS + 1e-6));
    assertEquals(labelled, sensor.observe(shown, Chance.of(seed)));
  }

  @Property
  void settingsComeBack(@ForAll("sensors") LightSensor sensor) {
    LightSensor copy = new LightSensor(Map.of());
    for (Map.Entry<String, Double> setting : sensor.settings().entrySet()) {
      copy = copy.with(setting.getKey(), setting.getValue());
    }
    assertEquals(sensor, copy);
  }

  /** A lamp that shines less is never brighter in any row. */
  @Property
  void lessLightIsNotBrighter(
      @ForAll("lamps") Shown shown,
      @ForAll long seed,
      @ForAll @DoubleRange(min = 0, max = 100) double lamp) {
    LightSensor sensor = LightSensor.camera();
    LightCurve less = Watched.curve(sensor.with("lamp-lux", lamp / 2), shown, seed);
    LightCurve more = Watched.curve(sensor.with("lamp-lux", lamp), shown, seed);
    assertEquals(less.size(), more.size());
    for (int i = 0; i < less.size(); i++) {
      assertTrue(less.level(i) <= more.level(i));
    }
  }

  /** What the ramps are at a time is their sum, one by one; a mean lies where it should. */
  @Property
  void rampsAddUp(
      @ForAll("ramps") List<double[]> ramps, @ForAll @DoubleRange(min = 0, max = 40) double from) {
    Slopes.Builder builder = new Slopes.Builder(100);
    ramps.forEach(ramp -> builder.ramp(ramp[0], ramp[0] + ramp[1], ramp[2]));
    double to = from + 0.7;
    double sum = 0;
    for (int i = 0; i < 2000; i++) {
      double at = from + (i + 0.5) / 2000 * 0.7;
      sum += 100;
      for (double[] ramp : ramps) {
        sum += ramp[2] * Math.min(1, Math.max(0, (at - ramp[0]) / ramp[1]));
      }
    }
    assertEquals(sum / 2000, builder.build().mean(from, to), 0.02);
  }

  @Provide
  Arbitrary<List<double[]>> ramps() {
    return Arbitraries.doubles()
        .between(0.05, 3)
        .array(double[].class)
        .ofSize(3)
        .map(some -> new double[] {some[0] * 12, some[1], 10 * (some[2] - 1.5)})
        .list()
        .ofMaxSize(8);
  }

  @Provide
  Arbitrary<Shown> lamps() {
    return Arbitraries.doubles()
        .between(0.01, 3)
        .list()
        .ofMaxSize(40)
        .map(
            lengths -> {
              List<Blink> blinks = new ArrayList<>();
              double at = -0.5;
              for (int i = 0; i + 1 < lengths.size() && at < SECONDS; i += 2) {
                blinks.add(new Blink(at, at + lengths.get(i)));
                at += lengths.get(i) + lengths.get(i + 1);
              }
              blinks.removeIf(blink -> blink.offSeconds() < 0);
              return Watched.lamp(SECONDS, blinks);
            });
  }

  @Provide
  Arbitrary<LightSensor> sensors() {
    Arbitrary<LightSensor> sensors =
        Arbitraries.of(
            LightSensor.fast(),
            LightSensor.camera(),
            LightSensor.meter(),
            LightSensor.slow(),
            LightSensor.faint());
    Map<String, Double> most =
        Map.ofEntries(
            Map.entry("jitter", 0.3),
            Map.entry("averaging-s", 2.0),
            Map.entry("dead-s", 2.0),
            Map.entry("dropout", 0.9),
            Map.entry("lamp-lux", 3000.0),
            Map.entry("room-lux", 1000.0),
            Map.entry("noise-lux", 200.0),
            Map.entry("step-lux", 50.0),
            Map.entry("full-scale-lux", 2000.0),
            Map.entry("auto-range-lux", 500.0),
            Map.entry("on-change", 1.0),
            Map.entry("change-threshold", 0.9),
            Map.entry("change-lux", 50.0),
            Map.entry("drift-lux", 500.0),
            Map.entry("flicker-lux", 500.0),
            Map.entry("shadows", 30.0),
            Map.entry("hands", 30.0),
            Map.entry("room-switch", 1.0),
            Map.entry("phone-target", 1.0));
    for (Map.Entry<String, Double> setting : most.entrySet()) {
      Arbitrary<Double> value =
          setting.getKey().equals("on-change")
              ? Arbitraries.of(0.0, 1.0)
              : Arbitraries.integers()
                  .between(1, 1000)
                  .map(part -> setting.getValue() * part / 1000);
      // Most settings stay as they are, so that effects are met alone too.
      Arbitrary<Double> seldom = value.injectNull(0.75);
      sensors =
          Combinators.combine(sensors, seldom)
              .as((sensor, set) -> set == null ? sensor : sensor.with(setting.getKey(), set));
    }
    return sensors;
  }
}

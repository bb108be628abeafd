package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import lampwise.light.LightCurve;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The same seed and settings give the same bits everywhere: these sums were written down once and
 * must come out on every machine and Java version. Whoever changes on purpose what is drawn, or
 * when, writes them anew and says so: all figures that were ever published change with them.
 */
class SensorRepeatsTest {
  @ParameterizedTest
  @CsvSource({
    "fast, 79e8be48cef4c7a3/179986",
    "camera, d885a4f9f7c3ba45/107989",
    "meter, 64dfd2c5ac1fb887/31255",
    "slow, d37d9fa64d0eee85/16446",
    "faint, e0f6dcd9c18e91e/179986",
    "everything, 1581a6258e26b8e8/8769",
    "own-pace, c35caccb97f30a00/7215",
  })
  void bitsAreThoseWrittenDown(String name, String sum) {
    Shown shown = Watched.lamp(3600, Watched.flashes(700, 0.09, 5, 2, Chance.of(60)));
    LightCurve curve = Watched.curve(sensor(name), shown, 1125);
    assertEquals(sum, Long.toHexString(sum(curve)) + "/" + curve.size());
  }

  private static LightSensor sensor(String name) {
    LightSensor everything =
        LightSensor.slow()
            .with("hands", 2)
            .with("room-switch", 1)
            .with("dropout", 0.05)
            .with("change-threshold", 0.01)
            .with("auto-range-lux", 40)
            .with("full-scale-lux", 330);
    return switch (name) {
      case "fast" -> LightSensor.fast();
      case "camera" -> LightSensor.camera();
      case "meter" -> LightSensor.meter();
      case "slow" -> LightSensor.slow();
      case "faint" -> LightSensor.faint();
      case "everything" -> everything;
      default -> everything.with("dead-s", 0.1);
    };
  }

  /** FNV-1a, 64 bits (Fowler, Noll and Vo), over the bits of times and levels. */
  private static long sum(LightCurve curve) {
    long sum = 0xcbf29ce484222325L;
    for (int i = 0; i < curve.size(); i++) {
      for (double value : new double[] {curve.seconds(i), curve.level(i)}) {
        long bits = Double.doubleToLongBits(value);
        for (int shift = 0; shift < 64; shift += 8) {
          sum = (sum ^ (bits >>> shift & 0xff)) * 0x100000001b3L;
        }
      }
    }
    return sum;
  }
}

package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import lampwise.light.Blink;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Samples a second of one core, in recordings of 180,000; a blink every 3.4 s. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class LightSensorSpeed {
  private static final int SAMPLES = 180_000;

  /** {@code plain}: 50 samples a second, noise and steps, no jitter, drift, shadow or flicker. */
  @Param({"plain", "fast", "camera", "meter", "slow", "faint"})
  private String sensor;

  private LightSensor watching;
  private Shown shown;
  private long seed;

  /** As many seconds as give the same number of samples with each. */
  @Setup
  public void light() {
    watching =
        switch (sensor) {
          case "plain" -> new LightSensor(Map.of()).with("noise-lux", 1);
          case "fast" -> LightSensor.fast();
          case "camera" -> LightSensor.camera();
          case "meter" -> LightSensor.meter();
          case "slow" -> LightSensor.slow();
          case "faint" -> LightSensor.faint();
          default -> throw new IllegalStateException(sensor);
        };
    double seconds = SAMPLES / watching.settings().get("rate-hz");
    List<Blink> blinks = new ArrayList<>();
    for (double at = 1; at < seconds; at += 3.4) {
      blinks.add(new Blink(at, at + 0.09));
    }
    Act act =
        new Act(Double.NEGATIVE_INFINITY, CodeSheet.NO_RHYTHM, new Show.Random(0.3), Seen.ALWAYS);
    Scene scene =
        new Scene(
            new Window(0, seconds),
            List.of(act),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(0, 0),
            OptionalDouble.empty());
    shown = new Shown(scene, blinks, List.of(new Shown.ClockRate(0, 1)));
  }

  /**
   * One recording.
   *
   * @return it
   */
  @Benchmark
  @OperationsPerInvocation(SAMPLES)
  public Labelled samples() {
    return watching.observe(shown, Chance.of(seed++));
  }
}

package lampwise.sim;

import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
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

/** Blinks a second of one core: a lamp that shows 4 blinks every 8 s, alone and watched. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class LampSpeed {
  private static final int CYCLES = 25_000;
  private static final int BLINKS = 4 * CYCLES;

  /** The standard deviation of the clock's wander. */
  @Param({"0", "0.01"})
  private double wander;

  private Scene scene;
  private long seed;

  /** A window that shows so many blinks, or a few more or less where the clock wanders. */
  @Setup
  public void scene() throws PhraseException {
    Act act =
        new Act(
            Double.NEGATIVE_INFINITY,
            CodeSheet.UNLISTED,
            new Show.Rhythmic(Phrase.parse("4 blinks 0.6 s apart every 8 s")),
            Seen.ALWAYS);
    scene =
        new Scene(
            new Window(0, 8 * CYCLES),
            List.of(act),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(wander == 0 ? 0 : 0.05, wander),
            OptionalDouble.of(0.09));
  }

  /**
   * The lamp alone.
   *
   * @return what it shows
   */
  @Benchmark
  @OperationsPerInvocation(BLINKS)
  public Shown lamp() {
    return Lamp.shine(scene, Chance.of(seed++));
  }

  /**
   * The lamp, and a person who taps each blink to 10 ms.
   *
   * @return the recording and its truth
   */
  @Benchmark
  @OperationsPerInvocation(BLINKS)
  public Labelled lampAndExactPerson() {
    return Simulator.record(scene, Person.exact(), seed++);
  }

  /**
   * The lamp, and a person who is late, misses blinks and adds strays.
   *
   * @return the recording and its truth
   */
  @Benchmark
  @OperationsPerInvocation(BLINKS)
  public Labelled lampAndHurriedPerson() {
    return Simulator.record(scene, Person.hurried(), seed++);
  }
}

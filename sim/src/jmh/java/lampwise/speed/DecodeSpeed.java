package lampwise.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Presets;
import lampwise.sim.score.Bench;
import lampwise.sim.score.Cell;
import lampwise.sim.score.Score;
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

/**
 * Milliseconds for one blink log of 90 s against the bench's sheet of 12 states: the mean of the
 * first recordings of the bench's cell, so the same ones each time.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class DecodeSpeed {
  static final int RECORDINGS = 100;
  static final double SECONDS = 90;

  /** Who watches. */
  @Param({"exact", "careful", "hurried", "careless"})
  private String observer;

  private CodeSheet sheet;
  private List<Recording> recordings;

  /** Makes the recordings. */
  @Setup
  public void record() {
    sheet = Bench.sheet();
    recordings = recordings(observer, RECORDINGS);
  }

  /** The first recordings of a cell of the bench. */
  static List<Recording> recordings(String observer, int count) {
    Score score = new Score(Bench.mix(Bench.sheet()), Bench.SEED);
    Cell cell = new Cell(observer, Presets.named(observer), SECONDS);
    return IntStream.range(0, count).mapToObj(i -> score.recording(cell, i).recording()).toList();
  }

  /**
   * Decodes each.
   *
   * @return the readings
   */
  @Benchmark
  @OperationsPerInvocation(RECORDINGS)
  public List<Reading> blinkLog() {
    return decoded(sheet, recordings);
  }

  /** Decodes recordings one by one. */
  static List<Reading> decoded(CodeSheet sheet, List<Recording> recordings) {
    List<Reading> readings = new ArrayList<>();
    for (Recording recording : recordings) {
      readings.add(new LampDecoder().decode(sheet, List.of(recording)));
    }
    return readings;
  }
}

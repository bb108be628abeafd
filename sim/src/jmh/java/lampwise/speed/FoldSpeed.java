package lampwise.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;
import lampwise.sim.score.Bench;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Milliseconds for one light curve of 90 s, 50 samples a second, of a lamp 1.5 deviations of the
 * noise bright, which is found only by folding it on the rhythms: the mean of the first recordings
 * of the bench's cell.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class FoldSpeed {
  private static final int RECORDINGS = 5;

  private CodeSheet sheet;
  private List<Recording> recordings;

  /** Makes the recordings. */
  @Setup
  public void record() {
    sheet = Bench.sheet();
    recordings = DecodeSpeed.recordings("faint", RECORDINGS);
  }

  /**
   * Decodes each.
   *
   * @return the readings
   */
  @Benchmark
  @OperationsPerInvocation(RECORDINGS)
  public List<Reading> faintLamp() {
    List<Reading> readings = new ArrayList<>();
    for (Recording recording : recordings) {
      readings.add(new LampDecoder().decode(sheet, List.of(recording)));
    }
    return readings;
  }
}

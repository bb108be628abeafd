package lampwise.speed;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import lampwise.decode.Reading;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Mix;
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
 * How the time for one blink log by {@code careful} grows with its length and with the sheet's
 * states: groups of one to five blinks, each state's cycle longer than the one's before. The
 * recordings show the first six, so they are the same whatever the sheet.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class GrowthSpeed {
  private static final int RECORDINGS = 50;
  private static final int SHOWN = 6;
  private static final int MOST_BLINKS = 5;

  /** How long is watched, seconds. */
  @Param({"11.25", "22.5", "45", "90", "180"})
  private double seconds;

  /** How many states the sheet has. */
  @Param({"6", "12", "24", "48"})
  private int states;

  private CodeSheet sheet;
  private List<Recording> recordings;

  /**
   * Makes the sheet and the recordings.
   *
   * @throws FileException never
   */
  @Setup
  public void record() throws FileException {
    sheet = sheet(states);
    Score score = new Score(Mix.usual(sheet(SHOWN), List.of()), Bench.SEED);
    Cell cell = new Cell("careful", Presets.named("careful"), seconds);
    recordings =
        IntStream.range(0, RECORDINGS).mapToObj(i -> score.recording(cell, i).recording()).toList();
  }

  private static CodeSheet sheet(int count) throws FileException {
    StringBuilder sheet = new StringBuilder(512);
    sheet.append(
        "lampwise-sheet: 1\ntitle: Growing\nbasis: invented\nclock: 5 %\nblink: 90 ms\nstates:\n");
    for (int i = 0; i < count; i++) {
      int blinks = 1 + i % MOST_BLINKS;
      String group = blinks == 1 ? "1 blink" : blinks + " blinks 0.5 s apart";
      sheet.append(
          String.format(
              Locale.ROOT,
              "  state-%d:%n    rhythm: %s every %.2f s%n    means: a state%n    condition: other%n",
              i,
              group,
              4 + 0.31 * i));
    }
    return SheetReader.read("growing", sheet.toString().getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Decodes each.
   *
   * @return the readings
   */
  @Benchmark
  @OperationsPerInvocation(RECORDINGS)
  public List<Reading> blinkLog() {
    return DecodeSpeed.decoded(sheet, recordings);
  }
}

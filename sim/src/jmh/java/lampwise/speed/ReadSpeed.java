package lampwise.speed;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import lampwise.file.FileException;
import lampwise.file.LampwiseLog;
import lampwise.file.LightCsv;
import lampwise.file.OptionException;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.file.SheetReader;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;
import lampwise.sim.LightSensor;
import lampwise.sim.score.Bench;
import lampwise.sim.score.Cell;
import lampwise.sim.score.Score;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Milliseconds for reading one file from memory. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ReadSpeed {
  private static final double SECONDS = 2001;
  private static final int ROWS = 100_000;

  private byte[] light;
  private byte[] log;
  private byte[] sheet;

  /**
   * Writes the files.
   *
   * @throws IOException if the bench's sheet cannot be read
   */
  @Setup
  public void write() throws IOException {
    LightSensor plain = new LightSensor(Map.of()).with("noise-lux", 1);
    Score score = new Score(Bench.mix(Bench.sheet()), Bench.SEED);
    LightCurve curve =
        (LightCurve) score.recording(new Cell("plain", plain, SECONDS), 0).recording();
    List<String> lines = LightCsv.write(curve, 3).lines().limit(1 + ROWS).toList();
    if (lines.size() != 1 + ROWS) {
      throw new IllegalStateException(lines.size() + " lines");
    }
    light = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    log = LampwiseLog.write(DecodeSpeed.recordings("careful", 1)).getBytes(StandardCharsets.UTF_8);
    try (InputStream in = Bench.class.getResourceAsStream("bench.sheet.yaml")) {
      sheet = Objects.requireNonNull(in).readAllBytes();
    }
  }

  /**
   * A light file of 100,000 rows.
   *
   * @return the recording
   * @throws FileException never
   * @throws OptionException never
   */
  @Benchmark
  public List<Recording> lightCsv() throws FileException, OptionException {
    return RecordingReader.read("light.csv", light, ReadOptions.none());
  }

  /**
   * A Lampwise log of 90 s.
   *
   * @return the recording
   * @throws FileException never
   * @throws OptionException never
   */
  @Benchmark
  public List<Recording> blinkLog() throws FileException, OptionException {
    return RecordingReader.read("one.log", log, ReadOptions.none());
  }

  /**
   * The bench's sheet of 12 states, in YAML.
   *
   * @return the sheet
   * @throws FileException never
   */
  @Benchmark
  public CodeSheet sheet() throws FileException {
    return SheetReader.read("bench.sheet.yaml", sheet);
  }
}

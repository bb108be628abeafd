package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.RecordingException;
import lampwise.light.Targets;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LightCsvTest {
  private static LightCurve curve(double[] seconds, double[] levels) {
    return LightCurve.of(
        Origin.named("light"),
        Marks.nothing().withTargets(Targets.likely()),
        LightCurve.Lit.BRIGHTER,
        seconds,
        levels);
  }

  @Test
  void isAHeaderAndARowASample() {
    double[] seconds = {-0.0, 0.02, 0.041237, 12.5};
    assertEquals(
        "time_s,lux\n0.000,150.3\n0.020,149.0\n0.041237,-0.3\n12.500,\n",
        LightCsv.write(curve(seconds, new double[] {150.26, 149, -0.3, Double.NaN}), 1));
    assertEquals(
        "time_s,lux\n0.000,150\n0.020,0\n0.041237,0\n12.500,1000000000000\n",
        LightCsv.write(curve(seconds, new double[] {150.26, -0.0, -0.3, 1e12}), 0));
  }

  @Property
  void isReadAsTheSameCurve(
      @ForAll("gaps") List<Long> gaps,
      @ForAll @LongRange(min = -9_000_000_000L, max = 9_000_000_000L) long start,
      @ForAll @IntRange(max = LightCsv.MOST_DECIMALS) int decimals,
      @ForAll @LongRange(max = 1_000_000_000L) long level)
      throws Exception {
    double[] seconds = new double[gaps.size()];
    double[] levels = new double[gaps.size()];
    long micros = start;
    for (int i = 0; i < seconds.length; i++) {
      micros += gaps.get(i);
      seconds[i] = micros / 1e6;
      levels[i] = (level + gaps.get(i) % 997) / Math.pow(10, decimals);
    }
    LightCurve written = curve(seconds, levels);
    byte[] file = LightCsv.write(written, decimals).getBytes(UTF_8);
    List<Recording> read = RecordingReader.read("light", file, ReadOptions.none());
    assertEquals(1, read.size());
    LightCurve curve = assertInstanceOf(LightCurve.class, read.get(0));
    assertArrayEquals(seconds, Readings.seconds(curve));
    assertArrayEquals(levels, Readings.levels(curve));
    assertEquals(written.lit(), curve.lit());
    assertEquals(written.marks(), curve.marks());
  }

  @Provide
  Arbitrary<List<Long>> gaps() {
    return Arbitraries.longs().between(1, 30_000_000).list().ofMinSize(1).ofMaxSize(60);
  }

  @Test
  void aRowWithoutALevelIsLeftOutByTheReader() throws Exception {
    double[] seconds = {0, 1, 2};
    String text = LightCsv.write(curve(seconds, new double[] {5, Double.NaN, 7}), 0);
    assertArrayEquals(new double[] {0, 2}, Readings.seconds(Readings.curve(text)));
  }

  @Property
  void roundsToTheNearest(
      @ForAll @DoubleRange(max = 1e5) double level,
      @ForAll @IntRange(max = LightCsv.MOST_DECIMALS) int decimals) {
    String text = LightCsv.write(curve(new double[] {0}, new double[] {level}), decimals);
    String written = text.substring(text.lastIndexOf(',') + 1).strip();
    double half = 0.5 / Math.pow(10, decimals);
    assertEquals(level, Double.parseDouble(written), half * (1 + 1e-4));
    int point = written.indexOf('.');
    assertEquals(decimals, point < 0 ? 0 : written.length() - point - 1, written);
  }

  @ParameterizedTest
  @CsvSource({
    "1, 0",
    "50, 0",
    "10, 0",
    "0.1, 1",
    "0.5, 1",
    "2.5, 1",
    "0.01, 2",
    "0.25, 2",
    "0.08, 2",
    "0.0036, 4",
    "0.000001, 6",
    "0, 6",
    "0.3333333333333333, 6",
    "0.0000001, 6"
  })
  void theDecimalsOfAStepWriteItsMultiples(double step, int decimals) {
    assertEquals(decimals, LightCsv.decimalsOf(step));
  }

  @Test
  void whatCannotBeWrittenIsRefusedInOneLine() {
    assertEquals("a light file holds at least one sample", refusal(curve(of(), of()), 1));
    LightCurve one = curve(of(1), of(1));
    assertEquals("a light level has 0 to 6 decimals: 7", refusal(one, 7));
    assertEquals("a light level has 0 to 6 decimals: -1", refusal(one, -1));
    assertEquals(
        "a number of sample 2 is too large to write", refusal(curve(of(1, 2), of(1, 1e13)), 1));
    assertEquals(
        "the times of a light file must rise: sample 2 is at 1.000 s too",
        refusal(curve(of(1, 1.0000001), of(1, 1)), 1));
  }

  private static double[] of(double... numbers) {
    return Arrays.copyOf(numbers, numbers.length);
  }

  private static String refusal(LightCurve curve, int decimals) {
    RecordingException fault =
        assertThrows(RecordingException.class, () -> LightCsv.write(curve, decimals));
    String message = String.valueOf(fault.getMessage());
    assertTrue(message.lines().count() == 1, message);
    return message;
  }
}

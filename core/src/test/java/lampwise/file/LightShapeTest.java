package lampwise.file;

import static lampwise.file.Readings.levels;
import static lampwise.file.Readings.seconds;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.RecordingException;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LightShapeTest {
  /** What rounding to a shape's last digit and subtracting the first row leave over. */
  private static final double DUST = 1e-6;

  private static LightCurve curve(double[] seconds, double[] levels) {
    return LightCurve.of(
        Origin.named("light"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  /** A random curve: sample times, and levels that go up and down. */
  record Drawn(long startMicros, List<Integer> gapMicros, List<Integer> levels) {
    LightCurve curve(boolean even, int decimals) {
      double[] seconds = new double[levels.size()];
      double[] values = new double[levels.size()];
      long micros = startMicros;
      for (int i = 0; i < seconds.length; i++) {
        micros += i == 0 ? 0 : gapMicros.get(even ? 0 : i - 1);
        seconds[i] = micros / 1e6;
        values[i] = levels.get(i) / Math.pow(10, decimals) + (i % 5 == 0 ? 3000 : 1000);
        values[i] = Math.rint(values[i] * Math.pow(10, decimals)) / Math.pow(10, decimals);
      }
      return LightShapeTest.curve(seconds, values);
    }
  }

  @Property(tries = 2000)
  void everyShapeIsReadAsTheCurveThatWasWritten(
      @ForAll LightShape shape,
      @ForAll("curves") Drawn drawn,
      @ForAll @IntRange(max = 3) int decimals)
      throws Exception {
    LightCurve written = drawn.curve(shape.isEven(), decimals);
    double length = written.seconds(written.size() - 1) - written.seconds(0);
    Assume.that(shape != LightShape.WHOLE_SECONDS || length >= 2);
    LightCurve read = read(shape, written, decimals);
    String notes = shape + " " + read.origin().notes();
    assertArrayEquals(levels(written), levels(read), 1e-9, notes);
    // Where only the second is written, the first row and this one may lie anywhere in theirs.
    double seconds = shape.resolutionSeconds() * (shape == LightShape.WHOLE_SECONDS ? 2 : 1);
    assertArrayEquals(fromFirst(written), fromFirst(read), seconds + DUST, notes);
  }

  @Provide
  Arbitrary<Drawn> curves() {
    Arbitrary<Long> start = Arbitraries.longs().between(0, 5_000_000);
    Arbitrary<List<Integer>> gaps =
        Arbitraries.integers().between(20_000, 300_000).list().ofSize(80);
    Arbitrary<List<Integer>> levels =
        Arbitraries.integers().between(0, 900).list().ofMinSize(25).ofMaxSize(81);
    return Combinators.combine(start, gaps, levels).as(Drawn::new);
  }

  @ParameterizedTest
  @EnumSource(LightShape.class)
  void everyShapeIsFoundByItsNameAndDiffersFromThePlainOne(LightShape shape) throws Exception {
    assertEquals(Optional.of(shape), LightShape.of(shape.word()));
    assertTrue(shape.what().length() + shape.word().length() < 70, shape.what());
    LightCurve curve = new Drawn(0, Collections.nCopies(40, 180_000), levelsOf(30)).curve(true, 1);
    boolean plain = Arrays.equals(shape.write(curve, 1), LightShape.PLAIN.write(curve, 1));
    assertEquals(shape == LightShape.PLAIN, plain);
  }

  @ParameterizedTest
  @EnumSource(LightShape.class)
  void aSampleWithoutALevelIsLeftOut(LightShape shape) throws Exception {
    LightCurve whole = new Drawn(0, Collections.nCopies(40, 180_000), levelsOf(30)).curve(true, 1);
    double[] levels = levels(whole);
    levels[11] = Double.NaN;
    LightCurve read = read(shape, curve(seconds(whole), levels), 1);
    assertEquals(29, read.size());
    assertEquals(levels[12], read.level(11));
  }

  @Test
  void whatAShapeCannotCarryIsRefusedInOneLine() {
    LightCurve uneven = curve(new double[] {0, 0.1, 0.5}, new double[] {1, 2, 1});
    assertEquals(
        "the shape one-line needs samples that lie evenly: sample 2 does not",
        refusal(LightShape.ONE_LINE, uneven));
    LightCurve close = curve(new double[] {0, 0.0001, 0.5}, new double[] {1, 2, 1});
    assertEquals(
        "the times of sample 1 and the next are one in the shape epoch-ms",
        refusal(LightShape.EPOCH_MS, close));
    LightCurve instant = curve(new double[] {0, 0.2, 0.4}, new double[] {1, 2, 1});
    assertEquals(
        "the samples lie within one second, which the shape whole-seconds cannot tell apart",
        refusal(LightShape.WHOLE_SECONDS, instant));
    LightCurve ages = curve(new double[] {0, 1e11}, new double[] {1, 2});
    assertTrue(refusal(LightShape.ISO, ages).contains("at most 70 years"));
    assertEquals(Optional.empty(), LightShape.of("no such shape"));
  }

  private static String refusal(LightShape shape, LightCurve curve) {
    return String.valueOf(
        assertThrows(RecordingException.class, () -> shape.write(curve, 1)).getMessage());
  }

  private static List<Integer> levelsOf(int size) {
    return IntStream.range(0, size).mapToObj(i -> 37 * i % 900).toList();
  }

  private static LightCurve read(LightShape shape, LightCurve curve, int decimals)
      throws Exception {
    byte[] file = shape.write(curve, decimals);
    ReadOptions options = ReadOptions.none().written(shape.needs(curve));
    List<Recording> read = RecordingReader.read("light", file, options);
    assertEquals(1, read.size());
    return assertInstanceOf(LightCurve.class, read.get(0));
  }

  private static double[] fromFirst(LightCurve curve) {
    double[] seconds = seconds(curve);
    double first = seconds[0];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] -= first;
    }
    return seconds;
  }
}

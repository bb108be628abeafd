package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.file.LightShape;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.light.LightCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShapeOptionTest {
  @TempDir Path temp;

  private CommandRun simulate(String... more) {
    List<String> args =
        new ArrayList<>(
            List.of("simulate", "--sheet", "demo", "--state", "cells-low", "--seconds", "30"));
    args.addAll(Arrays.asList(more));
    return CommandRun.Setting.in(temp).run("", args.toArray(new String[0]));
  }

  private LightCurve made(String shape) throws Exception {
    CommandRun run = simulate("--observer", "meter", "--shape", shape, "--out", shape);
    assertEquals(0, run.status(), run.err());
    Path file = temp.resolve(shape).resolve("cells-low-meter-001.csv");
    return assertInstanceOf(
        LightCurve.class,
        RecordingReader.read("m", Files.readAllBytes(file), ReadOptions.none()).get(0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"utf-16", "iso", "twelve-hours", "latin-1", "long", "tuples"})
  void theSameRecordingIsWrittenInAnotherShape(String shape) throws Exception {
    LightCurve plain = made("plain");
    LightCurve other = made(shape);
    assertEquals(plain.size(), other.size());
    double[] expected = new double[plain.size()];
    double[] read = new double[plain.size()];
    for (int i = 0; i < read.length; i++) {
      expected[i] = plain.seconds(i) - plain.seconds(0);
      read[i] = other.seconds(i) - other.seconds(0);
      assertEquals(plain.level(i), other.level(i));
    }
    assertArrayEquals(expected, read, LightShape.of(shape).orElseThrow().resolutionSeconds());
  }

  @Test
  void theListShowsEveryShapeInLinesOfEightyColumns() {
    CommandRun run = simulate("--list");
    assertEquals(0, run.status());
    for (LightShape shape : LightShape.values()) {
      String line = shape.word() + " ";
      assertEquals(1, run.out().lines().filter(l -> l.startsWith(line)).count(), shape.word());
    }
    assertTrue(run.out().lines().allMatch(line -> line.length() <= 80));
  }

  @Test
  void whatCannotBeShapedIsOneLine() {
    wrong("there is no shape isos; near: iso", "--observer", "meter", "--shape", "isos");
    wrong("careful is a person", "--observer", "careful", "--shape", "iso");
    wrong("needs a folder", "--observer", "meter", "--shape", "utf-16");
    wrong("needs samples that lie evenly", "--observer", "meter", "--shape", "one-line");
  }

  private void wrong(String part, String... more) {
    List<String> args = new ArrayList<>(List.of(more));
    args.addAll(List.of("--out", "-"));
    CommandRun run = simulate(args.toArray(new String[0]));
    assertEquals(2, run.status(), run.err());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(part), run.err());
  }
}

package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static lampwise.file.Readings.levels;
import static lampwise.file.Readings.seconds;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwise.Testdata;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The shapes of light files in testdata/shapes, held against the truth beside them. */
class ShapesTest {
  private static final String PLAIN = "plain.csv";

  /** What taking 1200 off a level leaves of rounding. */
  private static final double LEVEL_DUST = 1e-9;

  /** A row of the table of truth. */
  private record Truth(
      String file, ReadOptions options, double mayBeOffSeconds, String levels, String note) {
    static Truth of(String row) {
      List<String> cells = cells(row);
      return new Truth(
          cells.get(0),
          ShapesTest.said(cells.get(1)),
          Double.parseDouble(cells.get(2)),
          cells.get(3),
          cells.get(4));
    }
  }

  static List<String> readable() {
    return lines("truth.txt").stream().map(row -> cells(row).get(0)).toList();
  }

  static List<String> hopeless() {
    return lines("refused.txt").stream().map(row -> cells(row).get(0)).toList();
  }

  @ParameterizedTest
  @MethodSource("readable")
  void readsTheSameAsThePlainFile(String file) throws Exception {
    Truth truth =
        lines("truth.txt").stream()
            .map(Truth::of)
            .filter(row -> row.file().equals(file))
            .findFirst()
            .orElseThrow();
    LightCurve plain = read(PLAIN, ReadOptions.none());
    LightCurve curve = read(file, truth.options());
    String notes = String.join("\n", curve.origin().notes());
    assertEquals(plain.size(), curve.size(), notes);
    double[] expected = seconds(plain);
    double[] seconds = seconds(curve);
    double zero = seconds[0];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] -= zero;
    }
    assertArrayEquals(expected, seconds, truth.mayBeOffSeconds(), notes);
    if (!truth.levels().equals("own")) {
      double more = truth.levels().equals("same") ? 0 : Double.parseDouble(truth.levels());
      double[] levels = levels(curve);
      for (int i = 0; i < levels.length; i++) {
        levels[i] -= more;
      }
      assertArrayEquals(levels(plain), levels, LEVEL_DUST, notes);
    }
    assertTrue(truth.note().equals("-") || notes.contains(truth.note()), notes);
  }

  @ParameterizedTest
  @MethodSource("hopeless")
  void refusesWithTheOptionThatWouldHelp(String file) {
    String part =
        lines("refused.txt").stream()
            .map(ShapesTest::cells)
            .filter(row -> row.get(0).equals(file))
            .findFirst()
            .orElseThrow()
            .get(1);
    FileException refused = assertThrows(FileException.class, () -> read(file, ReadOptions.none()));
    String message = refused.faults().get(0).toString();
    assertTrue(message.contains(part), message);
    assertFalse(message.contains("\n"), message);
  }

  @Test
  void everyFileHasItsRow() throws IOException {
    Set<String> known = new TreeSet<>(readable());
    known.addAll(hopeless());
    known.addAll(List.of("README.md", "truth.txt", "refused.txt"));
    try (Stream<Path> files = Files.list(Testdata.path("shapes"))) {
      assertEquals(
          known,
          files
              .map(path -> path.getFileName().toString())
              .collect(Collectors.toCollection(TreeSet::new)));
    }
  }

  private static LightCurve read(String file, ReadOptions options) throws Exception {
    List<Recording> read = RecordingReader.read(file, Testdata.bytes("shapes", file), options);
    assertEquals(1, read.size());
    return assertInstanceOf(LightCurve.class, read.get(0));
  }

  private static ReadOptions said(String words) {
    ReadOptions.Writing writing = ReadOptions.Writing.unknown();
    Readings.Said said = Readings.said();
    String[] parts = words.split(" ");
    for (int i = 0; i + 1 < parts.length; i += 2) {
      String value = parts[i + 1];
      switch (parts[i]) {
        case "--rate" ->
            writing =
                new ReadOptions.Writing(
                    Double.parseDouble(value), writing.dates(), writing.decimal());
        case "--decimal" ->
            writing =
                new ReadOptions.Writing(
                    writing.rateHz(),
                    writing.dates(),
                    Optional.of(ReadOptions.Decimal.valueOf(value.toUpperCase(Locale.ROOT))));
        case "--dates" ->
            writing =
                new ReadOptions.Writing(
                    writing.rateHz(),
                    Optional.of(ReadOptions.Dates.valueOf(value.toUpperCase(Locale.ROOT))),
                    writing.decimal());
        case "--unit" -> said = said.unit(ReadOptions.Unit.valueOf(value.toUpperCase(Locale.ROOT)));
        default -> throw new IllegalStateException("an option that no row should have: " + words);
      }
    }
    return said.options().written(writing);
  }

  private static List<String> cells(String row) {
    return Stream.of(row.split("\\|")).map(String::strip).toList();
  }

  private static List<String> lines(String table) {
    List<String> rows = new ArrayList<>();
    for (String line : new String(Testdata.bytes("shapes", table), UTF_8).split("\n")) {
      if (!line.startsWith("#") && !line.isBlank()) {
        rows.add(line);
      }
    }
    return rows;
  }
}

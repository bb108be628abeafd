package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwise.Testdata;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Recording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The shapes of pasted times in testdata/pastes, held against the truth beside them. */
class PastesTest {
  private static final double NANOSECOND = 1e-9;

  /** A row of the table of truth. */
  private record Truth(String file, String fixture, List<String> blinks, String note) {
    static Truth of(String row) {
      List<String> cells = Stream.of(row.split("\\|")).map(String::strip).toList();
      List<String> blinks = cells.get(3).equals("-") ? List.of() : List.of(cells.get(3).split(" "));
      return new Truth(cells.get(0), cells.get(2), blinks, cells.get(4));
    }
  }

  static List<String> readable() {
    return truths().stream().map(Truth::file).distinct().toList();
  }

  static List<String> hopeless() {
    return lines("refused.txt").stream().map(line -> line.substring(0, line.indexOf(':'))).toList();
  }

  @ParameterizedTest
  @MethodSource("readable")
  void readsTheTruth(String file) throws Exception {
    List<Truth> expected = truths().stream().filter(truth -> truth.file().equals(file)).toList();
    List<Recording> read =
        RecordingReader.read(file, Testdata.bytes("pastes", file), ReadOptions.none());
    assertEquals(expected.size(), read.size(), "recordings");
    for (int i = 0; i < read.size(); i++) {
      BlinkLog log = assertInstanceOf(BlinkLog.class, read.get(i));
      Truth truth = expected.get(i);
      assertEquals(file, log.origin().name());
      assertEquals(truth.fixture(), log.origin().fixture().orElse("-"));
      double[] on = truth.blinks().stream().mapToDouble(b -> border(b, false)).toArray();
      double[] off = truth.blinks().stream().mapToDouble(b -> border(b, true)).toArray();
      assertArrayEquals(on, Readings.starts(log), NANOSECOND, "on");
      assertArrayEquals(off, Readings.ends(log), NANOSECOND, "off");
      List<String> notes = log.origin().notes();
      if (!truth.note().equals("-")) {
        assertTrue(notes.stream().anyMatch(n -> n.contains(truth.note())), notes::toString);
      }
      assertTrue(
          notes.isEmpty()
              || log.blinks().isEmpty()
              || notes.get(0).startsWith("understood: " + log.blinks().size() + " blink start"),
          notes::toString);
      if (!log.blinks().isEmpty()) {
        assertEquals(on[0], log.window().get().fromSeconds(), NANOSECOND);
        Blink last = log.blinks().get(on.length - 1);
        double end = last.hasOff() ? last.offSeconds() : last.onSeconds();
        assertEquals(end, log.window().get().toSeconds(), NANOSECOND);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("hopeless")
  void refusesTheHopelessInOneHelpfulLine(String file) {
    String expected =
        lines("refused.txt").stream()
            .filter(line -> line.startsWith(file + ":"))
            .collect(Collectors.joining("\n"));
    FileException refused =
        assertThrows(
            FileException.class,
            () -> RecordingReader.read(file, Testdata.bytes("pastes", file), ReadOptions.none()));
    assertEquals(expected, refused.getMessage());
  }

  @Test
  void holdsEveryFileAgainstATruth() throws IOException {
    Set<String> told = new TreeSet<>(readable());
    told.addAll(hopeless());
    assertTrue(readable().size() >= 40, () -> readable().size() + " shapes");
    assertTrue(hopeless().size() >= 10, () -> hopeless().size() + " hopeless ones");
    try (Stream<java.nio.file.Path> files = Files.list(Testdata.path("pastes"))) {
      Set<String> names =
          files.map(f -> f.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
      names.removeAll(List.of("README.md", "truth.txt", "refused.txt"));
      assertEquals(names, told);
    }
  }

  /** The start or the end of a blink such as {@code 0.3} or {@code 0.3-0.42}. */
  private static double border(String blink, boolean end) {
    int dash = blink.indexOf('-', 1);
    if (dash < 0) {
      return end ? Double.NaN : Double.parseDouble(blink);
    }
    return Double.parseDouble(end ? blink.substring(dash + 1) : blink.substring(0, dash));
  }

  private static List<Truth> truths() {
    return lines("truth.txt").stream().map(Truth::of).toList();
  }

  private static List<String> lines(String file) {
    List<String> lines = new ArrayList<>();
    new String(Testdata.bytes("pastes", file), UTF_8)
        .lines()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .forEach(lines::add);
    return lines;
  }
}

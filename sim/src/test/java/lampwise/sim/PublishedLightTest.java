package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import lampwise.light.Blink;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lights as standards and authorities publish them (marine lights of IALA E-110, IHO M-12 and the
 * US NGA List of Lights, indicators, alarms): the phrase of each row of testdata/rhythms, shown by
 * a lamp whose clock is right, gives the light and dark phases of the table. Sources stand there.
 */
class PublishedLightTest {
  private static final Path FOLDER = Path.of("..", "testdata", "rhythms");

  /** The thirds of a second of 46 CFR 161.013-7(a) are written to six decimals. */
  private static final double TOLERANCE_SECONDS = 1e-5;

  /** A row of the table. */
  record Published(String id, double[] phases, String phrase) {
    @Override
    public String toString() {
      return id;
    }

    double cycleSeconds() {
      return Arrays.stream(phases).sum();
    }
  }

  static Stream<Published> rows() throws IOException {
    return Stream.concat(rows("published-trains.csv", 4), rows("light-list.csv", 5));
  }

  /** The rows of a table whose phrase is in this column; the phases are in the fourth of both. */
  private static Stream<Published> rows(String table, int phrase) throws IOException {
    return Files.readAllLines(FOLDER.resolve(table)).stream()
        .skip(1)
        .map(line -> line.split(";"))
        .map(cells -> new Published(cells[0], seconds(cells[3]), cells[phrase]));
  }

  private static double[] seconds(String milliseconds) {
    return Stream.of(milliseconds.split(","))
        .mapToDouble(text -> Double.parseDouble(text.trim()) / 1000)
        .toArray();
  }

  @Test
  void theTableIsRead() throws IOException {
    assertTrue(rows().count() >= 45 + 106, "rows");
  }

  @ParameterizedTest
  @MethodSource("rows")
  void theLampShowsTheTable(Published row) {
    double seconds = 3 * row.cycleSeconds();
    Act act = LampScenes.act(row.phrase(), Seen.ALWAYS);
    Shown shown = Lamp.shine(LampScenes.unlit(seconds, act), Chance.of(row.id().hashCode()));
    List<Blink> blinks = shown.blinks();
    int perCycle = row.phases().length / 2;
    assertTrue(blinks.size() >= 3 * perCycle, () -> "only " + blinks);
    boolean found = false;
    for (int turn = 0; turn < perCycle; turn++) {
      found |= matches(blinks, row.phases(), turn);
    }
    assertTrue(found, () -> row + ": " + blinks);
  }

  /** Whether every light and every dark is that of the table, from one of its lights on. */
  private static boolean matches(List<Blink> blinks, double[] phases, int turn) {
    for (int i = 0; i < blinks.size(); i++) {
      int at = (2 * (i + turn)) % phases.length;
      double lit = blinks.get(i).offSeconds() - blinks.get(i).onSeconds();
      if (Math.abs(lit - phases[at]) > TOLERANCE_SECONDS) {
        return false;
      }
      if (i + 1 < blinks.size()) {
        double dark = blinks.get(i + 1).onSeconds() - blinks.get(i).offSeconds();
        if (Math.abs(dark - phases[at + 1]) > TOLERANCE_SECONDS) {
          return false;
        }
      }
    }
    return true;
  }
}

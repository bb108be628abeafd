package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The cycle that is observed without a sheet beside the period that SciPy 1.10.1 finds in the same
 * taps (autocorrelation, then summed harmonics). Logs, figures and the script that made them are in
 * docs/periods.
 */
class PeriodsTest {
  private static final Path TABLE = Path.of("docs", "periods", "periods.csv");

  /** Phrases give cycles from 2 s on in tenths, shorter ones in hundredths of a second. */
  private static final double COARSE_SECONDS = 0.05;

  private static final double FINE_SECONDS = 0.005;

  /** Rates are given in tenths of a blink per second. */
  private static final double RATE_PER_SECOND = 0.05;

  /** Two estimates from the same taps differ by this beside the rounding. */
  private static final double ESTIMATE = 0.002;

  /** Where SciPy's highest peak is two cycles: seven taps, and one was missed. */
  private static final Set<String> DOUBLED = Set.of("Fl-7p5-1000");

  /** A row of the table. */
  record Log(String id, double trueSeconds, double scipySeconds, BlinkLog taps) {
    @Override
    public String toString() {
      return id;
    }
  }

  static List<Log> logs() throws IOException {
    return Files.readAllLines(TABLE).stream().skip(2).map(PeriodsTest::log).toList();
  }

  private static Log log(String line) {
    String[] cells = line.split(";");
    double[] starts = Stream.of(cells[4].split(" ")).mapToDouble(Double::parseDouble).toArray();
    return new Log(
        cells[0],
        Double.parseDouble(cells[1]),
        Double.parseDouble(cells[2]),
        BlinkLog.ofStarts(Marks.watched(0, Double.parseDouble(cells[3])), starts));
  }

  @Test
  void theTableIsWhole() throws IOException {
    assertTrue(Files.readAllLines(TABLE).get(0).startsWith("# SciPy 1.10.1"), "version");
    assertEquals(22, logs().size());
  }

  @ParameterizedTest
  @MethodSource("logs")
  void theCycleIsThatOfScipy(Log log) {
    Rhythm observed = new LampDecoder().observe(log.taps()).observed().orElseThrow();
    double cycle = Answers.cycleSeconds(observed);
    double expected = log.scipySeconds() / (DOUBLED.contains(log.id()) ? 2 : 1);
    boolean rated =
        observed instanceof Rhythm.Blinking blinking && blinking.cycle() instanceof Cycle.Rated;
    double rounding =
        rated
            ? RATE_PER_SECOND * expected * expected
            : expected < 2 ? FINE_SECONDS : COARSE_SECONDS;
    assertEquals(log.trueSeconds(), expected, 0.01 * expected);
    assertEquals(expected, cycle, rounding + ESTIMATE * expected, () -> Phrase.print(observed));
  }
}

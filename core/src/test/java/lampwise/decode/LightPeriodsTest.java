package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The cycle that is observed in light curves without a sheet beside the periods that two
 * general-purpose tools find in the same samples: SciPy 1.10.1 by waves (Lomb-Scargle) and Astropy
 * 5.2.1 by boxes. Curves, figures and the script that made them are in docs/periods.
 */
class LightPeriodsTest {
  private static final Path TABLE = Path.of("docs", "periods", "light.csv");
  private static final double STEP_SECONDS = 0.1;

  /** Phrases give cycles in tenths of a second, rates in tenths of a blink per second. */
  private static final double ROUNDING_SECONDS = 0.05;

  /** How far two estimates from the same samples lie apart beside the rounding: waves, boxes. */
  private static final double WAVES = 0.003;

  private static final double BOXES = 0.01;

  /** Where one box cannot show what blinks several times: it fits a part of the cycle. */
  private static final Set<String> NO_BOX = Set.of("Fl2-5-600", "Fl2-13-100", "Fl4-12-700");

  /** A row of the table. */
  record Curve(String id, double trueSeconds, double waves, double boxes, LightCurve light) {
    @Override
    public String toString() {
      return id;
    }
  }

  static List<Curve> curves() throws IOException {
    return Files.readAllLines(TABLE).stream().skip(2).map(LightPeriodsTest::curve).toList();
  }

  private static Curve curve(String line) {
    String[] cells = line.split(";");
    double[] levels = Stream.of(cells[4].split(" ")).mapToDouble(Double::parseDouble).toArray();
    return new Curve(
        cells[0],
        Double.parseDouble(cells[1]),
        Double.parseDouble(cells[2]),
        Double.parseDouble(cells[3]),
        light(levels));
  }

  private static LightCurve light(double[] levels) {
    double[] seconds = new double[levels.length];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = STEP_SECONDS * (i + 1);
    }
    return LightCurve.of(
        Origin.named("periods"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  @Test
  void theTableIsWhole() throws IOException {
    assertTrue(
        Files.readAllLines(TABLE).get(0).startsWith("# SciPy 1.10.1, Astropy 5.2.1"), "versions");
    assertEquals(15, curves().size());
  }

  @ParameterizedTest
  @MethodSource("curves")
  void theCycleIsThatOfWavesAndBoxes(Curve curve) {
    Rhythm observed = new LampDecoder().observe(curve.light()).observed().orElseThrow();
    double cycle = Answers.cycleSeconds(observed);
    assertEquals(
        curve.waves(), cycle, near(curve, WAVES), () -> "waves, " + Phrase.print(observed));
    if (!NO_BOX.contains(curve.id())) {
      assertEquals(
          curve.boxes(), cycle, near(curve, BOXES), () -> "boxes, " + Phrase.print(observed));
    }
  }

  private static double near(Curve curve, double part) {
    double rounding = curve.trueSeconds() < 2 ? ROUNDING_SECONDS / 10 : ROUNDING_SECONDS;
    return rounding + part * curve.trueSeconds();
  }
}

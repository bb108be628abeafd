package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The line through the times of a chain. */
class LineTest {
  private static final double TOLERANCE = 1e-12;

  /** A train of single blinks every 2 s whose stretch lies between 0.9 and 1.1. */
  private static final Train TRAIN =
      new Train(new double[] {0}, new double[] {0.1}, 0, 2, 0.9, 1.1, 0);

  private static Line line(double... timesAndTrain) {
    Line line = Line.through(timesAndTrain[0], timesAndTrain[1]);
    for (int i = 2; i < timesAndTrain.length; i += 2) {
      line = line.and(timesAndTrain[i], timesAndTrain[i + 1]);
    }
    return line;
  }

  private static double[] slopes(Density density, Line line) {
    double reach = density.reach(line);
    return new double[] {density.lowSlope(line, reach), density.highSlope(line, reach)};
  }

  @Test
  void itsSumsAreThoseOfTheTextbook() {
    // Means 4 and 3; distances -3, 0, 3 and -3, -1, 4.
    Line line = line(1, 0, 4, 2, 7, 7);
    assertEquals(3, line.points());
    assertEquals(4, line.meanTime(), TOLERANCE);
    assertEquals(3, line.meanTrain(), TOLERANCE);
    assertEquals(18, line.varTime(), TOLERANCE);
    assertEquals(21, line.covariance(), TOLERANCE);
    assertEquals(26, line.varTrain(), TOLERANCE);
  }

  @Test
  void itsStretchStaysWithinTheTrainsBorders() {
    assertEquals(1.05, line(3, 0, 5.1, 2, 7.2, 4).stretch(TRAIN), TOLERANCE);
    assertEquals(1.1, line(3, 0, 5.6, 2).stretch(TRAIN), TOLERANCE);
    assertEquals(0.9, line(3, 0, 4.6, 2).stretch(TRAIN), TOLERANCE);
    assertEquals(1, line(3, 0).stretch(TRAIN), TOLERANCE);
  }

  @Test
  void itsSlopeIsKnownAsWellAsItsPointsAllow() {
    // Two points 4 apart: the squares of their distances from the middle sum to 8.
    Density density = new Density(TRAIN, 0.02 * Math.sqrt(8) / Density.GATE);
    assertArrayEquals(new double[] {0.9, 1.1}, slopes(density, line(3, 0)), TOLERANCE);
    assertArrayEquals(new double[] {0.98, 1.02}, slopes(density, line(3, 0, 7, 4)), TOLERANCE);
    assertArrayEquals(new double[] {0.9, 1.1}, slopes(density, line(3, 0, 13, 4)), TOLERANCE);
  }

  @Test
  void itsDensityIsTheIntegralOverHeightAndSlope() {
    Line line = line(3, 0, 5.04, 2, 6.97, 4);
    double sd = 0.05;
    double[] times = {3, 5.04, 6.97};
    double sum = 0;
    int steps = 2000;
    for (int i = 0; i < steps; i++) {
      double slope = 0.9 + 0.2 * (i + 0.5) / steps;
      for (int k = 0; k < steps; k++) {
        double height = 2.5 + (k + 0.5) / steps;
        double log = 0;
        for (int j = 0; j < times.length; j++) {
          log += Gauss.logDensity(times[j] - height - slope * 2 * j, sd);
        }
        // Slope even between the borders; height with density one.
        sum += Math.exp(log) / steps / steps;
      }
    }
    assertEquals(Math.log(sum), new Density(TRAIN, sd).log(line), 1e-4);
  }
}

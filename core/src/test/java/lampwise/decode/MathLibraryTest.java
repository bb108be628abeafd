package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Window;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/** The decoder's own statistics and filters beside those of Commons Math 3.6.1. */
class MathLibraryTest {
  private static final double EXACT = 1e-9;

  /** The normal distribution comes from a table, so exact as its Javadoc says. */
  private static final double TABLE = 2e-6;

  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
  private final SplittableRandom random = new SplittableRandom(1125);

  private double[] gaussian(int count, double mean, double sd) {
    return DoubleStream.generate(() -> mean + sd * random.nextGaussian()).limit(count).toArray();
  }

  @Test
  void theNormalDistributionIsTheirs() {
    for (double z = -5.5; z <= 5.5; z += 0.037) {
      assertEquals(NORMAL.cumulativeProbability(z), Gauss.cumulative(z), TABLE, "below " + z);
      assertEquals(
          new NormalDistribution(0, 0.04).logDensity(0.04 * z),
          Gauss.logDensity(0.04 * z, 0.04),
          EXACT,
          "density at " + z);
      for (double wide : new double[] {0.001, 0.3, 2}) {
        double between = NORMAL.probability(z, z + wide);
        double own = Gauss.logBetween(z, z + wide);
        assertEquals(between, Math.exp(own), 2 * TABLE, z + " and " + wide + " on");
      }
    }
  }

  @Test
  void aMiddleAndASpreadAreTheirs() {
    for (int count = 1; count < 60; count += 2) {
      double[] values = gaussian(count, 3, 0.2);
      double median = new Percentile(50).evaluate(values);
      double[] distances = Arrays.stream(values).map(v -> Math.abs(v - median)).toArray();
      Spread spread = Spread.of(values);
      assertEquals(median, spread.middle(), EXACT, count + " values");
      double normal = 1 / NORMAL.inverseCumulativeProbability(0.75);
      double expected = normal * new Percentile(50).evaluate(distances);
      assertEquals(expected, spread.deviation(), 1e-4 * expected, count + " values");
    }
  }

  @Test
  void linesAreTheirs() {
    SimpleRegression theirs = new SimpleRegression();
    Line line = Line.through(0.31, 0);
    theirs.addData(0, 0.31);
    for (int i = 1; i < 40; i++) {
      double inTrain = 3.4 * i + 0.6 * (i % 3);
      double time = 0.31 + 1.03 * inTrain + 0.04 * random.nextGaussian();
      line = line.and(time, inTrain);
      theirs.addData(inTrain, time);
      assertEquals(theirs.getSlope(), line.covariance() / line.varTrain(), EXACT, i + " points");
      double left = line.varTime() - line.covariance() * line.covariance() / line.varTrain();
      assertEquals(theirs.getSumSquaredErrors(), left, EXACT, i + " points");
    }
  }

  @Test
  void leastSquaresAreTheirs() {
    for (int unknowns = 1; unknowns <= 5; unknowns++) {
      List<double[]> rows = new ArrayList<>();
      List<Double> values = new ArrayList<>();
      for (int i = 0; i < 12; i++) {
        rows.add(gaussian(unknowns, 1, 1));
        values.add(random.nextGaussian());
      }
      OLSMultipleLinearRegression theirs = new OLSMultipleLinearRegression();
      theirs.setNoIntercept(true);
      double[] given = values.stream().mapToDouble(Double::doubleValue).toArray();
      theirs.newSampleData(given, rows.toArray(double[][]::new));
      double[] expected = theirs.estimateRegressionParameters();
      double[] solved = LeastSquares.solve(rows, values);
      assertEquals(expected.length, solved.length);
      for (int i = 0; i < solved.length; i++) {
        assertEquals(expected[i], solved[i], EXACT, unknowns + " unknowns");
      }
      RealMatrix matrix = MatrixUtils.createRealMatrix(rows.toArray(double[][]::new));
      double determinant =
          new LUDecomposition(matrix.transpose().multiply(matrix)).getDeterminant();
      assertEquals(Math.log(determinant), LeastSquares.logDeterminant(rows), EXACT, "determinant");
    }
  }

  private static LightSamples samples(double rate, double[] levels) {
    double[] seconds = new double[levels.length];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = i / rate;
    }
    LightCurve curve =
        LightCurve.of(
            Origin.named("noise"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
    Window window = new Window(0, seconds[seconds.length - 1]);
    return LightSamples.of(curve, window, false);
  }

  /** Levels less a running quantile of 0.9 s, but for what they all are above zero by. */
  @Test
  void theRunningBaselineIsTheirs() {
    double[] levels = gaussian(600, 150, 2);
    LightSamples samples = samples(10, levels);
    Percentile low = new Percentile(35).withEstimationType(EstimationType.R_1);
    int half = 4;
    double middle = Double.NaN;
    int compared = 0;
    for (int i = half; i < levels.length - half; i++) {
      if (!Double.isNaN(samples.above()[i])) {
        double above = levels[i] - low.evaluate(levels, i - half, 2 * half + 1);
        middle = compared++ == 0 ? above - samples.above()[i] : middle;
        assertEquals(above - middle, samples.above()[i], EXACT, "sample " + i);
      }
    }
    assertTrue(compared > 500, compared + " of 600");
  }

  @Test
  void theNoiseIsNearTheirStandardDeviation() {
    for (double rate : new double[] {10, 50}) {
      double[] levels = gaussian(3000, 150, 2);
      double theirs = new StandardDeviation().evaluate(levels);
      assertEquals(theirs, samples(rate, levels).noise(), 0.08 * theirs, rate + " a second");
    }
  }
}

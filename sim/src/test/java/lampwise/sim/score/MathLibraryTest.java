package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.junit.jupiter.api.Test;

/** The score's own statistics beside those of Commons Math 3.6.1. */
class MathLibraryTest {
  private static final double EXACT = 1e-9;
  private final SplittableRandom random = new SplittableRandom(1125);

  @Test
  void sharesHaveTheirWilsonInterval() {
    for (int all : new int[] {1, 7, 160, 1000}) {
      for (int hits = 0; hits <= all; hits += Math.max(1, all / 13)) {
        ConfidenceInterval theirs = new WilsonScoreInterval().createInterval(all, hits, 0.95);
        Interval own = Interval.share(hits, all);
        assertEquals(theirs.getLowerBound(), own.low(), EXACT, hits + " of " + all);
        assertEquals(theirs.getUpperBound(), own.high(), EXACT, hits + " of " + all);
      }
    }
  }

  @Test
  void aMeanHasTheirIntervalOfTheNormal() {
    double z = new NormalDistribution(0, 1).inverseCumulativeProbability(0.975);
    for (int count : new int[] {2, 9, 500}) {
      double[] values = DoubleStream.generate(random::nextGaussian).limit(count).toArray();
      SummaryStatistics theirs = new SummaryStatistics();
      DoubleStream.of(values).forEach(theirs::addValue);
      Interval own = Interval.mean(values);
      double half = z * theirs.getStandardDeviation() / Math.sqrt(count);
      assertEquals(theirs.getMean(), own.value(), EXACT, count + " values");
      assertEquals(theirs.getMean() + half, own.high(), EXACT, count + " values");
    }
  }

  @Test
  void equationsHaveTheirSolution() {
    for (int size = 1; size <= 6; size++) {
      double[][] rows = new double[size + 2][];
      for (int i = 0; i < rows.length; i++) {
        rows[i] = DoubleStream.generate(random::nextGaussian).limit(size).toArray();
      }
      RealMatrix factor = MatrixUtils.createRealMatrix(rows);
      RealMatrix matrix = factor.transpose().multiply(factor);
      double[] values = DoubleStream.generate(random::nextGaussian).limit(size).toArray();
      CholeskyDecomposition theirs = new CholeskyDecomposition(matrix);
      assertArrayEquals(
          theirs.getSolver().solve(MatrixUtils.createRealVector(values)).toArray(),
          Squares.solve(matrix.getData(), values),
          EXACT,
          size + " unknowns");
      double[][] root = Squares.root(matrix.getData());
      for (int i = 0; i < size; i++) {
        assertArrayEquals(theirs.getL().getRow(i), root[i], EXACT, "row " + i);
      }
    }
  }
}

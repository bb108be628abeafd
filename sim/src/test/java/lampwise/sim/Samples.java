package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;

/** Whether samples come from a distribution. */
final class Samples {
  /** The chance that a right sample is called wrong; the seeds are fixed, so none is. */
  static final double SIZE = 0.001;

  private Samples() {}

  static double probability(DoubleUnaryOperator cumulative, double[] sample) {
    return KolmogorovSmirnovTest.withDefaults().test(sample, cumulative).getPValue();
  }

  static void assertFrom(ContinuousDistribution distribution, double[] sample) {
    double p = probability(distribution::cumulativeProbability, sample);
    assertTrue(p > SIZE, "Kolmogorov-Smirnov p = " + p);
  }

  /** The test sees a wrong distribution. */
  static void assertNotFrom(ContinuousDistribution distribution, double[] sample) {
    double p = probability(distribution::cumulativeProbability, sample);
    assertTrue(p < SIZE, "Kolmogorov-Smirnov p = " + p);
  }

  static double probability(double[] expected, long[] observed) {
    return ChiSquareTest.withDefaults().test(expected, observed).getPValue();
  }
}

package lampwise.sim.score;

import java.util.Optional;
import lampwise.sim.Chance;

/**
 * A place where points of a form are looked for: Student's t with five degrees of freedom around a
 * point, in the start of the cycle and the logarithms of the durations.
 */
final class FreePeak {
  private static final int DEGREES = 5;

  /** Logarithm of the gamma functions of t, for up to so many numbers a point. */
  private static final double[] LOG_GAMMA_HALVES = logGammaHalves(32);

  private final int number;
  private final FreeForm form;
  private final double[] centre;
  private final double[][] root;
  private final double logScale;

  /**
   * A peak.
   *
   * @param number the form's number
   * @param point its centre
   * @param precision the inverse of its spread, squared, in the start and the logarithms
   */
  FreePeak(int number, FreeForm form, double[] point, double[][] precision) {
    this.number = number;
    this.form = form;
    this.centre = logarithms(point);
    this.root = Squares.root(precision);
    double log = 0;
    for (int i = 0; i < centre.length; i++) {
      log += Math.log(root[i][i]);
    }
    this.logScale = log;
  }

  int number() {
    return number;
  }

  /** Logarithm of how much of a plain space it takes: the inverse root of the determinant. */
  double logVolume() {
    return centre.length * Math.log(2 * Math.PI) / 2 - logScale;
  }

  private static double[] logarithms(double[] point) {
    double[] logs = point.clone();
    for (int i = 1; i < logs.length; i++) {
      logs[i] = Math.log(logs[i]);
    }
    return logs;
  }

  private static double[] logGammaHalves(int count) {
    double[] logs = new double[count];
    logs[1] = Math.log(Math.PI) / 2;
    for (int i = 3; i < count; i++) {
      logs[i] = logs[i - 2] + Math.log(i / 2.0 - 1);
    }
    return logs;
  }

  /** How far a point is from the centre, squared, in deviations. */
  private double away(double[] logs, double later) {
    double away = 0;
    for (int i = 0; i < centre.length; i++) {
      double sum = 0;
      for (int k = i; k < centre.length; k++) {
        sum += root[k][i] * (logs[k] + (k == 0 ? later : 0) - centre[k]);
      }
      away += sum * sum;
    }
    return away;
  }

  /** Whether a point of the same form is so near that another peak there tells little new. */
  boolean isNear(FreePeak other) {
    return other.number == number && away(other.centre, 0) < 0.5;
  }

  /** The density at a point, which may have been drawn as the same one a cycle away. */
  double density(double[] point) {
    double[] logs = logarithms(point);
    double cycle = form.cycle(point);
    double density = 0;
    int around = form.repeats() ? 1 : 0;
    for (int k = -around; k <= around; k++) {
      density += density(away(logs, k * cycle));
    }
    for (int i = 1; i < point.length; i++) {
      density /= point[i];
    }
    return density;
  }

  private double density(double away) {
    int size = centre.length;
    double log =
        LOG_GAMMA_HALVES[DEGREES + size]
            - LOG_GAMMA_HALVES[DEGREES]
            - size / 2.0 * Math.log(DEGREES * Math.PI)
            + logScale
            - (DEGREES + size) / 2.0 * Math.log1p(away / DEGREES);
    return Math.exp(log);
  }

  /** A point; empty where it would be more than a cycle off. */
  Optional<double[]> draw(Chance chance) {
    double squares = 0;
    for (int i = 0; i < DEGREES; i++) {
      double normal = chance.normal();
      squares += normal * normal;
    }
    double[] point = new double[centre.length];
    double wide = Math.sqrt(DEGREES / squares);
    for (int i = point.length - 1; i >= 0; i--) {
      double sum = wide * chance.normal();
      for (int k = i + 1; k < point.length; k++) {
        sum -= root[k][i] * point[k];
      }
      point[i] = sum / root[i][i];
    }
    point[0] += centre[0];
    for (int i = 1; i < point.length; i++) {
      point[i] = Math.exp(centre[i] + point[i]);
    }
    if (form.repeats()) {
      double cycle = form.cycle(point);
      double off = Math.ceil(point[0] / cycle);
      point[0] -= off * cycle;
      return Math.abs(off) <= 1 ? Optional.of(point) : Optional.empty();
    }
    return Optional.of(point);
  }
}

package lampwise.sim;

/**
 * A slow, smooth wandering of the room's light: six sines of periods from 75 s to 18 min, each of
 * random size and phase, longer ones larger. It is stationary, so that a long recording does not
 * wander off, and its change over 90 s has the given standard deviation.
 */
final class Drift {
  private static final int SINES = 6;
  private static final double SHORTEST_SECONDS = 75;
  private static final double RATIO = 1.7;
  private static final double REFERENCE_SECONDS = 90;

  /** Between the moments at which it is worked out; straight in between. */
  private static final double STEP_SECONDS = 0.5;

  private final double[] cosine = new double[SINES];
  private final double[] sine = new double[SINES];
  private final double[] turnCosine = new double[SINES];
  private final double[] turnSine = new double[SINES];
  private final boolean still;

  private long step;
  private double before;
  private double after;

  /** Starts at the window's start; times asked for must not fall by more than a step. */
  Drift(double changeLux, Chance chance) {
    still = changeLux == 0;
    double period = SHORTEST_SECONDS;
    double change = 0;
    for (int i = 0; i < SINES; i++) {
      double half = StrictMath.sin(Math.PI * REFERENCE_SECONDS / period);
      change += 4 * period * half * half;
      double angle = 2 * Math.PI * STEP_SECONDS / period;
      turnCosine[i] = StrictMath.cos(angle);
      turnSine[i] = StrictMath.sin(angle);
      double size = Math.sqrt(period);
      cosine[i] = size * chance.normal();
      sine[i] = size * chance.normal();
      period *= RATIO;
    }
    double scale = changeLux / Math.sqrt(change);
    for (int i = 0; i < SINES; i++) {
      cosine[i] *= scale;
      sine[i] *= scale;
    }
    before = sum();
    turn();
    after = sum();
  }

  /** The level at a time, in lux around zero. */
  double at(double seconds) {
    if (still) {
      return 0;
    }
    double place = seconds / STEP_SECONDS;
    while (place > step + 1) {
      step++;
      before = after;
      turn();
      after = sum();
    }
    return before + (after - before) * (place - step);
  }

  private void turn() {
    for (int i = 0; i < SINES; i++) {
      double turned = cosine[i] * turnCosine[i] - sine[i] * turnSine[i];
      sine[i] = sine[i] * turnCosine[i] + cosine[i] * turnSine[i];
      cosine[i] = turned;
    }
  }

  private double sum() {
    double sum = 0;
    for (double part : cosine) {
      sum += part;
    }
    return sum;
  }
}

package lampwise.decode;

import java.util.Optional;
import lampwise.rhythm.Limits;

/**
 * An unlisted rhythm beside single blinks that fold well: the same with a second blink at its own
 * place in every cycle, too weak to stand out by itself. Without it two blinks in a cycle pass for
 * a listed one.
 */
final class SecondBlink {
  /** How far the stretch of a proposed train reaches to either side. */
  private static final double STRETCH = 0.08;

  /** Logarithm of the prior of two blinks in one group, of a usual cycle in this stretch. */
  private static final double LOG_WEIGHT =
      Math.log(0.12) + Math.log(0.8 * 2 * STRETCH / Math.log(40));

  private static final double LOG_APARTS =
      Math.log(Limits.APART_MOST_SECONDS / Limits.APART_LEAST_SECONDS);

  private SecondBlink() {}

  /**
   * The proposal; empty if no other place of the cycle has blinks.
   *
   * @param logRatios the evidence along the grid
   * @param stepSeconds from one place of the grid to the next
   * @param train single blinks
   * @param fold how they fold, its start a place of the grid
   * @param sharedSeconds blinks nearer than this share samples, so that nothing tells them apart
   */
  static Optional<FreeRhythms> of(
      float[] logRatios, double stepSeconds, Train train, Folded fold, double sharedSeconds) {
    double cycle = train.cycleSeconds() * fold.stretch() / stepSeconds;
    int near = (int) Math.ceil(sharedSeconds / stepSeconds);
    double most = 0;
    int at = 0;
    int repeats = 0;
    for (int offset = near; offset < cycle - near; offset++) {
      double sum = 0;
      int count = 0;
      double first = (fold.startSeconds() + offset) % cycle;
      for (double place = first; Math.rint(place) < logRatios.length; place += cycle) {
        sum += logRatios[(int) Math.rint(place)];
        count++;
      }
      if (count > 1 && sum > most) {
        most = sum;
        at = offset;
        repeats = count;
      }
    }
    if (at == 0) {
      return Optional.empty();
    }
    double apart = Math.min(at, cycle - at) * stepSeconds;
    Train both =
        new Train(
            new double[] {0, apart},
            new double[] {train.length(0), train.length(0)},
            0,
            cycle * stepSeconds,
            1 - STRETCH,
            1 + STRETCH,
            LOG_WEIGHT);
    return Optional.of(new FreeRhythms(both, -Math.log(apart * LOG_APARTS), 1, repeats));
  }
}

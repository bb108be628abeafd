package lampwise.decode;

/** The pulses before a run's first blink, looked at from there back. */
final class Onset {
  private static final int MOST_PULSES = 60;

  /** So improbable (natural logarithm) that no earlier pulse is looked at. */
  static final double HOPELESS = -40;

  private final Train train;
  private final Evidence evidence;
  private final Noise noise;
  private final double logMiss;
  private final int anchor;
  private final double anchorTime;
  private final double stretch;
  private final double open;
  private int next;
  private double sum;

  Onset(Train train, Evidence evidence, Noise noise, int anchor, double anchorTime) {
    this.train = train;
    this.evidence = evidence;
    this.noise = noise;
    this.logMiss = noise.logMissed();
    this.anchor = anchor;
    this.anchorTime = anchorTime;
    this.stretch = train.middle();
    this.open = Missed.EVEN_SPREAD * (train.high() - train.low());
    this.next = anchor - 1;
  }

  /**
   * Logarithm of the chance that none left a blink since a moment; earlier at every call.
   *
   * @param least what does not matter if it is below, for which it may come out greater than it is
   */
  double missedSince(double from, double least) {
    int first = Math.max(train.first(), anchor - MOST_PULSES);
    double on = train.on(anchor);
    double border = 0;
    for (int pulse = next; pulse >= first && sum > Math.max(HOPELESS, least); pulse--) {
      double away = on - train.on(pulse);
      double time = anchorTime - stretch * away;
      double sd = noise.sd() + open * away;
      double after = time - from;
      if (after < -Run.QUIET * sd) {
        break;
      }
      if (after > Run.QUIET * sd && pulse == next) {
        sum += missed(time, sd, 1);
        next--;
      } else {
        border += missed(time, sd, Gauss.cumulative(after / sd));
      }
    }
    return sum + border;
  }

  private double missed(double time, double sd, double inside) {
    return noise.logMissed(inside * evidence.watched(time, sd), logMiss);
  }
}

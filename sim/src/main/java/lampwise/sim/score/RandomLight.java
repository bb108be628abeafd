package lampwise.sim.score;

/**
 * A light sensor's values under blinks in no order: all ways to lay blinks of one length into the
 * window are summed, with starts in small steps, from one start to the next. Two blinks that follow
 * each other may share values; what three or more make of a value they share is taken pair by pair.
 */
final class RandomLight {
  private final LightValues values;
  private final double from;
  private final double step;
  private final double blink;
  private final double pause;

  /** From start to start: the least, and from where on two blinks share no value; in steps. */
  private final int least;

  private final int apart;

  /** The logarithm of what a blink is worth, for each start. */
  private final double[] worth;

  /**
   * Looks at each blink alone.
   *
   * @param from start of the window
   * @param to end of the window
   * @param step between two starts that are looked at, seconds
   * @param blink how long a blink is lit
   * @param dark the least dark after one
   */
  RandomLight(LightValues values, double from, double to, double step, double blink, double dark) {
    this.values = values;
    this.pause = blink + dark;
    this.from = from - 2 * pause;
    this.step = step;
    this.blink = blink;
    this.least = (int) Math.max(1, Math.round(pause / step));
    this.apart = Math.max(least, (int) Math.ceil((blink + values.averaging()) / step));
    this.worth = new double[(int) Math.ceil((to - this.from) / step)];
    for (int i = 0; i < worth.length; i++) {
      worth[i] = values.log(on(i), on(i) + blink);
    }
  }

  private double on(int start) {
    return from + (start + 0.5) * step;
  }

  /**
   * Logarithm of the density relative to that of a dark lamp.
   *
   * @param perSecond how many blinks begin in a second that is free for them
   */
  double log(double perSecond) {
    double none = -perSecond * step;
    double one = Math.log(-Math.expm1(none));
    double[] begun = new double[worth.length];
    double free = 0;
    for (int i = 0; i < worth.length; i++) {
      if (i >= apart) {
        free = Logs.add(free, begun[i - apart] + none * (apart - least));
      }
      double before = free;
      for (int k = Math.max(0, i - apart + 1); k <= i - least; k++) {
        before = Logs.add(before, begun[k] + none * (i - k - least) + together(k, i));
      }
      begun[i] = before + one + worth[i];
      free += none;
    }
    double all = free;
    for (int k = Math.max(0, worth.length - apart); k < worth.length; k++) {
      all = Logs.add(all, begun[k] + none * Math.max(0, worth.length - k - least));
    }
    return all;
  }

  /** What two near blinks are worth together, less what each is worth alone. */
  private double together(int first, int second) {
    values.dark();
    values.lit(on(first), on(first) + blink);
    values.lit(on(second), on(second) + blink);
    return values.log() - worth[first] - worth[second];
  }
}

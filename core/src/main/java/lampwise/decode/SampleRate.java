package lampwise.decode;

import java.util.Arrays;
import java.util.Locale;
import lampwise.light.LightCurve;
import lampwise.rhythm.Phrase;

/**
 * How often a light curve has a new level, and so how fast a rhythm it can show.
 *
 * @param rowSeconds the usual time from row to row; 0 if there are fewer than two rows
 * @param seconds the usual time from one new level to the next: longer where rows repeat the level
 *     of a slower sensor
 */
record SampleRate(double rowSeconds, double seconds) {
  /** Blinks nearer than so many levels, start to start, run together (chosen; 2 is the limit). */
  private static final double LEVELS_APART = 2.5;

  /** Of a file written on change, where silences are no steps, this low part of the steps. */
  private static final double STEP_ON_CHANGE = 0.1;

  /** Fewer runs of equal levels, or fewer levels, tell nothing of the sensor behind the rows. */
  private static final int LEAST_RUNS = 20;

  private static final int LEAST_LEVELS = 6;

  /** So many runs are within one row of the usual where a poller repeats a slower sensor. */
  private static final double LIKE_THE_USUAL = 0.8;

  /** Runs of one row where levels are equal by chance. */
  private static final double MOST_SINGLE = 0.35;

  private static final int LONGEST_RUN = 20;

  /** So many rows tell how the others come. */
  private static final int MOST_ROWS = 20_000;

  static SampleRate of(LightCurve curve) {
    int most = Math.min(curve.size(), MOST_ROWS);
    double[] seconds = new double[most];
    double[] levels = new double[most];
    int count = 0;
    for (int i = 0; i < most; i++) {
      if (!Double.isNaN(curve.level(i))) {
        seconds[count] = curve.seconds(i);
        levels[count++] = curve.level(i);
      }
    }
    seconds = Arrays.copyOf(seconds, count);
    if (LitSpans.isHeld(curve)) {
      double step = steps(seconds, STEP_ON_CHANGE);
      return new SampleRate(step, step);
    }
    double row = LitSpans.usualStep(seconds);
    return new SampleRate(row, row * usualRun(Arrays.copyOf(levels, count)));
  }

  private static double steps(double[] seconds, double share) {
    double[] steps = new double[Math.max(0, seconds.length - 1)];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = seconds[i + 1] - seconds[i];
    }
    Arrays.sort(steps);
    return steps.length == 0 ? 0 : steps[(int) (share * steps.length)];
  }

  /** The mean length of runs of equal levels where all are about as long; else 1. */
  private static double usualRun(double[] levels) {
    int[] runs = new int[levels.length];
    int count = 0;
    int since = 0;
    for (int i = 1; i < levels.length; i++) {
      if (levels[i] != levels[i - 1]) {
        // The first run may have begun before.
        runs[count] = i - since;
        count += since > 0 ? 1 : 0;
        since = i;
      }
    }
    if (count < LEAST_RUNS || Arrays.stream(levels).distinct().count() < LEAST_LEVELS) {
      return 1;
    }
    int[] sorted = Arrays.copyOf(runs, count);
    Arrays.sort(sorted);
    int usual = sorted[count / 2];
    int like = 0;
    int single = 0;
    double rows = 0;
    for (int run : sorted) {
      boolean alike = Math.abs(run - usual) <= 1;
      like += alike ? 1 : 0;
      rows += alike ? run : 0;
      single += run == 1 ? 1 : 0;
    }
    boolean held =
        usual > 1
            && usual <= LONGEST_RUN
            && like >= LIKE_THE_USUAL * count
            && single <= MOST_SINGLE * count;
    return held ? rows / like : 1;
  }

  /** The least time from the start of one blink to the next that can be seen. */
  double leastApartSeconds() {
    return LEVELS_APART * seconds;
  }

  /** How fast a rhythm can be seen, a sentence. */
  String note() {
    String row = Phrase.shown(Measured.round(rowSeconds, 3));
    boolean held = seconds > rowSeconds;
    return (held
            ? "a row every "
                + row
                + ", a new level every "
                + Phrase.shown(Measured.round(seconds, 3))
            : "a sample every " + row)
        + ": blinks closer together than "
        + Phrase.shown(Measured.round(leastApartSeconds(), 3))
        + " cannot be seen";
  }

  /** New levels a second, in words: {@code 5 samples a second}. */
  String words() {
    return number(1 / seconds) + (seconds == 1 ? " sample a second" : " samples a second");
  }

  /** A rate with as many digits as a reader needs: three, no zeros at the end. */
  static String number(double perSecond) {
    int decimals = perSecond >= 100 ? 0 : perSecond >= 10 ? 1 : 2;
    String text = String.format(Locale.ROOT, "%." + decimals + "f", perSecond);
    return decimals == 0 ? text : text.replaceAll("\\.?0+$", "");
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.light.Window;

/**
 * Finds the stretches of a light curve in which the lamp is lit.
 *
 * <p>Two ways to tell lit from dark are tried: two levels for the whole curve (Otsu 1979), and a
 * level above a running median, which follows daylight and drift. Neither finds anything unless the
 * step stands out from the noise and few samples lie between but for those at its edges.
 *
 * @param lit the lit stretches, in order
 * @param contrast the step in units of the noise; 0 if there is none
 * @param pauses stretches without samples, of which nothing is known
 * @param periodSeconds the time between samples
 */
record LitSpans(
    List<Evidence.Note> lit, double contrast, List<Window> pauses, double periodSeconds) {
  /** The least step that counts, in standard deviations of the noise. */
  private static final double LEAST_CONTRAST = 6;

  /**
   * What falls for one sample is no shadow's doing: a disturbance, which may rise as far. One of so
   * many deviations is noise still.
   */
  private static final double DIP = 4;

  /** The largest part of the samples that may lie between the two levels. */
  private static final double MOST_BETWEEN = 0.1;

  /** Silence this many times the usual time between samples is a pause. */
  private static final double PAUSE = 5;

  /** Noise of levels that flicker about a border of their steps, in steps. */
  private static final double ROUNDING = 0.5;

  /** Length of the running median, seconds. */
  private static final double RUNNING_SECONDS = 8;

  static LitSpans of(LightCurve curve, Window window, List<Window> covered) {
    Samples samples = Samples.of(curve, window);
    double[] seconds = samples.seconds();
    double period = usualStep(seconds);
    boolean onChange = onChange(samples.levels());
    List<Window> pauses = pauses(seconds, onChange, period);
    Optional<Cut> found = cut(samples, onChange);
    if (found.isEmpty()) {
      return new LitSpans(List.of(), 0, pauses, period);
    }
    Cut cut = found.get();
    return new LitSpans(
        spans(seconds, cut.above(), cut.lit(), 0.15 * cut.step(), onChange, pauses, covered),
        cut.contrast(),
        pauses,
        period);
  }

  /** The samples of a window that have a level, higher where the lamp is lit. */
  @SuppressWarnings("ArrayRecordComponent") // Long and read in inner loops, inside the package.
  record Samples(double[] seconds, double[] levels) {
    static Samples of(LightCurve curve, Window window) {
      double[] seconds = new double[curve.size()];
      double[] levels = new double[curve.size()];
      int count = 0;
      for (int i = 0; i < curve.size(); i++) {
        if (window.contains(curve.seconds(i)) && !Double.isNaN(curve.level(i))) {
          seconds[count] = curve.seconds(i);
          levels[count++] = curve.lit() == LightCurve.Lit.DARKER ? -curve.level(i) : curve.level(i);
        }
      }
      return new Samples(Arrays.copyOf(seconds, count), Arrays.copyOf(levels, count));
    }
  }

  /**
   * Where lit is cut from dark.
   *
   * @param above the samples' levels above a zero of their own
   * @param dark the level above it that counts as dark
   * @param lit from which level above it on the lamp is lit
   * @param step from dark to lit
   * @param contrast the same in units of the noise
   */
  @SuppressWarnings("ArrayRecordComponent") // Long and read in inner loops, inside the package.
  record Cut(double[] above, double dark, double lit, double step, double contrast) {}

  /** Where lit is cut from dark in a window; empty if nothing stands out. */
  static Optional<Cut> cut(Samples samples) {
    return cut(samples, onChange(samples.levels()));
  }

  private static Optional<Cut> cut(Samples samples, boolean onChange) {
    double[] levels = samples.levels();
    if (levels.length < 3) {
      return Optional.empty();
    }
    // Reported on change every row is a step, so that neighbours say nothing of the noise.
    double noise = onChange ? ROUNDING * resolution(levels) : noise(levels);
    Optional<double[]> global = twoLevels(levels, noise);
    if (global.isPresent()) {
      double[] two = global.get();
      double step = two[1] - two[0];
      double least = Math.max(noise, onChange ? 0 : dip(levels, two[0]) / DIP);
      double contrast = step / Math.max(least, 1e-9 + 0.001 * step);
      return Optional.of(new Cut(levels, two[0], 0.5 * (two[0] + two[1]), step, contrast));
    }
    double[] above = aboveMedian(samples.seconds(), levels);
    Optional<double[]> local = twoLevels(above, noise);
    if (local.isEmpty() || local.get()[1] < LEAST_CONTRAST * noise) {
      return Optional.empty();
    }
    double[] two = local.get();
    double step = two[1] - two[0];
    double least = Math.max(noise, onChange ? 0 : dip(above, two[0]) / DIP);
    double contrast = step / Math.max(least, 1e-9);
    return Optional.of(new Cut(above, two[0], 0.5 * (two[0] + two[1]), step, contrast));
  }

  /** How far the deepest sample lies below the dark level that both of its neighbours keep to. */
  private static double dip(double[] above, double dark) {
    double deepest = 0;
    for (int i = 1; i + 1 < above.length; i++) {
      double below = dark - above[i];
      double near = dark - Math.min(above[i - 1], above[i + 1]);
      deepest = near < 0.5 * below ? Math.max(deepest, below) : deepest;
    }
    return deepest;
  }

  static double usualStep(double[] seconds) {
    if (seconds.length < 2) {
      return 0;
    }
    double[] steps = new double[seconds.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = seconds[i + 1] - seconds[i];
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }

  /** Silences that are not simply an unchanged level. */
  private static List<Window> pauses(double[] seconds, boolean onChange, double period) {
    List<Window> pauses = new ArrayList<>();
    for (int i = 1; i < seconds.length && !onChange; i++) {
      if (seconds[i] - seconds[i - 1] > PAUSE * period) {
        pauses.add(new Window(seconds[i - 1], seconds[i]));
      }
    }
    return pauses;
  }

  /** Whether a curve was reported on change, so that a level holds until the next row. */
  static boolean isHeld(LightCurve curve) {
    double[] levels = new double[curve.size()];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = curve.level(i);
    }
    return onChange(levels);
  }

  /** A curve of few levels in which none follows itself was reported on change: it holds them. */
  private static boolean onChange(double[] levels) {
    for (int i = 1; i < levels.length; i++) {
      if (levels[i] == levels[i - 1]) {
        return false;
      }
    }
    return Arrays.stream(levels).distinct().count() * 4 < levels.length;
  }

  /** The step in which levels are reported: one, a tenth, a hundredth; 0 if finer. */
  private static double resolution(double[] levels) {
    for (double step : new double[] {1, 0.1, 0.01}) {
      if (Arrays.stream(levels).allMatch(v -> Math.abs(v / step - Math.rint(v / step)) < 1e-6)) {
        return step;
      }
    }
    return 0;
  }

  /** Standard deviation of the noise from the differences of neighbours, by their median. */
  private static double noise(double[] levels) {
    double[] steps = new double[levels.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = Math.abs(levels[i + 1] - levels[i]);
    }
    return Spread.deviation(steps) / Math.sqrt(2);
  }

  /** The two levels, or empty if there are not clearly two. */
  private static Optional<double[]> twoLevels(double[] levels, double noise) {
    double[] sorted = levels.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    double all = Arrays.stream(sorted).sum();
    double below = 0;
    double best = 0;
    int cut = 0;
    for (int i = 1; i < n; i++) {
      below += sorted[i - 1];
      if (sorted[i] > sorted[i - 1]) {
        double apart = below / i - (all - below) / (n - i);
        double between = apart * apart * i * (n - i);
        if (between > best) {
          best = between;
          cut = i;
        }
      }
    }
    if (cut == 0) {
      return Optional.empty();
    }
    double low = sorted[cut / 2];
    double high = sorted[cut + (n - cut) / 2];
    double step = high - low;
    int between = between(levels, low + step / 3, high - step / 3);
    double spread = spread(sorted, cut, low, high);
    boolean clear =
        step > LEAST_CONTRAST * Math.max(noise, spread)
            && step > 0
            && between <= MOST_BETWEEN * Math.min(n, 4 * Math.min(cut, n - cut)) + 2;
    return clear ? Optional.of(new double[] {low, high}) : Optional.empty();
  }

  /**
   * How many samples lie between two levels, but for those on the way from one to the other: a
   * sensor that averages over an edge shows a part of the step, the same part at each edge where
   * the lamp keeps to the sensor's pace.
   */
  private static int between(double[] levels, double low, double high) {
    int between = 0;
    for (int i = 0; i < levels.length; i++) {
      if (levels[i] > low && levels[i] < high) {
        double before = i > 0 ? levels[i - 1] : levels[i];
        double after = i + 1 < levels.length ? levels[i + 1] : levels[i];
        boolean edge = Math.min(before, after) <= low && Math.max(before, after) >= high;
        between += edge ? 0 : 1;
      }
    }
    return between;
  }

  /** How far the samples spread about the level they belong to. */
  private static double spread(double[] sorted, int cut, double low, double high) {
    double[] distances = new double[sorted.length];
    for (int i = 0; i < sorted.length; i++) {
      distances[i] = Math.abs(sorted[i] - (i < cut ? low : high));
    }
    return Spread.deviation(distances);
  }

  private static double[] aboveMedian(double[] seconds, double[] levels) {
    double[] above = new double[levels.length];
    double[] inside = new double[levels.length];
    double median = levels[0];
    int from = 0;
    int to = 0;
    double renewed = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < levels.length; i++) {
      while (seconds[from] < seconds[i] - RUNNING_SECONDS / 2) {
        from++;
      }
      while (to < levels.length && seconds[to] <= seconds[i] + RUNNING_SECONDS / 2) {
        to++;
      }
      if (seconds[i] > renewed + RUNNING_SECONDS / 16) {
        renewed = seconds[i];
        System.arraycopy(levels, from, inside, 0, to - from);
        Arrays.sort(inside, 0, to - from);
        median = inside[(to - from) / 2];
      }
      above[i] = levels[i] - median;
    }
    return above;
  }

  /**
   * Lit stretches by a threshold with hysteresis; edges where the level crosses the threshold.
   *
   * @param held whether a level holds until the next row, so that it changes at the row itself
   */
  private static List<Evidence.Note> spans(
      double[] seconds,
      double[] levels,
      double threshold,
      double hysteresis,
      boolean held,
      List<Window> pauses,
      List<Window> covered) {
    List<Evidence.Note> lit = new ArrayList<>();
    double on = Double.NaN;
    boolean cut = false;
    double lastBelow = Double.NaN;
    double lastAbove = Double.NaN;
    int pause = 0;
    for (int i = 0; i < seconds.length; i++) {
      boolean afterPause =
          i == 0 || (pause < pauses.size() && pauses.get(pause).toSeconds() == seconds[i]);
      if (afterPause && i > 0) {
        pause++;
      }
      if (isCovered(covered, seconds[i])) {
        continue;
      }
      boolean was = !Double.isNaN(on);
      boolean is = levels[i] > threshold + (was ? -hysteresis : hysteresis);
      double crossing =
          i == 0 || afterPause || held
              ? seconds[i]
              : crossing(seconds, levels, i, threshold, is ? lastBelow : lastAbove);
      if (is && !was) {
        on = crossing;
        cut = afterPause;
      } else if (!is && was) {
        if (afterPause) {
          // It went out while nothing was recorded: when is not known.
          lit.add(
              new Evidence.Note(
                  on, seconds[i - 1] > on ? seconds[i - 1] : Double.NaN, cut, true, 1));
        } else if (crossing > on) {
          lit.add(new Evidence.Note(on, crossing, cut, false, 1));
        }
        on = Double.NaN;
      }
      if (levels[i] <= threshold) {
        lastBelow = seconds[i];
      } else {
        lastAbove = seconds[i];
      }
    }
    if (!Double.isNaN(on)) {
      double end = seconds[seconds.length - 1];
      lit.add(new Evidence.Note(on, end > on ? end : Double.NaN, cut, true, 1));
    }
    return lit;
  }

  private static boolean isCovered(List<Window> covered, double seconds) {
    for (Window stretch : covered) {
      if (stretch.contains(seconds)) {
        return true;
      }
    }
    return false;
  }

  /** Where the straight line from the sample at {@code since} to sample i crosses the threshold. */
  private static double crossing(
      double[] seconds, double[] levels, int i, double threshold, double since) {
    int before = i - 1;
    while (before > 0 && seconds[before] > since) {
      before--;
    }
    int after = before + 1;
    double rise = levels[after] - levels[before];
    double part = rise == 0 ? 0.5 : (threshold - levels[before]) / rise;
    return seconds[before] + Math.max(0, Math.min(1, part)) * (seconds[after] - seconds[before]);
  }
}

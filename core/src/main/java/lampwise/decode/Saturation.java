package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.light.Window;

/**
 * Samples at the top of a sensor's range, which say nothing of the lamp: a greatest level that is
 * held while all others wander, or that far more samples have than any other. A lamp that reaches
 * the top by itself leaves two clear levels, and its samples stay.
 *
 * @param curve the curve, levels that say nothing missing
 * @param stretches the longer stretches without them, in order
 * @param share the part of the whole time in which the level is at the top for another reason than
 *     the lamp, from 0 to 1
 * @param tooMuch whether too little is left to read
 */
record Saturation(LightCurve curve, List<Window> stretches, double share, boolean tooMuch) {
  /** Fewer samples at the greatest level are chance. */
  private static final int LEAST_SAMPLES = 10;

  /** Scattered, the top is so many times as common as any other level. */
  private static final int COMMONER = 4;

  /** In one stretch, it holds so many times as long as any other level. */
  private static final int LONGER = 3;

  /** With fewer levels below, a greatest one that is common is no wonder. */
  private static final int LEAST_LEVELS = 10;

  /** The greatest numbers of so many bits are known as tops. */
  private static final int LEAST_BITS = 8;

  private static final int MOST_BITS = 24;

  /** A step from dark to the top that is the lamp's, in deviations of what lies below it. */
  private static final double CLEAR_STEP = 6;

  /** A lamp's own light at the top lasts no longer, or comes back: seconds, times, ratio. */
  private static final double LAMP_SECONDS = 2;

  private static final int LEAST_LIGHTS = 3;
  private static final double ALIKE = 3;

  /** Gaps of fewer rows than this are no stretches. */
  private static final double PAUSE = 5;

  /** So long before and after such a stretch the other light comes and goes (chosen). */
  private static final double EDGE_SECONDS = 0.3;

  /** If more than this is lost, or hides the noise, there is nothing to read. */
  private static final double MOST_LOST = 0.9;

  private static final double MOST_SCATTERED = 0.25;

  /** So many samples tell how the others are. */
  private static final int ENOUGH = 100_000;

  /** A stretch of samples at the top. */
  private record Run(int first, int last, double seconds) {}

  static Saturation of(LightCurve curve) {
    double top = Double.NEGATIVE_INFINITY;
    int atTop = 0;
    for (int i = 0; i < curve.size(); i++) {
      double level = curve.level(i);
      if (level > top) {
        top = level;
        atTop = 0;
      }
      atTop += level == top ? 1 : 0;
    }
    boolean held = atTop > 0 && LitSpans.isHeld(curve);
    Saturation none = new Saturation(curve, List.of(), 0, false);
    double row = atTop > 0 ? SampleRate.of(curve).rowSeconds() : 0;
    if (atTop < (held ? 1 : LEAST_SAMPLES) || !(row > 0)) {
      return none;
    }
    List<Run> runs = runs(curve, top, row, held);
    if (!isTop(curve, runs, top, row, held)) {
      return none;
    }
    LightCurve rest = rest(curve, runs);
    boolean alone = LitSpans.of(rest, whole(rest), List.of()).lit().isEmpty();
    if (alone && isLamp(rest, runs, top)) {
      return none;
    }
    // Below the top the lamp blinks by itself, or what is at the top for long is not the lamp.
    return without(curve, runs, row, alone);
  }

  /** The stretches at the top. A level lasts to the next row, but not over a pause. */
  private static List<Run> runs(LightCurve curve, double top, double row, boolean held) {
    List<Run> runs = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      if (curve.level(i) == top) {
        int first = i;
        while (i + 1 < curve.size() && curve.level(i + 1) == top) {
          i++;
        }
        runs.add(new Run(first, i, end(curve, i, row, held) - curve.seconds(first)));
      }
    }
    return runs;
  }

  private static double end(LightCurve curve, int last, double row, boolean held) {
    double end = curve.seconds(last) + row;
    if (last + 1 == curve.size()) {
      return end;
    }
    return held ? curve.seconds(last + 1) : Math.min(end, curve.seconds(last + 1));
  }

  /** Whether the greatest level is more than the greatest of levels that wander. */
  private static boolean isTop(
      LightCurve curve, List<Run> runs, double top, double row, boolean held) {
    double longest = 0;
    double seconds = 0;
    for (Run run : runs) {
      longest = Math.max(longest, run.seconds());
      seconds += run.seconds();
    }
    boolean stays = longest > (LEAST_SAMPLES - 0.5) * row;
    if (isKnown(top) && stays) {
      return true;
    }
    double[] below = below(curve, top);
    if (!wanders(curve, below, top)) {
      return false;
    }
    double longestBelow = 0;
    for (int i = 0; i < curve.size() && stays; i++) {
      int first = i;
      while (i + 1 < curve.size() && curve.level(i + 1) == curve.level(first)) {
        i++;
      }
      double lasts = end(curve, i, row, held) - curve.seconds(first);
      longestBelow = curve.level(i) < top ? Math.max(longestBelow, lasts) : longestBelow;
    }
    int most = 0;
    int same = 0;
    for (int i = 0; i < below.length; i++) {
      same = i > 0 && below[i] == below[i - 1] ? same + 1 : 1;
      most = Math.max(most, same);
    }
    return (stays && longest >= LONGER * longestBelow) || seconds >= COMMONER * row * most;
  }

  /** All ones in binary: 255, 1023, 4095, 65535. */
  private static boolean isKnown(double top) {
    for (int bits = LEAST_BITS; bits <= MOST_BITS; bits++) {
      if (top == (1 << bits) - 1) {
        return true;
      }
    }
    return false;
  }

  /** Lower levels, sorted. */
  private static double[] below(LightCurve curve, double top) {
    double[] below = new double[Math.min(curve.size(), ENOUGH)];
    int count = 0;
    for (int i = 0; i < curve.size() && count < ENOUGH; i++) {
      if (curve.level(i) < top) {
        below[count++] = curve.level(i);
      }
    }
    below = Arrays.copyOf(below, count);
    Arrays.sort(below);
    return below;
  }

  /** Whether lower levels are many and differ from sample to sample by their step or more. */
  private static boolean wanders(LightCurve curve, double[] below, double top) {
    int levels = 0;
    double step = Double.POSITIVE_INFINITY;
    for (int i = 0; i < below.length; i++) {
      boolean another = i == 0 || below[i] > below[i - 1];
      levels += another ? 1 : 0;
      step = another && i > 0 ? Math.min(step, below[i] - below[i - 1]) : step;
    }
    if (levels < LEAST_LEVELS) {
      return false;
    }
    double[] changes = new double[Math.min(curve.size(), ENOUGH)];
    int count = 0;
    for (int i = 1; i < curve.size() && count < ENOUGH; i++) {
      if (curve.level(i) < top && curve.level(i - 1) < top) {
        changes[count++] = Math.abs(curve.level(i) - curve.level(i - 1));
      }
    }
    Arrays.sort(changes, 0, count);
    return count > 0 && changes[count / 2] > 0.5 * step;
  }

  /** What is not at the top, nor beside it. */
  private static LightCurve rest(LightCurve curve, List<Run> runs) {
    double[] seconds = new double[Math.min(curve.size(), ENOUGH)];
    double[] levels = new double[seconds.length];
    int count = 0;
    int next = 0;
    for (int i = 0; i < curve.size() && count < ENOUGH; i++) {
      if (next < runs.size() && i >= runs.get(next).first() - 1) {
        i = runs.get(next++).last() + 1;
      } else if (!Double.isNaN(curve.level(i))) {
        seconds[count] = curve.seconds(i);
        levels[count++] = curve.level(i);
      }
    }
    return LightCurve.of(
        curve.origin(),
        curve.marks(),
        curve.lit(),
        Arrays.copyOf(seconds, count),
        Arrays.copyOf(levels, count));
  }

  private static Window whole(LightCurve curve) {
    int size = curve.size();
    return size == 0 ? new Window(0, 0) : new Window(curve.seconds(0), curve.seconds(size - 1));
  }

  /** Whether a lamp brings the level up to the top: a clear step, as short or regular as lamps. */
  private static boolean isLamp(LightCurve rest, List<Run> runs, double top) {
    if (rest.size() < LEAST_SAMPLES) {
      return false;
    }
    double[] lights = runs.stream().mapToDouble(Run::seconds).sorted().toArray();
    double longest = lights[lights.length - 1];
    boolean regular = lights.length >= LEAST_LIGHTS && longest <= ALIKE * lights[lights.length / 2];
    if (longest > LAMP_SECONDS && !regular) {
      return false;
    }
    double[] dark = new double[rest.size()];
    for (int i = 0; i < dark.length; i++) {
      dark[i] = rest.level(i);
    }
    Spread spread = Spread.of(dark);
    return top - spread.middle() > CLEAR_STEP * spread.deviation();
  }

  /**
   * Leaves out what is at the top.
   *
   * @param longOnly whether only what is longer than a lamp's light
   */
  private static Saturation without(
      LightCurve curve, List<Run> runs, double row, boolean longOnly) {
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < levels.length; i++) {
      seconds[i] = curve.seconds(i);
      levels[i] = curve.level(i);
    }
    List<Window> stretches = new ArrayList<>();
    double lost = 0;
    double scattered = 0;
    for (Run run : runs) {
      if (longOnly && run.seconds() <= LAMP_SECONDS) {
        scattered += run.seconds();
        continue;
      }
      lost += run.seconds();
      boolean other = run.seconds() > LAMP_SECONDS;
      double edge = other ? EDGE_SECONDS : 0;
      double from = seconds[run.first()] - edge;
      double to = seconds[run.last()] + edge;
      for (int i = run.first(); i >= 0 && seconds[i] >= from; i--) {
        levels[i] = Double.NaN;
      }
      for (int i = run.first(); i < levels.length && seconds[i] <= to; i++) {
        levels[i] = Double.NaN;
      }
      if (run.seconds() > PAUSE * row) {
        stretches.add(new Window(from, seconds[run.first()] + run.seconds() + edge));
      }
    }
    double all = seconds[seconds.length - 1] - seconds[0] + row;
    boolean tooMuch = lost > MOST_LOST * all || scattered > MOST_SCATTERED * (all - lost);
    LightCurve rest = LightCurve.of(curve.origin(), curve.marks(), curve.lit(), seconds, levels);
    return new Saturation(
        rest, stretches, Math.min(1, (lost + (tooMuch ? scattered : 0)) / all), tooMuch);
  }

  /** What to say of it and what to do; empty if there is nothing. */
  Optional<String> note() {
    return share > 0
        ? Optional.of(
            said() + "; that is left out: shade the sensor, or move away from the other light")
        : Optional.empty();
  }

  /** Why nothing can be read; empty if enough is left. */
  Optional<String> unreadable() {
    return tooMuch ? Optional.of(said()) : Optional.empty();
  }

  private String said() {
    double percent = 100 * share;
    String part = percent < 1 ? "under 1" : Integer.toString((int) Math.rint(percent));
    return "the sensor is at the top of its range for " + part + " % of the window";
  }
}

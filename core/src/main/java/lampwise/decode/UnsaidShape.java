package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/**
 * A repeating rhythm that counts blinks and says no duration. Its pulses are linear in what is not
 * known: the phase, the cycle, the spacing inside groups, and what lies from the last blink of a
 * group to the first of the next, in this order.
 *
 * @param sizes the size of each pulse of a cycle
 * @param features for each pulse how often it counts each spacing and each step between groups
 * @param spacings how many of the features are spacings inside a group; the others are steps
 * @param contrasts whether a step joins long and short and opens no group, for each step
 * @param groups how many groups of two or more blinks have a spacing
 */
record UnsaidShape(
    List<Size> sizes, double[][] features, int spacings, boolean[] contrasts, int groups) {
  /** A pause may be this much shorter than the rule says before it counts against a rhythm. */
  private static final double RULE_SD_SECONDS = 0.06;

  /** The most of a step that a blink takes, and how many lengths are tried where none was noted. */
  private static final double WIDEST = 0.9;

  private static final int LENGTHS = 4;

  /** More blinks a cycle than this are left to the common way. */
  private static final int MOST_PULSES = 24;

  /**
   * The shapes of a rhythm: all groups of one spacing, or each of its own; none if it says a
   * duration, shows once or has a prelude.
   */
  static List<UnsaidShape> of(Rhythm.Blinking rhythm) {
    if (!rhythm.prelude().isEmpty()
        || !(rhythm.cycle() instanceof Cycle.Parts cycle)
        || !(cycle.ending() instanceof Ending.Repeating)) {
      return List.of();
    }
    List<Part.Blinks> parts = new ArrayList<>();
    int pulses = 0;
    int groups = 0;
    for (Part part : cycle.parts()) {
      if (!(part instanceof Part.Blinks blinks)
          || blinks.of().isPresent()
          || blinks.apart().isPresent()
          || blinks.count().min() != blinks.count().max()) {
        return List.of();
      }
      parts.add(blinks);
      pulses += blinks.count().min();
      groups += blinks.count().min() > 1 ? 1 : 0;
    }
    if (pulses > MOST_PULSES) {
      return List.of();
    }
    return groups > 1
        ? List.of(of(parts, groups, false), of(parts, groups, true))
        : List.of(of(parts, groups, false));
  }

  private static UnsaidShape of(List<Part.Blinks> parts, int groups, boolean own) {
    int spacings = own ? groups : Math.min(1, groups);
    int width = spacings + parts.size() - 1;
    List<Size> sizes = new ArrayList<>();
    List<double[]> rows = new ArrayList<>();
    boolean[] contrasts = new boolean[parts.size() - 1];
    double[] row = new double[width];
    int group = 0;
    for (int i = 0; i < parts.size(); i++) {
      Part.Blinks part = parts.get(i);
      if (i > 0) {
        row = row.clone();
        row[spacings + i - 1]++;
        Size before = parts.get(i - 1).size();
        contrasts[i - 1] =
            before != part.size() && before != Size.UNSAID && part.size() != Size.UNSAID;
      }
      int count = part.count().min();
      for (int k = 0; k < count; k++) {
        if (k > 0) {
          row = row.clone();
          row[own ? group : 0]++;
        }
        sizes.add(part.size());
        rows.add(row);
      }
      group += count > 1 ? 1 : 0;
    }
    return new UnsaidShape(sizes, rows.toArray(new double[0][]), spacings, contrasts, groups);
  }

  /** Pulses in one cycle. */
  int pulses() {
    return sizes.size();
  }

  /** Durations that are not known, without phase and cycle. */
  int durations() {
    return spacings + contrasts.length;
  }

  /** Whether long stands beside short. */
  boolean mixes() {
    for (boolean contrast : contrasts) {
      if (contrast) {
        return true;
      }
    }
    return false;
  }

  /** Where a pulse lies in the cycle. */
  double on(int pulse, double[] durations) {
    double sum = 0;
    for (int i = 0; i < durations.length; i++) {
      sum += features[pulse][i] * durations[i];
    }
    return sum;
  }

  /**
   * Logarithm of the prior density of the durations and the cycle, per second each: even in the
   * logarithm within the limits, and falling off softly where a pause is shorter than it must be.
   *
   * @param durations spacings, then steps
   * @param cycle the cycle
   * @param seen lengths of blinks as they were noted
   */
  double logPrior(double[] durations, double cycle, SeenLengths seen) {
    if (!Double.isNaN(seen.shorter())) {
      return logPriorOf(durations, cycle, seen);
    }
    // Nobody noted how long a blink lasts: any length that leaves some dark is as likely by ratio.
    double least = Limits.BLINK_LEAST_SECONDS;
    double widest = Math.min(Limits.BLINK_MOST_SECONDS, WIDEST * leastStep(durations, cycle));
    double ratio = Math.max(1, widest / least);
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < LENGTHS; i++) {
      double length = least * Math.pow(ratio, (i + 0.5) / LENGTHS);
      SeenLengths any = new SeenLengths(length, length, length);
      sum = Gauss.logAdd(sum, logPriorOf(durations, cycle, any));
    }
    return sum - Math.log(LENGTHS);
  }

  /** The shortest step from one pulse to the next. */
  double leastStep(double[] durations, double cycle) {
    double least = cycle - on(pulses() - 1, durations);
    for (double duration : durations) {
      least = Math.min(least, duration);
    }
    return least;
  }

  private double logPriorOf(double[] durations, double cycle, SeenLengths seen) {
    double log = groups > 1 ? Math.log(0.5) : 0;
    double spacing = 0;
    for (int i = 0; i < spacings; i++) {
      spacing = Math.max(spacing, durations[i]);
      log += logEven(durations[i], Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS);
    }
    double pauseLeast = Math.max(Limits.PAUSE_RATIO_LEAST * spacing, Limits.APART_LEAST_SECONDS);
    double longest = 0;
    int pulse = 0;
    for (int i = 0; i < contrasts.length; i++) {
      pulse = lastBefore(i);
      double step = durations[spacings + i];
      double dark = step - length(pulse, seen, step);
      if (contrasts[i]) {
        log += logEven(step, Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS);
      } else {
        double most = Limits.CYCLE_MOST_SECONDS / (1 + Limits.PAUSE_RATIO_LEAST);
        log += logEven(dark, pauseLeast, Math.max(most, 1.1 * pauseLeast));
      }
      longest = Math.max(longest, dark);
    }
    double step = cycle - on(pulses() - 1, durations);
    double dark = step - length(pulses() - 1, seen, step);
    double inner = Math.max(longest, mixes() ? largestDark(durations, seen) : spacing);
    double least = Math.max(Limits.PAUSE_RATIO_LEAST * inner, Limits.APART_LEAST_SECONDS);
    double left = Math.max(Limits.CYCLE_MOST_SECONDS - cycle + dark, 1.1 * least);
    return log + logEven(dark, least, left);
  }

  /** The largest dark inside a group. */
  private double largestDark(double[] durations, SeenLengths seen) {
    double largest = 0;
    for (int k = 1; k < pulses(); k++) {
      double step = on(k, durations) - on(k - 1, durations);
      largest = Math.max(largest, step - length(k - 1, seen, step));
    }
    return largest;
  }

  private int lastBefore(int step) {
    for (int k = 0; k < pulses(); k++) {
      if (features[k][spacings + step] > 0) {
        return k - 1;
      }
    }
    return pulses() - 1;
  }

  /** The noted length of a pulse, or a short one if none was noted; never as long as its step. */
  private double length(int pulse, SeenLengths seen, double step) {
    double noted = seen.of(sizes.get(pulse));
    return Math.min(Double.isNaN(noted) ? Limits.BLINK_LEAST_SECONDS : noted, WIDEST * step);
  }

  private static double logEven(double seconds, double least, double most) {
    double outside = Math.max(0, Math.max(least - seconds, seconds - most)) / RULE_SD_SECONDS;
    double inside = Math.max(least, Math.min(most, seconds));
    return -Math.log(inside * Math.log(most / least)) - 0.5 * Math.min(outside * outside, 1e4);
  }

  /** The lengths of the pulses as they were noted, NaN where none was. */
  double[] lengths(SeenLengths seen) {
    return sizes.stream().mapToDouble(seen::of).toArray();
  }

  /** How many kinds of length were taken from the recording. */
  int lengthsTaken(SeenLengths seen) {
    return (int)
        sizes.stream().mapToDouble(seen::of).filter(s -> !Double.isNaN(s)).distinct().count();
  }
}

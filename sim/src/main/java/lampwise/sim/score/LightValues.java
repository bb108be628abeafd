package lampwise.sim.score;

import java.util.List;
import lampwise.sim.Measured;

/**
 * The values of a light sensor, and how much more likely they are with a light than in the dark. A
 * value is the mean of the light over its averaging with Gaussian noise: with lit seconds x of
 * averaging A, lamp L, variance v, and y above the room, the logarithm of the ratio is (y m - m^2 /
 * 2) / v, where m = L x / A.
 */
final class LightValues {
  private final double[] begin;
  private final double[] end;

  /** The logarithm is {@code slope x - bend x^2 / 2}. */
  private final double[] slope;

  private final double[] bend;

  /** For even parts of the time, the first value that ends after the part begins. */
  private final int[] firstAfter;

  private final double partSeconds;

  /** Lit seconds of values that are not yet done with. */
  private final double[] lit;

  private final double averaging;
  private int open;
  private int touched;
  private double sum;

  /**
   * The values.
   *
   * @param values in order of their ends; all average for the same time
   * @param lampLux what the lamp adds while it is on
   * @param sd the noise's standard deviation, over zero
   */
  LightValues(List<Measured.Value> values, double lampLux, double sd) {
    int count = values.size();
    begin = new double[count];
    end = new double[count];
    slope = new double[count];
    bend = new double[count];
    lit = new double[count];
    for (int i = 0; i < count; i++) {
      Measured.Value value = values.get(i);
      begin[i] = value.fromSeconds();
      end[i] = value.toSeconds();
      double perSecond = lampLux / (end[i] - begin[i]);
      slope[i] = perSecond * (value.level() - value.roomLux()) / (sd * sd);
      bend[i] = perSecond * perSecond / (sd * sd);
    }
    averaging = values.stream().mapToDouble(v -> v.toSeconds() - v.fromSeconds()).max().orElse(0);
    firstAfter = new int[count + 1];
    partSeconds = count == 0 ? 1 : (end[count - 1] - begin[0]) / count;
    int next = 0;
    for (int part = 0; part < count; part++) {
      while (next < count && end[next] <= begin[0] + part * partSeconds) {
        next++;
      }
      firstAfter[part] = next;
    }
    firstAfter[count] = count;
  }

  int size() {
    return begin.length;
  }

  double begin(int value) {
    return begin[value];
  }

  double end(int value) {
    return end[value];
  }

  /** What so many lit seconds of a value make of it. */
  double worth(int value, double seconds) {
    return seconds * (slope[value] - bend[value] * seconds / 2);
  }

  /** The longest averaging. */
  double averaging() {
    return averaging;
  }

  double slope(int value) {
    return slope[value];
  }

  double bend(int value) {
    return bend[value];
  }

  /** The first value that ends after a time; as many as there are if none does. */
  int first(double seconds) {
    if (begin.length == 0 || seconds < begin[0]) {
      return 0;
    }
    int part = (int) Math.min(begin.length, (seconds - begin[0]) / partSeconds);
    int first = firstAfter[part];
    while (first > 0 && end[first - 1] > seconds) {
      first--;
    }
    while (first < end.length && end[first] <= seconds) {
      first++;
    }
    return first;
  }

  /** Begins another light. */
  void dark() {
    open = 0;
    touched = 0;
    sum = 0;
  }

  /** Adds a blink, which begins after the end of the one added before. */
  void lit(double on, double off) {
    int value = first(on);
    settle(value);
    for (; value < begin.length && begin[value] < off; value++) {
      lit[value] += Math.min(off, end[value]) - Math.max(on, begin[value]);
    }
    touched = Math.max(touched, value);
  }

  /** The logarithm of the ratio for the light that was added. */
  double log() {
    settle(begin.length);
    return sum;
  }

  /** The same for one blink. */
  double log(double on, double off) {
    dark();
    lit(on, off);
    return log();
  }

  /** Counts the values before one, which no later blink lights. */
  private void settle(int before) {
    for (; open < Math.min(before, touched); open++) {
      sum += worth(open, lit[open]);
      lit[open] = 0;
    }
    open = Math.max(open, before);
    touched = Math.max(touched, open);
  }
}

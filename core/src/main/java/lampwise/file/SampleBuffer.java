package lampwise.file;

import java.util.Arrays;
import java.util.Comparator;

/** Times and levels while they are read, sorted and thinned. */
final class SampleBuffer {
  private double[] times = new double[1024];
  private double[] levels = new double[1024];
  private int size;

  /** How many there are. */
  int size() {
    return size;
  }

  /** The time of one. */
  double time(int index) {
    return times[index];
  }

  /** A copy of the times. */
  double[] times() {
    return Arrays.copyOf(times, size);
  }

  /** A copy of the levels. */
  double[] levels() {
    return Arrays.copyOf(levels, size);
  }

  /** Adds one at the end. */
  void add(double time, double level) {
    if (size == times.length) {
      times = Arrays.copyOf(times, size + size / 2);
      levels = Arrays.copyOf(levels, size + size / 2);
    }
    times[size] = time;
    levels[size] = level;
    size++;
  }

  /**
   * Lets clock times run on over midnight: a step of more than half a day is one to the other day.
   *
   * @return whether there was such a step
   */
  boolean addDays(double day) {
    double add = 0;
    boolean crossed = false;
    double before = size > 0 ? times[0] : 0;
    for (int i = 1; i < size; i++) {
      double step = times[i] - before;
      before = times[i];
      if (Math.abs(step) > day / 2) {
        add += step < 0 ? day : -day;
        crossed = true;
      }
      times[i] += add;
    }
    return crossed;
  }

  /**
   * Sorts by time; equal times stay in their order.
   *
   * @return how many came after a later one
   */
  int sort() {
    int late = 0;
    double latest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < size; i++) {
      late += times[i] < latest ? 1 : 0;
      latest = Math.max(latest, times[i]);
    }
    if (late > 0) {
      double[] oldTimes = times();
      double[] oldLevels = levels();
      Integer[] order = new Integer[size];
      Arrays.setAll(order, i -> i);
      Arrays.sort(order, Comparator.comparingDouble(i -> oldTimes[i]));
      for (int i = 0; i < size; i++) {
        times[i] = oldTimes[order[i]];
        levels[i] = oldLevels[order[i]];
      }
    }
    return late;
  }

  /**
   * Keeps the last of those with one time; they must be sorted.
   *
   * @return how many went
   */
  int collapse() {
    int kept = 0;
    for (int i = 0; i < size; i++) {
      if (kept > 0 && times[kept - 1] == times[i]) {
        kept--;
      }
      times[kept] = times[i];
      levels[kept] = levels[i];
      kept++;
    }
    int gone = size - kept;
    size = kept;
    return gone;
  }
}

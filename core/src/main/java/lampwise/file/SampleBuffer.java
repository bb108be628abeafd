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
   * Takes out the levels that are -1, if no other level is below zero.
   *
   * @return how many went
   */
  int dropMinusOnes() {
    int ones = 0;
    for (int i = 0; i < size; i++) {
      if (levels[i] == -1) {
        ones++;
      } else if (levels[i] < 0) {
        return 0;
      }
    }
    if (ones == 0 || ones == size) {
      return 0;
    }
    int kept = 0;
    for (int i = 0; i < size; i++) {
      if (levels[i] != -1) {
        times[kept] = times[i];
        levels[kept++] = levels[i];
      }
    }
    size = kept;
    return ones;
  }

  /**
   * Spreads rows that share a whole second evenly inside it. Those of the first second lie at its
   * end, those of the last at its start, as far apart as in the others.
   *
   * @param perSecond how many of the times' unit make a second
   * @return whether they were spread: all times are whole seconds in order, and most are shared
   */
  boolean spreadSeconds(double perSecond) {
    int seconds = 1;
    for (int i = 0; i < size; i++) {
      double second = times[i] / perSecond;
      if (second != Math.rint(second) || (i > 0 && times[i] < times[i - 1])) {
        return false;
      }
      seconds += i > 0 && times[i] > times[i - 1] ? 1 : 0;
    }
    if (seconds < 2 || seconds * 2 > size + 2 || seconds == size) {
      return false;
    }
    int usual = usualRun(seconds);
    int start = 0;
    while (start < size) {
      int end = start;
      while (end < size && times[end] == times[start]) {
        end++;
      }
      int rows = end - start;
      boolean border = start == 0 || end == size;
      double share = border ? Math.max(rows, usual) : rows;
      double before = start == 0 ? share - rows : 0;
      double second = times[start];
      for (int i = start; i < end; i++) {
        times[i] = second + (before + i - start) / share * perSecond;
      }
      start = end;
    }
    return true;
  }

  /** How many rows a second has: the median of those between the first and the last. */
  private int usualRun(int seconds) {
    int[] runs = new int[seconds];
    int run = 0;
    for (int i = 0; i < size; i++) {
      run += i > 0 && times[i] > times[i - 1] ? 1 : 0;
      runs[run]++;
    }
    int[] inner = seconds > 2 ? Arrays.copyOfRange(runs, 1, seconds - 1) : runs;
    Arrays.sort(inner);
    return seconds > 2 ? inner[inner.length / 2] : inner[inner.length - 1];
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

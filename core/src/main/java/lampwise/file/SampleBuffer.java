package lampwise.file;

import java.util.Arrays;

/** Times and levels while they are read, sorted and thinned. */
final class SampleBuffer {
  private static final double[] NONE = {};

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

  /** Hands over the times; the buffer has none any more. */
  double[] takeTimes() {
    double[] taken = times.length == size ? times : Arrays.copyOf(times, size);
    times = NONE;
    return taken;
  }

  /** Hands over the levels; the buffer has none any more. */
  double[] takeLevels() {
    double[] taken = levels.length == size ? levels : Arrays.copyOf(levels, size);
    levels = NONE;
    return taken;
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
      mergeLate(late);
    }
    return late;
  }

  /** Takes the rows out that come late, sorts them, and merges them in from the end. */
  private void mergeLate(int late) {
    double[] lateTimes = new double[late];
    double[] lateLevels = new double[late];
    int kept = 0;
    int out = 0;
    double latest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < size; i++) {
      if (times[i] < latest) {
        lateTimes[out] = times[i];
        lateLevels[out++] = levels[i];
      } else {
        latest = times[i];
        times[kept] = times[i];
        levels[kept++] = levels[i];
      }
    }
    Pairs.sort(lateTimes, lateLevels);
    int to = size - 1;
    int from = kept - 1;
    for (int i = late - 1; i >= 0; to--) {
      if (from >= 0 && times[from] > lateTimes[i]) {
        times[to] = times[from];
        levels[to] = levels[from--];
      } else {
        times[to] = lateTimes[i];
        levels[to] = lateLevels[i--];
      }
    }
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

package lampwise.file;

/** Sorts times together with their levels. */
final class Pairs {
  private Pairs() {}

  /** Sorts both by the times; equal times stay in their order. */
  static void sort(double[] times, double[] levels) {
    double[] fromTimes = times;
    double[] fromLevels = levels;
    double[] toTimes = new double[times.length];
    double[] toLevels = new double[times.length];
    for (int run = 1; run < times.length && run > 0; run *= 2) {
      for (int start = 0; start < times.length; start += 2 * run) {
        int middle = Math.min(start + run, times.length);
        int end = Math.min(middle + run, times.length);
        int left = start;
        int right = middle;
        for (int i = start; i < end; i++) {
          boolean fromLeft = left < middle && (right >= end || fromTimes[left] <= fromTimes[right]);
          int taken = fromLeft ? left++ : right++;
          toTimes[i] = fromTimes[taken];
          toLevels[i] = fromLevels[taken];
        }
      }
      double[] swapTimes = fromTimes;
      double[] swapLevels = fromLevels;
      fromTimes = toTimes;
      fromLevels = toLevels;
      toTimes = swapTimes;
      toLevels = swapLevels;
    }
    if (fromTimes != times) {
      System.arraycopy(fromTimes, 0, times, 0, times.length);
      System.arraycopy(fromLevels, 0, levels, 0, times.length);
    }
  }
}

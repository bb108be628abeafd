package lampwise.decode;

/** The largest of some numbers, without sorting the others (Hoare 1961). */
final class Largest {
  private Largest() {}

  /**
   * The smallest of the largest numbers.
   *
   * @param numbers numbers, whose order is lost
   * @param count how many of the largest, from 1 to all
   */
  static double last(double[] numbers, int count) {
    int at = count - 1;
    int from = 0;
    int to = numbers.length - 1;
    while (from < to) {
      double middle = numbers[(from + to) >>> 1];
      int left = from;
      int right = to;
      while (left <= right) {
        while (numbers[left] > middle) {
          left++;
        }
        while (numbers[right] < middle) {
          right--;
        }
        if (left <= right) {
          double number = numbers[left];
          numbers[left++] = numbers[right];
          numbers[right--] = number;
        }
      }
      if (at <= right) {
        to = right;
      } else if (at >= left) {
        from = left;
      } else {
        break;
      }
    }
    return numbers[at];
  }
}

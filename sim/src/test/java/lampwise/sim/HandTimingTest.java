package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Formulas of timing by hand. Where a figure was published it stands beside; seeds are fixed, and
 * the bounds are 3.3 standard errors.
 */
class HandTimingTest {
  private static final int INTERVALS = 20_000;

  private static double[] intervals(Person person, double every) {
    double[] starts = Notebook.starts(person, Notebook.beat(INTERVALS + 1, 10, every), 80);
    assertEquals(INTERVALS + 1, starts.length);
    return Gaps.of(starts);
  }

  /**
   * The difference of two independent errors: sqrt(2) times their deviation. Am. J. Phys. 87, 110
   * (2019), abstract: 4,304 timings by hand with an error of 0.07 s gave intervals with 0.10 s.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.04, 0.07, 0.08})
  void intervalsAreLessSureThanMoments(double deviation) {
    Person person = Notebook.faultless().with("timing-sd-s", deviation);
    double[] intervals = intervals(person, 3.7);
    double expected = Math.sqrt(2) * deviation;
    // Neighbours share a tap (correlation -1/2): the variance of their variance is 1.5 times.
    assertEquals(
        expected, Watched.deviation(intervals), 3.3 * expected * Math.sqrt(1.5 / 2 / INTERVALS));
    assertEquals(3.7, Watched.mean(intervals), 3.3 * expected / INTERVALS);
    if (deviation == 0.07) {
      assertEquals(0.10, expected, 0.005);
    }
  }

  /** The constant delay of single blinks cancels in the interval (the same source). */
  @Test
  void aConstantDelayCancels() {
    Person late = Notebook.faultless().with("first-late-s", 0.11);
    for (double interval : intervals(late, 3.7)) {
      assertEquals(3.7, interval, 1e-6);
    }
  }

  /**
   * Notes to the second: the difference of two errors of a twelfth of a square second each, 1 /
   * sqrt(6) = 0.41 s. The time from blink to blink is no simple fraction of a second.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.1, 0.5, 1})
  void roundedIntervals(double step) {
    Person person = Notebook.faultless().with("timing-sd-s", 2 * step).with("rounding-s", step);
    double every = 12.3456789;
    double noise = 2 * (4 * step * step);
    double rounding = Watched.deviation(intervals(person, every));
    // Sheppard's correction: independent of the timing, rounding adds a twelfth to each variance.
    assertEquals(Math.sqrt(noise + step * step / 6), rounding, 0.03 * rounding);
    double[] wallClock = intervals(Notebook.faultless().with("rounding-s", step), every);
    double irrational = fraction(every / step);
    // Without noise an interval is one of two multiples: f (1 - f) of a square step.
    assertEquals(
        step * Math.sqrt(irrational * (1 - irrational)), Watched.deviation(wallClock), 0.01 * step);
  }

  private static double fraction(double value) {
    return value - Math.floor(value);
  }

  /** Two independent moments to the second, of lamps at any phase: 1 / sqrt(6) = 0.41 s. */
  @Test
  void wallClockIntervals() {
    Person person = Notebook.faultless().with("rounding-s", 1);
    Chance phases = Chance.of(81);
    double[] errors = new double[INTERVALS];
    for (int i = 0; i < errors.length; i++) {
      double first = phases.uniform(1, 2);
      double second = first + phases.uniform(3, 5);
      double[] starts =
          Notebook.starts(person, Watched.lamp(20, first, first + 0.1, second, second + 0.1), i);
      errors[i] = starts[1] - starts[0] - (second - first);
    }
    assertEquals(0, Watched.mean(errors), 3.3 * 0.41 / Math.sqrt(INTERVALS));
    assertEquals(1 / Math.sqrt(6), Watched.deviation(errors), 0.01);
    assertEquals(0.41, 1 / Math.sqrt(6), 0.002);
  }

  /** The first interval of a burst is short by the delay of its first blink. */
  @Test
  void theFirstIntervalOfABurstIsShort() {
    Person person = Person.hurried().with("missed", 0).with("strays-per-minute", 0);
    double[] first = new double[4000];
    double[] second = new double[4000];
    for (int i = 0; i < first.length; i++) {
      double[] starts = Notebook.starts(person, Watched.lamp(10, 2, 2.1, 2.8, 2.9, 3.6, 3.7), i);
      first[i] = starts[1] - starts[0];
      second[i] = starts[2] - starts[1];
    }
    double error = 3.3 * Math.sqrt(2) * 0.08 / Math.sqrt(first.length);
    assertEquals(0.7, Watched.mean(first), error);
    assertEquals(0.8, Watched.mean(second), error);
  }

  /** The mean interval from first to last tap: sqrt(2) times the deviation over their number. */
  @Test
  void theMeanIntervalGetsSurer() {
    Person person = Notebook.faultless().with("timing-sd-s", 0.07);
    Shown shown = Notebook.beat(11, 5, 3);
    double[] means = new double[4000];
    Arrays.setAll(
        means,
        seed -> {
          double[] starts = Notebook.starts(person, shown, seed);
          return (starts[10] - starts[0]) / 10;
        });
    double expected = 0.07 * Math.sqrt(2) / 10;
    assertEquals(
        expected, Watched.deviation(means), 3.3 * expected / Math.sqrt(2.0 * means.length));
  }
}

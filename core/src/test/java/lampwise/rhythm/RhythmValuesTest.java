package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The borders of counts, durations and rates. */
class RhythmValuesTest {
  @ParameterizedTest
  @CsvSource({"0, 1", "-1, 3", "3, 2", "1, 101", "101, 101"})
  void whatIsNoCount(int min, int max) {
    assertThrows(RhythmException.class, () -> new Count(min, max));
  }

  @Test
  void countsReachTheirBorders() {
    assertEquals(new Count(1, 1), Count.of(1));
    assertEquals(100, new Count(1, 100).max());
  }

  @ParameterizedTest
  @CsvSource({
    "EXACT, 0, 0",
    "EXACT, -1, -1",
    "EXACT, NaN, NaN",
    "EXACT, 1, 2",
    "EXACT, 604801, 604801",
    "ABOUT, Infinity, Infinity",
    "RANGE, 2, 1",
    "RANGE, 2, 2",
    "RANGE, 0, 2",
    "RANGE, NaN, 2",
    "RANGE, 1, NaN",
    "RANGE, 1, Infinity",
    "OVER, 1, 2",
    "OVER, 0, Infinity",
    "UNDER, 1, 2",
    "UNDER, 0, 0",
  })
  void whatIsNoDuration(Length.Form form, double from, double to) {
    assertThrows(RhythmException.class, () -> new Length(form, from, to));
  }

  @ParameterizedTest
  @CsvSource({
    "EXACT, 5, 5, 5, 5",
    "ABOUT, 5, 5, 4, 6",
    "RANGE, 5, 10, 5, 10",
    "ABOUT_RANGE, 5, 10, 4, 12",
    "OVER, 5, Infinity, 5, Infinity",
    "UNDER, 0, 5, 0, 5",
    "EXACT, 604800, 604800, 604800, 604800",
  })
  void durationsLieBetween(Length.Form form, double from, double to, double least, double most) {
    Length length = new Length(form, from, to);
    assertEquals(least, length.leastSeconds());
    assertEquals(most, length.mostSeconds());
  }

  @ParameterizedTest
  @CsvSource({
    "EXACT, 0, 0, SECOND",
    "EXACT, NaN, NaN, SECOND",
    "EXACT, 2, 3, SECOND",
    "EXACT, 1001, 1001, SECOND",
    "ABOUT, 60001, 60001, MINUTE",
    "RANGE, 3, 2, SECOND",
    "RANGE, 2, 2, SECOND",
    "ABOUT_RANGE, -1, 2, SECOND",
    "RANGE, 1, Infinity, SECOND",
    "FAST, 1, 2, SECOND",
    "SLOW, NaN, 2, SECOND",
    "ANY, NaN, NaN, MINUTE",
  })
  void whatIsNoRate(Rate.Form form, double from, double to, Rate.Per per) {
    assertThrows(RhythmException.class, () -> new Rate(form, from, to, per));
  }

  @ParameterizedTest
  @CsvSource({
    "EXACT, 90, 90, MINUTE, 1.5, 1.5",
    "ABOUT, 5, 5, SECOND, 4, 6",
    "ABOUT, 300, 300, MINUTE, 4, 6",
    "RANGE, 60, 120, MINUTE, 1, 2",
    "ABOUT_RANGE, 5, 10, SECOND, 4, 12",
    "ANY, NaN, NaN, SECOND, 0.1, 10",
    "SLOW, NaN, NaN, SECOND, 0.1, 1",
    "FAST, NaN, NaN, SECOND, 1.5, 10",
    "EXACT, 60000, 60000, MINUTE, 1000, 1000",
  })
  void ratesLieBetween(
      Rate.Form form, double from, double to, Rate.Per per, double least, double most) {
    Rate rate = new Rate(form, from, to, per);
    assertEquals(least, rate.leastPerSecond());
    assertEquals(most, rate.mostPerSecond());
  }
}

package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Days and times without a calendar of the platform, beside the platform's. */
class LocalTimeTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-11-25T00:00",
        "2026-11-25T23:59",
        "2026-11-25T10:05:00",
        "2026-11-25T10:05:59",
        "2026-01-01T00:00",
        "2026-12-31T00:00",
        "2026-02-28T00:00",
        "2024-02-29T00:00",
        "2000-02-29T00:00",
        "2026-04-30T00:00",
        "2026-07-31T00:00",
      })
  void isOne(String text) {
    assertTrue(LocalTime.isOne(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "2026-11-25",
        "2026-11-25T24:00",
        "2026-11-25T10:60",
        "2026-11-25T10:05:60",
        "2026-11-25T10:05:",
        "2026-11-25T10:05:0",
        "2026-11-25T10:05:000",
        "2026-11-25 10:05",
        "2026-11-25T1O:05",
        "2026-11-25T1/:05",
        "2026-11-25T1::05",
        "2026-00-25T10:05",
        "2026-13-25T10:05",
        "2026-11-00T10:05",
        "2026-11-31T10:05",
        "2026-01-32T10:05",
        "2026-02-29T10:05",
        "2100-02-29T10:05",
        "2024-02-30T10:05",
        "26-11-25T10:05",
      })
  void isNone(String text) {
    assertFalse(LocalTime.isOne(text));
  }

  @Test
  void daysAreCountedAsInTheCalendar() {
    for (int year : new int[] {0, 3, 4, 99, 100, 400, 1899, 1900, 1999, 2000, 2026, 2100, 9998}) {
      LocalDate first = LocalDate.of(year, 1, 1);
      long base = LocalTime.day(first + "T00:00") - first.toEpochDay();
      assertEquals(LocalTime.day("1970-01-01T00:00"), base);
      for (LocalDate day = first; day.getYear() <= year; day = day.plusDays(9)) {
        assertEquals(day.toEpochDay() + base, LocalTime.day(day + "T12:00"), day::toString);
      }
    }
  }
}

package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Optional;
import lampwise.file.ReadOptions.Dates;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Dates and times as cells and people write them. */
class StampTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12:00:05 | CLOCK | 43205 | 0",
        "0:00:00 | CLOCK | 0 | 0",
        "23:59:59.5 | CLOCK | 86399.5 | 0",
        "23:59:59,25 | CLOCK | 86399.25 | 0",
        "12:00 pm | CLOCK | 43200 | 0",
        "12:00 am | CLOCK | 0 | 0",
        "1:30 p.m. | CLOCK | 48600 | 0",
        "11:59:59 AM | CLOCK | 43199 | 0",
        "2026-11-25 | DATE | 0 | 0",
        "2026-11-25T10:05 | DATE_TIME | 36300 | 0",
        "2026-11-25, 10:05:07Z | DATE_TIME | 36307 | 0",
        "25/11/2026 10:05:07 UTC | DATE_TIME | 36307 | 0",
        "2026-11-25 10:05:07+01:00 | DATE_TIME | 36307 | 3600",
        "2026-11-25 10:05:07-0530 | DATE_TIME | 36307 | -19800",
        "2026-11-25 10:05:07 GMT+5 | DATE_TIME | 36307 | 18000",
        "2026-11-25 10:05:07+18:59 | DATE_TIME | 36307 | 68340",
      })
  void isAStamp(String cell, Stamp.Kind kind, double seconds, double zone) {
    Stamp stamp = Stamp.of(cell).orElseThrow();
    assertEquals(kind, stamp.kind());
    assertEquals(seconds, stamp.seconds());
    assertEquals(zone, stamp.zoneSeconds());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1:30",
        "12:00",
        "24:00:00",
        "10:60:00",
        "10:05:60",
        "10:05:",
        "10:05:7.",
        "13:00 pm",
        "0:30 am",
        "10:05:07 x",
        "2026-11-31",
        "2026-13-01",
        "2026-11/25",
        "2026-11-",
        "2026-11-25x",
        "2026-11-25 x",
        "2026-11-25 10:05:07+19:00",
        "2026-11-25 10:05:07+01:60",
        "2026-11-25 10:05:07+",
        "32/13/2026",
        "1234567",
      })
  void isNoStamp(String cell) {
    assertEquals(Optional.empty(), Stamp.of(cell));
  }

  @Test
  void aStampHasFiveToSixtyCharacters() {
    assertTrue(Stamp.of("2026-11-25" + " ".repeat(42) + "10:05:07").isPresent());
    assertFalse(Stamp.of("2026-11-25" + " ".repeat(43) + "10:05:07").isPresent());
    assertTrue(Stamp.of("1/1/1").isPresent());
  }

  @Test
  void aDateIsReadInEitherOrder() {
    Stamp either = Stamp.of("3.4.26").orElseThrow();
    assertEquals(LocalDate.of(2026, 4, 3).toEpochDay(), either.day(Dates.DMY));
    assertEquals(LocalDate.of(2026, 3, 4).toEpochDay(), either.day(Dates.MDY));
    Stamp one = Stamp.of("25/11/2026").orElseThrow();
    assertTrue(one.fits(Dates.DMY));
    assertFalse(one.fits(Dates.MDY));
    assertTrue(Double.isNaN(one.day(Dates.MDY)));
    Stamp iso = Stamp.of("2026-11-25").orElseThrow();
    assertEquals(LocalDate.of(2026, 11, 25).toEpochDay(), iso.day(Dates.MDY));
    assertTrue(iso.sameDate(Stamp.of("2026-11-25T10:05").orElseThrow()));
    assertFalse(iso.sameDate(Stamp.of("2026-11-26").orElseThrow()));
    assertFalse(iso.sameDate(Stamp.of("2026-10-25").orElseThrow()));
    assertFalse(iso.sameDate(Stamp.of("2025-11-25").orElseThrow()));
    assertEquals(99, Stamp.of("1/2/1999").orElseThrow().third() - 1900);
    assertEquals(2099, Stamp.of("1/2/99").orElseThrow().third());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "7 | NUMBER | 7 | false",
        "-7.5 | NUMBER | -7.5 | false",
        "+7 | NUMBER | 7 | true",
        "1:02 | MINUTES | 62 | false",
        "+0:59.5 | MINUTES | 59.5 | true",
        "90:00 | MINUTES | 5400 | false",
        "1:00:00 | HOURS | 3600 | false",
        "123456:59:59 | HOURS | 444445199 | false",
      })
  void isATime(String word, TimeText.Writing writing, double value, boolean gap) throws Exception {
    assertEquals(new TimeText(writing, value, gap), TimeText.parse(word));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "x | is not a time",
        "1:x | is not a time",
        ":30 | is not a time",
        "1: | is not a time",
        "1:2:3:4 | is not a time",
        "1234567:00 | is not a time",
        "1:-2 | is not a time",
        "-1:00 | is negative",
        "0:60 | more than 59",
        "1:60:00 | more than 59",
        "1e999 | is not a finite time",
        "nan | is not a finite time",
        "inf | is not a finite time",
      })
  void isNoTime(String word, String why) {
    TimeText.Fault fault = assertThrows(TimeText.Fault.class, () -> TimeText.parse(word));
    String message = String.valueOf(fault.getMessage());
    assertTrue(message.startsWith('"' + word + '"') && message.contains(why), message);
  }
}

package lampwise.file;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import lampwise.file.ReadOptions.Dates;

/**
 * A date, a clock time or both, as a cell writes them.
 *
 * @param kind what is written
 * @param first the first number of the date: the year if {@code yearFirst}, else day or month
 * @param second the second number: the month if {@code yearFirst}, else month or day
 * @param third the third number: the day if {@code yearFirst}, else the year
 * @param yearFirst whether the year comes first
 * @param seconds the clock time in seconds of the day; 0 without one
 * @param zoneSeconds how far the zone is ahead; 0 if none is written
 */
record Stamp(
    Kind kind,
    int first,
    int second,
    int third,
    boolean yearFirst,
    double seconds,
    double zoneSeconds) {
  /** What a cell writes. */
  enum Kind {
    /** {@code h:mm:ss.s}, with or without am and pm. */
    CLOCK,
    /** A date alone. */
    DATE,
    /** A date and a clock time. */
    DATE_TIME
  }

  /** A cell longer than this is no stamp. */
  private static final int MAX_LENGTH = 60;

  /**
   * Reads a cell.
   *
   * @return empty if it is neither a date nor a clock time with hours, or one that cannot be
   */
  static Optional<Stamp> of(String cell) {
    if (cell.length() < 5 || cell.length() > MAX_LENGTH) {
      return Optional.empty();
    }
    return new Parser(cell).stamp();
  }

  /** Whether two stamps write the same date. */
  boolean sameDate(Stamp other) {
    return first == other.first
        && second == other.second
        && third == other.third
        && yearFirst == other.yearFirst;
  }

  /** Whether the date can be read in an order of day and month. */
  boolean fits(Dates order) {
    return !Double.isNaN(day(order));
  }

  /** The date in days since 1970; NaN if there is no such day. */
  double day(Dates order) {
    try {
      if (yearFirst) {
        return LocalDate.of(first, second, third).toEpochDay();
      }
      return order == Dates.DMY
          ? LocalDate.of(third, second, first).toEpochDay()
          : LocalDate.of(third, first, second).toEpochDay();
    } catch (DateTimeException e) {
      return Double.NaN;
    }
  }

  /** Walks over a cell once. */
  private static final class Parser {
    private static final int NONE = -1;

    private final String text;
    private int at;

    Parser(String text) {
      this.text = text;
    }

    Optional<Stamp> stamp() {
      int[] date = date();
      boolean dated = date.length > 0;
      if (dated) {
        if (at == text.length()) {
          return made(Kind.DATE, date, 0, 0);
        }
        if (!dateEnd()) {
          return Optional.empty();
        }
      }
      double seconds = clock(dated);
      if (!(seconds >= 0)) {
        return Optional.empty();
      }
      double zone = zone();
      return at == text.length()
          ? made(dated ? Kind.DATE_TIME : Kind.CLOCK, date, seconds, zone)
          : Optional.empty();
    }

    private static Optional<Stamp> made(Kind kind, int[] date, double seconds, double zone) {
      if (date.length == 0) {
        return Optional.of(new Stamp(kind, 0, 0, 0, true, seconds, zone));
      }
      boolean yearFirst = date[0] > 31;
      int year = !yearFirst && date[2] < 100 ? 2000 + date[2] : date[2];
      Stamp stamp = new Stamp(kind, date[0], date[1], year, yearFirst, seconds, zone);
      return stamp.fits(Dates.DMY) || stamp.fits(Dates.MDY) ? Optional.of(stamp) : Optional.empty();
    }

    /** Three whole numbers with the same sign between; nothing if the cell starts otherwise. */
    private int[] date() {
      int start = at;
      int first = whole(4);
      char sign = peek();
      if (first != NONE && (sign == '-' || sign == '/' || sign == '.')) {
        at++;
        int second = whole(2);
        if (second != NONE && peek() == sign) {
          at++;
          int third = whole(4);
          if (third != NONE) {
            return new int[] {first, second, third};
          }
        }
      }
      at = start;
      return new int[0];
    }

    private boolean dateEnd() {
      int start = at;
      while (peek() == 'T' || peek() == 't' || peek() == ',' || Lines.isBlank(peek())) {
        at++;
      }
      return at > start;
    }

    /** The seconds of the day; negative if there is no clock time, or none that can be. */
    private double clock(boolean dated) {
      int hours = whole(2);
      if (hours == NONE || peek() != ':') {
        return NONE;
      }
      at++;
      int minutes = whole(2);
      double seconds = 0;
      boolean precise = peek() == ':';
      if (precise) {
        at++;
        seconds = seconds();
      }
      int half = half();
      boolean fits = minutes != NONE && minutes < 60 && seconds >= 0 && seconds < 60;
      boolean hour = half == NONE ? hours < 24 : hours >= 1 && hours <= 12;
      if (!fits || !hour || !(precise || dated || half != NONE)) {
        return NONE;
      }
      int hourOfDay = half == NONE ? hours : hours % 12 + half;
      return hourOfDay * 3600.0 + minutes * 60.0 + seconds;
    }

    private double seconds() {
      int whole = whole(2);
      if (whole == NONE) {
        return NONE;
      }
      char sign = peek();
      if (sign != '.' && sign != ',' && sign != ':') {
        return whole;
      }
      int start = ++at;
      while (Numbers.isDigit(peek())) {
        at++;
      }
      return at > start ? Numbers.parse(whole + "." + text.substring(start, at)) : NONE;
    }

    /** 12 for the afternoon, 0 for the morning, of a 12-hour clock; else none. */
    private int half() {
      int start = at;
      skipBlanks();
      String rest = text.substring(at).toLowerCase(Locale.ROOT);
      for (String word : new String[] {"a.m.", "p.m.", "am", "pm"}) {
        if (rest.startsWith(word)) {
          at += word.length();
          return word.charAt(0) == 'p' ? 12 : 0;
        }
      }
      at = start;
      return NONE;
    }

    /** How many seconds the zone is ahead; 0 if none is written. */
    private double zone() {
      int start = at;
      skipBlanks();
      if (text.startsWith("UTC", at) || text.startsWith("GMT", at)) {
        at += 3;
      } else if (peek() == 'Z' || peek() == 'z') {
        at++;
      }
      char sign = peek();
      if (sign != '+' && sign != '-' && sign != '\u2212') {
        return 0;
      }
      at++;
      int hours = whole(2);
      if (peek() == ':') {
        at++;
      }
      int minutes = Numbers.isDigit(peek()) ? whole(2) : 0;
      if (hours == NONE || hours > 18 || minutes == NONE || minutes > 59) {
        at = start;
        return 0;
      }
      return (sign == '+' ? 1 : -1) * (hours * 3600.0 + minutes * 60.0);
    }

    private void skipBlanks() {
      while (Lines.isBlank(peek()) || peek() == '\u202F') {
        at++;
      }
    }

    private int whole(int digits) {
      int value = 0;
      int start = at;
      while (at - start < digits && Numbers.isDigit(peek())) {
        value = value * 10 + peek() - '0';
        at++;
      }
      return at > start ? value : NONE;
    }

    private char peek() {
      return at < text.length() ? text.charAt(at) : '\0';
    }
  }
}

package lampwise.file;

import java.util.Locale;
import java.util.Optional;
import lampwise.file.PastedTime.Style;
import lampwise.file.TimeText.Writing;

/**
 * One pasted time with whatever unit it carries: {@code 3.1s}, {@code 350ms}, {@code 1m02.5s},
 * {@code 1'02"5}, {@code 1:05:06pm}.
 *
 * @param time the time
 * @param style what it carries
 */
record PastedTimeText(TimeText time, Style style) {
  private static final double HALF_DAY = RecordingClock.DAY / 2;

  /**
   * Reads a time.
   *
   * @throws TimeText.Fault if the word is no time
   */
  static PastedTimeText parse(String word) throws TimeText.Fault {
    int letters = word.length();
    while (letters > 0 && isUnitSign(word.charAt(letters - 1))) {
      letters--;
    }
    String number = word.substring(0, letters);
    String unit = word.substring(letters);
    if (unit.isEmpty() || !endsLikeNumber(number)) {
      Optional<PastedTimeText> mixed = mixed(word);
      return mixed.isPresent() ? mixed.get() : plain(word);
    }
    if (PastedWords.isHalfDay(unit)) {
      return halfDay(word, TimeText.parse(number), unit);
    }
    if (unit.equalsIgnoreCase("ms") && number.indexOf(':') < 0) {
      return of(TimeText.parse(number), 0.001);
    }
    Optional<PastedTimeText> mixed = mixed(word);
    if (mixed.isPresent()) {
      return mixed.get();
    }
    if (PastedWords.isSecond(unit)) {
      TimeText time = TimeText.parse(number);
      return time.isClock() ? new PastedTimeText(time, Style.BARE) : of(time, 1);
    }
    if (PastedWords.isMinute(unit) && number.indexOf(':') < 0) {
      return of(TimeText.parse(number), 60);
    }
    throw new TimeText.Fault(Numbers.quote(word) + " is not a time; expected " + TimeText.EXPECTED);
  }

  private static PastedTimeText plain(String word) throws TimeText.Fault {
    int last = word.length() - 1;
    boolean sentence =
        last > 0
            && word.charAt(last) == '.'
            && (word.indexOf('.') < last || word.indexOf(':') >= 0)
            && Numbers.isDigit(word.charAt(last - 1));
    return new PastedTimeText(
        TimeText.parse(sentence ? word.substring(0, last) : word), Style.BARE);
  }

  /** The same number with a unit that stands behind it. */
  PastedTimeText of(String unit) {
    return of(time, unit.equals("ms") ? 0.001 : PastedWords.isMinute(unit) ? 60 : 1);
  }

  /** So many seconds more. */
  PastedTimeText plus(double seconds) {
    return new PastedTimeText(
        new TimeText(time.writing(), Numbers.tidy(time.value() + seconds), time.gap()), style);
  }

  private static PastedTimeText of(TimeText time, double secondsPerUnit) {
    return new PastedTimeText(
        new TimeText(time.writing(), Numbers.tidy(time.value() * secondsPerUnit), time.gap()),
        Style.UNIT);
  }

  /**
   * Turns a time of a 12-hour clock into one of the day.
   *
   * @param word the time as it is written
   * @param time the same, read
   * @param half its forenoon or afternoon
   * @throws TimeText.Fault if it is no time of a 12-hour clock
   */
  static PastedTimeText halfDay(String word, TimeText time, String half) throws TimeText.Fault {
    boolean hours = time.writing() == Writing.HOURS;
    double seconds = hours ? time.value() : time.value() * 60;
    if (!time.isClock() || time.gap() || !(seconds >= 3600 && seconds < 13 * 3600.0)) {
      throw new TimeText.Fault(
          Numbers.quote(word) + " is no time of a 12-hour clock; expected h:mm:ss am or pm");
    }
    boolean pm = half.toLowerCase(Locale.ROOT).startsWith("p");
    double day = (seconds >= HALF_DAY ? seconds - HALF_DAY : seconds) + (pm ? HALF_DAY : 0);
    return new PastedTimeText(
        new TimeText(Writing.HOURS, day, false), hours ? Style.HALF_DAY : Style.HALF_DAY_MINUTES);
  }

  /** {@code 1h02m03.5s} or {@code 1'02"5}; empty if it is neither. */
  static Optional<PastedTimeText> mixed(String word) {
    boolean gap = word.startsWith("+");
    double seconds = 0;
    double last = Double.POSITIVE_INFINITY;
    int at = gap ? 1 : 0;
    int parts = 0;
    while (at < word.length()) {
      int digits = at;
      while (digits < word.length() && isNumberPart(word.charAt(digits))) {
        digits++;
      }
      int unit = digits;
      while (unit < word.length() && !isNumberPart(word.charAt(unit))) {
        unit++;
      }
      double per = secondsPer(word.substring(digits, unit));
      String number = word.substring(at, digits);
      boolean quoted = word.startsWith("\"", digits) && unit < word.length();
      if (quoted && number.indexOf('.') < 0) {
        number += "." + word.substring(unit); // 1'02"5
        unit = word.length();
      }
      double value = Numbers.parse(number);
      boolean whole = per == 1 || number.indexOf('.') < 0;
      if (!(per < last) || !(value >= 0) || !whole || (parts > 0 && !(value < 60))) {
        return Optional.empty();
      }
      seconds += value * per;
      last = per;
      parts++;
      at = unit;
    }
    return parts < 2
        ? Optional.empty()
        : Optional.of(
            new PastedTimeText(
                new TimeText(Writing.NUMBER, Numbers.tidy(seconds), gap), Style.UNIT));
  }

  /** The seconds of a unit that may stand inside a word; NaN for any other. */
  private static double secondsPer(String unit) {
    return switch (unit.toLowerCase(Locale.ROOT)) {
      case "h" -> 3600;
      case "m", "min", "'" -> 60;
      case "s", "sec", "\"", "''" -> 1;
      default -> Double.NaN;
    };
  }

  private static boolean endsLikeNumber(String number) {
    int last = number.length() - 1;
    return last >= 0 && isNumberPart(number.charAt(last));
  }

  private static boolean isNumberPart(char c) {
    return Numbers.isDigit(c) || c == '.';
  }

  private static boolean isUnitSign(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }
}

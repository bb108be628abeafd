package lampwise.file;

import java.math.BigDecimal;
import java.util.OptionalDouble;

/**
 * Numbers, percentages and durations as files write them: {@code 3}, {@code 5 %}, {@code 1.2 s}.
 */
final class Quantities {
  private Quantities() {}

  /** Digits with at most one point between them; empty for anything else, a sign included. */
  static OptionalDouble number(String text) {
    boolean point = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '.' && !point && i > 0 && i < text.length() - 1) {
        point = true;
      } else if (c < '0' || c > '9') {
        return OptionalDouble.empty();
      }
    }
    return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }

  /** A number and a percent sign, as a fraction; empty for anything else. */
  static OptionalDouble percentage(String text) {
    if (withUnit(text, "%").isEmpty()) {
      return OptionalDouble.empty();
    }
    // In decimals, so that every fraction has a percentage that reads back to it.
    String number = text.substring(0, text.length() - 1).stripTrailing();
    return OptionalDouble.of(new BigDecimal(number).movePointLeft(2).doubleValue());
  }

  /** A number and one of the units ms, s, min, h, in seconds; empty for anything else. */
  static OptionalDouble seconds(String text) {
    OptionalDouble milliseconds = withUnit(text, "ms");
    if (milliseconds.isPresent()) {
      return OptionalDouble.of(milliseconds.getAsDouble() / 1000);
    }
    OptionalDouble minutes = withUnit(text, "min");
    if (minutes.isPresent()) {
      return OptionalDouble.of(minutes.getAsDouble() * 60);
    }
    OptionalDouble hours = withUnit(text, "h");
    return hours.isPresent() ? OptionalDouble.of(hours.getAsDouble() * 3600) : withUnit(text, "s");
  }

  private static OptionalDouble withUnit(String text, String unit) {
    return text.endsWith(unit)
        ? number(text.substring(0, text.length() - unit.length()).stripTrailing())
        : OptionalDouble.empty();
  }
}

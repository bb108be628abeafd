package lampwise.rhythm;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Reads the durations and numbers of a phrase. */
final class Durations {
  private static final List<String> UNIT_OR_TO = List.of("ms", "s", "min", "h", "to");

  private final Cursor cursor;

  Durations(Cursor cursor) {
    this.cursor = cursor;
  }

  /** Reads {@code dur}. */
  Length read() throws Fault {
    Token start = cursor.peek();
    boolean about = cursor.accept("about");
    boolean over = !about && cursor.accept("over");
    boolean under = !about && !over && cursor.accept("under");
    Token from = number("a duration such as \"2 s\"", "");
    if (over || under) {
      return border(over, start, from);
    }
    Token to = from;
    if (cursor.accept("to")) {
      to = number("the upper number of the range", "");
    }
    Unit unit = unit(from);
    if (to.equals(from) && cursor.peek().is("to")) {
      throw unitTwice(from, unit);
    }
    return length(about, from, to, unit);
  }

  private Length border(boolean over, Token start, Token number) throws Fault {
    if (cursor.peek().is("to")) {
      throw cursor.replace(
          start, start, start.shown() + " goes with one number, a range with none of these", "");
    }
    double seconds = seconds(number, unit(number));
    return over
        ? new Length(Length.Form.OVER, seconds, Double.POSITIVE_INFINITY)
        : new Length(Length.Form.UNDER, 0, seconds);
  }

  private Length length(boolean about, Token from, Token to, Unit unit) throws Fault {
    double low = seconds(from, unit);
    double high = seconds(to, unit);
    if (to.equals(from)) {
      return new Length(about ? Length.Form.ABOUT : Length.Form.EXACT, low, low);
    }
    if (!(low < high)) {
      throw downwards(from, to, low == high);
    }
    return new Length(about ? Length.Form.ABOUT_RANGE : Length.Form.RANGE, low, high);
  }

  /** A range that does not run upwards. */
  Fault downwards(Token from, Token to, boolean equal) {
    return equal
        ? cursor.replace(from, to, "a range of one number is that number", from.text())
        : cursor.replace(from, to, "a range runs upwards", to.text() + " to " + from.text());
  }

  /** Reads a number. */
  Token number(String expected, String missing) throws Fault {
    if (!cursor.peek().isNumber()) {
      throw cursor.unexpected(expected, List.of("about", "over", "under"), missing);
    }
    return cursor.next();
  }

  private double seconds(Token number, Unit unit) throws Fault {
    BigDecimal exact = unit.toSeconds(new BigDecimal(number.text()));
    double seconds = exact.doubleValue();
    if (!(seconds > 0)) {
      throw cursor.fault(number, "a duration must be over 0 s");
    }
    if (!(seconds <= Length.MOST_SECONDS)) {
      throw cursor.fault(number, "a duration must be at most a week");
    }
    return seconds;
  }

  private Unit unit(Token number) throws Fault {
    Token token = cursor.peek();
    Optional<Unit> unit = Unit.of(token.text());
    if (unit.isPresent()) {
      cursor.next();
      return unit.get();
    }
    boolean blinkFollows =
        Cursor.isBlink(token) || Words.right(token.text()).filter("blinks"::equals).isPresent();
    boolean sizeFollows = token.is("short") || token.is("long");
    if ((blinkFollows || sizeFollows) && !cursor.isFirst(number)) {
      throw cursor.insert(number, "\"then\" stands between parts", "then");
    }
    throw cursor.unexpected("a unit (ms, s, min or h)", UNIT_OR_TO, token.isEnd() ? "s" : "");
  }

  /** {@code 3 s to 4 s}: in one unit, once. */
  private Fault unitTwice(Token from, Unit unit) throws Fault {
    cursor.next();
    Token to = number("the upper number of the range", "");
    Token last = cursor.peek();
    Unit upper = unit(to);
    String low = Decimals.plain(unit.toSeconds(new BigDecimal(from.text())));
    String high = Decimals.plain(upper.toSeconds(new BigDecimal(to.text())));
    String right =
        unit == upper
            ? from.text() + " to " + to.text() + " " + unit.word()
            : low + " to " + high + " s";
    return cursor.replace(from, last, "a range has one unit, after its upper number", right);
  }
}

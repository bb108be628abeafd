package lampwise.rhythm;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Makes counts and rates of the numbers of a phrase. */
final class Numbers {
  private final Cursor cursor;
  private final Durations durations;

  Numbers(Cursor cursor, Durations durations) {
    this.cursor = cursor;
    this.durations = durations;
  }

  /** Turns the numbers of counted blinks, just read, into a count. */
  Count count(boolean about, Token start, Token from, Token to) throws Fault {
    int low = whole(from);
    int high = whole(to);
    if (about) {
      int least = Math.max(1, low - (low + 4) / 5);
      int most = Math.min(Count.MOST, high + (high + 4) / 5);
      throw cursor.replace(
          start, to, "a count is one number or a range, not \"about\"", least + " to " + most);
    }
    if (!to.equals(from) && low >= high) {
      throw durations.downwards(from, to, low == high);
    }
    return new Count(low, high);
  }

  private int whole(Token number) throws Fault {
    BigDecimal value = new BigDecimal(number.text());
    if (value.signum() == 0) {
      throw zero(number);
    }
    if (value.compareTo(BigDecimal.valueOf(Count.MOST)) > 0) {
      throw cursor.fault(number, "a part has at most " + Count.MOST + " blinks");
    }
    int below = value.intValue();
    boolean whole = value.compareTo(BigDecimal.valueOf(below)) == 0;
    if (number.text().indexOf('.') >= 0) {
      String right = whole ? below + "" : Math.max(1, below) + " to " + Math.max(2, below + 1);
      throw cursor.replace(number, number, "a count is a whole number", right);
    }
    return below;
  }

  private Fault zero(Token number) {
    String reason = "a part has at least one blink; no light is \"dark\"";
    return cursor.isFirst(number) && cursor.peek().isEnd()
        ? new Fault(number.column(), reason, "dark", "dark")
        : cursor.replace(number, number, reason, "1");
  }

  /** Reads {@code per second}; a rate without a number is one blink. */
  Rate rate(boolean about, Optional<Token> from, Optional<Token> to) throws Fault {
    Token perToken = cursor.next();
    Token unit = cursor.peek();
    if (unit.isNumber()) {
      throw cursor.replace(
          perToken,
          perToken,
          "\"per\" goes with \"second\" or \"minute\"; a time with \"every\"",
          "every");
    }
    Rate.Per per = per();
    double low = from.isPresent() ? perSecondChecked(from.get(), per) : 1;
    double high = to.isPresent() ? perSecondChecked(to.get(), per) : 1;
    boolean range = !from.equals(to);
    if (range && !(low < high)) {
      throw durations.downwards(from.get(), to.get(), low == high);
    }
    Rate.Form form =
        range
            ? about ? Rate.Form.ABOUT_RANGE : Rate.Form.RANGE
            : about ? Rate.Form.ABOUT : Rate.Form.EXACT;
    return new Rate(form, low, high, per);
  }

  private Rate.Per per() throws Fault {
    if (cursor.accept("second")) {
      return Rate.Per.SECOND;
    }
    if (cursor.accept("minute")) {
      return Rate.Per.MINUTE;
    }
    Token token = cursor.peek();
    String unit = Words.right(token.text()).orElse(token.text());
    if (unit.equals("s") || unit.equals("min")) {
      String right = unit.equals("s") ? "second" : "minute";
      throw cursor.replace(token, token, token.shown() + " is said \"" + right + "\" here", right);
    }
    throw cursor.unexpected("\"second\" or \"minute\"", List.of("second", "minute"), "second");
  }

  private double perSecondChecked(Token number, Rate.Per per) throws Fault {
    double value = new BigDecimal(number.text()).doubleValue();
    if (!(value > 0)) {
      throw cursor.fault(number, "a rate must be over 0; no light is \"dark\"");
    }
    if (!(value / per.seconds() <= Rate.MOST_PER_SECOND)) {
      throw cursor.fault(
          number,
          "a rate must be at most "
              + Decimals.plain(Rate.MOST_PER_SECOND * per.seconds())
              + " per "
              + (per == Rate.Per.SECOND ? "second" : "minute"));
    }
    return value;
  }
}

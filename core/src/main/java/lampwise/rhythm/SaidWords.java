package lampwise.rhythm;

import java.util.List;
import java.util.Locale;
import lampwise.rhythm.SaidWord.Kind;

/** A place between the words of a saying. */
final class SaidWords {
  /** Common turns of speech and the one word that says as much, no longer than they are. */
  private static final List<String> TURNS =
      List.of(
          "now and then", "sometimes",
          "from time to time", "sometimes",
          "over and over", "again",
          "one after another", "",
          "and so on", "again",
          "in between", "between",
          "long and short", "");

  private final List<SaidWord> words;
  private int at;

  SaidWords(List<SaidWord> words) {
    this.words = words;
  }

  /** In lower case, each turn of speech as its one word, every other word where it was. */
  static String plain(String said) {
    String text = said.toLowerCase(Locale.ROOT);
    for (int i = 0; i < TURNS.size(); i += 2) {
      StringBuilder instead = new StringBuilder(TURNS.get(i + 1));
      while (instead.length() < TURNS.get(i).length()) {
        instead.append(' ');
      }
      text = text.replace(TURNS.get(i), instead);
    }
    return text;
  }

  SaidWord peek() {
    return ahead(0);
  }

  SaidWord ahead(int by) {
    return words.get(Math.min(at + by, words.size() - 1));
  }

  SaidWord next() {
    SaidWord word = peek();
    at = Math.min(at + 1, words.size() - 1);
    return word;
  }

  boolean at(Kind kind) {
    return peek().is(kind);
  }

  boolean accept(Kind kind) {
    boolean is = at(kind);
    if (is) {
      next();
    }
    return is;
  }

  int mark() {
    return at;
  }

  void back(int mark) {
    at = mark;
  }

  Fault fault(String reason) {
    return new Fault(peek().column(), reason, "", "");
  }

  /** The next word in quotes, short enough for a message. */
  String shown() {
    return new Token(Token.Kind.WORD, peek().text(), 0, 0).shown();
  }

  /** Whether a comma or the like stands here and then a blink, a pause or a dark. */
  boolean beforeMoreLight() {
    Kind then = ahead(1).kind();
    return (at(Kind.THEN) || at(Kind.TO))
        && (then == Kind.BLINK || then == Kind.PAUSE || then == Kind.DARK || then == Kind.LONG);
  }

  /** The next word as a number of blinks or of units. */
  double number() throws Fault {
    SaidWord word = next();
    if (word.is(Kind.ARTICLE)) {
      return 1;
    }
    if (!word.is(Kind.NUMBER)) {
      throw new Fault(word.column(), "a number was expected", "", "");
    }
    return word.number();
  }

  /** Whether a time begins here. */
  boolean atDuration() {
    return timeEnd(at) > at;
  }

  /** Whether a time, or a unit that stands for one, follows the word {@code every} here. */
  boolean atDurationAfterEvery() {
    return timeEnd(at + 1) > at + 1 || ahead(1).is(Kind.UNIT);
  }

  /** The index of the unit that ends a time begun at an index; that index itself if none is. */
  private int timeEnd(int start) {
    int i = start;
    if (kindAt(i) == Kind.ABOUT) {
      i++;
    }
    if (kindAt(i) == Kind.HALF) {
      i++;
      i += kindAt(i) == Kind.ARTICLE ? 1 : 0;
    } else if (kindAt(i) == Kind.ARTICLE) {
      i++;
    } else if (kindAt(i) == Kind.NUMBER) {
      i++;
      i += kindAt(i) == Kind.UNIT && kindAt(i + 1) == Kind.TO ? 1 : 0;
      i += kindAt(i) == Kind.TO && kindAt(i + 1) == Kind.NUMBER ? 2 : 0;
    } else {
      return start;
    }
    return kindAt(i) == Kind.UNIT ? i : start;
  }

  private Kind kindAt(int index) {
    return words.get(Math.min(index, words.size() - 1)).kind();
  }

  /** Reads a time; a unit alone is one of it. */
  Length duration() throws Fault {
    SaidWord start = peek();
    if (accept(Kind.UNIT)) {
      return length(start, Length.Form.EXACT, start.number(), start.number());
    }
    int end = timeEnd(at);
    if (end == at) {
      throw fault("a time such as \"2 s\" was expected");
    }
    double unit = words.get(end).number();
    boolean about = accept(Kind.ABOUT);
    double from = 0.5;
    if (accept(Kind.HALF)) {
      accept(Kind.ARTICLE);
    } else {
      from = number();
    }
    double to = from;
    accept(Kind.UNIT);
    if (at <= end && accept(Kind.TO)) {
      to = number();
    }
    at = end + 1;
    Length.Form form =
        from == to
            ? (about ? Length.Form.ABOUT : Length.Form.EXACT)
            : (about ? Length.Form.ABOUT_RANGE : Length.Form.RANGE);
    return length(start, form, product(from, unit), product(to, unit));
  }

  /** As a person would write it: 300 ms are 0.3 s. */
  private static double product(double number, double unit) {
    return Decimals.of(number).multiply(Decimals.of(unit)).doubleValue();
  }

  private static Length length(SaidWord where, Length.Form form, double from, double to)
      throws Fault {
    try {
      return new Length(form, from, to);
    } catch (RhythmException e) {
      throw new Fault(where.column(), String.valueOf(e.getMessage()), "", "");
    }
  }
}

package lampwise.rhythm;

import java.util.List;
import java.util.Optional;

/** A place between the tokens of a phrase. */
final class Cursor {
  private final String text;
  private final List<Token> tokens;
  private int at;

  Cursor(String text, List<Token> tokens) {
    this.text = text;
    this.tokens = tokens;
  }

  Token peek() {
    return ahead(0);
  }

  Token ahead(int by) {
    return tokens.get(Math.min(at + by, tokens.size() - 1));
  }

  /** The token before this place; the first one at the beginning. */
  Token before() {
    return tokens.get(Math.max(0, at - 1));
  }

  /** Whether a token is the first of the phrase. */
  boolean isFirst(Token token) {
    return token.equals(tokens.get(0));
  }

  /** Whether the token before one of the last few is one of these words. */
  boolean follows(Token token, List<String> words) {
    int i = at;
    while (i > 0 && tokens.get(i).start() > token.start()) {
      i--;
    }
    return i > 0 && words.contains(tokens.get(i - 1).text());
  }

  Token next() {
    Token token = peek();
    at = Math.min(at + 1, tokens.size() - 1);
    return token;
  }

  boolean accept(String word) {
    boolean is = peek().is(word);
    if (is) {
      next();
    }
    return is;
  }

  boolean atBlink() {
    return isBlink(peek());
  }

  static boolean isBlink(Token token) {
    return token.is("blink") || token.is("blinks");
  }

  /** Whether a duration begins here. */
  boolean atDuration() {
    Token token = peek();
    return token.isNumber() || token.is("about") || token.is("over") || token.is("under");
  }

  /** A fault at a token without a remedy. */
  Fault fault(Token where, String reason) {
    return new Fault(where.column(), reason, "", "");
  }

  /** A fault that is put right by other words in place of the tokens from the first to the last. */
  Fault replace(Token first, Token last, String reason, String words) {
    return new Fault(first.column(), reason, words, replaced(first, last, words));
  }

  /** A fault that is put right by words before a token. */
  Fault insert(Token where, String reason, String words) {
    String better =
        text.substring(0, where.start()) + " " + words + " " + text.substring(where.start());
    return new Fault(where.column(), reason, words, better);
  }

  String replaced(Token first, Token last, String words) {
    return text.substring(0, first.start()) + " " + words + " " + text.substring(last.end());
  }

  /**
   * A fault at the next token: something else was expected.
   *
   * @param expected what, for the message
   * @param words the words that could stand here
   * @param missing what could be put in front of the token if it is a word of the grammar or the
   *     end; empty for nothing
   */
  Fault unexpected(String expected, List<String> words, String missing) {
    Token token = peek();
    if (token.isEnd()) {
      String reason = "the phrase ends where " + expected + " was expected";
      return missing.isEmpty() ? fault(token, reason) : insert(token, reason, missing);
    }
    if (Words.PAUSES.contains(token.text())) {
      return pause(0);
    }
    if ((token.is("long") || token.is("short")) && Words.PAUSES.contains(ahead(1).text())) {
      return pause(1);
    }
    if (token.is("no") && words.contains("dark")) {
      return replace(token, ahead(1), "no light is said \"dark\"", "dark");
    }
    boolean known = token.isNumber() || Words.GRAMMAR.contains(token.text());
    Optional<String> saying = saying(token, words);
    if (saying.isPresent() && !(known && saying.get().isEmpty())) {
      String right = saying.get();
      String reason =
          right.isEmpty()
              ? token.shown() + " says nothing here; expected " + expected
              : token.shown() + " is said \"" + right + "\"";
      return replace(token, token, reason, right);
    }
    String reason = token.shown() + " where " + expected + " was expected";
    if (known) {
      return missing.isEmpty() ? fault(token, reason) : insert(token, reason, missing);
    }
    return Words.nearest(token.text(), words)
        .map(word -> replace(token, token, reason, word))
        .orElseGet(() -> fault(token, reason));
  }

  /** Whether the next token is what people say for {@code per}. */
  boolean atSayingOfPer() {
    List<String> words = List.of("per");
    return !peek().is("per") && saying(peek(), words).filter("per"::equals).isPresent();
  }

  /** How the grammar says a word of the people here. */
  private Optional<String> saying(Token token, List<String> words) {
    Token following = ahead(1);
    String word = token.text();
    boolean article = word.equals("a") || word.equals("an") || word.equals("each");
    boolean time = List.of("second", "minute", "sec", "min", "s").contains(following.text());
    if ((article || word.equals("/")) && time && words.contains("per")) {
      return Optional.of("per");
    }
    if (word.equals("/")) {
      return Optional.of("then");
    }
    if (word.equals("once") && words.contains("blinks")) {
      return Optional.of("1 blink");
    }
    if ((word.equals("times") || word.equals("time") || word.equals("x") || word.equals("\u00d7"))
        && (isBlink(following)
            || Words.right(following.text()).filter("blinks"::equals).isPresent())) {
      return Optional.of("");
    }
    if (words.contains("to") && word.equals("and")) {
      return Optional.of("to");
    }
    if (Words.GRAMMAR.contains(word) && !words.contains(Words.right(word).orElse(""))) {
      return Optional.empty();
    }
    return Words.right(word);
  }

  /**
   * A pause between two groups is what {@code then} says, one with a length is {@code dark}.
   *
   * @param more how many tokens belong to the pause beside the next one
   */
  Fault pause(int more) {
    boolean afterThen = at > 0 && before().is("then");
    Token following = ahead(more + 1);
    String after = ahead(more + 2).text();
    String unit = Words.right(after).orElse(after);
    boolean timed = following.isNumber() && (unit.equals("to") || Unit.of(unit).isPresent());
    boolean closing =
        following.isEnd()
            || following.is("repeating")
            || Words.right(following.text()).filter("repeating"::equals).isPresent();
    String right = afterThen ? "dark" : timed ? "then dark" : closing ? "" : "then";
    return replace(
        peek(),
        ahead(more),
        "a pause is said \"then\", or \"then dark\" with its length; the one that closes the cycle"
            + " is not said",
        right);
  }
}

package lampwise.rhythm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads phrases by recursive descent, one token ahead. */
final class PhraseParser {
  /** Words and sayings that begin a part. */
  private static final List<String> PART_WORDS =
      List.of("blinks", "blink", "steady", "dark", "slow", "fast", "about", "first");

  private final Cursor cursor;
  private final Durations durations;
  private final Numbers numbers;
  private final String text;

  private PhraseParser(String text, Cursor cursor) {
    this.text = text;
    this.cursor = cursor;
    this.durations = new Durations(cursor);
    this.numbers = new Numbers(cursor, durations);
  }

  static Rhythm parse(String text) throws Fault {
    List<Token> tokens = Token.split(text);
    Words.refuseUnsayable(text, tokens);
    return new PhraseParser(text, new Cursor(text, tokens)).rhythm();
  }

  /**
   * A part or a bare rate, and where it stands.
   *
   * @param part the part; empty for a bare rate
   * @param rate the rate of a bare rate
   * @param place its tokens
   */
  private record Item(Optional<Part> part, Optional<Rate> rate, Place place) {}

  /**
   * Where a part stands.
   *
   * @param start its first token
   * @param size its size, or its first token
   * @param of the length of its blinks, or its first token
   * @param apart their spacing, or its first token
   */
  private record Place(Token start, Token size, Token of, Token apart) {
    static Place at(Token start) {
      return new Place(start, start, start, start);
    }

    Token token(Broken.Spot spot) {
      return switch (spot) {
        case PART, ENDING -> start;
        case SIZE -> size;
        case OF -> of;
        case APART -> apart;
      };
    }
  }

  private Rhythm rhythm() throws Fault {
    Token start = cursor.peek();
    if (start.isEnd()) {
      throw cursor.fault(
          start, "nothing is said; expected a rhythm such as \"3 blinks every 7 s\"");
    }
    if (cursor.ahead(1).isEnd() && (start.is("dark") || start.is("steady"))) {
      return start.is("dark") ? new Rhythm.Dark() : new Rhythm.Steady();
    }
    List<Item> prelude = new ArrayList<>();
    if (cursor.accept("first")) {
      prelude.addAll(parts(item("after \"first\" ")));
      if (!cursor.accept("afterwards")) {
        throw cursor.unexpected(
            "\"then\" or \"afterwards\"", List.of("then", "afterwards"), "afterwards");
      }
    }
    Item first = item("");
    if (first.rate().isPresent()) {
      endOfRate(first);
      return build(prelude, List.of(), new Cycle.Rated(first.rate().get()), first.place().start());
    }
    List<Item> parts = parts(first);
    Token ending = cursor.peek();
    Cycle cycle = new Cycle.Parts(plain(parts), ending());
    return build(prelude, parts, cycle, ending);
  }

  private Rhythm build(List<Item> prelude, List<Item> parts, Cycle cycle, Token ending)
      throws Fault {
    List<Part> before = plain(prelude);
    Optional<Broken> broken = RhythmRules.find(before, cycle);
    if (broken.isPresent()) {
      Broken b = broken.get();
      Token where = ending;
      if (b.spot() != Broken.Spot.ENDING) {
        where = (b.inPrelude() ? prelude : parts).get(b.part()).place().token(b.spot());
      }
      throw new Fault(where.column(), b.reason(), "", b.better());
    }
    return new Rhythm.Blinking(before, cycle);
  }

  private static List<Part> plain(List<Item> items) {
    return items.stream().flatMap(item -> item.part().stream()).toList();
  }

  private List<Item> parts(Item first) throws Fault {
    List<Item> items = new ArrayList<>();
    Item item = first;
    while (true) {
      if (item.rate().isPresent()) {
        throw bareRate(item);
      }
      items.add(item);
      if (!cursor.accept("then")) {
        return items;
      }
      item = item("");
    }
  }

  /** A rate as a part without {@code for}. */
  private Fault bareRate(Item item) {
    String reason = "a rate that is one part of several needs its time, such as \"for 3 s\"";
    return item.place().start().is("blink") && item.rate().get().form() == Rate.Form.ANY
        ? cursor.insert(item.place().start(), "how many blinks is not said; " + reason, "1")
        : cursor.fault(cursor.peek(), reason);
  }

  /** A cycle that is a rate ends with it. */
  private void endOfRate(Item rate) throws Fault {
    Token token = cursor.peek();
    if (token.isEnd()) {
      return;
    }
    boolean any = rate.rate().get().form() == Rate.Form.ANY;
    if (token.is("then")) {
      throw bareRate(rate);
    }
    if (token.is("every")) {
      String reason = "\"every\" goes with counted blinks, not with a rate";
      throw any && cursor.isFirst(rate.place().start())
          ? cursor.insert(rate.place().start(), reason, "1").at(token)
          : cursor.fault(token, reason);
    }
    if (token.is("once")) {
      throw cursor.fault(token, "a rate shown \"once\" needs its time, such as \"for 3 s once\"");
    }
    if (token.is("repeating")) {
      throw cursor.replace(token, token, "a rate goes on by itself", "");
    }
    throw cursor.unexpected("\"for\" or the end", List.of("for", "per"), "");
  }

  private Item item(String where) throws Fault {
    Token start = cursor.peek();
    if (start.is("steady") || start.is("dark")) {
      cursor.next();
      if (cursor.peek().is("for")) {
        throw cursor.replace(
            cursor.peek(), cursor.peek(), "the time follows " + start.shown() + " at once", "");
      }
      Optional<Length> length =
          cursor.atDuration() ? Optional.of(durations.read()) : Optional.empty();
      Part part = start.is("steady") ? new Part.Lit(length) : new Part.Unlit(length);
      return new Item(Optional.of(part), Optional.empty(), Place.at(start));
    }
    if (start.is("slow") || start.is("fast")) {
      cursor.next();
      blink("\"blinks\"");
      Rate.Form form = start.is("slow") ? Rate.Form.SLOW : Rate.Form.FAST;
      return rated(start, Rate.inWords(form));
    }
    if (cursor.atBlink()) {
      cursor.next();
      return cursor.peek().is("per")
          ? rated(start, numbers.rate(false, Optional.empty(), Optional.empty()))
          : rated(start, Rate.inWords(Rate.Form.ANY));
    }
    if (start.isNumber() || start.is("about")) {
      return numbered(start);
    }
    throw cursor.unexpected(where + "blinks, \"steady\" or \"dark\"", PART_WORDS, "");
  }

  private void blink(String expected) throws Fault {
    if (!cursor.atBlink()) {
      throw cursor.unexpected(expected, List.of("blinks", "blink"), "blinks");
    }
    cursor.next();
  }

  /** Numbered blinks: a count or a rate. */
  private Item numbered(Token start) throws Fault {
    boolean about = cursor.accept("about");
    Token from = durations.number("a number", "");
    Token to = from;
    if (cursor.accept("to")) {
      to = durations.number("the upper number of the range", "");
    }
    Token sizeToken = cursor.peek();
    Size size =
        cursor.accept("short") ? Size.SHORT : cursor.accept("long") ? Size.LONG : Size.UNSAID;
    refusePauseOrSpeed(from, to, sizeToken, size);
    if (cursor.peek().isEnd() && (from.text() + to.text()).indexOf('.') >= 0) {
      throw cursor.fault(cursor.peek(), "the phrase ends where \"blinks per second\" was expected");
    }
    blink("\"blink\" or \"blinks\"");
    if (cursor.atSayingOfPer()) {
      throw cursor.unexpected("\"per\"", List.of("per"), "");
    }
    if (cursor.peek().is("per")) {
      if (size != Size.UNSAID) {
        throw cursor.replace(sizeToken, sizeToken, "a rate says nothing of the blinks' length", "");
      }
      return rated(start, numbers.rate(about, Optional.of(from), Optional.of(to)));
    }
    return counted(start, numbers.count(about, start, from, to), size, sizeToken);
  }

  private void refusePauseOrSpeed(Token from, Token to, Token sizeToken, Size size) throws Fault {
    Token token = cursor.peek();
    if (Words.PAUSES.contains(token.text())) {
      throw size == Size.UNSAID
          ? cursor.insert(token, "blinks of what is counted are missing", "blinks")
          : cursor.insert(sizeToken, "blinks of what is counted are missing", "blinks");
    }
    String word = Words.right(token.text()).orElse(token.text());
    if (word.equals("slow") || word.equals("fast")) {
      throw cursor.replace(
          token, token, token.shown() + " goes without a number; say how far \"apart\"", "");
    }
    boolean unit = Unit.of(word).isPresent();
    if (unit && size == Size.UNSAID) {
      throw timeFirst(from, to, word);
    }
  }

  /** {@code 0.5 s on} for {@code steady 0.5 s}. */
  private Fault timeFirst(Token from, Token to, String unit) {
    Token what = cursor.ahead(1);
    String right = Words.right(what.text()).orElse(what.text());
    String time =
        to.equals(from) ? from.text() + " " + unit : from.text() + " to " + to.text() + " " + unit;
    if (Words.PAUSES.contains(what.text())) {
      right = "dark";
    }
    String reason = "a time follows what it is the time of, as in \"steady 2 s\"";
    if (right.equals("steady") || right.equals("dark")) {
      String lead =
          cursor.isFirst(from) || cursor.follows(from, List.of("then", "first")) ? "" : "then ";
      return cursor.replace(from, what, reason, lead + right + " " + time);
    }
    return right.equals("blinks") || Cursor.isBlink(what)
        ? cursor.replace(from, what, reason, "1 blink of " + time)
        : cursor.fault(from, reason);
  }

  private Item counted(Token start, Count count, Size size, Token sizeToken) throws Fault {
    Token ofToken = start;
    Token apartToken = start;
    Optional<Length> of = Optional.empty();
    Optional<Length> apart = Optional.empty();
    if (cursor.accept("of")) {
      ofToken = cursor.peek();
      of = Optional.of(durations.read());
    }
    if (cursor.atDuration()) {
      apartToken = cursor.peek();
      apart = Optional.of(durations.read());
      apart(count, of.isPresent(), apartToken);
    }
    Place place = new Place(start, size == Size.UNSAID ? start : sizeToken, ofToken, apartToken);
    return new Item(Optional.of(new Part.Blinks(count, size, of, apart)), Optional.empty(), place);
  }

  private void apart(Count count, boolean ofSaid, Token duration) throws Fault {
    if (cursor.accept("apart")) {
      return;
    }
    Token token = cursor.peek();
    String right = Words.right(token.text()).orElse(token.text());
    boolean paused = Words.PAUSES.contains(token.text());
    if (paused || right.equals("steady") || right.equals("dark")) {
      String time = text.substring(duration.start(), cursor.before().end());
      throw cursor.replace(
          duration,
          token,
          "a time follows what it is the time of, as in \"dark 2 s\"",
          "then " + (paused ? "dark" : right) + " " + time);
    }
    if (count.max() == 1 && !ofSaid) {
      throw cursor.insert(duration, "the length of a blink is said with \"of\"", "of");
    }
    throw cursor.unexpected("\"apart\"", List.of("apart"), "apart");
  }

  /** A rate just read, perhaps with the time that makes it a part. */
  private Item rated(Token start, Rate rate) throws Fault {
    if (cursor.accept("for")) {
      Part part = new Part.RatedFor(rate, durations.read());
      return new Item(Optional.of(part), Optional.empty(), Place.at(start));
    }
    return new Item(Optional.empty(), Optional.of(rate), Place.at(start));
  }

  private Ending ending() throws Fault {
    Token start = cursor.peek();
    Ending ending = new Ending.Repeating();
    if (cursor.accept("every")) {
      ending = new Ending.Every(every());
    } else if (cursor.accept("once")) {
      ending = new Ending.Once();
    } else {
      cursor.accept("repeating");
    }
    boolean none = cursor.peek().equals(start);
    Token token = cursor.peek();
    if (token.isEnd()) {
      return ending;
    }
    if (none) {
      boolean part = token.isNumber() || PART_WORDS.contains(token.text());
      throw cursor.unexpected(
          "\"then\", \"every\", \"repeating\", \"once\" or the end",
          List.of("then", "every", "repeating", "once", "apart", "of", "per"),
          part ? "then" : "");
    }
    if (token.is("every") && !(ending instanceof Ending.Every)) {
      throw cursor.replace(start, start, "a phrase has one ending", "").at(token);
    }
    throw token.is("then") || token.is("every") || token.is("once") || token.is("repeating")
        ? cursor.fault(token, "the phrase ends after its ending " + start.shown())
        : cursor.unexpected("the end", List.of(), "");
  }

  private Length every() throws Fault {
    Token token = cursor.peek();
    if (token.is("second") || token.is("minute")) {
      String right = token.is("second") ? "1 s" : "1 min";
      throw cursor.replace(token, token, "a time has a number and a unit", right);
    }
    return durations.read();
  }
}

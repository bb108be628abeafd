package lampwise.rhythm;

import java.util.List;
import java.util.Optional;
import lampwise.rhythm.SaidWord.Kind;

/** Reads a saying item by item; {@link SayingBuilder} puts the items together. */
final class SayingParser {
  private final String text;
  private final SaidWords words;
  private final SayingBuilder builder = new SayingBuilder();

  private SayingParser(String text) {
    this.text = text;
    this.words = new SaidWords(SaidWord.split(text));
  }

  static List<Rhythm> read(String said) throws Fault {
    return new SayingParser(SaidWords.plain(said)).all();
  }

  private List<Rhythm> all() throws Fault {
    boolean comma = true;
    while (!words.at(Kind.END)) {
      if (words.accept(Kind.THEN)) {
        comma = true;
      } else {
        item(comma);
        comma = false;
      }
    }
    return builder.rhythms();
  }

  private void item(boolean comma) throws Fault {
    SaidWord word = words.peek();
    switch (word.kind()) {
      case NUMBER, HALF, ARTICLE -> numbered(false);
      case ABOUT -> about();
      case BLINK -> blinking();
      case QUICK, SLOW, SHORT, LONG -> adjective();
      case LIT, ALWAYS -> lit();
      case DARK, NO, END_OF_LIGHT -> dark();
      case PAUSE -> pause();
      case REPEAT, SENT -> repeat();
      case EVERY -> every(!comma);
      case ONCE -> once();
      case FOR -> forTime();
      case FIRST -> {
        words.next();
        builder.first();
      }
      // A dash or "or" that is not between numbers.
      case SELDOM, TO -> words.next();
      case APART -> {
        words.next();
        builder.apart(words.duration());
      }
      case CODE ->
          throw words.fault(
              "which blinks the code has is not said; put them in its place, as in \"4 flashes sent"
                  + " three times, then dark\"");
      case UNKNOWN -> throw unknown(word);
      default -> throw words.fault(words.shown() + " says nothing here");
    }
  }

  /** A word that is not one of lamps and times; put right if it is only misspelt. */
  private Fault unknown(SaidWord word) {
    Optional<String> near = SaidWord.near(word.text());
    String reason =
        words.shown()
            + " is not understood; "
            + near.map(right -> "did you mean \"" + right + "\"?")
                .orElse("expected blinks, lit, dark and times");
    String better =
        near.map(
                right ->
                    text.substring(0, word.start())
                        + right
                        + text.substring(word.start() + word.text().length()))
            .orElse("");
    return new Fault(word.column(), reason, "", better);
  }

  private void about() throws Fault {
    if (words.ahead(1).is(Kind.EVERY)) {
      words.next();
      words.next();
      Length exact = words.duration();
      boolean single = exact.form() == Length.Form.EXACT;
      builder.every(
          single
              ? new Length(Length.Form.ABOUT, exact.fromSeconds(), exact.toSeconds())
              : new Length(Length.Form.ABOUT_RANGE, exact.fromSeconds(), exact.toSeconds()),
          false);
    } else {
      numbered(words.ahead(1).is(Kind.NUMBER) && !words.atDuration() && aboutNumber());
    }
  }

  private boolean aboutNumber() {
    words.next();
    return true;
  }

  /** A time and what lasts so long, or a number of blinks. */
  private void numbered(boolean about) throws Fault {
    if (words.atDuration()) {
      timed(words.duration());
      return;
    }
    SaidWord start = words.peek();
    double from = words.number();
    double to = from;
    if (words.at(Kind.TO) && words.ahead(1).is(Kind.NUMBER)) {
      words.next();
      to = words.number();
    }
    Size size = size();
    if (words.accept(Kind.HERTZ)) {
      builder.rate(rate(about, from, to, Rate.Per.SECOND));
      return;
    }
    boolean blink = words.at(Kind.BLINK);
    while (words.at(Kind.BLINK) || words.at(Kind.TIMES)) {
      words.next();
    }
    if (blink && words.at(Kind.DARK)) {
      throw words.fault(
          "how long the lamp is off and how often, say as in \"off 0.3 s every 10 s\"");
    }
    Optional<Rate.Per> per = per(from > 1);
    if (per.isPresent()) {
      builder.rate(rate(about, from, to, per.get()));
    } else {
      builder.blinks(count(start, from, to), size);
      modifiers();
    }
  }

  /** {@code per second}, {@code a minute}; with {@code every} only where several come in it. */
  private Optional<Rate.Per> per(boolean several) throws Fault {
    boolean per = words.at(Kind.PER) || words.at(Kind.ARTICLE);
    SaidWord unit = words.ahead(1);
    if (!unit.is(Kind.UNIT) || !(per || (several && words.at(Kind.EVERY)))) {
      return Optional.empty();
    }
    if (unit.number() != 1 && unit.number() != 60) {
      if (per) {
        SaidWord word = words.peek();
        throw new Fault(
            word.column(),
            "a rate is per second or minute; else say as in \"every 30 min\"",
            "",
            text.substring(0, word.start())
                + "every"
                + text.substring(word.start() + word.text().length()));
      }
      return Optional.empty();
    }
    words.next();
    words.next();
    return Optional.of(unit.number() == 1 ? Rate.Per.SECOND : Rate.Per.MINUTE);
  }

  private Rate rate(boolean about, double from, double to, Rate.Per per) throws Fault {
    Rate.Form form =
        from == to
            ? (about ? Rate.Form.ABOUT : Rate.Form.EXACT)
            : (about ? Rate.Form.ABOUT_RANGE : Rate.Form.RANGE);
    try {
      return new Rate(form, from, to, per);
    } catch (RhythmException e) {
      throw words.fault(String.valueOf(e.getMessage()));
    }
  }

  private Count count(SaidWord where, double from, double to) throws Fault {
    boolean whole = from == Math.rint(from) && to == Math.rint(to);
    if (!whole || !(from >= 1 && from <= to && to <= Count.MOST)) {
      throw new Fault(
          where.column(),
          "a number of blinks is whole, 1 to " + Count.MOST + ", and not downwards",
          "",
          "");
    }
    return new Count((int) from, (int) to);
  }

  private Size size() {
    Size size = Size.UNSAID;
    while (true) {
      if (words.accept(Kind.QUICK) || words.accept(Kind.SHORT)) {
        size = Size.SHORT;
      } else if (words.at(Kind.LONG) && !words.ahead(1).is(Kind.PAUSE)) {
        words.next();
        size = Size.LONG;
      } else if (!words.accept(Kind.SLOW)) {
        return size;
      }
    }
  }

  /** What lasts so long. */
  private void timed(Length time) throws Fault {
    words.accept(Kind.LONG);
    if (words.accept(Kind.LIT)) {
      builder.lit(Optional.of(time));
    } else if (words.accept(Kind.DARK) || words.accept(Kind.PAUSE)) {
      builder.dark(Optional.of(time));
    } else if (words.accept(Kind.APART)) {
      builder.apart(time);
    } else if (words.accept(Kind.BETWEEN)) {
      words.accept(Kind.BLINK);
      builder.between(time);
    } else if (words.accept(Kind.BLINK)) {
      builder.blinks(Count.of(1), Size.UNSAID);
      builder.of(time);
      modifiers();
    } else {
      throw words.fault("what lasts so long is not said; expected on, off, pause or apart");
    }
  }

  /** What follows counted blinks at once: their length and spacing. */
  private void modifiers() throws Fault {
    while (words.atDuration()) {
      int mark = words.mark();
      Length time = words.duration();
      SaidWord next = words.peek();
      if (next.is(Kind.LIT) || next.is(Kind.DARK) || next.is(Kind.PAUSE)) {
        words.back(mark);
        return;
      }
      if (words.accept(Kind.APART)) {
        builder.apart(time);
      } else if (words.accept(Kind.BETWEEN)) {
        words.accept(Kind.BLINK);
        builder.between(time);
      } else {
        words.accept(Kind.LONG);
        builder.of(time);
      }
    }
  }

  private void every(boolean attached) throws Fault {
    words.next();
    if (!words.atDuration() && !words.at(Kind.UNIT)) {
      if (words.at(Kind.UNKNOWN)) {
        throw words.fault("every how many seconds is not said");
      }
      // As in "each 0.2 s long": the blinks are meant.
      return;
    }
    Length time = words.duration();
    if (words.accept(Kind.LONG)) {
      builder.of(time);
    } else {
      builder.every(time, attached);
    }
  }

  private void blinking() throws Fault {
    SaidWord blink = words.next();
    boolean always = words.accept(Kind.ALWAYS);
    if (words.at(Kind.ONCE) || (words.at(Kind.NUMBER) && !words.atDuration())) {
      // How many it are comes next.
      return;
    }
    if (words.accept(Kind.DARK)) {
      words.accept(Kind.FOR);
      builder.dark(words.atDuration() ? Optional.of(words.duration()) : Optional.empty());
    } else if (words.at(Kind.SLOW) || words.at(Kind.QUICK)) {
      builder.rate(Rate.inWords(words.next().is(Kind.SLOW) ? Rate.Form.SLOW : Rate.Form.FAST));
    } else if (words.at(Kind.ABOUT) && words.ahead(1).is(Kind.NUMBER) && !words.atDuration()) {
      words.next();
      numbered(true);
    } else if (words.at(Kind.EVERY) && words.atDurationAfterEvery()) {
      builder.single(Size.UNSAID);
    } else if (!always && blink.isSingular() && words.atDuration()) {
      builder.blinks(Count.of(1), Size.UNSAID);
      modifiers();
    } else if (blink.isSingular() && (builder.endsWithBlinks() || words.beforeMoreLight())) {
      builder.single(Size.UNSAID);
    } else {
      builder.rate(Rate.inWords(Rate.Form.ANY));
    }
  }

  private void adjective() throws Fault {
    SaidWord word = words.next();
    if (words.at(Kind.PAUSE)) {
      return;
    }
    boolean sized = word.is(Kind.LONG) || word.is(Kind.SHORT);
    boolean blink = words.at(Kind.BLINK);
    boolean singular = !blink || words.peek().isSingular();
    words.accept(Kind.BLINK);
    boolean counted = words.at(Kind.EVERY) && words.atDurationAfterEvery();
    if (counted || (sized && singular)) {
      boolean slow = word.is(Kind.SLOW);
      Size size = slow ? Size.UNSAID : word.is(Kind.LONG) ? Size.LONG : Size.SHORT;
      builder.single(size);
      modifiers();
    } else {
      builder.rate(
          Rate.inWords(
              word.is(Kind.QUICK)
                  ? Rate.Form.FAST
                  : word.is(Kind.SLOW) ? Rate.Form.SLOW : Rate.Form.ANY));
    }
  }

  private void lit() throws Fault {
    boolean onlyAlways = true;
    while (words.at(Kind.LIT) || words.at(Kind.ALWAYS)) {
      onlyAlways &= words.next().is(Kind.ALWAYS);
    }
    if (onlyAlways && (words.at(Kind.BLINK) || words.at(Kind.DARK))) {
      return;
    }
    if (onlyAlways && !builder.isEmpty() && words.at(Kind.END)) {
      builder.repeat();
      return;
    }
    words.accept(Kind.FOR);
    builder.lit(words.atDuration() ? Optional.of(words.duration()) : Optional.empty());
  }

  private void dark() throws Fault {
    boolean no = words.next().is(Kind.NO);
    if (no && (words.at(Kind.LIT) || words.at(Kind.BLINK))) {
      words.next();
    }
    words.accept(Kind.FOR);
    builder.dark(words.atDuration() ? Optional.of(words.duration()) : Optional.empty());
  }

  private void pause() throws Fault {
    words.next();
    words.accept(Kind.FOR);
    if (words.atDuration()) {
      builder.dark(Optional.of(words.duration()));
    } else {
      builder.pause();
    }
  }

  private void repeat() throws Fault {
    boolean sent = words.next().is(Kind.SENT);
    if (words.at(Kind.NUMBER)) {
      SaidWord where = words.peek();
      double times = words.number();
      words.accept(Kind.TIMES);
      builder.times(count(where, times, times).min());
    } else if (sent) {
      throw words.fault("how often it is sent is not said, as in \"sent three times\"");
    } else {
      builder.repeat();
    }
  }

  private void once() throws Fault {
    words.next();
    Optional<Rate.Per> per = per(false);
    if (per.isPresent()) {
      builder.rate(rate(false, 1, 1, per.get()));
    } else if (words.at(Kind.EVERY) && words.atDurationAfterEvery()) {
      builder.blinks(Count.of(1), Size.UNSAID);
    } else {
      if (!builder.endsWithBlinks()) {
        builder.blinks(Count.of(1), Size.UNSAID);
      }
      builder.once();
    }
  }

  private void forTime() throws Fault {
    words.next();
    builder.lasting(words.duration());
  }
}

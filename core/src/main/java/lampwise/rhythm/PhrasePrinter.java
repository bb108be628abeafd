package lampwise.rhythm;

import java.util.List;

/** Prints rhythms in the one canonical form that {@link Phrase#print} documents. */
final class PhrasePrinter {
  private PhrasePrinter() {}

  static String rhythm(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.Blinking blinking) {
      return blinking(blinking.prelude(), blinking.cycle());
    }
    return rhythm instanceof Rhythm.Dark ? "dark" : "steady";
  }

  static String blinking(List<Part> prelude, Cycle cycle) {
    StringBuilder out = new StringBuilder();
    if (!prelude.isEmpty()) {
      out.append("first ").append(parts(prelude)).append(" afterwards ");
    }
    if (cycle instanceof Cycle.Rated rated) {
      return out.append(rate(rated.rate())).toString();
    }
    Cycle.Parts parts = (Cycle.Parts) cycle;
    out.append(parts(parts.parts()));
    if (!endless(parts)) {
      out.append(' ').append(ending(parts.ending()));
    }
    return out.toString();
  }

  /** A lone {@code steady} or {@code dark} that stays; {@code repeating} would say nothing. */
  private static boolean endless(Cycle.Parts cycle) {
    if (!(cycle.ending() instanceof Ending.Repeating) || cycle.parts().size() != 1) {
      return false;
    }
    Part part = cycle.parts().get(0);
    return part instanceof Part.Lit lit
        ? lit.length().isEmpty()
        : part instanceof Part.Unlit unlit && unlit.length().isEmpty();
  }

  private static String ending(Ending ending) {
    if (ending instanceof Ending.Every every) {
      return "every " + length(every.cycle());
    }
    return ending instanceof Ending.Once ? "once" : "repeating";
  }

  private static String parts(List<Part> parts) {
    StringBuilder out = new StringBuilder();
    for (Part part : parts) {
      out.append(out.isEmpty() ? "" : " then ").append(part(part));
    }
    return out.toString();
  }

  static String part(Part part) {
    if (part instanceof Part.Blinks blinks) {
      return blinks(blinks);
    }
    if (part instanceof Part.RatedFor rated) {
      return rate(rated.rate()) + " for " + length(rated.length());
    }
    if (part instanceof Part.Lit lit) {
      return "steady" + lit.length().map(l -> " " + length(l)).orElse("");
    }
    return "dark" + ((Part.Unlit) part).length().map(l -> " " + length(l)).orElse("");
  }

  private static String blinks(Part.Blinks blinks) {
    Count count = blinks.count();
    String size =
        switch (blinks.size()) {
          case UNSAID -> "";
          case SHORT -> "short ";
          case LONG -> "long ";
        };
    return count.min()
        + (count.max() > count.min() ? " to " + count.max() : "")
        + " "
        + size
        + (count.max() == 1 ? "blink" : "blinks")
        + blinks.of().map(l -> " of " + length(l)).orElse("")
        + blinks.apart().map(l -> " " + length(l) + " apart").orElse("");
  }

  static String rate(Rate rate) {
    String from = rate.form().inWords() ? "" : Decimals.plain(rate.from());
    String per = rate.per() == Rate.Per.SECOND ? " per second" : " per minute";
    String one = rate.from() == 1 ? " blink" : " blinks";
    String range =
        rate.form().inWords() ? "" : from + " to " + Decimals.plain(rate.to()) + " blinks";
    return switch (rate.form()) {
      case ANY -> "blinks";
      case SLOW -> "slow blinks";
      case FAST -> "fast blinks";
      case EXACT -> from + one + per;
      case ABOUT -> "about " + from + one + per;
      case RANGE -> range + per;
      case ABOUT_RANGE -> "about " + range + per;
    };
  }

  static String length(Length length) {
    double from = length.fromSeconds();
    double to = length.toSeconds();
    return switch (length.form()) {
      case EXACT -> single(from);
      case ABOUT -> "about " + single(from);
      case RANGE -> range(from, to);
      case ABOUT_RANGE -> "about " + range(from, to);
      case OVER -> "over " + single(from);
      case UNDER -> "under " + single(to);
    };
  }

  /** One duration; finite, zero or more. */
  static String single(double seconds) {
    Unit unit = Unit.toPrint(seconds, seconds);
    return unit.number(seconds) + " " + unit.word();
  }

  private static String range(double fromSeconds, double toSeconds) {
    Unit unit = Unit.toPrint(fromSeconds, toSeconds);
    return unit.number(fromSeconds) + " to " + unit.number(toSeconds) + " " + unit.word();
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/**
 * A rhythm as stretches of light and dark that can be drawn: a range is drawn by its middle, and
 * what is not said by a typical length (all chosen) and with a mark that says so.
 *
 * @param prelude what comes once before the cycle
 * @param cycle one cycle; a rhythm that never changes is one endless stretch
 * @param repeats whether the cycle comes again; if not, the lamp is dark after it
 */
record RhythmTimes(List<Stretch> prelude, List<Stretch> cycle, boolean repeats) {
  private static final double BLINK = 0.1;
  private static final double LONG_TO_SHORT = 4;
  private static final double DARK_IN_GROUP = 0.4;
  private static final double STEADY = 3;
  private static final double DARK = 3;
  private static final double GROUP_PAUSE = 1.2;
  private static final double CLOSING_PAUSE = 3;
  private static final double PAUSE_RATIO = 2;
  private static final double SHARE_LIT = 0.4;
  private static final double MOST_RATED = 1000;
  private static final int MOST_STRETCHES = 2000;

  /** What the lamp does. */
  enum Lamp {
    ON,
    OFF,
    /** On in some cycles: the blinks of a range above its least. */
    PERHAPS
  }

  /** How well a length is known. */
  enum Said {
    EXACTLY,
    /** Drawn by its middle. */
    ABOUT,
    /** Drawn by a typical length. */
    NOT
  }

  /**
   * A stretch in which the lamp does not change.
   *
   * @param lamp what it does
   * @param seconds how long, over zero; infinite for ever
   * @param said how well that is known
   */
  record Stretch(Lamp lamp, double seconds, Said said) {
    boolean lit() {
      return lamp != Lamp.OFF;
    }
  }

  RhythmTimes {
    prelude = List.copyOf(prelude);
    cycle = List.copyOf(cycle);
  }

  /**
   * The stretches of a rhythm.
   *
   * @param sheetBlink the length of a blink, in seconds, where the phrase gives none
   */
  static RhythmTimes of(Rhythm rhythm, OptionalDouble sheetBlink) {
    if (rhythm instanceof Rhythm.Dark) {
      return new RhythmTimes(List.of(), List.of(endless(Lamp.OFF)), false);
    }
    if (rhythm instanceof Rhythm.Steady) {
      return new RhythmTimes(List.of(), List.of(endless(Lamp.ON)), false);
    }
    Rhythm.Blinking blinking = (Rhythm.Blinking) rhythm;
    double usual = sheetBlink.orElse(BLINK);
    List<Stretch> prelude = parts(blinking.prelude(), usual);
    if (blinking.cycle() instanceof Cycle.Rated rated) {
      close(prelude, true, GROUP_PAUSE);
      return new RhythmTimes(prelude, rated(rated.rate(), usual), true);
    }
    Cycle.Parts said = (Cycle.Parts) blinking.cycle();
    List<Stretch> cycle = parts(said.parts(), usual);
    close(prelude, cycle.get(0).lit(), GROUP_PAUSE);
    if (said.ending() instanceof Ending.Once) {
      cycle.add(endless(Lamp.OFF));
      return new RhythmTimes(prelude, cycle, false);
    }
    if (said.ending() instanceof Ending.Every every) {
      return new RhythmTimes(prelude, fitted(cycle, every.cycle()), true);
    }
    if (said.parts().size() == 1 && !(said.parts().get(0) instanceof Part.Blinks)) {
      Part only = said.parts().get(0);
      if (only instanceof Part.Lit || only instanceof Part.Unlit) {
        Lamp lamp = only instanceof Part.Lit ? Lamp.ON : Lamp.OFF;
        return new RhythmTimes(prelude, List.of(endless(lamp)), false);
      }
    }
    close(cycle, cycle.get(0).lit(), closingPause(cycle));
    return new RhythmTimes(prelude, cycle, true);
  }

  /** The time of one cycle, seconds; without the endless stretch. */
  double cycleSeconds() {
    return finite(cycle);
  }

  /** The time of the prelude, seconds; zero if there is none. */
  double preludeSeconds() {
    return finite(prelude);
  }

  /** A time, in seconds, in which the rhythm can be recognised: two cycles and what precedes. */
  double worthSeeing() {
    double once = cycleSeconds();
    double shown =
        once > 0 ? preludeSeconds() + once * (repeats ? 2 : 1.25) : preludeSeconds() * 1.5;
    return shown > 0 ? shown : 10;
  }

  /**
   * The stretches from the start until so many seconds have passed, or {@value #MOST_STRETCHES} of
   * them, more than any strip can show.
   */
  List<Stretch> over(double seconds) {
    List<Stretch> all = new ArrayList<>();
    double sum = 0;
    for (int i = 0; sum < seconds && i < MOST_STRETCHES; i++) {
      int inCycle = i - prelude.size();
      if (inCycle >= cycle.size() && !repeats) {
        break;
      }
      Stretch stretch = inCycle < 0 ? prelude.get(i) : cycle.get(inCycle % cycle.size());
      all.add(stretch);
      sum += stretch.seconds();
    }
    return all;
  }

  private static double finite(List<Stretch> stretches) {
    double sum = 0;
    for (Stretch stretch : stretches) {
      sum += Double.isInfinite(stretch.seconds()) ? 0 : stretch.seconds();
    }
    return sum;
  }

  private static Stretch endless(Lamp lamp) {
    return new Stretch(lamp, Double.POSITIVE_INFINITY, Said.EXACTLY);
  }

  private static Stretch off(double seconds, Said said) {
    return new Stretch(Lamp.OFF, seconds, said);
  }

  /** The parts in order, with the pauses between them. */
  private static List<Stretch> parts(List<Part> parts, double usual) {
    List<Stretch> all = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      List<Stretch> part = part(parts.get(i), usual, parts);
      if (i > 0) {
        boolean oneGroup =
            parts.get(i - 1) instanceof Part.Blinks before
                && parts.get(i) instanceof Part.Blinks now
                && before.size() != now.size();
        double pause =
            oneGroup ? DARK_IN_GROUP : Math.max(GROUP_PAUSE, PAUSE_RATIO * longestDark(all));
        close(all, part.get(0).lit(), pause);
      }
      all.addAll(part);
    }
    return all;
  }

  /** Adds an unsaid pause if light would follow light. */
  private static void close(List<Stretch> before, boolean lightFollows, double pause) {
    if (lightFollows && !before.isEmpty() && before.get(before.size() - 1).lit()) {
      before.add(off(pause, Said.NOT));
    }
  }

  private static double closingPause(List<Stretch> cycle) {
    return Math.max(CLOSING_PAUSE, PAUSE_RATIO * longestDark(cycle));
  }

  private static double longestDark(List<Stretch> stretches) {
    double longest = 0;
    for (Stretch stretch : stretches) {
      longest = stretch.lit() ? longest : Math.max(longest, stretch.seconds());
    }
    return longest;
  }

  private static List<Stretch> part(Part part, double usual, List<Part> beside) {
    if (part instanceof Part.Lit lit) {
      return List.of(stretch(Lamp.ON, lit.length(), STEADY));
    }
    if (part instanceof Part.Unlit unlit) {
      return List.of(stretch(Lamp.OFF, unlit.length(), DARK));
    }
    if (part instanceof Part.RatedFor ratedFor) {
      List<Stretch> one = rated(ratedFor.rate(), usual);
      double period = one.get(0).seconds() + one.get(1).seconds();
      double blinks = Math.ceil(middle(ratedFor.length()) / period - 1e-9);
      List<Stretch> all = new ArrayList<>();
      for (int i = 0; i < Math.min(Math.max(1, blinks), MOST_RATED); i++) {
        if (i > 0) {
          all.add(one.get(1));
        }
        all.add(one.get(0));
      }
      return all;
    }
    return blinks((Part.Blinks) part, usual, beside);
  }

  private static List<Stretch> blinks(Part.Blinks part, double usual, List<Part> beside) {
    double on = part.of().map(RhythmTimes::middle).orElse(usual);
    if (part.of().isEmpty() && part.size() == Size.LONG) {
      on = LONG_TO_SHORT * shortest(beside, usual);
    }
    double apart = part.apart().map(RhythmTimes::middle).orElse(on + DARK_IN_GROUP);
    if (part.of().isEmpty() && !(on < apart * SHARE_LIT)) {
      on = part.apart().isPresent() ? apart * SHARE_LIT : on;
    }
    Said onSaid = part.of().map(RhythmTimes::said).orElse(Said.EXACTLY);
    Said offSaid = part.apart().map(RhythmTimes::said).orElse(Said.NOT);
    double off = Math.max(apart - on, apart * 0.05);
    List<Stretch> all = new ArrayList<>();
    for (int i = 0; i < part.count().max(); i++) {
      if (i > 0) {
        all.add(off(off, offSaid));
      }
      all.add(new Stretch(i < part.count().min() ? Lamp.ON : Lamp.PERHAPS, on, onSaid));
    }
    return all;
  }

  /** The length of the short blinks that stand beside long ones. */
  private static double shortest(List<Part> beside, double usual) {
    double shortest = usual;
    for (Part part : beside) {
      if (part instanceof Part.Blinks blinks && blinks.size() == Size.SHORT) {
        shortest = Math.max(shortest, blinks.of().map(RhythmTimes::middle).orElse(usual));
      }
    }
    return shortest;
  }

  /** One blink and its pause. */
  private static List<Stretch> rated(Rate rate, double usual) {
    double perSecond =
        switch (rate.form()) {
          case ANY -> 1;
          case SLOW -> 0.5;
          case FAST -> 4;
          default -> (rate.leastPerSecond() + rate.mostPerSecond()) / 2;
        };
    Said said =
        rate.form().inWords()
            ? Said.NOT
            : rate.form() == Rate.Form.EXACT ? Said.EXACTLY : Said.ABOUT;
    double on = Math.min(usual, SHARE_LIT / perSecond);
    return List.of(new Stretch(Lamp.ON, on, Said.EXACTLY), off(1 / perSecond - on, said));
  }

  /** The parts made to last as long as their cycle: what is not said takes what is left. */
  private static List<Stretch> fitted(List<Stretch> parts, Length every) {
    double cycle = middle(every);
    List<Stretch> all = new ArrayList<>(parts);
    boolean closed = !parts.get(0).lit() || !parts.get(parts.size() - 1).lit();
    if (!closed) {
      all.add(off(closingPause(parts), Said.NOT));
    }
    int unsaid = 0;
    int rest = -1;
    double said = 0;
    double guessed = 0;
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).said() == Said.NOT) {
        unsaid++;
        rest = i;
        guessed += all.get(i).seconds();
      } else {
        said += all.get(i).seconds();
      }
    }
    if (rest < 0) {
      return all;
    }
    double left = Math.max(cycle - said, cycle * 0.02);
    double others = guessed - all.get(rest).seconds();
    // The others are kept where they leave the greatest stretch, the last one, enough.
    double scale = others > left / 2 ? left / 2 / others : 1;
    for (int i = 0; i < all.size(); i++) {
      Stretch was = all.get(i);
      if (was.said() == Said.NOT) {
        double seconds = i == rest ? left - others * scale : was.seconds() * scale;
        Said how = unsaid > 1 ? Said.NOT : said(every);
        all.set(i, new Stretch(was.lamp(), seconds, how));
      }
    }
    return all;
  }

  private static Stretch stretch(Lamp lamp, Optional<Length> length, double typical) {
    return new Stretch(
        lamp,
        length.map(RhythmTimes::middle).orElse(typical),
        length.map(RhythmTimes::said).orElse(Said.NOT));
  }

  private static Said said(Length length) {
    return length.form() == Length.Form.EXACT ? Said.EXACTLY : Said.ABOUT;
  }

  /** The middle of a range; a quarter inside a single border. */
  private static double middle(Length length) {
    return switch (length.form()) {
      case OVER -> length.fromSeconds() * 1.25;
      case UNDER -> length.toSeconds() * 0.75;
      default -> (length.fromSeconds() + length.toSeconds()) / 2;
    };
  }
}

package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Length;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Size;

/** Draws how many blinks each part has, how long they last and how far apart they are. */
final class LightDraw {
  /** A dark that still is one, seconds (chosen). */
  static final double DARK_LEAST_SECONDS = 0.03;

  /** The most blinks of a part said by its rate; a longer run is cut there. */
  static final int MOST_RATED = 100_000;

  /** The least and most of a light of unsaid length, seconds (chosen). */
  static final double LIGHT_LEAST_SECONDS = 0.5;

  static final double LIGHT_MOST_SECONDS = 20;

  /** The widest a blink may be of its spacing where the sheet gives its length. */
  private static final double WIDEST_SHARE = 0.999;

  private static final double COUNT_ROUNDING = 1e-9;

  /** Blinks that come still more seldom than this, in seconds, come as seldom as this. */
  private static final double MOST_SPACING_SECONDS = 1e12;

  /** What is known of a part before unsaid lengths are drawn. */
  private record Sketch(
      int count, Size size, Optional<Amount> length, Optional<Amount> apart, boolean steady) {
    /** Blinks whose length is not said. */
    boolean isOpen(Size open) {
      return !steady && size == open && length.isEmpty();
    }
  }

  private final List<Sketch> sketches = new ArrayList<>();
  private final OptionalDouble sheetBlink;
  private final double cycleSeconds;
  private final double squeeze;
  private final Chance chance;

  /**
   * A way to draw.
   *
   * @param sheetBlink the length of a blink where the parts give none; drawn too if empty
   * @param cycleSeconds the time that the whole cycle has; positive infinity if it was not said
   * @param squeeze 0 to draw from whole ranges, up to 1 for their lower ends alone
   * @param chance where numbers come from
   */
  LightDraw(OptionalDouble sheetBlink, double cycleSeconds, double squeeze, Chance chance) {
    this.sheetBlink = sheetBlink;
    this.cycleSeconds = cycleSeconds;
    this.squeeze = squeeze;
    this.chance = chance;
  }

  /** The parts that are light, with values, in order. */
  List<LaidLight> draw(List<Part> parts) {
    for (Part part : parts) {
      if (part instanceof Part.Blinks blinks) {
        sketches.add(blinks(blinks));
      } else if (part instanceof Part.RatedFor rated) {
        sketches.add(rated(rated));
      } else if (part instanceof Part.Lit lit) {
        Optional<Amount> length = lit.length().map(this::said);
        sketches.add(new Sketch(1, Size.UNSAID, length, Optional.empty(), true));
      }
    }
    Amount shorts = shorts(Size.SHORT);
    Amount unsized = shorts(Size.UNSAID);
    Amount longs = longs(shorts);
    List<LaidLight> lights = new ArrayList<>();
    List<Amount> drawnAparts = new ArrayList<>();
    for (Sketch sketch : sketches) {
      Amount own =
          sketch.steady()
              ? Amount.unsaid(LIGHT_LEAST_SECONDS, LIGHT_MOST_SECONDS, squeeze, chance)
              : switch (sketch.size()) {
                case SHORT -> shorts;
                case LONG -> longs;
                case UNSAID -> unsized;
              };
      Amount length = sketch.length().orElse(own);
      Amount apart =
          sketch.count() == 1
              ? Amount.fixed(0)
              : sketch.apart().orElseGet(() -> apart(sketch.count(), length.value(), drawnAparts));
      lights.add(new LaidLight(sketch.count(), sketch.size(), length, apart, sketch.steady()));
    }
    return lights;
  }

  private Amount said(Length length) {
    return Amount.said(length, DARK_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS, squeeze, chance);
  }

  private Sketch blinks(Part.Blinks blinks) {
    int min = blinks.count().min();
    int max = min + (int) Math.rint((blinks.count().max() - min) * (1 - squeeze));
    int count = min + chance.below(max - min + 1);
    if (blinks.apart().isEmpty()) {
      return new Sketch(
          count, blinks.size(), blinks.of().map(this::blink), Optional.empty(), false);
    }
    Amount apart =
        Amount.said(
            blinks.apart().get(),
            Limits.APART_LEAST_SECONDS,
            Limits.APART_MOST_SECONDS,
            squeeze,
            chance);
    Optional<Amount> of = blinks.of().map(this::blink);
    if (of.isPresent() && !(of.get().value() < apart.value())) {
      fit(of.get(), apart);
    }
    double border = of.isEmpty() ? 0 : (of.get().value() + apart.value()) / 2;
    return new Sketch(
        count,
        blinks.size(),
        of.map(length -> length.between(0, border)),
        Optional.of(apart.between(border, Double.POSITIVE_INFINITY)),
        false);
  }

  private Amount blink(Length length) {
    return Amount.said(
        length, Limits.BLINK_LEAST_SECONDS, Limits.BLINK_MOST_SECONDS, squeeze, chance);
  }

  /** Gives a blink and its spacing values that go together; both were said. */
  private void fit(Amount of, Amount apart) {
    double low = Math.max(apart.least(), of.least());
    if (!(of.least() < apart.most())) {
      // One of the two was said by one border alone, and the other reaches beyond its limit.
      apart.set(apart.isEndless() ? 1.5 * low : apart.value());
      of.set(apart.isEndless() ? low : apart.value() / 2);
      return;
    }
    apart.set(low + (apart.most() - low) * (1 - chance.uniform() / 2));
    double high = Math.min(of.most(), apart.value());
    of.set(of.least() + (high - of.least()) * chance.uniform());
  }

  private Sketch rated(Part.RatedFor rated) {
    double apart = spacing(rated.rate(), squeeze, chance);
    double seconds = said(rated.length()).value();
    double number = Math.ceil(seconds / apart - COUNT_ROUNDING);
    int count = (int) Math.max(1, Math.min(MOST_RATED, number));
    Amount spacing = Amount.fixed(apart);
    return new Sketch(count, Size.UNSAID, Optional.empty(), Optional.of(spacing), false);
  }

  /**
   * From start to start at a rate, which is drawn: numbers evenly in blinks per second, words by
   * their ratio.
   */
  static double spacing(Rate rate, double squeeze, Chance chance) {
    double least = rate.leastPerSecond();
    double most = rate.mostPerSecond();
    double from = least + (most - least) * squeeze;
    double drawn =
        rate.form().inWords() ? chance.logUniform(from, most) : chance.uniform(from, most);
    return Math.min(MOST_SPACING_SECONDS, 1 / Math.min(most, Math.max(least, drawn)));
  }

  /** The most that blinks of a size and unsaid length may last for the sake of their spacing. */
  private double room(Size size, boolean bySheet) {
    double most = Double.POSITIVE_INFINITY;
    for (Sketch sketch : sketches) {
      if (sketch.isOpen(size)) {
        double apart = sketch.apart().map(Amount::value).orElse(cycleSeconds);
        double widest = apart - Math.min(DARK_LEAST_SECONDS, apart / 2);
        most = Math.min(most, bySheet ? WIDEST_SHARE * apart : widest);
      }
    }
    return most;
  }

  private Amount shorts(Size size) {
    double room = room(size, true);
    if (sheetBlink.isPresent() && sheetBlink.getAsDouble() <= room) {
      return Amount.fixed(sheetBlink.getAsDouble());
    }
    double most = Math.min(Limits.BLINK_MOST_SECONDS, room(size, false));
    if (size == Size.SHORT) {
      double longest = Math.min(Limits.BLINK_MOST_SECONDS, room(Size.LONG, false));
      for (Sketch sketch : sketches) {
        if (sketch.size() == Size.LONG) {
          longest = Math.min(longest, sketch.length().map(Amount::value).orElse(longest));
        }
      }
      boolean any = sketches.stream().anyMatch(sketch -> sketch.size() == Size.LONG);
      most = any ? Math.min(most, longest / Limits.LONG_TO_SHORT_LEAST) : most;
    }
    double least = Math.min(Limits.BLINK_LEAST_SECONDS, most / 2);
    return Amount.unsaid(least, most, squeeze, chance);
  }

  private Amount longs(Amount shorts) {
    double longestShort = 0;
    for (Sketch sketch : sketches) {
      if (sketch.size() == Size.SHORT) {
        double length = sketch.length().orElse(shorts).value();
        longestShort = Math.max(longestShort, length);
      }
    }
    double room = room(Size.LONG, false);
    double wanted = Math.max(Limits.BLINK_LEAST_SECONDS, Limits.LONG_TO_SHORT_LEAST * longestShort);
    double least = Math.min(wanted, room);
    double most = Math.min(room, Math.max(Limits.BLINK_MOST_SECONDS, 1.5 * least));
    return Amount.unsaid(least, most, squeeze, chance);
  }

  /** An unsaid spacing: as likely as not that of an earlier one. */
  private Amount apart(int count, double blink, List<Amount> earlier) {
    double least = Math.max(Limits.APART_LEAST_SECONDS, blink + DARK_LEAST_SECONDS);
    if (!earlier.isEmpty() && chance.happens(0.5)) {
      Amount same = earlier.get(chance.below(earlier.size()));
      if (same.value() >= least) {
        return same;
      }
    }
    double share = Math.min(cycleSeconds, Limits.CYCLE_MOST_SECONDS) / count;
    double most = Math.max(least, Math.min(apartMost(least), share));
    Amount drawn = Amount.unsaid(least, most, squeeze, chance);
    earlier.add(drawn);
    return drawn;
  }

  /** The most of an unsaid spacing: the limit, unless a blink is nearly as long. */
  static double apartMost(double least) {
    return least < Limits.APART_MOST_SECONDS ? Limits.APART_MOST_SECONDS : 2 * least;
  }
}

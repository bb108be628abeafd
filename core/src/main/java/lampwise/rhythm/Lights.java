package lampwise.rhythm;

import java.util.ArrayList;
import java.util.List;

/** The lights of some parts in order, each with what follows until the next. */
final class Lights {
  /** What is known of the time that follows a light. */
  enum After {
    /** From its start to the start of the next. */
    START,
    /** From its end to the start of the next. */
    DARK,
    /** An unsaid spacing within a group. */
    WITHIN,
    /** An unsaid pause before a new group. */
    GROUP,
    /** The unsaid pause that closes the cycle. */
    CLOSING,
    /** Nothing: the last light. */
    END
  }

  /** What shines. */
  enum Kind {
    BLINK,
    /** A steady light of unsaid length. */
    STEADY,
    /** Blinks whose number is a range. */
    RUN,
    /** Blinks at a rate for a time, not of one known number. */
    RATED
  }

  /**
   * One light, or several whose number is not known.
   *
   * @param kind what shines
   * @param size its length in words
   * @param on its length
   * @param min the least number of blinks, one except in a run
   * @param max the most
   * @param inner start to start in a run or at a rate
   * @param length how long a rate lasts
   * @param after what is known of what follows
   * @param gap the time that follows
   */
  record Light(
      Kind kind,
      Size size,
      Span on,
      int min,
      int max,
      Span inner,
      Span length,
      After after,
      Span gap) {
    static Light blink(Size size, Span on) {
      return new Light(
          Kind.BLINK, size, on, 1, 1, Span.UNSAID, Span.UNSAID, After.GROUP, Span.UNSAID);
    }

    Light then(After next, Span time) {
      return new Light(kind, size, on, min, max, inner, length, next, time);
    }

    Light lasting(Span known) {
      return new Light(Kind.BLINK, size, known, 1, 1, inner, length, after, gap);
    }

    Light unsized() {
      return new Light(kind, Size.UNSAID, on, min, max, inner, length, after, gap);
    }

    /** A dark after a light of one known length, as a time from start to start. */
    Light fromStart() {
      boolean known = after == After.DARK && gap.isKnown() && on.isPoint() && kind == Kind.BLINK;
      return known ? then(After.START, gap.plus(on)) : this;
    }

    /** Whether nothing about its time is open, except perhaps its own length. */
    boolean isDefinite() {
      return kind == Kind.BLINK
          && after == After.START
          && gap.isPoint()
          && (on.isPoint() || !on.isKnown());
    }

    boolean same(Light other) {
      return kind == other.kind
          && size == other.size
          && min == other.min
          && max == other.max
          && after == other.after
          && on.same(other.on)
          && inner.same(other.inner)
          && length.same(other.length)
          && gap.same(other.gap);
    }
  }

  private final List<Light> lights = new ArrayList<>();
  private Span lead = Span.UNSAID;
  private boolean led;

  /** Whether the last part was light, so that what follows it is still open. */
  private boolean open;

  private Size lastSize = Size.UNSAID;

  Lights(List<Part> parts) {
    for (Part part : parts) {
      add(part);
    }
  }

  List<Light> lights() {
    return lights;
  }

  /** Whether the parts begin dark. */
  boolean isLed() {
    return led;
  }

  /** The dark they begin with. */
  Span lead() {
    return lead;
  }

  /** Whether they end with light. */
  boolean isOpen() {
    return open;
  }

  /** Whether a word of length is all that is known of a light's length. */
  boolean needsSizes() {
    return lights.stream().anyMatch(light -> light.size() != Size.UNSAID && !light.on().isKnown());
  }

  void dropSizes() {
    lights.replaceAll(Light::unsized);
  }

  private void add(Part part) {
    if (part instanceof Part.Unlit unlit) {
      Span dark = Span.of(unlit.length());
      if (lights.isEmpty()) {
        led = true;
        lead = dark;
      } else {
        follow(After.DARK, dark);
      }
      open = false;
      return;
    }
    Size size = part instanceof Part.Blinks blinks ? blinks.size() : Size.UNSAID;
    if (open) {
      boolean oneGroup =
          (size == Size.SHORT && lastSize == Size.LONG)
              || (size == Size.LONG && lastSize == Size.SHORT);
      follow(oneGroup ? After.WITHIN : After.GROUP, Span.UNSAID);
    }
    open = true;
    lastSize = size;
    if (part instanceof Part.Blinks blinks) {
      blinks(blinks);
    } else if (part instanceof Part.RatedFor rated) {
      rated(rated);
    } else {
      Span on = Span.of(((Part.Lit) part).length());
      Light light = Light.blink(Size.UNSAID, on);
      lights.add(on.isKnown() ? light : steady(light));
    }
  }

  private static Light steady(Light l) {
    return new Light(
        Kind.STEADY, l.size(), l.on(), 1, 1, l.inner(), l.length(), l.after(), l.gap());
  }

  /** Says what follows the last light. */
  void follow(After after, Span gap) {
    int last = lights.size() - 1;
    lights.set(last, lights.get(last).then(after, gap));
  }

  private void blinks(Part.Blinks blinks) {
    Span on = Span.of(blinks.of());
    Span apart = Span.of(blinks.apart());
    int min = blinks.count().min();
    int max = blinks.count().max();
    if (min == max) {
      repeat(Light.blink(blinks.size(), on), min, apart);
    } else {
      lights.add(
          new Light(
              Kind.RUN, blinks.size(), on, min, max, apart, Span.UNSAID, After.GROUP, Span.UNSAID));
    }
  }

  private void repeat(Light light, int times, Span apart) {
    After inner = apart.isKnown() ? After.START : After.WITHIN;
    for (int i = 1; i < times; i++) {
      lights.add(light.then(inner, apart));
    }
    lights.add(light);
  }

  private void rated(Part.RatedFor rated) {
    Span spacing = spacing(rated.rate());
    Span length = Span.of(rated.length());
    double number = Math.max(1, Math.ceil(length.from() / spacing.from() - 1e-9));
    if (spacing.isPoint() && length.isPoint() && number <= Count.MOST) {
      repeat(Light.blink(Size.UNSAID, Span.UNSAID), (int) number, spacing);
    } else {
      lights.add(
          new Light(
              Kind.RATED,
              Size.UNSAID,
              Span.UNSAID,
              1,
              1,
              spacing,
              length,
              After.GROUP,
              Span.UNSAID));
    }
  }

  /** From start to start at a rate. */
  static Span spacing(Rate rate) {
    return new Span(1 / rate.mostPerSecond(), 1 / rate.leastPerSecond());
  }
}

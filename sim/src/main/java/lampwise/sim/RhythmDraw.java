package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/**
 * Draws a rhythm until all that was said and all limits hold: first freely, then nearer and nearer
 * to the least values; then the same without the rule that pauses are longer than what is inside
 * them; then without the sheet's length of a blink, too; and where a phrase contradicts itself, it
 * takes the last draw as it is.
 */
final class RhythmDraw {
  private static final int TRIES = 20;

  /** What gives way, one thing after the other, where not all can be had. */
  private enum Round {
    ALL(true, true, false),
    LEAST(true, true, true),
    ANY_PAUSE(false, true, false),
    LEAST_AND_ANY_PAUSE(false, true, true),
    ANY_BLINK(false, false, false),
    LEAST_AND_ANY_BLINK(false, false, true);

    private final boolean strict;
    private final boolean bySheet;
    private final boolean squeezed;

    Round(boolean strict, boolean bySheet, boolean squeezed) {
      this.strict = strict;
      this.bySheet = bySheet;
      this.squeezed = squeezed;
    }
  }

  /** The most of what is unsaid in a prelude, seconds (chosen). */
  private static final double PRELUDE_PAUSES_SECONDS = 10;

  private final List<Part> prelude;
  private final List<Part> parts;
  private final Ending ending;

  /** From start to start of single blinks at a rate; NaN for other cycles. */
  private final double spacing;

  private final OptionalDouble sheetBlink;
  private final Chance chance;

  private RhythmDraw(
      List<Part> prelude,
      List<Part> parts,
      Ending ending,
      double spacing,
      OptionalDouble sheetBlink,
      Chance chance) {
    this.prelude = prelude;
    this.parts = parts;
    this.ending = ending;
    this.spacing = spacing;
    this.sheetBlink = sheetBlink;
    this.chance = chance;
  }

  static DrawnRhythm of(Rhythm rhythm, OptionalDouble sheetBlink, Chance chance) {
    if (rhythm instanceof Rhythm.Blinking blinking) {
      return blinking(blinking, sheetBlink, chance);
    }
    return forever(List.of(), 0, rhythm instanceof Rhythm.Steady);
  }

  /** A lamp that in the end stays as it is. */
  private static DrawnRhythm forever(
      List<DrawnRhythm.Pulse> prelude, double preludeSeconds, boolean lit) {
    List<DrawnRhythm.Pulse> cycle =
        lit ? List.of(new DrawnRhythm.Pulse(0, Double.POSITIVE_INFINITY)) : List.of();
    return new DrawnRhythm(prelude, preludeSeconds, cycle, Double.POSITIVE_INFINITY, true);
  }

  private static DrawnRhythm blinking(
      Rhythm.Blinking rhythm, OptionalDouble sheetBlink, Chance chance) {
    List<Part> prelude = rhythm.prelude();
    if (rhythm.cycle() instanceof Cycle.Rated rated) {
      // Single blinks at a rate are one blink and the time to the next.
      Part blink = new Part.Blinks(Count.of(1), Size.UNSAID, Optional.empty(), Optional.empty());
      double spacing = LightDraw.spacing(rated.rate(), 0, chance);
      Ending ending = new Ending.Repeating();
      return new RhythmDraw(prelude, List.of(blink), ending, spacing, sheetBlink, chance).draw();
    }
    Cycle.Parts cycle = (Cycle.Parts) rhythm.cycle();
    return new RhythmDraw(prelude, cycle.parts(), cycle.ending(), Double.NaN, sheetBlink, chance)
        .draw();
  }

  private DrawnRhythm draw() {
    Optional<DrawnRhythm> drawn = Optional.empty();
    for (Round round : Round.values()) {
      for (int i = 1; i <= TRIES && drawn.isEmpty(); i++) {
        drawn = attempt(round, round.squeezed ? (double) i / TRIES : 0);
      }
    }
    return drawn.orElseGet(this::forced);
  }

  private Optional<DrawnRhythm> attempt(Round round, double squeeze) {
    Rows rows = rows(squeeze, round.bySheet ? sheetBlink : OptionalDouble.empty());
    boolean holds = fill(rows, round.strict, squeeze);
    return holds ? Optional.of(laid(rows)) : Optional.empty();
  }

  private DrawnRhythm forced() {
    Rows rows = rows(1, sheetBlink);
    fill(rows, false, 1);
    rows.prelude().lights().forEach(LaidLight::mend);
    rows.cycle().lights().forEach(LaidLight::mend);
    return laid(rows);
  }

  /** Prelude and cycle, and the time of the cycle where it was said. */
  private record Rows(LightRow prelude, LightRow cycle, Optional<Amount> every) {}

  private Rows rows(double squeeze, OptionalDouble blink) {
    List<Part> all = new ArrayList<>(prelude);
    all.addAll(parts);
    Optional<Amount> every = every(squeeze);
    double cycleSeconds = every.map(Amount::value).orElse(Double.POSITIVE_INFINITY);
    List<LaidLight> lights = new LightDraw(blink, cycleSeconds, squeeze, chance).draw(all);
    int before = (int) prelude.stream().filter(part -> !(part instanceof Part.Unlit)).count();
    LightRow first = row(prelude, lights.subList(0, before), squeeze, LightRow.Kind.GROUP);
    LightRow second =
        row(parts, lights.subList(before, lights.size()), squeeze, LightRow.Kind.CLOSING);
    if (ending instanceof Ending.Once) {
      second = second.withTail(LightRow.Dark.none());
    } else if (second.lead().kind() == LightRow.Kind.NONE
        && second.tail().kind() == LightRow.Kind.NONE) {
      second = second.withTail(LightRow.Dark.open(LightRow.Kind.CLOSING));
    }
    if (!first.lights().isEmpty()
        && first.tail().kind() == LightRow.Kind.NONE
        && second.lead().kind() == LightRow.Kind.NONE
        && !second.lights().isEmpty()) {
      LaidLight last = first.lights().get(first.lights().size() - 1);
      first = first.withTail(between(last, second.lights().get(0), squeeze));
    }
    return new Rows(first, second, every);
  }

  /** The time that {@code every} gives; a squeezed draw takes it longer, not shorter. */
  private Optional<Amount> every(double squeeze) {
    if (!Double.isNaN(spacing)) {
      return Optional.of(Amount.fixed(spacing));
    }
    if (!(ending instanceof Ending.Every every)) {
      return Optional.empty();
    }
    Amount cycle =
        Amount.said(
            every.cycle(), Limits.APART_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS, 0, chance);
    cycle.approach(cycle.most(), squeeze);
    return Optional.of(cycle);
  }

  private LightRow row(
      List<Part> parts, List<LaidLight> lights, double squeeze, LightRow.Kind outside) {
    List<LightRow.Dark> darks = new ArrayList<>();
    Optional<LightRow.Dark> dark = Optional.empty();
    int next = 0;
    for (Part part : parts) {
      if (part instanceof Part.Unlit unlit) {
        boolean inside = next > 0 && next < lights.size();
        dark = Optional.of(dark(unlit, inside ? LightRow.Kind.GROUP : outside, squeeze));
        continue;
      }
      LightRow.Dark unsaid =
          next == 0
              ? LightRow.Dark.none()
              : between(lights.get(next - 1), lights.get(next), squeeze);
      darks.add(dark.orElse(unsaid));
      dark = Optional.empty();
      next++;
    }
    darks.add(dark.orElse(LightRow.Dark.none()));
    return new LightRow(lights, darks);
  }

  private LightRow.Dark dark(Part.Unlit unlit, LightRow.Kind kind, double squeeze) {
    return unlit
        .length()
        .map(
            length ->
                new LightRow.Dark(
                    LightRow.Kind.SET,
                    Amount.said(
                        length,
                        LightDraw.DARK_LEAST_SECONDS,
                        Limits.CYCLE_MOST_SECONDS,
                        squeeze,
                        chance)))
        .orElse(LightRow.Dark.open(kind));
  }

  /** What lies between two lights of which nothing is said: a pause, or a spacing in one group. */
  private LightRow.Dark between(LaidLight last, LaidLight next, double squeeze) {
    boolean oneGroup =
        (last.size() == Size.LONG && next.size() == Size.SHORT)
            || (last.size() == Size.SHORT && next.size() == Size.LONG);
    if (!oneGroup) {
      return LightRow.Dark.open(LightRow.Kind.GROUP);
    }
    double blink = last.length().value();
    double least = Math.max(Limits.APART_LEAST_SECONDS, blink + LightDraw.DARK_LEAST_SECONDS);
    double most = LightDraw.apartMost(least);
    Amount dark = Amount.unsaid(least - blink, most - blink, squeeze, chance);
    dark.set(Amount.unsaid(least, most, squeeze, chance).value() - blink);
    return new LightRow.Dark(LightRow.Kind.SET, dark);
  }

  private boolean fill(Rows rows, boolean strict, double squeeze) {
    LightRow cycle = rows.cycle();
    double inner = cycle.largestSpacing();
    double before = Math.max(inner, rows.prelude().largestSpacing());
    // A prelude is over before one loses patience: its pauses together take no longer than this.
    double most = rows.prelude().setSeconds() + PRELUDE_PAUSES_SECONDS;
    boolean starts = new CycleFill(rows.prelude(), before, strict, squeeze, chance).freely(most);
    CycleFill fill = new CycleFill(cycle, inner, strict, squeeze, chance);
    boolean goesOn =
        (cycle.lights().isEmpty() || rows.every().isEmpty())
            ? fill.freely(Limits.CYCLE_MOST_SECONDS)
            : fill.within(rows.every().get());
    return starts && goesOn && rows.prelude().isSound() && cycle.isSound();
  }

  private DrawnRhythm laid(Rows rows) {
    List<DrawnRhythm.Pulse> before = new ArrayList<>();
    double preludeSeconds = rows.prelude().lay(0, before);
    if (parts.size() == 1 && isEndless(parts.get(0))) {
      return forever(before, preludeSeconds, parts.get(0) instanceof Part.Lit);
    }
    List<DrawnRhythm.Pulse> cycle = new ArrayList<>();
    double time = rows.cycle().lay(0, cycle);
    if (ending instanceof Ending.Once) {
      return once(before, preludeSeconds, cycle, time);
    }
    double seconds = rows.every().map(Amount::value).orElse(time);
    boolean fits = time <= seconds * (1 + CycleFill.ROUNDING) && trim(cycle, seconds);
    return new DrawnRhythm(before, preludeSeconds, cycle, fits ? seconds : time, true);
  }

  private boolean isEndless(Part part) {
    boolean open =
        (part instanceof Part.Lit lit && lit.length().isEmpty())
            || (part instanceof Part.Unlit unlit && unlit.length().isEmpty());
    return open && ending instanceof Ending.Repeating;
  }

  /** From the first to the last light. */
  private static DrawnRhythm once(
      List<DrawnRhythm.Pulse> before,
      double preludeSeconds,
      List<DrawnRhythm.Pulse> cycle,
      double seconds) {
    if (!before.isEmpty()) {
      double lead = before.get(0).onSeconds();
      return new DrawnRhythm(earlier(before, lead), preludeSeconds - lead, cycle, seconds, false);
    }
    List<DrawnRhythm.Pulse> led = earlier(cycle, cycle.get(0).onSeconds());
    DrawnRhythm.Pulse last = led.get(led.size() - 1);
    return new DrawnRhythm(List.of(), 0, led, last.onSeconds() + last.lengthSeconds(), false);
  }

  private static List<DrawnRhythm.Pulse> earlier(List<DrawnRhythm.Pulse> pulses, double seconds) {
    return pulses.stream()
        .map(p -> new DrawnRhythm.Pulse(p.onSeconds() - seconds, p.lengthSeconds()))
        .toList();
  }

  /**
   * Takes from the last pulse what rounding lets stand out of the cycle; false if that is most of
   * it.
   */
  private static boolean trim(List<DrawnRhythm.Pulse> pulses, double cycleSeconds) {
    int last = pulses.size() - 1;
    DrawnRhythm.Pulse pulse = pulses.get(last);
    double room = cycleSeconds - pulse.onSeconds();
    if (pulse.lengthSeconds() > room) {
      if (2 * room < pulse.lengthSeconds()) {
        return false;
      }
      pulses.set(last, new DrawnRhythm.Pulse(pulse.onSeconds(), room));
    }
    return true;
  }
}

package lampwise.sim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import lampwise.light.Blink;
import lampwise.light.Window;

/** How a person turns blinks into marks, with the errors of a person. */
final class Noting {
  /** Nobody holds for less. */
  private static final double LEAST_HELD = 0.05;

  private static final double LAPSE_LEAST = 0.5;
  private static final double LAPSE_FURTHER = 0.3;
  private static final double AGAIN_LEAST = 0.06;
  private static final double AGAIN_MOST = 0.2;

  private final Map<String, Double> settings;
  private final List<Blink> blinks;
  private final Window window;
  private final Chance chance;
  private final double rounding;

  Noting(Map<String, Double> settings, Shown shown, Chance chance) {
    this.settings = settings;
    this.blinks = shown.blinks();
    this.window = shown.scene().window();
    this.chance = chance;
    this.rounding = PersonSetting.ROUNDING_S.in(settings);
  }

  private enum Kind {
    /** The lamp was on when the watching began. */
    ALREADY,
    /** A blink of the lamp. */
    BLINK,
    /** The second mark of a double tap. */
    AGAIN,
    /** A mark without any blink. */
    STRAY
  }

  /**
   * A mark.
   *
   * @param seconds when it was made
   * @param noted what was noted: the same, rounded
   * @param kind why
   * @param blink the number of its blink; -1 for a stray
   */
  private record Mark(double seconds, double noted, Kind kind, int blink) {}

  /**
   * The marks of a lamp.
   *
   * @param ends whether ends are noted too
   */
  Noted note(boolean ends) {
    List<Mark> marks = followed(meant());
    addDoubles(marks);
    addStrays(marks);
    if (ends && !blinks.isEmpty() && blinks.get(0).onSeconds() < window.fromSeconds()) {
      marks.add(new Mark(window.fromSeconds(), window.fromSeconds(), Kind.ALREADY, 0));
    }
    boolean[] made = new boolean[blinks.size()];
    List<Mark> kept = apart(marks, made);
    List<Double> added = new ArrayList<>();
    for (Mark mark : kept) {
      if (mark.kind() == Kind.STRAY || mark.kind() == Kind.AGAIN) {
        added.add(mark.noted());
      }
    }
    List<Blink> noted =
        ends ? held(kept) : kept.stream().map(mark -> Blink.startingAt(mark.noted())).toList();
    return new Noted(noted, missed(made), added);
  }

  /** A mark for each blink that is not missed, in the order of the blinks. */
  private List<Mark> meant() {
    double deviation = PersonSetting.TIMING_SD_S.in(settings);
    double late = PersonSetting.FIRST_LATE_S.in(settings);
    double gap = PersonSetting.SLOWEST_BURST_GAP_S.in(settings);
    double missed = PersonSetting.MISSED.in(settings);
    double lapse = PersonSetting.LAPSE.in(settings);
    Chance timing = chance.branch("timing");
    Chance missing = chance.branch("missed");
    Chance lapsing = chance.branch("lapse");
    List<Mark> meant = new ArrayList<>(blinks.size());
    double dark = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < blinks.size(); i++) {
      double on = blinks.get(i).onSeconds();
      boolean first = on - dark > gap;
      dark = end(blinks.get(i));
      if (!window.contains(on)) {
        continue;
      }
      double at = on + (first ? late : 0) + (deviation > 0 ? deviation * timing.normal() : 0);
      if (lapse > 0) {
        boolean lapsed = lapsing.happens(lapse);
        double further = LAPSE_LEAST + lapsing.waiting(1 / LAPSE_FURTHER);
        at += lapsed ? further : 0;
      }
      if (!(missed > 0 && missing.happens(missed))) {
        add(meant, at, Kind.BLINK, i);
      }
    }
    return meant;
  }

  /** When a blink ends; one whose end is not known ends as it begins. */
  private static double end(Blink blink) {
    return blink.hasOff() ? blink.offSeconds() : blink.onSeconds();
  }

  /** Adds a mark, unless it lies outside the window. */
  private void add(List<Mark> marks, double seconds, Kind kind, int blink) {
    double noted = rounded(seconds);
    if (window.contains(seconds) && window.contains(noted)) {
      marks.add(new Mark(seconds, noted, kind, blink));
    }
  }

  /** The marks that a person is quick enough for, in order of time. */
  private List<Mark> followed(List<Mark> meant) {
    meant.sort(Comparator.comparingDouble(Mark::seconds));
    double fastest = PersonSetting.FASTEST_TAPS_PER_S.in(settings);
    if (!(fastest > 0)) {
      return meant;
    }
    List<Mark> followed = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (Mark mark : meant) {
      if (mark.seconds() - last >= 1 / fastest) {
        followed.add(mark);
        last = mark.seconds();
      }
    }
    return followed;
  }

  private void addDoubles(List<Mark> marks) {
    double twice = PersonSetting.DOUBLE_TAP.in(settings);
    if (!(twice > 0)) {
      return;
    }
    Chance again = chance.branch("double-tap");
    for (Mark mark : List.copyOf(marks)) {
      // A source for each blink: whether another was missed changes nothing.
      Chance own = again.branch(mark.blink());
      if (own.happens(twice)) {
        double at = mark.seconds() + own.uniform(AGAIN_LEAST, AGAIN_MOST);
        add(marks, at, Kind.AGAIN, mark.blink());
      }
    }
  }

  private void addStrays(List<Mark> marks) {
    double perSecond = PersonSetting.STRAYS_PER_MINUTE.in(settings) / 60;
    if (!(perSecond > 0)) {
      return;
    }
    Chance straying = chance.branch("strays");
    double at = window.fromSeconds() + straying.waiting(perSecond);
    while (at <= window.toSeconds()) {
      add(marks, at, Kind.STRAY, -1);
      at += straying.waiting(perSecond);
    }
  }

  /** The marks that are far enough from the one before, in order; notes which blinks have one. */
  private List<Mark> apart(List<Mark> marks, boolean[] made) {
    double least = PersonSetting.TAPS_APART_S.in(settings);
    // Of marks at the same moment, that of the lamp comes first.
    marks.sort(Comparator.comparingDouble(Mark::seconds).thenComparing(Mark::kind));
    List<Mark> kept = new ArrayList<>(marks.size());
    double seconds = Double.NEGATIVE_INFINITY;
    double noted = Double.NEGATIVE_INFINITY;
    for (Mark mark : marks) {
      boolean alone = mark.kind() == Kind.AGAIN && !made[mark.blink()];
      if (alone || !(mark.seconds() - seconds >= least) || !(mark.noted() > noted)) {
        continue;
      }
      kept.add(mark);
      seconds = mark.seconds();
      noted = mark.noted();
      if (mark.kind() == Kind.BLINK) {
        made[mark.blink()] = true;
      }
    }
    return kept;
  }

  private List<Blink> missed(boolean[] made) {
    List<Blink> missed = new ArrayList<>();
    for (int i = 0; i < made.length; i++) {
      if (!made[i] && window.contains(blinks.get(i).onSeconds())) {
        missed.add(blinks.get(i));
      }
    }
    return missed;
  }

  /** The marks with their ends: each after its start, none after the next start. */
  private List<Blink> held(List<Mark> marks) {
    Chance releasing = chance.branch("release");
    List<Blink> held = new ArrayList<>(marks.size());
    for (int i = 0; i < marks.size(); i++) {
      Mark mark = marks.get(i);
      boolean lit = mark.kind() == Kind.BLINK || mark.kind() == Kind.ALREADY;
      Chance own = releasing.branch(lit ? mark.blink() : Double.doubleToLongBits(mark.seconds()));
      double released = Math.max(mark.seconds() + LEAST_HELD, released(mark, own));
      double start = mark.noted();
      double off = rounded(released);
      if (!(off > start)) {
        off = rounded(start + rounding);
      }
      double limit = i + 1 < marks.size() ? marks.get(i + 1).noted() : window.toSeconds();
      off = Math.min(off, limit);
      held.add(off > start ? new Blink(start, off) : Blink.startingAt(start));
    }
    return held;
  }

  private double released(Mark mark, Chance own) {
    if (mark.kind() == Kind.STRAY || mark.kind() == Kind.AGAIN) {
      return mark.seconds() + own.uniform(LEAST_HELD, AGAIN_MOST);
    }
    double end = end(blinks.get(mark.blink()));
    if (!(end < window.toSeconds())) {
      return window.toSeconds();
    }
    double deviation = PersonSetting.TIMING_SD_S.in(settings);
    double further = PersonSetting.RELEASE_SD_S.in(settings);
    return end
        + PersonSetting.RELEASE_LATE_S.in(settings)
        + Math.sqrt(deviation * deviation + further * further) * own.normal();
  }

  /** The nearest multiple of the rounding, half to even, as the double next to its decimal. */
  private double rounded(double seconds) {
    if (!(rounding > 0)) {
      return seconds;
    }
    double perSecond = Math.rint(1 / rounding);
    double value =
        Math.abs(perSecond * rounding - 1) < 1e-9
            ? Math.rint(seconds * perSecond) / perSecond
            : Math.rint(Math.rint(seconds / rounding) * rounding * 1e9) / 1e9;
    return value + 0.0;
  }
}

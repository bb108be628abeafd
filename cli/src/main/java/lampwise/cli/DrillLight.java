package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.sheet.LampState;
import lampwise.sim.DrawnRhythm;
import lampwise.sim.DrawnRhythm.Pulse;

/**
 * What a lamp shows in one state of one unit: every time has a value and is true, not printed.
 *
 * @param state the state
 * @param rhythm the times, on the unit's own clock
 * @param phaseSeconds where in its cycle it is at time 0 if it runs on by itself
 * @param delaySeconds how long after what it follows it begins
 */
record DrillLight(LampState state, DrawnRhythm rhythm, double phaseSeconds, double delaySeconds) {
  /** More flashes in any one second need a warning: WCAG 2.2, success criterion 2.3.1. */
  static final int MOST_FLASHES = 3;

  private static final double ROUNDING = 1e-9;

  /** The rhythm on a clock that runs slow by a ratio. */
  static DrawnRhythm onClock(DrawnRhythm printed, double ratio) {
    return new DrawnRhythm(
        times(printed.prelude(), ratio),
        printed.preludeSeconds() * ratio,
        times(printed.cycle(), ratio),
        printed.cycleSeconds() * ratio,
        printed.repeats());
  }

  private static List<Pulse> times(List<Pulse> pulses, double ratio) {
    return pulses.stream()
        .map(pulse -> new Pulse(pulse.onSeconds() * ratio, pulse.lengthSeconds() * ratio))
        .toList();
  }

  /** Whether the lamp is never on. */
  boolean isDark() {
    return rhythm.prelude().isEmpty() && rhythm.cycle().isEmpty();
  }

  /** Whether the lamp goes on by itself once it has begun. */
  boolean goesOn() {
    return rhythm.repeats();
  }

  /** From its beginning to the end of its last blink, where it is shown once. */
  double onceSeconds() {
    double end = 0;
    for (Pulse pulse : rhythm.prelude()) {
      end = Math.max(end, pulse.onSeconds() + pulse.lengthSeconds());
    }
    for (Pulse pulse : rhythm.cycle()) {
      end = Math.max(end, rhythm.preludeSeconds() + pulse.onSeconds() + pulse.lengthSeconds());
    }
    return end;
  }

  /**
   * The light between two moments of a lamp that has long been running, cut at both.
   *
   * @param fromSeconds the first moment
   * @param toSeconds the second
   */
  List<Blink> running(double fromSeconds, double toSeconds) {
    List<Blink> blinks = new ArrayList<>();
    double cycle = rhythm.cycleSeconds();
    if (Double.isInfinite(cycle)) {
      boolean on = rhythm.cycle().stream().anyMatch(p -> Double.isInfinite(p.lengthSeconds()));
      add(blinks, on ? fromSeconds : toSeconds, toSeconds, fromSeconds, toSeconds);
      return blinks;
    }
    double first = Math.floor((fromSeconds + phaseSeconds) / cycle) - 1;
    cycles(blinks, first * cycle - phaseSeconds, fromSeconds, toSeconds);
    return blinks;
  }

  /**
   * The light between two moments of a lamp that begins its prelude, or cycle, at a third.
   *
   * @param startSeconds when it begins
   * @param fromSeconds the first moment
   * @param toSeconds the second
   */
  List<Blink> started(double startSeconds, double fromSeconds, double toSeconds) {
    List<Blink> blinks = new ArrayList<>();
    pulses(blinks, rhythm.prelude(), startSeconds, fromSeconds, toSeconds);
    cycles(blinks, startSeconds + rhythm.preludeSeconds(), fromSeconds, toSeconds);
    return blinks;
  }

  private void cycles(List<Blink> blinks, double start, double from, double to) {
    double at = start;
    do {
      pulses(blinks, rhythm.cycle(), at, from, to);
      at += rhythm.cycleSeconds();
    } while (rhythm.repeats() && !rhythm.cycle().isEmpty() && at < to);
  }

  private static void pulses(
      List<Blink> blinks, List<Pulse> pulses, double start, double from, double to) {
    for (Pulse pulse : pulses) {
      double on = start + pulse.onSeconds();
      add(blinks, on, on + pulse.lengthSeconds(), from, to);
    }
  }

  private static void add(List<Blink> blinks, double on, double off, double from, double to) {
    if (Math.min(off, to) > Math.max(on, from)) {
      blinks.add(new Blink(Math.max(on, from), Math.min(off, to)));
    }
  }

  /** Whether it flashes more than three times in some one second. */
  boolean isFast() {
    List<Blink> blinks = started(0, 0, rhythm.preludeSeconds() + 90);
    for (int i = MOST_FLASHES; i < blinks.size(); i++) {
      if (blinks.get(i).onSeconds() - blinks.get(i - MOST_FLASHES).onSeconds() < 1 - ROUNDING) {
        return true;
      }
    }
    return false;
  }
}

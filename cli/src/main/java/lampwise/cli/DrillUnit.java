package lampwise.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;

/**
 * The unit of one case, and what its lamp does when something is done to the unit. A unit whose
 * state is seen always shows nothing else. Any other unit is in order: it shows what the sheet has
 * for an idle unit, and after a hand, the power or the button what the sheet has for those, the
 * latest thing done first. The page's script ({@code drill-light.js}) does the same.
 *
 * @param lights what it can show, the state that is asked for first; no two are seen at the same
 *     time
 * @param clock the ratio of a true duration to the printed one
 */
record DrillUnit(List<DrillLight> lights, double clock) {
  private static final double DELAY_LEAST = 0.1;
  private static final double DELAY_MOST = 1.5;

  /** What a press of the button leads to, the first that the unit has; flushing before the rest. */
  private static final List<Seen> OF_BUTTON =
      List.of(Seen.WHILE_RUNNING, Seen.AFTER_FLUSH, Seen.AFTER_BUTTON);

  /** A stretch in which nothing is done: what is shown, and since when; NaN if it runs on. */
  private record Stretch(double fromSeconds, Optional<DrillLight> light, double startSeconds) {}

  DrillUnit {
    lights = List.copyOf(lights);
  }

  /**
   * Draws a unit in a state.
   *
   * @param tolerance how far its clock may be off
   */
  static DrillUnit drawn(CodeSheet sheet, LampState state, double tolerance, Chance chance) {
    double clock = chance.uniform(1 - tolerance, 1 + tolerance);
    double delay = chance.uniform(DELAY_LEAST, DELAY_MOST);
    List<DrillLight> lights = new ArrayList<>();
    for (LampState shown : shownBy(sheet, state)) {
      Chance own = chance.branch(shown.name());
      DrawnRhythm rhythm =
          DrillLight.onClock(
              DrawnRhythm.of(shown.rhythm(), sheet.blinkSeconds(), own.branch("rhythm")), clock);
      double cycle = rhythm.cycleSeconds();
      double phase = Double.isInfinite(cycle) ? 0 : own.uniform(0, cycle);
      lights.add(new DrillLight(shown, rhythm, phase, delay));
    }
    return new DrillUnit(lights, clock);
  }

  /** The states that a unit shows which can be in a state: that one first. */
  static List<LampState> shownBy(CodeSheet sheet, LampState state) {
    List<LampState> shown = new ArrayList<>(List.of(state));
    if (state.seen() == Seen.ALWAYS) {
      return shown;
    }
    for (Seen seen : Seen.values()) {
      if (seen != Seen.ALWAYS && seen != Seen.SET_UP && seen != state.seen()) {
        sheet.states().stream()
            .filter(other -> other.seen() == seen)
            .max(Comparator.comparingDouble(LampState::weight))
            .ifPresent(shown::add);
      }
    }
    return shown;
  }

  /** The state that is asked for. */
  DrillLight asked() {
    return lights.get(0);
  }

  /** What it shows at such times, if anything. */
  Optional<DrillLight> light(Seen seen) {
    return lights.stream().filter(light -> light.state().seen() == seen).findFirst();
  }

  /**
   * When the lamp is on.
   *
   * @param acts what is done, in order of time
   * @param fromSeconds where to begin, not after the first act
   * @param toSeconds where to end
   * @return the blinks, cut at both ends
   */
  List<Blink> blinks(List<DrillAct> acts, double fromSeconds, double toSeconds) {
    List<Blink> blinks = new ArrayList<>();
    List<Stretch> stretches = stretches(acts);
    for (int i = 0; i < stretches.size(); i++) {
      Stretch stretch = stretches.get(i);
      double from = Math.max(fromSeconds, stretch.fromSeconds());
      double end = i + 1 < stretches.size() ? stretches.get(i + 1).fromSeconds() : toSeconds;
      double to = Math.min(toSeconds, end);
      if (stretch.light().isPresent() && to > from) {
        DrillLight light = stretch.light().get();
        blinks.addAll(
            Double.isNaN(stretch.startSeconds())
                ? light.running(from, to)
                : light.started(stretch.startSeconds(), from, to));
      }
    }
    return blinks;
  }

  /**
   * The states that the unit is in while something is done to it: the one that is asked for, unless
   * it shows the light of another.
   */
  List<Act> acts(List<DrillAct> acts) {
    List<Act> states = new ArrayList<>(List.of(Act.of(asked().state())));
    for (Stretch stretch : stretches(acts)) {
      LampState state = stretch.light().filter(light -> !light.isDark()).orElse(asked()).state();
      boolean changes = !state.name().equals(states.get(states.size() - 1).state());
      if (changes && stretch.fromSeconds() > Double.NEGATIVE_INFINITY) {
        states.add(Act.of(state).from(stretch.fromSeconds()));
      }
    }
    return states;
  }

  private List<Stretch> stretches(List<DrillAct> acts) {
    List<Stretch> stretches = new ArrayList<>();
    boolean hand = false;
    boolean power = true;
    stretches.add(at(Double.NEGATIVE_INFINITY, byItself(false, true)));
    for (DrillAct act : acts) {
      switch (act.kind()) {
        case HAND_IN -> hand = true;
        case HAND_OUT -> hand = false;
        case POWER_OFF -> power = false;
        case POWER_ON -> power = true;
        case BUTTON -> {}
      }
      Optional<DrillLight> next = power ? following(act.kind(), hand) : Optional.empty();
      double now = act.atSeconds();
      // A later act undoes what an earlier one still had before it.
      stretches.removeIf(stretch -> stretch.fromSeconds() >= now);
      if (next.isPresent()) {
        DrillLight light = next.get();
        double start = now + light.delaySeconds();
        stretches.add(new Stretch(now, Optional.of(light), start));
        if (!light.goesOn()) {
          stretches.add(at(start + light.onceSeconds(), byItself(hand, true)));
        }
      } else {
        stretches.add(at(now, byItself(hand, power)));
      }
    }
    return stretches;
  }

  private static Stretch at(double fromSeconds, Optional<DrillLight> light) {
    return new Stretch(fromSeconds, light, Double.NaN);
  }

  /** What the lamp shows without anything done to the unit. */
  private Optional<DrillLight> byItself(boolean hand, boolean power) {
    Optional<DrillLight> light = light(Seen.ALWAYS).or(() -> light(hand ? Seen.TARGET : Seen.IDLE));
    return light.filter(shown -> power && shown.goesOn());
  }

  /** What is shown anew because something was done. */
  private Optional<DrillLight> following(DrillAct.Kind kind, boolean hand) {
    Optional<DrillLight> own =
        switch (kind) {
          case HAND_IN -> light(Seen.TARGET);
          case HAND_OUT -> light(Seen.AFTER_TARGET);
          case POWER_ON -> light(Seen.AFTER_POWER_UP);
          case BUTTON -> ofButton();
          case POWER_OFF -> Optional.empty();
        };
    // What is shown once and at any time, or to nobody, is shown again whatever was done.
    return own.or(
        () ->
            light(Seen.ALWAYS)
                .or(() -> hand ? Optional.empty() : light(Seen.IDLE))
                .filter(light -> !light.goesOn()));
  }

  private Optional<DrillLight> ofButton() {
    Seen asked = asked().state().seen();
    if (asked == Seen.SET_UP || OF_BUTTON.contains(asked)) {
      return Optional.of(asked());
    }
    return OF_BUTTON.stream().flatMap(seen -> light(seen).stream()).findFirst();
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.TargetSpan;

/**
 * Somebody's watch of a unit: what they did, and for how long they looked.
 *
 * @param unit the unit
 * @param acts what was done to it, in order of time
 * @param seconds how long it was watched
 */
record DrillWatch(DrillUnit unit, List<DrillAct> acts, double seconds) {
  private static final double BEFORE_ACT = 3;
  private static final double POWER_OFF = 3;
  private static final double LEAST_HAND = 5;
  private static final double AFTER = 2;
  private static final double STEP = 5;

  DrillWatch {
    acts = List.copyOf(acts);
  }

  /** A watch that is long enough, with what has to be done. */
  static DrillWatch enough(DrillCase one) {
    DrillNeed need = one.need();
    List<DrillAct> acts = new ArrayList<>();
    double end = need.restSeconds();
    if (!need.tells().isEmpty()) {
      double at = Math.max(BEFORE_ACT, need.restSeconds());
      double watched = Math.max(LEAST_HAND, need.afterSeconds());
      end = at + watched;
      switch (need.tells().get(0)) {
        case HAND_IN -> {
          acts.add(new DrillAct(DrillAct.Kind.HAND_IN, at));
          acts.add(new DrillAct(DrillAct.Kind.HAND_OUT, at + watched));
        }
        case HAND_OUT -> {
          acts.add(new DrillAct(DrillAct.Kind.HAND_IN, at));
          acts.add(new DrillAct(DrillAct.Kind.HAND_OUT, at + LEAST_HAND));
          end += LEAST_HAND;
        }
        case POWER_OFF, POWER_ON -> {
          acts.add(new DrillAct(DrillAct.Kind.POWER_OFF, at));
          acts.add(new DrillAct(DrillAct.Kind.POWER_ON, at + POWER_OFF));
          end += POWER_OFF;
        }
        case BUTTON -> acts.add(new DrillAct(DrillAct.Kind.BUTTON, at));
      }
    }
    return new DrillWatch(one.unit(), acts, rounded(end + AFTER));
  }

  /** A watch of the same unit with nothing done to it. */
  DrillWatch onlyWatched(double seconds) {
    return new DrillWatch(unit, List.of(), seconds);
  }

  private static double rounded(double seconds) {
    return Math.ceil(seconds / STEP) * STEP;
  }

  /** When the lamp was on. */
  List<Blink> blinks() {
    return unit.blinks(acts, 0, seconds);
  }

  /** When a hand was there. */
  List<TargetSpan> hands() {
    return spans(DrillAct.Kind.HAND_IN, DrillAct.Kind.HAND_OUT).stream()
        .map(span -> new TargetSpan(span[0], span[1]))
        .toList();
  }

  /** When there was no power. */
  List<double[]> offs() {
    return spans(DrillAct.Kind.POWER_OFF, DrillAct.Kind.POWER_ON);
  }

  private List<double[]> spans(DrillAct.Kind begin, DrillAct.Kind end) {
    List<double[]> spans = new ArrayList<>();
    for (DrillAct act : acts) {
      if (act.kind() == begin) {
        spans.add(new double[] {act.atSeconds(), seconds});
      } else if (act.kind() == end && !spans.isEmpty()) {
        spans.get(spans.size() - 1)[1] = act.atSeconds();
      }
    }
    return spans;
  }

  /** What happened besides, as a recording's marks; the button makes the unit flush too. */
  List<Event> events() {
    List<Event> events = new ArrayList<>();
    for (DrillAct act : acts) {
      if (act.kind() == DrillAct.Kind.POWER_ON) {
        events.add(new Event(Event.Kind.POWER_UP, act.atSeconds()));
      } else if (act.kind() == DrillAct.Kind.BUTTON) {
        events.add(new Event(Event.Kind.BUTTON, act.atSeconds()));
        events.add(new Event(Event.Kind.FLUSH, act.atSeconds()));
      }
    }
    return events;
  }
}

package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.sheet.Seen;

/**
 * A stretch of time in which a state's lamp can be seen.
 *
 * @param fromSeconds where it begins; negative infinity if it always was
 * @param toSeconds where it ends; positive infinity if it does not
 */
record Stretch(double fromSeconds, double toSeconds) {
  static final Stretch EVER = new Stretch(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Whether it has a length. */
  boolean isSome() {
    return toSeconds > fromSeconds;
  }

  /** How long it is; below zero if it ends before it begins. */
  double length() {
    return toSeconds - fromSeconds;
  }

  /** The same end with another beginning. */
  Stretch beginning(double seconds) {
    return new Stretch(seconds, toSeconds);
  }

  Stretch within(Stretch other) {
    return new Stretch(
        Math.max(fromSeconds, other.fromSeconds), Math.min(toSeconds, other.toSeconds));
  }

  /** Whether each stretch begins with what makes the lamp show; else the lamp runs on free. */
  static boolean isTriggered(Seen seen) {
    return seen != Seen.ALWAYS && seen != Seen.IDLE;
  }

  /** All stretches of a scene in which a state's lamp can be seen, in order. */
  static List<Stretch> of(Seen seen, Scene scene) {
    return switch (seen) {
      case ALWAYS -> List.of(EVER);
      case IDLE -> idle(scene.targets());
      case TARGET ->
          scene.targets().stream().map(t -> new Stretch(t.fromSeconds(), t.toSeconds())).toList();
      case AFTER_TARGET -> afterTargets(scene.targets());
      case AFTER_FLUSH, WHILE_RUNNING -> after(scene.events(), Event.Kind.FLUSH);
      case AFTER_POWER_UP -> after(scene.events(), Event.Kind.POWER_UP);
      case AFTER_BUTTON, SET_UP -> after(scene.events(), Event.Kind.BUTTON);
    };
  }

  private static List<Stretch> idle(List<TargetSpan> targets) {
    List<Stretch> idle = new ArrayList<>();
    double from = Double.NEGATIVE_INFINITY;
    for (TargetSpan target : targets) {
      idle.add(new Stretch(from, target.fromSeconds()));
      from = target.toSeconds();
    }
    idle.add(new Stretch(from, Double.POSITIVE_INFINITY));
    return idle.stream().filter(Stretch::isSome).toList();
  }

  private static List<Stretch> afterTargets(List<TargetSpan> targets) {
    List<Stretch> after = idle(targets);
    return after.stream().filter(s -> s.fromSeconds() != Double.NEGATIVE_INFINITY).toList();
  }

  private static List<Stretch> after(List<Event> events, Event.Kind kind) {
    List<Double> times =
        events.stream().filter(e -> e.kind() == kind).map(Event::atSeconds).distinct().toList();
    List<Stretch> after = new ArrayList<>();
    for (int i = 0; i < times.size(); i++) {
      boolean last = i + 1 == times.size();
      double to = last ? Double.POSITIVE_INFINITY : times.get(i + 1);
      after.add(new Stretch(times.get(i), to));
    }
    return after;
  }

  /** The moments that make a state show what it shows once, in order. */
  static List<Double> triggers(Seen seen, Scene scene) {
    List<Double> triggers = new ArrayList<>();
    if (isTriggered(seen)) {
      of(seen, scene).forEach(stretch -> triggers.add(stretch.fromSeconds()));
    } else {
      for (TargetSpan target : scene.targets()) {
        triggers.add(target.fromSeconds());
        triggers.add(target.toSeconds());
      }
      scene.events().forEach(event -> triggers.add(event.atSeconds()));
    }
    return triggers.stream().filter(Double::isFinite).sorted().distinct().toList();
  }
}

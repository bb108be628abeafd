package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;

/**
 * When a state's lamp could be seen during a recording, in one of the ways that the marks leave
 * open. Outside these stretches it is dark.
 *
 * @param probability how probable it is that things were this way, less what speaks against the
 *     state then; over all ways it may sum to less than 1
 * @param stretches when the lamp can be seen, in order
 * @param triggered whether each stretch begins with what makes the lamp show
 */
record Visibility(double probability, List<Window> stretches, boolean triggered) {
  /** Chance that a target was there all the time where nothing was said. */
  private static final double TARGET_UNKNOWN = 0.5;

  /** Chance of the same where the recording device itself was near enough to be one. */
  private static final double TARGET_LIKELY = 0.8;

  /**
   * How much less probable a state of a moment (a target, running water, setting) is where its
   * moment is not there: the lamp would be dark, but the unit hardly in that state.
   */
  private static final double MOMENT_PAST = 0.2;

  /** Chance that an unmarked event came shortly before the window. */
  private static final double EVENT_UNMARKED = 0.25;

  static List<Visibility> of(Seen seen, Marks marks, Window window) {
    return switch (seen) {
      case ALWAYS -> List.of(throughout(1, window));
      case IDLE -> targets(marks, window, false);
      case TARGET -> targets(marks, window, true);
      case AFTER_TARGET -> afterTargets(marks, window);
      case AFTER_FLUSH, WHILE_RUNNING -> after(Event.Kind.FLUSH, marks, window);
      case AFTER_POWER_UP -> after(Event.Kind.POWER_UP, marks, window);
      case AFTER_BUTTON, SET_UP -> after(Event.Kind.BUTTON, marks, window);
    };
  }

  /** What was taken of targets that nobody noted; empty where no state of the sheet hangs on it. */
  static Optional<String> note(CodeSheet sheet, Marks marks) {
    boolean hangs =
        sheet.states().stream().anyMatch(s -> s.seen() == Seen.IDLE || s.seen() == Seen.TARGET);
    return hangs && marks.targets().knowledge() == Targets.Knowledge.LIKELY
        ? Optional.of(
            "nobody noted targets: one is taken as likely, for a sensor held to a lamp is one")
        : Optional.empty();
  }

  private static Visibility throughout(double probability, Window window) {
    return new Visibility(probability, List.of(window), false);
  }

  /** The moment for which the lamp shows the state is not there: hardly the unit's state then. */
  private static Visibility past(double probability) {
    return new Visibility(MOMENT_PAST * probability, List.of(), false);
  }

  private static List<Visibility> open(double probability, Window window) {
    return List.of(throughout(probability, window), past(1 - probability));
  }

  private static List<Visibility> targets(Marks marks, Window window, boolean present) {
    if (marks.targets().knowledge() == Targets.Knowledge.KNOWN) {
      List<Window> with = clip(marks.targets().spans(), window);
      List<Window> without = between(with, window);
      if (!present) {
        return List.of(new Visibility(1, without, false));
      }
      boolean cameLater = !with.isEmpty() && with.get(0).fromSeconds() > window.fromSeconds();
      double moment = without.isEmpty() ? 1 : MOMENT_PAST;
      return List.of(new Visibility(moment, with, cameLater));
    }
    double there =
        marks.targets().knowledge() == Targets.Knowledge.LIKELY ? TARGET_LIKELY : TARGET_UNKNOWN;
    return present
        ? open(there, window)
        : List.of(throughout(1 - there, window), new Visibility(there, List.of(), false));
  }

  private static List<Visibility> afterTargets(Marks marks, Window window) {
    if (marks.targets().knowledge() != Targets.Knowledge.KNOWN) {
      return open(EVENT_UNMARKED, window);
    }
    List<Window> with = clip(marks.targets().spans(), window);
    List<Window> stretches = new ArrayList<>();
    for (Window gap : between(with, window)) {
      if (gap.fromSeconds() > window.fromSeconds()) {
        stretches.add(gap);
      }
    }
    if (stretches.isEmpty()) {
      return with.isEmpty() ? open(EVENT_UNMARKED, window) : List.of(past(1));
    }
    return List.of(new Visibility(1, stretches, true));
  }

  private static List<Visibility> after(Event.Kind kind, Marks marks, Window window) {
    for (Event event : marks.events()) {
      if (event.kind() == kind && event.atSeconds() <= window.toSeconds()) {
        double from = Math.max(event.atSeconds(), window.fromSeconds());
        boolean inside = event.atSeconds() >= window.fromSeconds();
        return List.of(new Visibility(1, List.of(new Window(from, window.toSeconds())), inside));
      }
    }
    return open(EVENT_UNMARKED, window);
  }

  /** The target spans inside the window. */
  static List<Window> clip(List<TargetSpan> spans, Window window) {
    List<Window> inside = new ArrayList<>();
    for (TargetSpan span : spans) {
      double from = Math.max(span.fromSeconds(), window.fromSeconds());
      double to = Math.min(span.toSeconds(), window.toSeconds());
      if (to > from) {
        inside.add(new Window(from, to));
      }
    }
    return inside;
  }

  /** The stretches of the window that none of these covers. */
  static List<Window> between(List<Window> stretches, Window window) {
    List<Window> rest = new ArrayList<>();
    double from = window.fromSeconds();
    for (Window stretch : stretches) {
      if (stretch.fromSeconds() > from) {
        rest.add(new Window(from, stretch.fromSeconds()));
      }
      from = Math.max(from, stretch.toSeconds());
    }
    if (window.toSeconds() > from || (rest.isEmpty() && stretches.isEmpty())) {
      rest.add(new Window(from, window.toSeconds()));
    }
    return rest;
  }
}

package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Marks;
import lampwise.light.Targets;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sheet.TellApart;

/** What would settle an open question at the least cost: a further recording or a check. */
final class Advice {
  /** A recording of less is not worth walking there. */
  private static final double LEAST_SECONDS = 20;

  /** Who is likely to record: a careful person, or a meter of ten samples a second. */
  private static final Watching PERSON = Watching.byHand(0.04, 0.03, 0.3 / 60, 0);

  private static final Watching METER = Watching.bySensor(10);

  /** The likeliest state is compared with those after it, up to this many in all. */
  private static final int MOST_COMPARED = 4;

  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static final double MOST_SECONDS = 180;

  /** This many cycles of the slowest candidate tell it from the others. */
  private static final double CYCLES = 3;

  private static final double USUAL_CYCLE_SECONDS = 15;

  private static final double POSSIBLE = 0.01;

  private Advice() {}

  /**
   * The next step for candidates that are left.
   *
   * @param open the fewest candidates that are sure together
   * @param all all candidates; a check may tell rarer ones apart as well
   */
  static Next settle(
      CodeSheet sheet, List<Candidate> open, List<Candidate> all, Marks marks, boolean curve) {
    List<LampState> states = states(sheet, open, 0);
    if (states.size() > 1 && states.size() == open.size() && allAlike(states, marks)) {
      return check(states(sheet, all, POSSIBLE), marks);
    }
    OptionalDouble seconds = states.size() == open.size() ? apart(sheet, states, curve) : NONE;
    Next.Watch usual = record(sheet, states, curve);
    return seconds.isEmpty()
        ? usual
        : new Next.Watch(seconds.getAsDouble(), usual.rateHz(), usual.target(), usual.how());
  }

  /** How long it takes to tell the likeliest of these states from each of the next ones. */
  private static OptionalDouble apart(CodeSheet sheet, List<LampState> states, boolean curve) {
    RecordingPlan plan = new RecordingPlan(sheet, curve ? METER : PERSON);
    double longest = states.size() > 1 ? LEAST_SECONDS : Double.NaN;
    for (int i = 1; i < Math.min(states.size(), MOST_COMPARED); i++) {
      longest = Math.max(longest, plan.roughly(states.get(0), states.get(i)).orElse(Double.NaN));
    }
    double rounded = Math.ceil(longest / 5) * 5;
    return Double.isNaN(rounded) ? NONE : OptionalDouble.of(rounded);
  }

  private static List<LampState> states(CodeSheet sheet, List<Candidate> candidates, double least) {
    List<LampState> states = new ArrayList<>();
    for (Candidate candidate : candidates) {
      if (candidate.probability() >= least) {
        sheet.state(candidate.state()).ifPresent(states::add);
      }
    }
    return states;
  }

  /** Whether more of the same recording could not tell these states apart. */
  private static boolean allAlike(List<LampState> states, Marks marks) {
    LampState first = states.get(0);
    for (LampState state : states) {
      boolean same = state.rhythm().equals(first.rhythm()) && state.seen() == first.seen();
      boolean bothDark = mayBeDark(state, marks) && mayBeDark(first, marks);
      if (!same && !bothDark) {
        return false;
      }
    }
    return true;
  }

  private static boolean mayBeDark(LampState state, Marks marks) {
    return state.rhythm() instanceof Rhythm.Dark
        || (state.seen() != Seen.ALWAYS && !(state.seen() == Seen.TARGET && sawTarget(marks)));
  }

  /** Whether somebody or something is known to have been before the unit. */
  private static boolean sawTarget(Marks marks) {
    return marks.targets().knowledge() == Targets.Knowledge.KNOWN
        && !marks.targets().spans().isEmpty();
  }

  private static Next check(List<LampState> states, Marks marks) {
    boolean differsWithHand =
        states.stream().anyMatch(s -> s.seen() == Seen.TARGET || s.seen() == Seen.AFTER_TARGET)
            || (states.stream().anyMatch(s -> s.seen() == Seen.IDLE)
                && states.stream().anyMatch(s -> s.seen() != Seen.IDLE));
    if (differsWithHand && !sawTarget(marks)) {
      return new Next.Check(
          "hold a hand or card in front of the sensor for 15 s, take it away, and watch the lamp"
              + " meanwhile",
          1);
    }
    if (has(states, Condition.POWER_MISSING) || has(states, Condition.POWER_LOW)) {
      return new Next.Check(TellApart.MEASURE_POWER, 2);
    }
    if (states.stream().anyMatch(s -> s.seen() == Seen.AFTER_POWER_UP)) {
      return new Next.Check(
          "take the power off for 60 s and on again, stand clear, and watch the lamp from the first"
              + " second",
          2);
    }
    if (has(states, Condition.SENSOR_BLOCKED)) {
      return new Next.Check("wipe the sensor's window and look for film, scale or drops on it", 1);
    }
    if (has(states, Condition.VALVE_CIRCUIT)) {
      return new Next.Check("look at the coil's connector and leads for a loose or wet contact", 3);
    }
    return new Next.Check(
        "look in the unit's own papers for what else tells these states apart", 3);
  }

  private static boolean has(List<LampState> states, Condition condition) {
    return states.stream().anyMatch(s -> s.condition() == condition);
  }

  /** A recording long enough for the slowest of these states. */
  static Next.Watch record(CodeSheet sheet, List<LampState> states, boolean curve) {
    double slowest = states.isEmpty() ? USUAL_CYCLE_SECONDS : 0;
    double shortest = Double.POSITIVE_INFINITY;
    for (LampState state : states) {
      if (state.rhythm() instanceof Rhythm.Blinking blinking) {
        for (Train train : Templates.of(blinking, sheet.blinkSeconds(), sheet.clockTolerance())) {
          double last = train.on(train.size() - 1) + 1;
          slowest = Math.max(slowest, train.repeats() ? train.cycleSeconds() : last);
          shortest = Math.min(shortest, shortest(train));
        }
      }
    }
    double seconds =
        Math.min(MOST_SECONDS, Math.max(LEAST_SECONDS, Math.ceil(CYCLES * slowest / 5) * 5));
    OptionalDouble rate =
        curve && shortest < Double.POSITIVE_INFINITY
            ? OptionalDouble.of(Math.ceil(2.5 / shortest))
            : OptionalDouble.empty();
    return new Next.Watch(
        seconds,
        rate,
        "none",
        curve
            ? "shade the lamp, and hold the meter still and close to it"
            : "stand aside, start before the first blink, and note each one as you see it");
  }

  /** The shortest light or gap of a train. */
  private static double shortest(Train train) {
    double shortest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < train.size(); i++) {
      if (!Double.isNaN(train.length(i))) {
        shortest = Math.min(shortest, train.length(i));
      }
      if (i > 0) {
        shortest = Math.min(shortest, 0.5 * (train.on(i) - train.on(i - 1)));
      }
    }
    return train.repeats() ? Math.min(shortest, 0.5 * train.cycleSeconds()) : shortest;
  }

  /** How to record where nothing could be read. */
  static Next again(boolean curve) {
    return new Next.Watch(
        60,
        curve ? OptionalDouble.of(20) : OptionalDouble.empty(),
        "none",
        curve
            ? "shade the lamp, and hold the meter still and close to it"
            : "stand to the side, start before the first blink, and note each one");
  }
}

package lampwise.sim;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;

/**
 * What truly happens before a lamp while it is watched.
 *
 * @param window the stretch that is watched
 * @param acts the states that the lamp is in, in order of time; at least one, and the first begins
 *     not after the window does
 * @param targets when a target is in range, in order and without overlap; empty if never
 * @param events what else happens, in order of time; may lie before the window
 * @param marked whether whoever records also notes the targets and events
 * @param clock how the unit's clock runs
 * @param blinkSeconds the length of a blink where a rhythm gives none; drawn if empty
 */
public record Scene(
    Window window,
    List<Act> acts,
    List<TargetSpan> targets,
    List<Event> events,
    boolean marked,
    Clock clock,
    OptionalDouble blinkSeconds) {
  /**
   * How a unit's clock runs.
   *
   * @param tolerance how far from the printed times, as a fraction from 0 to below 0.5: drawn once,
   *     evenly
   * @param wander how far it wanders, standard deviation as a fraction per square root of an hour,
   *     0 to 0.1; it never leaves the tolerance
   */
  public record Clock(double tolerance, double wander) {
    /**
     * Checks the numbers.
     *
     * @throws SimulationException if one is out of range
     */
    public Clock {
      if (!(tolerance >= 0 && tolerance < 0.5)) {
        throw new SimulationException(
            "the clock tolerance must be 0 to below 0.5 (50 %): " + tolerance);
      }
      if (!(wander >= 0 && wander <= 0.1)) {
        throw new SimulationException("the clock's wander must be 0 to 0.1: " + wander);
      }
    }
  }

  /**
   * Keeps copies of the lists and checks them.
   *
   * @throws SimulationException if the window has no length, there is no act, an act does not begin
   *     after the one before it, the first begins after the window does, or targets overlap
   */
  public Scene {
    acts = List.copyOf(acts);
    targets = List.copyOf(targets);
    events =
        events.stream().sorted((a, b) -> Double.compare(a.atSeconds(), b.atSeconds())).toList();
    if (!(window.lengthSeconds() > 0)) {
      throw new SimulationException("the window must have a length over 0 s");
    }
    if (acts.isEmpty() || acts.get(0).fromSeconds() > window.fromSeconds()) {
      throw new SimulationException("the first state must begin at or before the window does");
    }
    for (int i = 1; i < acts.size(); i++) {
      if (!(acts.get(i).fromSeconds() > acts.get(i - 1).fromSeconds())) {
        throw new SimulationException(
            "states must begin one after the other: "
                + acts.get(i).state()
                + " at "
                + acts.get(i).fromSeconds()
                + " s");
      }
    }
    for (int i = 1; i < targets.size(); i++) {
      if (!(targets.get(i).fromSeconds() >= targets.get(i - 1).toSeconds())) {
        throw new SimulationException("targets must come one after the other");
      }
    }
  }

  /**
   * One state in an unchanging room: nobody in range, nothing happens, nothing is noted.
   *
   * @param sheet the sheet, for the clock's tolerance and the length of a blink
   * @param act the state
   * @param seconds how long it is watched, from 0; over zero
   * @return the scene
   * @throws SimulationException if the time is not over zero, or infinite
   */
  public static Scene of(CodeSheet sheet, Act act, double seconds) {
    if (!(seconds > 0 && seconds <= Double.MAX_VALUE)) {
      throw new SimulationException(
          "the time to watch must be over 0 s and finite: " + seconds + " s");
    }
    return new Scene(
        new Window(0, seconds),
        List.of(act),
        List.of(),
        List.of(),
        false,
        new Clock(sheet.clockTolerance(), 0),
        sheet.blinkSeconds());
  }

  /**
   * The same scene with other acts.
   *
   * @param acts the acts
   * @return a new scene
   */
  public Scene withActs(List<Act> acts) {
    return new Scene(window, acts, targets, events, marked, clock, blinkSeconds);
  }

  /**
   * The same scene with these targets and events.
   *
   * @param targets when a target is in range
   * @param events what else happens
   * @param marked whether they are noted
   * @return a new scene
   */
  public Scene with(List<TargetSpan> targets, List<Event> events, boolean marked) {
    return new Scene(window, acts, targets, events, marked, clock, blinkSeconds);
  }

  /**
   * The same scene with another clock.
   *
   * @param clock the clock
   * @return a new scene
   */
  public Scene withClock(Clock clock) {
    return new Scene(window, acts, targets, events, marked, clock, blinkSeconds);
  }
}

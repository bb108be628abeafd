package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** Scenes in which something is to be seen. All draw from a chance that is given. */
public final class Scenes {
  /** The longest that somebody was there before they leave early in the window, seconds. */
  private static final double STAY_SECONDS = 60;

  private Scenes() {}

  /**
   * A scene in which a state's lamp is seen for some of the window, whenever that is:
   *
   * <ul>
   *   <li>{@code always}: nobody is there, nothing is noted.
   *   <li>{@code idle}: nobody is there, and that is noted.
   *   <li>{@code target}: a target comes in the first third of the window and, as likely as not,
   *       leaves in the second half of what is left.
   *   <li>{@code after-target}: a target that was there leaves in the first fifth.
   *   <li>all others: what they follow happens in the first fifth.
   * </ul>
   *
   * <p>Except for {@code always}, targets and events are noted.
   *
   * @param sheet the sheet, for the clock's tolerance and the length of a blink
   * @param state the state
   * @param seconds how long it is watched, from 0; over zero
   * @param chance where numbers come from
   * @return the scene
   * @throws SimulationException if the time is not over zero
   */
  public static Scene showing(CodeSheet sheet, LampState state, double seconds, Chance chance) {
    Scene scene = Scene.of(sheet, Act.of(state), seconds);
    double early = chance.uniform(0, seconds / 5);
    return switch (state.seen()) {
      case ALWAYS -> scene;
      case IDLE -> scene.with(List.of(), List.of(), true);
      case TARGET -> scene.with(List.of(coming(seconds, chance)), List.of(), true);
      case AFTER_TARGET -> {
        TargetSpan leaving = new TargetSpan(-chance.uniform(1, STAY_SECONDS), early);
        yield scene.with(List.of(leaving), List.of(), true);
      }
      case AFTER_FLUSH, WHILE_RUNNING -> after(scene, Event.Kind.FLUSH, early);
      case AFTER_POWER_UP -> after(scene, Event.Kind.POWER_UP, early);
      case AFTER_BUTTON, SET_UP -> after(scene, Event.Kind.BUTTON, early);
    };
  }

  private static TargetSpan coming(double seconds, Chance chance) {
    double comes = chance.uniform(0, seconds / 3);
    boolean stays = chance.happens(0.5);
    double leaves = chance.uniform((comes + seconds) / 2, seconds);
    return new TargetSpan(comes, stays ? Double.POSITIVE_INFINITY : leaves);
  }

  private static Scene after(Scene scene, Event.Kind kind, double seconds) {
    return scene.with(List.of(), List.of(new Event(kind, seconds)), true);
  }

  /**
   * A scene in which the unit changes its state, in a room where nobody is and nothing happens.
   * That nobody is there is noted if one of the states is not seen always.
   *
   * @param sheet the sheet, for the clock's tolerance and the length of a blink
   * @param states the states in order; the first has been there for long
   * @param switchSeconds when each further one begins: one less than there are states, rising
   * @param seconds how long it is watched, from 0; over zero
   * @return the scene
   * @throws SimulationException if the numbers do not go together, the times do not rise, or the
   *     whole time is not over zero
   */
  public static Scene switching(
      CodeSheet sheet, List<LampState> states, List<Double> switchSeconds, double seconds) {
    if (states.size() != switchSeconds.size() + 1) {
      throw new SimulationException(
          states.size()
              + " states need one time less at which they change: "
              + switchSeconds.size());
    }
    List<Act> acts = new ArrayList<>();
    acts.add(Act.of(states.get(0)));
    for (int i = 1; i < states.size(); i++) {
      acts.add(Act.of(states.get(i)).from(switchSeconds.get(i - 1)));
    }
    boolean marked = states.stream().anyMatch(state -> state.seen() != Seen.ALWAYS);
    return Scene.of(sheet, acts.get(0), seconds).withActs(acts).with(List.of(), List.of(), marked);
  }
}

package lampwise.sim;

import java.util.List;

/** Turns a scene into light. */
public final class Lamp {
  private Lamp() {}

  /**
   * When a lamp is on in a scene: what a phrase leaves open is drawn within its limits and kept for
   * the recording, the clock is drawn within its tolerance, the phase at random.
   *
   * <ul>
   *   <li>A state that has no beginning is anywhere in its cycle, its prelude over. One that begins
   *       starts its prelude then; without one it, too, is anywhere in its cycle.
   *   <li>Seen {@code always} or {@code idle}, a lamp runs on by itself and is dark where it is not
   *       seen. Otherwise its rhythm starts anew 0.1 to 1.5 s after what it follows (drawn once); a
   *       target that always was there counts as long ago.
   *   <li>{@code once} is shown that long after each moment that goes with when the lamp is seen,
   *       and begins again if the next one comes meanwhile. Seen {@code always} or {@code idle}, or
   *       before a target that always was there, it is shown once at a moment of its own in the
   *       window if nothing makes it show there.
   *   <li>A light is cut where a state ends and where the lamp is no longer seen. One that always
   *       was on, or stays on, reaches 1 s beyond the window.
   *   <li>Blinks in no order come as a Poisson process whose starts less than 0.05 s after the end
   *       of the one before are left out; each lasts as the scene says, or 0.1 s.
   * </ul>
   *
   * <p>A clock that wanders takes a random step each minute of the window.
   *
   * @param scene what happens
   * @param chance where numbers come from
   * @return the light and how the clock ran
   * @throws SimulationException if the lamp would blink more than 20,000,000 times in the window
   */
  public static Shown shine(Scene scene, Chance chance) {
    UnitClock clock = UnitClock.drawn(scene.clock(), scene.window(), chance.branch("clock"));
    double delay = ActLight.delay(chance.branch("delay"));
    Light light = new Light(scene.window());
    List<Act> acts = scene.acts();
    for (int i = 0; i < acts.size(); i++) {
      // The same state again shows the same values.
      Chance drawing = chance.branch("rhythm").branch(firstLike(acts, i));
      Chance phase = chance.branch("phase").branch(i);
      new ActLight(scene, i, clock, light).shine(delay, drawing, phase);
    }
    return new Shown(scene, light.blinks(), clock.rates());
  }

  private static int firstLike(List<Act> acts, int number) {
    Act act = acts.get(number);
    int first = 0;
    while (!(acts.get(first).state().equals(act.state())
        && acts.get(first).show().equals(act.show()))) {
      first++;
    }
    return first;
  }
}

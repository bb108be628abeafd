package lampwise.sim;

import java.util.List;
import lampwise.light.Blink;

/**
 * What is true of a simulated recording.
 *
 * @param shown what the lamp showed, and what happened
 * @param missed blinks of the lamp that began in the window and were not noted; of a light sensor
 *     those that moved no sample
 * @param added the starts of what was noted, or moved the light level like a blink, without the
 *     lamp
 */
public record Truth(Shown shown, List<Blink> missed, List<Double> added) {
  /** Keeps copies of the lists. */
  public Truth {
    missed = List.copyOf(missed);
    added = List.copyOf(added);
  }

  /**
   * The state that the lamp was in for most of the window.
   *
   * @return its name in the sheet, {@code unlisted} or {@code no-rhythm}
   */
  public String state() {
    List<Act> acts = shown.scene().acts();
    double end = shown.scene().window().toSeconds();
    double longest = -1;
    String state = "";
    for (int i = 0; i < acts.size(); i++) {
      double from = Math.max(acts.get(i).fromSeconds(), shown.scene().window().fromSeconds());
      double to = i + 1 < acts.size() ? Math.min(acts.get(i + 1).fromSeconds(), end) : end;
      if (to - from > longest) {
        longest = to - from;
        state = acts.get(i).state();
      }
    }
    return state;
  }
}

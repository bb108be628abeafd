package lampwise.decode;

import java.util.List;
import java.util.Optional;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;

/**
 * What one recording shows by itself, without a sheet.
 *
 * @param recording the recording
 * @param window the stretch that was watched; empty if there is none
 * @param observed the rhythm it shows; empty if it shows none, or not one alone
 * @param blinks the blinks it shows, in order
 * @param unreadable why it cannot carry an answer; empty if it can
 * @param notes what was found on the way (pauses, level steps), a sentence each; the notes of
 *     reading it are in the recording's origin
 */
public record Observation(
    Recording recording,
    Optional<Window> window,
    Optional<Rhythm> observed,
    List<SeenBlink> blinks,
    Optional<String> unreadable,
    List<String> notes) {
  /** Keeps copies of the lists. */
  public Observation {
    blinks = List.copyOf(blinks);
    notes = List.copyOf(notes);
  }
}

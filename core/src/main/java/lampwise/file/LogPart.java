package lampwise.file;

import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;

/**
 * One part of a log, which is one recording.
 *
 * @param origin the file's name, the fixture, notes
 * @param marks what was noted beside the light
 * @param blinks the blinks; empty if words describe the rhythm
 * @param said the words; empty if there are blinks, or neither
 */
record LogPart(Origin origin, Marks marks, List<Blink> blinks, Optional<String> said) {
  Recording recording() {
    return said.isPresent()
        ? new Description(origin, marks, said.get())
        : new BlinkLog(origin, marks, blinks);
  }

  LogPart with(Marks newMarks, List<Blink> newBlinks, Optional<String> note) {
    Origin noted = note.map(this::noted).orElse(origin);
    return new LogPart(noted, newMarks, newBlinks, said);
  }

  /** The origin with one note more. */
  private Origin noted(String note) {
    List<String> notes = new java.util.ArrayList<>(origin.notes());
    notes.add(note);
    return new Origin(origin.name(), origin.fixture(), notes);
  }
}

package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.TimeText.Writing;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.Window;

/** Puts the user's options in place of the marks of a log. */
final class LogOptions {
  private LogOptions() {}

  /**
   * The recording with the marks that were given as options.
   *
   * @throws OptionException if an option cannot be understood, or says how to read times or levels
   */
  static Recording apply(Recording recording, ReadOptions options) throws OptionException {
    if (options.shape().isPresent()
        || options.column().isPresent()
        || options.time().isPresent()
        || options.unit().isPresent()) {
      throw new OptionException(
          "--as, --column, --time and --unit do not go with a Lampwise log, which says it itself");
    }
    Marks own = recording.marks();
    Marks said = MarkOptions.marks(options, clock(recording), own.targets());
    Marks marks =
        new Marks(
            said.window().or(own::window),
            said.targets(),
            said.events().isEmpty() ? own.events() : said.events(),
            said.covered().isEmpty() ? own.covered() : said.covered());
    if (recording instanceof Description description) {
      return new Description(description.origin(), marks, description.said());
    }
    BlinkLog log = (BlinkLog) recording;
    List<Blink> inside = new ArrayList<>();
    for (Blink blink : log.blinks()) {
      if (marks.window().isEmpty() || marks.window().get().contains(blink.onSeconds())) {
        inside.add(blink);
      }
    }
    int outside = log.blinks().size() - inside.size();
    List<String> notes = new ArrayList<>(log.origin().notes());
    if (outside > 0) {
      notes.add(outside + (outside == 1 ? " blink lies" : " blinks lie") + " outside the window");
    }
    Origin origin = new Origin(log.origin().name(), log.origin().fixture(), notes);
    return new BlinkLog(origin, marks, inside);
  }

  private static RecordingClock clock(Recording recording) {
    Optional<Window> window = recording.window();
    return window
        .map(w -> new RecordingClock(Writing.NUMBER, 1, 0, w.fromSeconds(), w.toSeconds()))
        .orElseGet(RecordingClock::empty);
  }
}

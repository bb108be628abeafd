package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.Window;

/**
 * What options mean beside a log. Each one replaces, in every part, what the log says of the same
 * thing; what only a file without words of its own needs is refused.
 */
final class LogOptions {
  private LogOptions() {}

  /**
   * Obeys the options.
   *
   * @throws OptionException if one cannot be understood or has no meaning for a log
   */
  static List<Recording> apply(ReadOptions options, List<LogPart> parts) throws OptionException {
    refuse(options.shape().isPresent(), "--as");
    refuse(options.column().isPresent(), "--column");
    refuse(options.time().isPresent(), "--time");
    refuse(options.unit().isPresent(), "--unit");
    refuse(options.writing().rateHz() > 0, "--rate");
    refuse(options.writing().dates().isPresent(), "--dates");
    refuse(options.writing().decimal().isPresent(), "--decimal");
    List<Recording> recordings = new ArrayList<>();
    for (LogPart part : parts) {
      recordings.add(apply(options, part).recording());
    }
    return recordings;
  }

  private static void refuse(boolean given, String option) throws OptionException {
    if (given) {
      throw new OptionException(
          option + " does not fit a Lampwise log, which itself says what it holds");
    }
  }

  private static LogPart apply(ReadOptions options, LogPart part) throws OptionException {
    Optional<Window> seen = part.recording().window();
    RecordingClock clock =
        seen.map(
                window ->
                    new RecordingClock(
                        TimeText.Writing.NUMBER, 1, 0, window.fromSeconds(), window.toSeconds()))
            .orElse(RecordingClock.empty());
    Marks marks = MarkOptions.marks(options, clock, part.marks());
    List<Blink> inside = new ArrayList<>(part.blinks());
    marks.window().ifPresent(window -> inside.removeIf(b -> !window.contains(b.onSeconds())));
    int outside = part.blinks().size() - inside.size();
    return part.with(
        marks,
        inside,
        outside == 0 ? Optional.empty() : Optional.of(PastedTimes.outsideNote(outside)));
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.decode.LightTrace;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;

/**
 * What a chart is about: one recording and what was read in it.
 *
 * @param head where it comes from: the sheet, the recording; the first line
 * @param title the answer
 * @param notes what stands below the title, a line or more each
 * @param observation what the recording shows by itself
 * @param segments the stretches of this recording in which the lamp keeps one state
 * @param trace what a light curve was read by; empty for any other recording
 */
record ChartSubject(
    String head,
    String title,
    List<String> notes,
    Observation observation,
    List<Segment> segments,
    Optional<LightTrace> trace) {
  ChartSubject {
    notes = List.copyOf(notes);
    segments = List.copyOf(segments);
  }

  /** A recording, one of those of a reading, by its number. */
  static ChartSubject of(CodeSheet sheet, Reading reading, int recording) {
    Observation observation = reading.observations().get(recording);
    List<String> notes = new ArrayList<>();
    Optional<String> said = said(observation.recording());
    said.ifPresent(notes::add);
    if (said.isEmpty() || reading.observations().size() > 1) {
      reading.observed().ifPresent(seen -> notes.add("seen: " + Phrase.print(seen)));
    }
    return new ChartSubject(
        tag(sheet) + sheet.title() + "; " + named(observation.recording()),
        ReadingText.answer(sheet, reading.verdict(), reading.candidates()),
        notes,
        observation,
        reading.segments().stream().filter(s -> s.recording() == recording).toList(),
        trace(Optional.of(sheet), observation));
  }

  /** A recording without a sheet. */
  static ChartSubject of(Observation observation) {
    return new ChartSubject(
        named(observation.recording()),
        ReadingText.answer(observation),
        said(observation.recording()).map(List::of).orElse(List.of()),
        observation,
        List.of(),
        trace(Optional.empty(), observation));
  }

  private static Optional<LightTrace> trace(Optional<CodeSheet> sheet, Observation observation) {
    return observation.recording() instanceof LightCurve curve
        ? Optional.of(LightTrace.of(sheet, curve, observation.blinks()))
        : Optional.empty();
  }

  /** What must stand before everything that was read against an invented sheet. */
  static String tag(CodeSheet sheet) {
    return sheet.isInvented() ? "[invented sheet] " : "";
  }

  private static String named(Recording recording) {
    return recording.origin().name() + recording.origin().fixture().map(f -> ", " + f).orElse("");
  }

  private static Optional<String> said(Recording recording) {
    if (!(recording instanceof Description description)) {
      return Optional.empty();
    }
    String watched =
        recording.window().map(w -> ", watched " + Words.duration(w.lengthSeconds())).orElse("");
    return Optional.of("as described: " + description.said() + watched);
  }

  Recording recording() {
    return observation.recording();
  }

  /** The blinks that were read; those of a log as they were noted where none could be read. */
  List<SeenBlink> blinks() {
    return observation.blinks().isEmpty() && recording() instanceof BlinkLog log
        ? log.blinks().stream().map(blink -> new SeenBlink(blink, 1)).toList()
        : observation.blinks();
  }

  /** From the first to the last moment that there is something to draw of; never empty. */
  Window extent() {
    List<Window> all = new ArrayList<>();
    recording().window().ifPresent(all::add);
    observation.window().ifPresent(all::add);
    all.addAll(recording().marks().covered());
    segments.forEach(segment -> all.add(segment.stretch()));
    for (SeenBlink seen : blinks()) {
      double on = seen.blink().onSeconds();
      all.add(new Window(on, seen.blink().hasOff() ? seen.blink().offSeconds() : on));
    }
    for (Event event : recording().marks().events()) {
      all.add(new Window(event.atSeconds(), event.atSeconds()));
    }
    for (TargetSpan span : recording().marks().targets().spans()) {
      moment(span.fromSeconds()).ifPresent(all::add);
      moment(span.toSeconds()).ifPresent(all::add);
    }
    if (recording() instanceof LightCurve curve && curve.size() > 0) {
      all.add(new Window(curve.seconds(0), curve.seconds(curve.size() - 1)));
    }
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    for (Window window : all) {
      from = Math.min(from, window.fromSeconds());
      to = Math.max(to, window.toSeconds());
    }
    return from <= to ? new Window(from, to) : new Window(0, 1);
  }

  private static Optional<Window> moment(double seconds) {
    return Double.isInfinite(seconds)
        ? Optional.empty()
        : Optional.of(new Window(seconds, seconds));
  }
}

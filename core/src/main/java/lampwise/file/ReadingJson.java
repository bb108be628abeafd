package lampwise.file;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.decode.Candidate;
import lampwise.decode.Nearest;
import lampwise.decode.Next;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;

/**
 * Writes readings as JSON, one object and no line end a call. The keys always stand in the same
 * order and none is left out; what there is not is {@code null} or an empty list.
 *
 * <p>Times are rounded to thousandths of a second, probabilities to millionths. A number that is
 * not finite is never written: a time becomes {@code null}, a probability 0. Candidates and
 * conditions below 0.001 are not listed; the candidates among them are summed up as {@code others}.
 *
 * <p>A reading of several recordings has one clock a recording. Window, targets, blinks and
 * segments are then those of the recording that the verdict rests on: the first one with a segment
 * of the reading's own verdict, else the first one with a segment. The notes of all are written,
 * each after the name of its recording.
 */
public final class ReadingJson {
  /** The value of {@code lampwise-json}. */
  public static final int VERSION = 1;

  /** The least probability with which a candidate or condition is listed. */
  public static final double LEAST_LISTED = 0.001;

  private ReadingJson() {}

  /**
   * Writes a reading against a sheet.
   *
   * @param out where to; not closed
   * @param recording the recording's name
   * @param sheet the sheet that was decoded against
   * @param reading the answer
   * @throws IOException if {@code out} fails
   */
  public static void reading(Writer out, String recording, CodeSheet sheet, Reading reading)
      throws IOException {
    Verdict verdict = reading.verdict();
    Optional<LampState> state = Optional.empty();
    double probability = Double.NaN;
    Optional<String> reason = Optional.empty();
    Optional<Next> next = Optional.empty();
    List<Nearest> nearest = List.of();
    if (verdict instanceof Verdict.Decoded decoded) {
      state = sheet.state(decoded.state());
      probability = decoded.probability();
    } else if (verdict instanceof Verdict.Unlisted unlisted) {
      nearest = unlisted.nearest();
    } else if (verdict instanceof Verdict.Undecided undecided) {
      reason = Optional.of(undecided.reason());
      next = Optional.of(undecided.next());
    } else if (verdict instanceof Verdict.Unreadable unreadable) {
      reason = Optional.of(unreadable.reason());
      next = Optional.of(unreadable.next());
    }
    int main = reading.mainRecording();
    List<Observation> observations = reading.observations();
    Optional<Observation> shown = reading.main();
    try (JsonGenerator json = start(out, recording)) {
      JsonFields.text(json, "fixture", shown.flatMap(o -> o.recording().origin().fixture()));
      json.writeStringField("sheet", sheet.title());
      json.writeStringField("basis", sheet.basis().word());
      json.writeStringField("verdict", verdict.word());
      JsonFields.text(json, "state", state.map(LampState::name));
      JsonFields.text(json, "condition", state.map(s -> s.condition().word()));
      JsonFields.text(json, "means", state.map(LampState::means));
      if (state.isPresent()) {
        probability(json, "probability", probability);
      } else {
        json.writeNullField("probability");
      }
      candidates(json, reading.candidates());
      conditions(json, reading.conditions(sheet));
      JsonFields.text(json, "observed", reading.observed().map(Phrase::print));
      JsonFields.text(json, "reason", reason);
      next(json, next);
      nearest(json, nearest);
      light(json, shown);
      segments(json, reading.segments(), main);
      notes(json, observations);
      json.writeEndObject();
    }
  }

  /**
   * Writes what a recording shows without a sheet: {@code sheet}, {@code basis}, {@code verdict}
   * and {@code candidates} are null.
   *
   * @param out where to; not closed
   * @param recording the recording's name
   * @param observation what it shows
   * @throws IOException if {@code out} fails
   */
  public static void observation(Writer out, String recording, Observation observation)
      throws IOException {
    try (JsonGenerator json = start(out, recording)) {
      JsonFields.text(json, "fixture", observation.recording().origin().fixture());
      for (String key :
          List.of(
              "sheet",
              "basis",
              "verdict",
              "state",
              "condition",
              "means",
              "probability",
              "candidates")) {
        json.writeNullField(key);
      }
      conditions(json, Map.of());
      JsonFields.text(json, "observed", observation.observed().map(Phrase::print));
      JsonFields.text(json, "reason", observation.unreadable());
      json.writeNullField("next");
      nearest(json, List.of());
      light(json, Optional.of(observation));
      segments(json, List.of(), 0);
      notes(json, List.of(observation));
      json.writeEndObject();
    }
  }

  /**
   * Writes that a file was refused.
   *
   * @param out where to; not closed
   * @param recording the recording's name
   * @param fault why; line and column are null where they are 0
   * @throws IOException if {@code out} fails
   */
  public static void refused(Writer out, String recording, FileFault fault) throws IOException {
    try (JsonGenerator json = start(out, recording)) {
      json.writeObjectFieldStart("error");
      json.writeStringField("message", fault.message());
      JsonFields.place(json, "line", fault.line());
      JsonFields.place(json, "column", fault.column());
      json.writeEndObject();
      json.writeEndObject();
    }
  }

  private static JsonGenerator start(Writer out, String recording) throws IOException {
    JsonGenerator json = JsonFields.to(out);
    json.writeStartObject();
    json.writeNumberField("lampwise-json", VERSION);
    json.writeStringField("recording", recording);
    return json;
  }

  private static void candidates(JsonGenerator json, List<Candidate> candidates)
      throws IOException {
    json.writeArrayFieldStart("candidates");
    double others = 0;
    for (Candidate candidate : candidates) {
      if (candidate.probability() >= LEAST_LISTED) {
        json.writeStartObject();
        json.writeStringField("state", candidate.state());
        probability(json, "probability", candidate.probability());
        json.writeEndObject();
      } else if (candidate.probability() > 0) {
        others += candidate.probability();
      }
    }
    if (Math.round(others * 1e6) > 0) {
      json.writeStartObject();
      json.writeStringField("state", "others");
      probability(json, "probability", others);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void conditions(JsonGenerator json, Map<Condition, Double> conditions)
      throws IOException {
    json.writeArrayFieldStart("conditions");
    for (Map.Entry<Condition, Double> entry : conditions.entrySet()) {
      if (entry.getValue() >= LEAST_LISTED) {
        json.writeStartObject();
        json.writeStringField("condition", entry.getKey().word());
        probability(json, "probability", entry.getValue());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
  }

  /** What would settle it, null where there is nothing. */
  static void next(JsonGenerator json, Optional<Next> next) throws IOException {
    if (next.isEmpty()) {
      json.writeNullField("next");
      return;
    }
    json.writeObjectFieldStart("next");
    if (next.get() instanceof Next.Watch record) {
      json.writeStringField("kind", "record");
      quantity(json, "seconds", record.seconds());
      quantity(json, "rate_hz", record.rateHz().orElse(Double.NaN));
      json.writeStringField("target", record.target());
    } else if (next.get() instanceof Next.Check check) {
      json.writeStringField("kind", "check");
      json.writeStringField("ask", check.ask());
      quantity(json, "minutes", check.minutes());
    }
    json.writeEndObject();
  }

  private static void nearest(JsonGenerator json, List<Nearest> nearest) throws IOException {
    json.writeArrayFieldStart("nearest");
    for (Nearest state : nearest) {
      json.writeStartObject();
      json.writeStringField("state", state.state());
      json.writeStringField("rhythm", state.rhythm());
      json.writeStringField("difference", state.difference());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Window, targets and blinks of a recording. */
  private static void light(JsonGenerator json, Optional<Observation> shown) throws IOException {
    Optional<Window> window = shown.flatMap(Observation::window);
    if (window.isPresent()) {
      json.writeArrayFieldStart("window_s");
      pair(json, window.get().fromSeconds(), window.get().toSeconds());
    } else {
      json.writeNullField("window_s");
    }
    json.writeArrayFieldStart("targets_s");
    if (shown.isPresent()) {
      for (TargetSpan span : shown.get().recording().marks().targets().spans()) {
        target(json, span, window);
      }
    }
    json.writeEndArray();
    json.writeArrayFieldStart("blinks");
    if (shown.isPresent()) {
      for (SeenBlink seen : shown.get().blinks()) {
        json.writeStartObject();
        time(json, "on_s", seen.blink().onSeconds());
        time(json, "off_s", seen.blink().offSeconds());
        probability(json, "probability", seen.probability());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
  }

  /** A border that was left open is that of the window; a span stays out if there is none. */
  private static void target(JsonGenerator json, TargetSpan span, Optional<Window> window)
      throws IOException {
    double from = span.fromSeconds();
    double to = span.toSeconds();
    if (window.isPresent()) {
      from = Double.isInfinite(from) ? window.get().fromSeconds() : from;
      to = Double.isInfinite(to) ? window.get().toSeconds() : to;
    }
    if (!Double.isInfinite(from) && !Double.isInfinite(to)) {
      json.writeStartArray();
      pair(json, from, to);
    }
  }

  private static void segments(JsonGenerator json, List<Segment> segments, int main)
      throws IOException {
    json.writeArrayFieldStart("segments");
    for (Segment segment : segments) {
      if (segment.recording() == main) {
        segment(json, segment);
      }
    }
    json.writeEndArray();
  }

  private static void segment(JsonGenerator json, Segment segment) throws IOException {
    json.writeStartObject();
    time(json, "from_s", segment.stretch().fromSeconds());
    time(json, "to_s", segment.stretch().toSeconds());
    json.writeStringField("verdict", segment.verdict().word());
    if (segment.verdict() instanceof Verdict.Decoded decoded) {
      json.writeStringField("state", decoded.state());
      probability(json, "probability", decoded.probability());
    } else {
      json.writeNullField("state");
      json.writeNullField("probability");
    }
    Optional<Rhythm> observed = segment.observed();
    JsonFields.text(json, "observed", observed.map(Phrase::print));
    json.writeEndObject();
  }

  private static void notes(JsonGenerator json, List<Observation> observations) throws IOException {
    json.writeArrayFieldStart("notes");
    for (Observation observation : observations) {
      String name = observations.size() > 1 ? observation.recording().origin().name() + ": " : "";
      List<String> notes = new ArrayList<>(observation.recording().origin().notes());
      notes.addAll(observation.notes());
      for (String note : notes) {
        json.writeString(name + note);
      }
    }
    json.writeEndArray();
  }

  private static void pair(JsonGenerator json, double from, double to) throws IOException {
    json.writeNumber(JsonNumber.of(from, 3, 1));
    json.writeNumber(JsonNumber.of(to, 3, 1));
    json.writeEndArray();
  }

  private static void time(JsonGenerator json, String key, double seconds) throws IOException {
    JsonFields.number(json, key, seconds, 3, 1);
  }

  private static void quantity(JsonGenerator json, String key, double value) throws IOException {
    JsonFields.number(json, key, value, 3, 0);
  }

  private static void probability(JsonGenerator json, String key, double value) throws IOException {
    JsonFields.number(json, key, value >= 0 ? Math.min(value, 1) : 0, 6, 1);
  }
}

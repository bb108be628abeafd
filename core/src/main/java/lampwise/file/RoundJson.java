package lampwise.file;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.decode.Next;
import lampwise.decode.Verdict;
import lampwise.service.CellsDue;
import lampwise.service.Check;
import lampwise.service.Fixture;
import lampwise.service.HandOver;
import lampwise.service.Job;
import lampwise.service.KitLine;
import lampwise.service.LampRead;
import lampwise.service.MakeSafe;
import lampwise.service.Round;
import lampwise.service.Step;
import lampwise.service.Urgency;
import lampwise.service.Visit;
import lampwise.service.Who;
import lampwise.service.Worklist;

/**
 * Writes a round as JSON: one object and no line end; keys always stand in the same order and none
 * is left out. Probabilities are rounded to millionths, minutes and weights to hundredths.
 */
public final class RoundJson {
  /** The value of {@code lampwise-round}. */
  public static final int VERSION = 1;

  private RoundJson() {}

  /**
   * Writes a round.
   *
   * @param out where to; not closed
   * @param round the round
   * @throws IOException if {@code out} fails
   */
  public static void write(Writer out, Round round) throws IOException {
    Worklist worklist = round.worklist();
    try (JsonGenerator json = JsonFields.to(out)) {
      json.writeStartObject();
      json.writeNumberField("lampwise-round", VERSION);
      json.writeStringField("title", round.title());
      json.writeStringField("day", round.day());
      json.writeBooleanField("invented", round.invented());
      json.writeNumberField("fixtures", round.fixtures().size());
      json.writeNumberField(
          "readings", round.readings().values().stream().mapToInt(List::size).sum());
      json.writeArrayFieldStart("jobs");
      for (Job job : worklist.jobs()) {
        job(json, job);
      }
      json.writeEndArray();
      JsonFields.texts(json, "in_order", ids(worklist.inOrder()));
      again(json, worklist.again());
      kit(json, worklist.kit());
      handOvers(json, worklist.handOvers());
      cells(json, worklist.cellsDue());
      JsonFields.texts(json, "not_visited", ids(worklist.notVisited()));
      unused(json, "strays", round.strays());
      unused(json, "refused", round.refused());
      json.writeEndObject();
    }
  }

  private static List<String> ids(List<Fixture> fixtures) {
    return fixtures.stream().map(Fixture::id).toList();
  }

  private static void job(JsonGenerator json, Job job) throws IOException {
    json.writeStartObject();
    json.writeStringField("fixture", job.fixture().id());
    json.writeStringField("place", job.fixture().place());
    json.writeStringField("kind", job.fixture().kind().word());
    json.writeStringField("complaint", job.complaint().word());
    JsonFields.texts(json, "urgent", job.reasons().stream().map(Urgency::word).toList());
    JsonFields.number(json, "weight", job.weight(), 2, 1);
    if (job.lamp().isPresent()) {
      json.writeObjectFieldStart("lamp");
      lamp(json, job.lamp().get());
      json.writeEndObject();
    } else {
      json.writeNullField("lamp");
    }
    DiagnosisJson.causes(json, job.causes());
    JsonFields.text(json, "make_safe", job.safe().map(MakeSafe::id));
    JsonFields.texts(json, "before", job.before().stream().map(Check::id).toList());
    Optional<Step> next = job.next();
    if (next.isPresent()) {
      json.writeObjectFieldStart("next");
      DiagnosisJson.next(json, next.get());
      json.writeEndObject();
    } else {
      json.writeNullField("next");
    }
    JsonFields.number(json, "minutes", job.minutes(), 2, 1);
    JsonFields.texts(json, "parts", job.parts());
    JsonFields.text(json, "waits_for", job.waitsFor().map(Who::word));
    DiagnosisJson.visits(json, "lately", job.lately());
    json.writeEndObject();
  }

  private static void lamp(JsonGenerator json, LampRead lamp) throws IOException {
    json.writeStringField("recording", lamp.recording());
    json.writeStringField("verdict", lamp.verdict().word());
    boolean decoded = lamp.verdict() instanceof Verdict.Decoded;
    JsonFields.text(json, "state", decoded ? Optional.of(lamp.seen().state()) : Optional.empty());
    JsonFields.text(
        json, "condition", decoded ? Optional.of(lamp.seen().condition()) : Optional.empty());
    JsonFields.number(json, "probability", lamp.seen().probability().orElse(Double.NaN), 6, 1);
    JsonFields.text(json, "observed", Optional.of(lamp.observed()).filter(text -> !text.isEmpty()));
  }

  private static void again(JsonGenerator json, Map<String, LampRead> again) throws IOException {
    json.writeArrayFieldStart("again");
    for (Map.Entry<String, LampRead> entry : again.entrySet()) {
      json.writeStartObject();
      json.writeStringField("fixture", entry.getKey());
      LampRead lamp = entry.getValue();
      lamp(json, lamp);
      Optional<String> reason = Optional.empty();
      Optional<Next> next = Optional.empty();
      if (lamp.verdict() instanceof Verdict.Undecided undecided) {
        reason = Optional.of(undecided.reason());
        next = Optional.of(undecided.next());
      } else if (lamp.verdict() instanceof Verdict.Unreadable unreadable) {
        reason = Optional.of(unreadable.reason());
        next = Optional.of(unreadable.next());
      }
      JsonFields.text(json, "reason", reason);
      ReadingJson.next(json, next);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void kit(JsonGenerator json, List<KitLine> kit) throws IOException {
    json.writeArrayFieldStart("kit");
    for (KitLine line : kit) {
      json.writeStartObject();
      json.writeStringField("part", line.part());
      json.writeNumberField("count", line.count());
      JsonFields.texts(json, "fixtures", line.fixtures());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void handOvers(JsonGenerator json, List<HandOver> overs) throws IOException {
    json.writeArrayFieldStart("hand_overs");
    for (HandOver over : overs) {
      json.writeStartObject();
      json.writeStringField("fixture", over.fixture().id());
      json.writeStringField("to", over.who().word());
      JsonFields.text(json, "left", over.visit().map(Visit::when));
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void cells(JsonGenerator json, List<CellsDue> due) throws IOException {
    json.writeArrayFieldStart("cells_due");
    for (CellsDue one : due) {
      json.writeStartObject();
      json.writeStringField("fixture", one.fixture().id());
      JsonFields.text(json, "since", Optional.of(one.since()).filter(day -> !day.isEmpty()));
      if (one.days() >= 0) {
        json.writeNumberField("days", one.days());
      } else {
        json.writeNullField("days");
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void unused(JsonGenerator json, String key, List<Round.Unused> unused)
      throws IOException {
    json.writeArrayFieldStart(key);
    for (Round.Unused one : unused) {
      json.writeStartObject();
      json.writeStringField("recording", one.recording());
      json.writeStringField("why", one.why());
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}

package lampwise.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.service.Act;
import lampwise.service.Answer;
import lampwise.service.Cause;
import lampwise.service.Caution;
import lampwise.service.ClosingStep;
import lampwise.service.Diagnosis;
import lampwise.service.Requirement;
import lampwise.service.Situation;
import lampwise.service.Step;
import lampwise.service.Who;
import lampwise.service.Work;
import lampwise.sheet.Power;

/**
 * Writes a visit as JSON: what it started from, what happened, how probable each cause is, and what
 * to do next. One object and no line end; keys always stand in the same order and none is left out.
 * Probabilities are rounded to millionths, minutes to hundredths.
 */
public final class DiagnosisJson {
  /** The value of {@code lampwise-diagnosis}. */
  public static final int VERSION = 1;

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .disable(StreamWriteFeature.FLUSH_PASSED_TO_STREAM)
          .build();

  private DiagnosisJson() {}

  /**
   * Writes a visit.
   *
   * @param out where to; not closed
   * @param visit the visit
   * @throws IOException if {@code out} fails
   */
  public static void write(Writer out, Diagnosis visit) throws IOException {
    Situation from = visit.situation();
    try (JsonGenerator json = FACTORY.createGenerator(out)) {
      json.writeStartObject();
      json.writeNumberField("lampwise-diagnosis", VERSION);
      json.writeBooleanField("invented", visit.isInvented());
      json.writeStringField("kind", from.kind().word());
      text(json, "power", from.power().map(Power::word));
      json.writeStringField("complaint", from.complaint().word());
      texts(json, "recent", from.recent().stream().map(Work::word).toList());
      found(json, visit.acts());
      json.writeArrayFieldStart("causes");
      for (Map.Entry<Cause, Double> entry : visit.causes().entrySet()) {
        json.writeStartObject();
        json.writeStringField("cause", entry.getKey().id());
        json.writeStringField("name", entry.getKey().name());
        number(json, "probability", entry.getValue(), 1e6);
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeObjectFieldStart("next");
      next(json, visit.next());
      json.writeEndObject();
      json.writeEndObject();
    }
  }

  private static void found(JsonGenerator json, List<Act> acts) throws IOException {
    json.writeArrayFieldStart("found");
    for (Act act : acts) {
      if (act instanceof Act.Found found) {
        json.writeStartObject();
        json.writeStringField("check", found.finding().check());
        json.writeStringField("answer", found.finding().answer());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
    json.writeArrayFieldStart("tried");
    for (Act act : acts) {
      if (act instanceof Act.Tried tried) {
        json.writeStartObject();
        json.writeStringField("remedy", tried.remedy());
        json.writeBooleanField("worked", tried.worked());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
  }

  /** What the kinds of steps have in common; what one does not have is null or empty. */
  private record Shown(
      String does,
      Optional<String> id,
      String say,
      List<String> steps,
      List<Answer> answers,
      List<String> parts,
      List<String> missing,
      List<Requirement> verify,
      double minutes,
      double expected,
      Optional<Who> to,
      Optional<String> result) {}

  private static Shown shown(Step step) {
    if (step instanceof Step.Secure secure) {
      return new Shown(
          "make-safe",
          Optional.of(secure.rule().id()),
          secure.rule().sign(),
          secure.rule().steps(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          Double.NaN,
          Double.NaN,
          Optional.empty(),
          Optional.empty());
    }
    if (step instanceof Step.Look look) {
      return new Shown(
          "check",
          Optional.of(look.check().id()),
          look.check().question(),
          look.check().steps(),
          look.check().answers(),
          List.of(),
          List.of(),
          List.of(),
          look.check().minutes(),
          look.expectedMinutes(),
          Optional.empty(),
          Optional.empty());
    }
    if (step instanceof Step.Mend mend) {
      return new Shown(
          "repair",
          Optional.of(mend.remedy().id()),
          mend.remedy().name(),
          mend.remedy().steps(),
          List.of(),
          mend.remedy().parts(),
          mend.missing(),
          mend.remedy().verify(),
          mend.remedy().minutes(),
          mend.expectedMinutes(),
          Optional.empty(),
          Optional.empty());
    }
    if (step instanceof Step.HandOver over) {
      return new Shown(
          "hand-over",
          over.remedy().map(remedy -> remedy.id()),
          over.remedy().map(remedy -> remedy.name()).orElse("Hand over to: " + over.to().word()),
          over.remedy().map(remedy -> remedy.steps()).orElse(List.of()),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          Double.NaN,
          over.expectedMinutes(),
          Optional.of(over.to()),
          Optional.empty());
    }
    Step.Close close = (Step.Close) step;
    return new Shown(
        "close",
        Optional.empty(),
        close.why(),
        close.lines().stream().map(ClosingStep::text).toList(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Double.NaN,
        Double.NaN,
        Optional.empty(),
        Optional.of(close.outcome().word()));
  }

  private static void next(JsonGenerator json, Step step) throws IOException {
    Shown shown = shown(step);
    json.writeStringField("do", shown.does());
    text(json, "id", shown.id());
    json.writeStringField("say", shown.say());
    texts(json, "cautions", step.cautions().stream().map(Caution::text).toList());
    texts(json, "steps", shown.steps());
    json.writeArrayFieldStart("answers");
    for (Answer answer : shown.answers()) {
      json.writeStartObject();
      json.writeStringField("answer", answer.word());
      json.writeStringField("means", answer.means());
      json.writeEndObject();
    }
    json.writeEndArray();
    texts(json, "parts", shown.parts());
    texts(json, "missing", shown.missing());
    json.writeArrayFieldStart("verify");
    for (Requirement requirement : shown.verify()) {
      json.writeStartObject();
      json.writeStringField("check", requirement.check());
      texts(json, "answers", requirement.answers());
      json.writeEndObject();
    }
    json.writeEndArray();
    number(json, "minutes", shown.minutes(), 100);
    number(json, "expected_minutes", shown.expected(), 100);
    text(json, "to", shown.to().map(Who::word));
    text(json, "result", shown.result());
    json.writeStringField("why", step.why());
  }

  private static void texts(JsonGenerator json, String key, List<String> texts) throws IOException {
    json.writeArrayFieldStart(key);
    for (String text : texts) {
      json.writeString(text);
    }
    json.writeEndArray();
  }

  private static void text(JsonGenerator json, String key, Optional<String> text)
      throws IOException {
    if (text.isPresent()) {
      json.writeStringField(key, text.get());
    } else {
      json.writeNullField(key);
    }
  }

  private static void number(JsonGenerator json, String key, double value, double scale)
      throws IOException {
    if (Math.abs(value) <= Double.MAX_VALUE) {
      json.writeNumberField(key, Math.round(value * scale) / scale);
    } else {
      json.writeNullField(key);
    }
  }
}

package lampwise.file;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import lampwise.service.Act;
import lampwise.service.Answer;
import lampwise.service.Cause;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.ClosingStep;
import lampwise.service.Diagnosis;
import lampwise.service.MakeSafe;
import lampwise.service.Remedy;
import lampwise.service.Requirement;
import lampwise.service.Situation;
import lampwise.service.Step;
import lampwise.service.Visit;
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

  private DiagnosisJson() {}

  /**
   * Writes a visit that rests on the guide alone, at a fixture that was not visited lately.
   *
   * @param out where to; not closed
   * @param visit the visit
   * @throws IOException if {@code out} fails
   */
  public static void write(Writer out, Diagnosis visit) throws IOException {
    write(out, visit, OptionalInt.empty(), List.of());
  }

  /**
   * Writes a visit.
   *
   * @param out where to; not closed
   * @param visit the visit
   * @param learnedFrom how many visits of a log its shares are learned from; empty if none was
   *     asked
   * @param repeats the visits to the same fixture shortly before, the oldest first; may be empty
   * @throws IOException if {@code out} fails
   */
  public static void write(
      Writer out, Diagnosis visit, OptionalInt learnedFrom, List<Visit> repeats)
      throws IOException {
    Situation from = visit.situation();
    try (JsonGenerator json = JsonFields.to(out)) {
      json.writeStartObject();
      json.writeNumberField("lampwise-diagnosis", VERSION);
      json.writeBooleanField("invented", visit.isInvented());
      json.writeStringField("kind", from.kind().word());
      JsonFields.text(json, "power", from.power().map(Power::word));
      json.writeStringField("complaint", from.complaint().word());
      JsonFields.texts(json, "recent", from.recent().stream().map(Work::word).toList());
      if (learnedFrom.isPresent()) {
        json.writeNumberField("learned_from", learnedFrom.getAsInt());
      } else {
        json.writeNullField("learned_from");
      }
      visits(json, "repeats", repeats);
      found(json, visit.acts());
      causes(json, visit.causes());
      json.writeObjectFieldStart("next");
      next(json, visit.next());
      json.writeEndObject();
      json.writeEndObject();
    }
  }

  /** The causes with their probabilities, in the order given. */
  static void causes(JsonGenerator json, Map<Cause, Double> causes) throws IOException {
    json.writeArrayFieldStart("causes");
    for (Map.Entry<Cause, Double> entry : causes.entrySet()) {
      json.writeStartObject();
      json.writeStringField("cause", entry.getKey().id());
      json.writeStringField("name", entry.getKey().name());
      JsonFields.number(json, "probability", entry.getValue(), 6, 1);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Visits in short; without a cause it is null. */
  static void visits(JsonGenerator json, String key, List<Visit> visits) throws IOException {
    json.writeArrayFieldStart(key);
    for (Visit visit : visits) {
      json.writeStartObject();
      json.writeStringField("when", visit.when());
      json.writeStringField("result", visit.outcome().word());
      JsonFields.text(
          json, "cause", Optional.of(visit.done().cause()).filter(cause -> !cause.isEmpty()));
      json.writeEndObject();
    }
    json.writeEndArray();
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

  /**
   * What nearly every kind of step has.
   *
   * @param minutes how long the step takes; NaN where that is open
   * @param expected the minutes to a working fixture that are expected from here; NaN if none are
   */
  private record Shown(
      String does,
      Optional<String> id,
      String say,
      List<String> steps,
      double minutes,
      double expected) {}

  private static Shown shown(Step step) {
    if (step instanceof Step.Secure secure) {
      MakeSafe rule = secure.rule();
      return new Shown(
          "make-safe", Optional.of(rule.id()), rule.sign(), rule.steps(), Double.NaN, Double.NaN);
    }
    if (step instanceof Step.Look look) {
      Check check = look.check();
      return new Shown(
          "check",
          Optional.of(check.id()),
          check.question(),
          check.steps(),
          check.minutes(),
          look.expectedMinutes());
    }
    if (step instanceof Step.Mend mend) {
      Remedy remedy = mend.remedy();
      return new Shown(
          "repair",
          Optional.of(remedy.id()),
          remedy.name(),
          remedy.steps(),
          remedy.minutes(),
          mend.expectedMinutes());
    }
    if (step instanceof Step.HandOver over) {
      return new Shown(
          "hand-over",
          over.remedy().map(Remedy::id),
          over.remedy().map(Remedy::name).orElse("Hand over to: " + over.to().word()),
          over.remedy().map(Remedy::steps).orElse(List.of()),
          Double.NaN,
          over.expectedMinutes());
    }
    Step.Close close = (Step.Close) step;
    List<String> lines = close.lines().stream().map(ClosingStep::text).toList();
    return new Shown("close", Optional.empty(), close.why(), lines, Double.NaN, Double.NaN);
  }

  /** The fields of a step. */
  static void next(JsonGenerator json, Step step) throws IOException {
    Shown shown = shown(step);
    Optional<Step.Mend> mend = only(Step.Mend.class, step);
    json.writeStringField("do", shown.does());
    JsonFields.text(json, "id", shown.id());
    json.writeStringField("say", shown.say());
    JsonFields.texts(json, "cautions", step.cautions().stream().map(Caution::text).toList());
    JsonFields.texts(json, "steps", shown.steps());
    json.writeArrayFieldStart("answers");
    for (Answer answer :
        only(Step.Look.class, step).map(look -> look.check().answers()).orElse(List.of())) {
      json.writeStartObject();
      json.writeStringField("answer", answer.word());
      json.writeStringField("means", answer.means());
      json.writeEndObject();
    }
    json.writeEndArray();
    JsonFields.texts(json, "parts", mend.map(m -> m.remedy().parts()).orElse(List.of()));
    JsonFields.texts(json, "missing", mend.map(Step.Mend::missing).orElse(List.of()));
    json.writeArrayFieldStart("verify");
    for (Requirement requirement : mend.map(m -> m.remedy().verify()).orElse(List.of())) {
      json.writeStartObject();
      json.writeStringField("check", requirement.check());
      JsonFields.texts(json, "answers", requirement.answers());
      json.writeEndObject();
    }
    json.writeEndArray();
    JsonFields.number(json, "minutes", shown.minutes(), 2, 1);
    JsonFields.number(json, "expected_minutes", shown.expected(), 2, 1);
    JsonFields.text(json, "to", only(Step.HandOver.class, step).map(over -> over.to().word()));
    JsonFields.text(
        json, "result", only(Step.Close.class, step).map(close -> close.outcome().word()));
    json.writeStringField("why", step.why());
  }

  private static <T extends Step> Optional<T> only(Class<T> kind, Step step) {
    return kind.isInstance(step) ? Optional.of(kind.cast(step)) : Optional.empty();
  }
}

package lampwise.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.RecordingPlan;
import lampwise.decode.Watching;
import lampwise.sheet.CodeSheet;

/**
 * Writes a recording plan as JSON, one object and no line end a call. The keys always stand in the
 * same order and none is left out; what there is not is {@code null}.
 */
public final class PlanJson {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .disable(StreamWriteFeature.FLUSH_PASSED_TO_STREAM)
          .build();

  private PlanJson() {}

  /**
   * Writes a plan.
   *
   * @param out where to; not closed
   * @param sheet the sheet
   * @param by how is recorded, in words
   * @param watching how is recorded
   * @param pairs the pairs of the plan
   * @throws IOException if {@code out} fails
   */
  public static void write(
      Writer out, CodeSheet sheet, String by, Watching watching, List<RecordingPlan.Pair> pairs)
      throws IOException {
    try (JsonGenerator json = FACTORY.createGenerator(out)) {
      json.writeStartObject();
      json.writeNumberField("lampwise-json", ReadingJson.VERSION);
      json.writeStringField("sheet", sheet.title());
      json.writeStringField("basis", sheet.basis().word());
      json.writeStringField("by", by);
      number(json, "rate_hz", watching.rateHz());
      number(json, "sure", OptionalDouble.of(RecordingPlan.SURE));
      json.writeArrayFieldStart("pairs");
      for (RecordingPlan.Pair pair : pairs) {
        json.writeStartObject();
        json.writeStringField("first", pair.first());
        json.writeStringField("second", pair.second());
        number(json, "seconds", pair.seconds());
        text(json, "provoke", pair.provoke());
        text(json, "otherwise", pair.otherwise());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
  }

  private static void number(JsonGenerator json, String key, OptionalDouble value)
      throws IOException {
    json.writeFieldName(key);
    if (value.isPresent()) {
      json.writeNumber(JsonNumber.of(value.getAsDouble(), 6, 0));
    } else {
      json.writeNull();
    }
  }

  private static void text(JsonGenerator json, String key, Optional<String> text)
      throws IOException {
    if (text.isPresent()) {
      json.writeStringField(key, text.get());
    } else {
      json.writeNullField(key);
    }
  }
}

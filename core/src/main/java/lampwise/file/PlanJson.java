package lampwise.file;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import lampwise.decode.RecordingPlan;
import lampwise.decode.Watching;
import lampwise.sheet.CodeSheet;

/**
 * Writes a recording plan as JSON, one object and no line end a call. The keys always stand in the
 * same order and none is left out; what there is not is {@code null}.
 */
public final class PlanJson {
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
    try (JsonGenerator json = JsonFields.to(out)) {
      json.writeStartObject();
      json.writeNumberField("lampwise-json", ReadingJson.VERSION);
      json.writeStringField("sheet", sheet.title());
      json.writeStringField("basis", sheet.basis().word());
      json.writeStringField("by", by);
      JsonFields.number(json, "rate_hz", watching.rateHz().orElse(Double.NaN), 6, 0);
      JsonFields.number(json, "sure", RecordingPlan.SURE, 6, 0);
      json.writeArrayFieldStart("pairs");
      for (RecordingPlan.Pair pair : pairs) {
        json.writeStartObject();
        json.writeStringField("first", pair.first());
        json.writeStringField("second", pair.second());
        JsonFields.number(json, "seconds", pair.seconds().orElse(Double.NaN), 6, 0);
        JsonFields.text(json, "provoke", pair.provoke());
        JsonFields.text(json, "otherwise", pair.otherwise());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
  }
}

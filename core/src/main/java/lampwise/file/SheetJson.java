package lampwise.file;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.SheetCheck;
import lampwise.sheet.SheetWarning;
import lampwise.sheet.TellApart;

/**
 * Writes what a check of a code sheet found as JSON, one object and no line end a call. The keys
 * always stand in the same order and none is left out; what there is not is {@code null} or an
 * empty list.
 */
public final class SheetJson {
  private SheetJson() {}

  /**
   * Writes a sheet that is right: its states and the warnings of {@link SheetCheck}.
   *
   * @param out where to; not closed
   * @param file the file's name
   * @param sheet the sheet
   * @throws IOException if {@code out} fails
   */
  public static void right(Writer out, String file, CodeSheet sheet) throws IOException {
    try (JsonGenerator json = start(out, file, true)) {
      json.writeStringField("sheet", sheet.title());
      json.writeStringField("basis", sheet.basis().word());
      number(json, "clock", sheet.clockTolerance());
      if (sheet.blinkSeconds().isPresent()) {
        number(json, "blink_s", sheet.blinkSeconds().getAsDouble());
      } else {
        json.writeNullField("blink_s");
      }
      json.writeArrayFieldStart("states");
      for (LampState state : sheet.states()) {
        state(json, state);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("warnings");
      for (SheetWarning warning : SheetCheck.warnings(sheet)) {
        warning(json, sheet, warning);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("faults");
      json.writeEndArray();
      json.writeEndObject();
    }
  }

  /**
   * Writes that a sheet was refused; what it holds is null.
   *
   * @param out where to; not closed
   * @param file the file's name
   * @param faults why, in the order of the file; line and column are null where they are 0
   * @throws IOException if {@code out} fails
   */
  public static void refused(Writer out, String file, List<FileFault> faults) throws IOException {
    try (JsonGenerator json = start(out, file, false)) {
      for (String key : List.of("sheet", "basis", "clock", "blink_s", "states", "warnings")) {
        json.writeNullField(key);
      }
      json.writeArrayFieldStart("faults");
      for (FileFault fault : faults) {
        json.writeStartObject();
        json.writeStringField("message", fault.message());
        JsonFields.place(json, "line", fault.line());
        JsonFields.place(json, "column", fault.column());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
  }

  private static JsonGenerator start(Writer out, String file, boolean right) throws IOException {
    JsonGenerator json = JsonFields.to(out);
    json.writeStartObject();
    json.writeNumberField("lampwise-json", ReadingJson.VERSION);
    json.writeStringField("file", file);
    json.writeBooleanField("right", right);
    return json;
  }

  private static void state(JsonGenerator json, LampState state) throws IOException {
    json.writeStartObject();
    json.writeStringField("state", state.name());
    json.writeStringField("rhythm", Phrase.print(state.rhythm()));
    json.writeStringField("means", state.means());
    json.writeStringField("condition", state.condition().word());
    json.writeStringField("seen", state.seen().word());
    number(json, "weight", state.weight());
    JsonFields.text(json, "label_says", state.labelSays());
    JsonFields.text(json, "cleared_by", state.clearedBy());
    JsonFields.text(json, "lamp", state.lamp());
    json.writeEndObject();
  }

  private static void warning(JsonGenerator json, CodeSheet sheet, SheetWarning warning)
      throws IOException {
    json.writeStartObject();
    json.writeStringField(
        "kind", warning instanceof SheetWarning.Rotation ? "rotation" : "same-rhythm");
    json.writeStringField("first", warning.first());
    json.writeStringField("second", warning.second());
    json.writeStringField("message", warning.message());
    JsonFields.text(
        json,
        "check",
        TellApart.check(
            sheet.state(warning.first()).orElseThrow(),
            sheet.state(warning.second()).orElseThrow()));
    json.writeEndObject();
  }

  private static void number(JsonGenerator json, String key, double value) throws IOException {
    JsonFields.number(json, key, value, 6, 0);
  }
}

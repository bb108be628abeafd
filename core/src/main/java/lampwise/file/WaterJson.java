package lampwise.file;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import lampwise.service.Volume;
import lampwise.service.WaterCheck;
import lampwise.service.WaterFigure;
import lampwise.service.WaterLimit;
import lampwise.service.WaterUnit;
import lampwise.sheet.FixtureKind;

/** Writes a check of water figures as JSON. */
public final class WaterJson {
  /** The value of {@code lampwise-water}. */
  public static final int VERSION = 1;

  private WaterJson() {}

  /**
   * Something that was computed.
   *
   * @param what what it is
   * @param value its value, finite
   * @param unit its unit
   * @param how from what, or what it costs; may be empty
   */
  public record Computed(String what, double value, String unit, String how) {
    /**
     * From a value in the base unit.
     *
     * @param what what it is
     * @param base its value in the base unit of the quantity
     * @param unit the unit to give it in
     * @param how from what; may be empty
     * @return the value in that unit
     */
    public static Computed of(String what, double base, WaterUnit unit, String how) {
      return new Computed(what, unit.fromBase(base), unit.word(), how);
    }
  }

  /**
   * The object, without a line end; keys always stand in the same order and none is left out.
   *
   * @param kind the kind of fixture; empty if none was said
   * @param volume the volume that was measured; empty for none
   * @param check the check; empty if there was none
   * @param computed what was computed
   * @return the object
   */
  public static String object(
      Optional<FixtureKind> kind,
      Optional<Volume> volume,
      Optional<WaterCheck> check,
      List<Computed> computed) {
    StringWriter out = new StringWriter();
    try (JsonGenerator json = JsonFields.to(out)) {
      json.writeStartObject();
      json.writeNumberField("lampwise-water", VERSION);
      JsonFields.text(json, "kind", kind.map(FixtureKind::word));
      volume(json, volume);
      json.writeArrayFieldStart("figures");
      for (WaterFigure figure : check.map(WaterCheck::figures).orElse(List.of())) {
        figure(json, figure);
      }
      json.writeEndArray();
      JsonFields.texts(json, "says", check.map(WaterCheck::says).orElse(List.of()));
      JsonFields.texts(json, "unproven", check.map(WaterCheck::unproven).orElse(List.of()));
      json.writeArrayFieldStart("computed");
      for (Computed one : computed) {
        json.writeStartObject();
        json.writeStringField("what", one.what());
        JsonFields.number(json, "value", one.value(), 4, 0);
        json.writeStringField("unit", one.unit());
        JsonFields.text(json, "how", Optional.of(one.how()).filter(text -> !text.isEmpty()));
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static void volume(JsonGenerator json, Optional<Volume> volume) throws IOException {
    if (volume.isEmpty()) {
      json.writeNullField("volume");
      return;
    }
    json.writeObjectFieldStart("volume");
    JsonFields.number(json, "litres", volume.get().litres(), 4, 0);
    JsonFields.number(json, "unsure_litres", volume.get().unsure(), 4, 0);
    json.writeNumberField("flushes", volume.get().flushes());
    json.writeStringField("by", volume.get().method().word());
    json.writeEndObject();
  }

  private static void figure(JsonGenerator json, WaterFigure figure) throws IOException {
    WaterLimit limit = figure.limit();
    json.writeStartObject();
    json.writeStringField("of", limit.of().word());
    JsonFields.number(json, "value", figure.value(), 4, 0);
    JsonFields.number(json, "unsure", figure.unsure(), 4, 0);
    json.writeStringField("unit", limit.unit().word());
    JsonFields.number(json, "at_least", limit.atLeast().orElse(Double.NaN), 4, 0);
    JsonFields.number(json, "at_most", limit.atMost().orElse(Double.NaN), 4, 0);
    json.writeStringField("basis", limit.basis());
    json.writeStringField("sure", limit.sure());
    json.writeStringField("verdict", figure.verdict().word());
    if (figure.moreFlushes() > 0) {
      json.writeNumberField("more_flushes", figure.moreFlushes());
    } else {
      json.writeNullField("more_flushes");
    }
    json.writeEndObject();
  }
}

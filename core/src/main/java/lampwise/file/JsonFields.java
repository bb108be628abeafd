package lampwise.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;

/** What the writers of JSON have in common: a key is never left out, what there is not is null. */
final class JsonFields {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .disable(StreamWriteFeature.FLUSH_PASSED_TO_STREAM)
          .build();

  private JsonFields() {}

  /** A generator that neither closes nor flushes what it writes to. */
  static JsonGenerator to(Writer out) throws IOException {
    return FACTORY.createGenerator(out);
  }

  static void text(JsonGenerator json, String key, Optional<String> text) throws IOException {
    if (text.isPresent()) {
      json.writeStringField(key, text.get());
    } else {
      json.writeNullField(key);
    }
  }

  static void texts(JsonGenerator json, String key, List<String> texts) throws IOException {
    json.writeArrayFieldStart(key);
    for (String text : texts) {
      json.writeString(text);
    }
    json.writeEndArray();
  }

  /**
   * A number; null where it is none or infinite.
   *
   * @param most how many decimals at the most
   * @param least how many at the least
   */
  static void number(JsonGenerator json, String key, double value, int most, int least)
      throws IOException {
    if (Math.abs(value) <= Double.MAX_VALUE) {
      json.writeFieldName(key);
      json.writeNumber(JsonNumber.of(value, most, least));
    } else {
      json.writeNullField(key);
    }
  }

  /** A line or column of a file, from 1; null for 0. */
  static void place(JsonGenerator json, String key, int value) throws IOException {
    if (value > 0) {
      json.writeNumberField(key, value);
    } else {
      json.writeNullField(key);
    }
  }
}

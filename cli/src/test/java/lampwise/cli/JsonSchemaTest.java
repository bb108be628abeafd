package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lampwise.decode.Reading;
import lampwise.file.FileFault;
import lampwise.file.ReadingJson;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonSchemaTest {
  private static String example(String name) throws IOException {
    return Files.readString(JsonSchema.folder().resolve("examples").resolve(name + ".json"));
  }

  @Test
  void eachExampleHoldsToTheSchema() throws IOException {
    List<Path> examples;
    try (Stream<Path> files = Files.list(JsonSchema.folder().resolve("examples"))) {
      examples = files.sorted().toList();
    }
    assertEquals(6, examples.size());
    for (Path example : examples) {
      String line = Files.readString(example);
      assertEquals("", JsonSchema.READING.faults(line), example.toString());
      assertEquals(1, line.lines().count(), example + " must be one line");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "decoded    | \"lampwise-json\":1     | \"lampwise-json\":2",
        "decoded    | \"state\":\"cells-low\",\"condition\" | \"state\":null,\"condition\"",
        "decoded    | \"power-low\",\"means\" | \"powerless\",\"means\"",
        "decoded    | \"probability\":0.997,\"candidates\" | \"probability\":1.7,\"candidates\"",
        "decoded    | \"next\":null,          | ``",
        "decoded    | \"notes\":              | \"remarks\":",
        "decoded    | [0.0,90.0]              | [0.0]",
        "decoded    | \"off_s\":0.54          | \"off_s\":\"NaN\"",
        "unlisted   | \"difference\":         | \"why\":",
        "unlisted   | \"reason\":null         | \"reason\":\"because\"",
        "undecided  | \"kind\":\"check\"      | \"kind\":\"record\"",
        "undecided  | \"reason\":\"two states of the sheet are dark\" | \"reason\":null",
        "unreadable | \"seconds\":45          | \"seconds\":0",
        "unreadable | \"state\":null          | \"state\":\"cells-low\"",
        "without-sheet | \"sheet\":null       | \"sheet\":\"Hall B\"",
        "refused    | \"line\":12             | \"line\":0",
        "refused    | \"message\"             | \"text\"",
      })
  void aSpoiledExampleIsFound(String name, String found, String spoiled) throws IOException {
    String line = example(name);
    assertTrue(line.contains(found), found + " is not in " + name);
    assertFalse(
        JsonSchema.READING.faults(line.replace(found, spoiled == null ? "" : spoiled)).isEmpty());
  }

  @Test
  void writtenReadingsHoldToTheSchema() throws IOException {
    CodeSheet sheet = Readings.sheet(Basis.MANUAL);
    for (Reading reading :
        List.of(
            Readings.decoded(), Readings.unlisted(), Readings.undecided(), Readings.unreadable())) {
      StringWriter out = new StringWriter();
      ReadingJson.reading(out, "a.txt", sheet, reading);
      assertEquals("", JsonSchema.READING.faults(out.toString()), out.toString());
      assertTrue(
          out.toString().contains("\"verdict\":\"" + reading.verdict().word() + "\""),
          out.toString());
    }
  }

  @Test
  void writtenObservationsAndRefusalsHoldToTheSchema() throws IOException {
    StringWriter seen = new StringWriter();
    ReadingJson.observation(seen, "-", Readings.observation("standard input"));
    assertEquals("", JsonSchema.READING.faults(seen.toString()), seen.toString());
    StringWriter refused = new StringWriter();
    ReadingJson.refused(refused, "a.txt", new FileFault("a.txt", 1, 0, "empty"));
    assertEquals("", JsonSchema.READING.faults(refused.toString()), refused.toString());
  }

  @Test
  void theExamplesHaveTheKeysInTheOrderOfTheOutput() throws IOException {
    StringWriter out = new StringWriter();
    ReadingJson.reading(out, "a.txt", Readings.sheet(Basis.MANUAL), Readings.decoded());
    for (String name : List.of("decoded", "unlisted", "undecided", "unreadable", "without-sheet")) {
      int place = 0;
      String line = example(name);
      for (String key : outerKeys(out.toString())) {
        int found = line.indexOf("\"" + key + "\":", place);
        assertTrue(found >= place, key + " is out of place in " + name);
        place = found;
      }
    }
  }

  /** The keys of the outermost object, in order. */
  private static List<String> outerKeys(String line) {
    java.util.ArrayList<String> keys = new java.util.ArrayList<>();
    int depth = 0;
    int start = -1;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"' && start < 0) {
        start = i + 1;
      } else if (c == '"') {
        if (depth == 1 && line.startsWith("\":", i)) {
          keys.add(line.substring(start, i));
        }
        start = -1;
      } else if (start < 0 && (c == '{' || c == '[')) {
        depth++;
      } else if (start < 0 && (c == '}' || c == ']')) {
        depth--;
      }
    }
    assertEquals(21, keys.size(), keys.toString());
    return keys;
  }
}

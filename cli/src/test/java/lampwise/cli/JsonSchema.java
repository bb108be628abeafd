package lampwise.cli;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The schemas of what is written as JSON. */
enum JsonSchema {
  /** A line of {@code decode --json}. */
  READING("lampwise-json-1"),
  /** A line of {@code truth.jsonl}. */
  TRUTH("lampwise-truth-1"),
  /** The object of {@code diagnose --json}. */
  DIAGNOSIS("lampwise-diagnosis-1"),
  /** The object of {@code plan --json}. */
  PLAN("lampwise-plan-1"),
  /** The object of {@code sheet --json}. */
  SHEET("lampwise-sheet-1"),
  /** The object of {@code water --json}. */
  WATER("lampwise-water-1"),
  /** The object of {@code round --json}. */
  ROUND("lampwise-round-1");

  private final Schema schema;

  JsonSchema(String name) {
    try {
      schema =
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
              .getSchema(
                  Files.readString(folder().resolve(name + ".schema.json")), InputFormat.JSON);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The folder of the schemas and of the examples that hold to them. */
  static Path folder() {
    return CommandRun.root().resolve("testdata").resolve("json");
  }

  /** What the schema says against a line; empty if nothing. */
  String faults(String line) {
    StringBuilder faults = new StringBuilder();
    schema.validate(line, InputFormat.JSON).forEach(fault -> faults.append(fault).append('\n'));
    return faults.toString();
  }
}

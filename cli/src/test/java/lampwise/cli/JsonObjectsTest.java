package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.file.DiagnosisJson;
import lampwise.file.GuideReader;
import lampwise.service.Act;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.GuideException;
import lampwise.service.Step;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What diagnose, plan and sheet print as JSON holds to its schema. */
class JsonObjectsTest {
  private static final CommandRun.Setting ROOT = CommandRun.Setting.in(CommandRun.root());
  private static final int MOST_STEPS = 15;

  /** Of few states: a plan takes a while for each pair of them. */
  private static final String TWO_LAMPS = "testdata/sheets/two-lamps.sheet.yaml";

  private static String object(Diagnosis visit) {
    StringWriter out = new StringWriter();
    try {
      DiagnosisJson.write(out, visit);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  /** The visit after the step, with the answer of that number; each third remedy works. */
  private static Optional<Diagnosis> after(Diagnosis visit, Step step, int number) {
    if (step instanceof Step.Secure secure) {
      return Optional.of(visit.with(new Act.Secured(secure.rule().id())));
    }
    if (step instanceof Step.Look look) {
      int of = look.check().answers().size();
      String word = look.check().answers().get(number % of).word();
      return Optional.of(visit.with(new Finding(look.check().id(), word)));
    }
    if (step instanceof Step.Mend mend) {
      return Optional.of(visit.with(new Act.Tried(mend.remedy().id(), number % 3 == 2)));
    }
    return step instanceof Step.HandOver over
        ? Optional.of(visit.with(new Act.Handed(over.to())))
        : Optional.empty();
  }

  @Test
  void everyStepOfManyVisitsHoldsToTheSchema() {
    Guide guide = GuideReader.builtIn();
    Set<FixtureKind> walked = EnumSet.noneOf(FixtureKind.class);
    Set<StepKind> seen = EnumSet.noneOf(StepKind.class);
    for (FixtureKind kind : FixtureKind.values()) {
      for (Complaint complaint :
          EnumSet.of(Complaint.DEAD, Complaint.RUNS_ON, Complaint.LAMP_ONLY)) {
        Optional<Diagnosis> visit = start(guide, kind, complaint);
        for (int i = 0; visit.isPresent() && i < MOST_STEPS; i++) {
          walked.add(kind);
          String line = object(visit.get());
          assertEquals("", JsonSchema.DIAGNOSIS.faults(line), line);
          Step step = visit.get().next();
          seen.add(StepKind.of(step));
          visit = after(visit.get(), step, i + complaint.ordinal());
        }
      }
    }
    assertEquals(EnumSet.allOf(StepKind.class), seen);
    assertEquals(EnumSet.allOf(FixtureKind.class), walked);
  }

  private static Optional<Diagnosis> start(Guide guide, FixtureKind kind, Complaint complaint) {
    try {
      return Optional.of(Diagnosis.start(guide, kind, Optional.of(Power.CELLS), complaint));
    } catch (GuideException e) {
      return Optional.empty();
    }
  }

  private enum StepKind {
    SECURE,
    LOOK,
    MEND,
    HAND_OVER,
    CLOSE;

    static StepKind of(Step step) {
      return step instanceof Step.Secure
          ? SECURE
          : step instanceof Step.Look
              ? LOOK
              : step instanceof Step.Mend ? MEND : step instanceof Step.Close ? CLOSE : HAND_OVER;
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"--observer careful", "--rate 10", "--observer hurried"})
  void aPlanHoldsToTheSchema(String options) {
    String[] words = ("plan --json --sheet " + TWO_LAMPS + " " + options).split(" ");
    CommandRun run = ROOT.run("", words);
    assertEquals("", JsonSchema.PLAN.faults(run.out()), () -> run.out() + run.err());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "demo",
        "testdata/sheets/minimal.sheet.yaml",
        "testdata/sheets/two-lamps.sheet.yaml",
        "testdata/sheets/many-faults.sheet.yaml",
        "testdata/sheets/wrong-key.sheet.yaml"
      })
  void aCheckOfASheetHoldsToTheSchema(String sheet) {
    CommandRun run = ROOT.run("", "sheet", "--json", sheet);
    assertTrue(run.out().startsWith("{"), run.err());
    assertEquals("", JsonSchema.SHEET.faults(run.out()), run.out());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "DIAGNOSIS | \"do\":\"check\"          | \"do\":\"wait\"",
        "DIAGNOSIS | \"invented\":false,     | ''",
        "DIAGNOSIS | \"learned_from\":null   | \"learned_from\":-1",
        "DIAGNOSIS | \"repeats\":[],         | ''",
        "DIAGNOSIS | \"repeats\":[]          | \"repeats\":[{\"when\":\"today\"}]",
        "DIAGNOSIS | \"to\":null             | \"to\":\"plumber\"",
        "DIAGNOSIS | \"complaint\":\"dead\"    | \"complaint\":\"sad\"",
        "PLAN      | \"sure\":0.99           | \"sure\":99",
        "PLAN      | \"by\":                 | \"how\":",
        "SHEET     | \"right\":true          | \"right\":false",
        "SHEET     | \"warnings\":           | \"hints\":"
      })
  void theSchemaRefusesWhatIsSpoiled(JsonSchema schema, String found, String spoiled) {
    String line =
        switch (schema) {
          case DIAGNOSIS ->
              object(
                  start(GuideReader.builtIn(), FixtureKind.URINAL, Complaint.DEAD).orElseThrow());
          case PLAN -> ROOT.run("", "plan", "--sheet", TWO_LAMPS, "--json").out();
          case SHEET -> ROOT.run("", "sheet", "--json", "demo").out();
          default -> throw new AssertionError(schema);
        };
    assertTrue(line.contains(found), line);
    assertEquals("", schema.faults(line));
    assertFalse(schema.faults(line.replace(found, spoiled)).isEmpty());
  }

  @Test
  void everySchemaOfTheFolderHasItsName() throws IOException {
    try (Stream<Path> files = Files.list(JsonSchema.folder())) {
      long schemas =
          files.filter(file -> file.getFileName().toString().endsWith(".schema.json")).count();
      assertEquals(JsonSchema.values().length, schemas);
    }
  }
}

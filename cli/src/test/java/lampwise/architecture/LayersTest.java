package lampwise.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the layers, and shows with planted faults that every rule can fail. */
class LayersTest {
  /** For each rule, the planted members or classes that it must report. */
  private static final Map<String, List<String>> PLANTED =
      Map.ofEntries(
          Map.entry("arrows of light", List.of("planted.light.Faults.arrow")),
          Map.entry("arrows of rhythm", List.of("planted.rhythm.Faults.arrow")),
          Map.entry("arrows of sheet", List.of("planted.sheet.Faults.arrow")),
          Map.entry("arrows of decode", List.of("planted.decode.Faults.arrow")),
          Map.entry(
              "arrows of service",
              List.of("planted.service.Faults.arrow", "planted.service.Faults.deepArrow")),
          Map.entry("arrows of file", List.of("planted.file.Faults.arrow")),
          Map.entry(
              "arrows of sim",
              List.of("planted.sim.Faults.arrow", "planted.sim.Faults.arrowToScore")),
          Map.entry("arrows of sim.score", List.of("planted.sim.score.Faults.arrow")),
          Map.entry("arrows of sim.check", List.of("planted.sim.check.Faults.arrow")),
          Map.entry("arrows of cli", List.of("planted.cli.Faults.arrow")),
          Map.entry("known packages", List.of("planted.stray.Faults")),
          Map.entry(
              "plain Java",
              List.of(
                  "planted.light.Faults.regex",
                  "planted.light.Faults.threads",
                  "planted.light.Faults.reflection",
                  "planted.light.Faults.text",
                  "planted.light.Faults.input",
                  "planted.light.Faults.logging",
                  "planted.light.Faults.invoke")),
          Map.entry(
              "plain Java members",
              List.of("planted.light.Faults.byName", "planted.light.Faults.environment")),
          Map.entry(
              "no printing",
              List.of(
                  "planted.file.Faults.printsOut",
                  "planted.file.Faults.printsErr",
                  "planted.file.Faults.printsTrace")),
          Map.entry(
              "no clock",
              List.of(
                  "planted.file.Faults.millis",
                  "planted.file.Faults.nanos",
                  "planted.file.Faults.instant",
                  "planted.file.Faults.localDate",
                  "planted.file.Faults.clock",
                  "planted.file.Faults.date",
                  "planted.file.Faults.zone")),
          Map.entry(
              "no chance",
              List.of(
                  "planted.sim.Faults.random",
                  "planted.sim.Faults.mathRandom",
                  "planted.sim.Faults.shuffle")),
          Map.entry(
              "no default locale",
              List.of(
                  "planted.cli.Faults.lowerCase",
                  "planted.cli.Faults.upperCaseByReference",
                  "planted.cli.Faults.format",
                  "planted.cli.Faults.formatted",
                  "planted.cli.Faults.printf",
                  "planted.cli.Faults.number")),
          Map.entry(
              "no default charset",
              List.of(
                  "planted.cli.Faults.bytes",
                  "planted.cli.Faults.text",
                  "planted.cli.Faults.reader",
                  "planted.cli.Faults.writer",
                  "planted.cli.Faults.printWriter")),
          Map.entry("no state", List.of("planted.sim.Faults.calls")),
          Map.entry(
              "jqwik", List.of("planted.sim.score.Faults.jqwik", "planted.sim.score.Faults.junit")),
          Map.entry(
              "file libraries",
              List.of(
                  "planted.cli.Faults.csv", "planted.cli.Faults.yaml", "planted.cli.Faults.json")),
          Map.entry(
              "command line libraries",
              List.of("planted.file.Faults.picocli", "planted.file.Faults.picture")));

  private static JavaClasses real;
  private static JavaClasses planted;

  @BeforeAll
  static void readClasses() {
    real =
        new ClassFileImporter()
            .withImportOption(location -> !location.contains("/test-classes/"))
            .importPackages("lampwise");
    planted = new ClassFileImporter().importPackages("planted");
  }

  @TestFactory
  Stream<DynamicTest> theCodeKeepsEveryRule() {
    return new Layers("lampwise")
        .rules().entrySet().stream()
            .map(rule -> DynamicTest.dynamicTest(rule.getKey(), () -> rule.getValue().check(real)));
  }

  @Test
  void theCodeOfEveryModuleIsSeen() {
    assertTrue(real.contain("lampwise.light.Recording"));
    assertTrue(real.contain("lampwise.cli.Main"));
  }

  @TestFactory
  Stream<DynamicTest> everyRuleReportsItsPlantedFaultsAndNothingElse() {
    return new Layers("planted")
        .rules().entrySet().stream()
            .map(
                rule ->
                    DynamicTest.dynamicTest(
                        rule.getKey(),
                        () ->
                            assertEquals(
                                new TreeSet<>(PLANTED.getOrDefault(rule.getKey(), List.of())),
                                reported(rule.getValue()))));
  }

  @Test
  void everyRuleHasAPlantedFault() {
    assertEquals(PLANTED.keySet(), new Layers("planted").rules().keySet());
  }

  /** The planted member, or else class, that each line of a rule's report names first. */
  private static Set<String> reported(ArchRule rule) {
    Set<String> names = new TreeSet<>();
    for (String line : rule.evaluate(planted).getFailureReport().getDetails()) {
      int start = line.indexOf("<planted.") + 1;
      int end = start;
      while (end < line.length() && "(>".indexOf(line.charAt(end)) < 0) {
        end++;
      }
      names.add(line.substring(start, end));
    }
    return names;
  }
}

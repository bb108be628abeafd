package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.service.Area;
import lampwise.service.Cause;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.GuideCheck;
import lampwise.service.MakeSafe;
import lampwise.service.Opening;
import lampwise.service.Remedy;
import lampwise.service.Requirement;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Holds over the whole built-in guide. */
class BuiltInGuideTest {
  private static final Guide GUIDE = GuideReader.builtIn();

  /** Anything that is done at a fixture: a check or a remedy. */
  private record Step(
      String id,
      boolean flushes,
      List<Opening> opens,
      List<Requirement> before,
      List<Caution> cautions) {
    boolean warnsOf(String caution) {
      return cautions.stream().anyMatch(c -> c.id().equals(caution));
    }
  }

  private static List<Step> steps() {
    return Stream.concat(
            GUIDE.checks().stream()
                .map(c -> new Step(c.id(), c.flushes(), c.opens(), c.before(), c.cautions())),
            GUIDE.remedies().stream()
                .map(r -> new Step(r.id(), r.flushes(), r.opens(), r.before(), r.cautions())))
        .toList();
  }

  private static List<String> idsOf(Stream<Step> steps) {
    return steps.map(Step::id).toList();
  }

  @Test
  void theCheckerHasNothingToSay() {
    assertEquals(List.of(), GuideCheck.warnings(GUIDE));
  }

  @Test
  void holdsThirtyCausesAndEveryArea() {
    assertTrue(GUIDE.causes().size() >= 30, GUIDE.causes().size() + " causes");
    Set<Area> areas = EnumSet.noneOf(Area.class);
    GUIDE.causes().forEach(cause -> areas.add(cause.area()));
    assertEquals(EnumSet.allOf(Area.class), areas);
  }

  @Test
  void saysThatItsFiguresHaveNoSource() {
    assertTrue(GUIDE.basis().startsWith("common practice, no source"), GUIDE.basis());
  }

  @Test
  void everyAnswerRowAddsUpToOneUnderEveryCause() {
    for (Check check : GUIDE.checks()) {
      for (Cause cause : GUIDE.causes()) {
        double sum = check.chances(cause.id()).stream().mapToDouble(Double::doubleValue).sum();
        assertEquals(1, sum, 1e-9, check.id() + " under " + cause.id());
      }
    }
  }

  @Test
  void theLampSaysSomethingUnderEveryCause() {
    for (Cause cause : GUIDE.causes()) {
      double sum = 0;
      for (Condition condition : Condition.values()) {
        sum += GUIDE.chance(cause, condition);
      }
      assertEquals(1, sum, 1e-9, cause.id());
    }
    Cause low = GUIDE.cause("cells-low").orElseThrow();
    assertEquals(0.6, GUIDE.chance(low, Condition.POWER_LOW), 1e-9);
    assertEquals(0.25 * 0.8, GUIDE.chance(low, Condition.READY), 1e-9);
  }

  @ParameterizedTest
  @EnumSource(Complaint.class)
  void everyComplaintHasCausesAtTheKindsThatCanHaveIt(Complaint complaint) {
    for (FixtureKind kind : FixtureKind.values()) {
      if (complaint == Complaint.TEMPERATURE && kind != FixtureKind.FAUCET) {
        continue;
      }
      for (Power power : Power.values()) {
        int causes = GUIDE.causes(kind, Optional.of(power), complaint).size();
        assertTrue(causes >= 4, complaint + " at " + kind + ", " + power + ": " + causes);
      }
    }
  }

  @Test
  void nothingFlushesBeforeTheBowlWasFoundClear() {
    assertEquals(
        List.of(),
        idsOf(
            steps().stream()
                .filter(Step::flushes)
                .filter(
                    step -> !step.before().contains(new Requirement("bowl", List.of("clear"))))));
    Check bowl = GUIDE.check("bowl").orElseThrow();
    assertTrue(bowl.bowlLook());
    assertFalse(bowl.flushes());
    assertEquals(List.of(), bowl.before());
  }

  @Test
  void everythingThatFlushesSaysLookFirst() {
    assertEquals(
        List.of(),
        idsOf(steps().stream().filter(step -> step.flushes() && !step.warnsOf("bowl-first"))));
  }

  @Test
  void waterIsOpenedOnlyBehindAStopThatHolds() {
    Set<String> tooSoon = new HashSet<>();
    for (Step step : steps()) {
      if (step.opens().contains(Opening.WATER)) {
        boolean proven =
            step.before().contains(new Requirement("stop-holds", List.of("holds", "riser")));
        // The pressure is let out by a flush.
        if (!proven
            || !step.flushes()
            || !step.warnsOf("prove-stop")
            || !step.warnsOf("thrown-parts")) {
          tooSoon.add(step.id());
        }
      }
    }
    assertEquals(Set.of(), tooSoon);
  }

  @Test
  void electricsAndUnitsAreOpenedWithTheirCautions() {
    assertEquals(
        List.of(),
        idsOf(
            steps().stream()
                .filter(step -> step.opens().contains(Opening.ELECTRICS))
                .filter(step -> !step.warnsOf("mains") || !step.warnsOf("power-back"))));
    assertEquals(
        List.of(),
        idsOf(
            steps().stream()
                .filter(step -> step.opens().contains(Opening.UNIT))
                .filter(step -> !step.warnsOf("power-back"))));
    assertTrue(
        GUIDE.remedies().stream().filter(r -> r.opens().contains(Opening.UNIT)).count() >= 5,
        "hardly any remedy opens the unit");
  }

  @Test
  void mixerWorkEndsWithAThermometer() {
    for (Remedy remedy : GUIDE.remedies()) {
      boolean mixer =
          remedy.fixes().keySet().stream()
              .anyMatch(id -> GUIDE.cause(id).orElseThrow().area() == Area.MIXER);
      if (mixer) {
        assertTrue(
            remedy.verify().stream().anyMatch(proof -> proof.check().equals("thermometer")),
            remedy.id());
        assertTrue(
            remedy.cautions().stream().anyMatch(c -> c.id().equals("measure-after-mixer")),
            remedy.id());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "running, running",
    "overflowing, overflowing",
    "sewage, sewage",
    "electrics, wet-electrics",
    "too-hot, too-hot"
  })
  void everyDangerIsMadeSafe(String answer, String rule) {
    assertEquals(
        List.of(rule),
        calledFor(FixtureKind.FAUCET, Complaint.WEAK, List.of(new Finding("danger", answer))));
  }

  @Test
  void runningWaterIsStoppedBeforeAnyQuestion() {
    for (Complaint complaint : List.of(Complaint.RUNS_ON, Complaint.NEVER_STOPS)) {
      for (FixtureKind kind : FixtureKind.values()) {
        assertEquals(List.of("running"), calledFor(kind, complaint, List.of()));
      }
    }
    assertEquals(List.of(), calledFor(FixtureKind.URINAL, Complaint.DEAD, List.of()));
  }

  private static List<String> calledFor(
      FixtureKind kind, Complaint complaint, List<Finding> found) {
    return GUIDE.makeSafe().stream()
        .filter(rule -> rule.calledFor(kind, Optional.of(Power.CELLS), complaint, found))
        .map(MakeSafe::id)
        .toList();
  }

  @Test
  void everyStopThatIsClosedIsCounted() {
    List<String> uncounted = new ArrayList<>();
    texts()
        .forEach(
            (id, texts) -> {
              String all = String.join(" ", texts).toLowerCase(Locale.ROOT);
              boolean closes = all.contains("close the stop") || all.contains("close both stops");
              if (closes && !all.contains("turns")) {
                uncounted.add(id);
              }
            });
    assertEquals(List.of(), uncounted);
  }

  @Test
  void noTextIsEmptyOrEndsOddly() {
    texts()
        .forEach(
            (id, texts) -> {
              for (String text : texts) {
                assertTrue(
                    Character.isUpperCase(text.codePointAt(0)) || Character.isDigit(text.charAt(0)),
                    id + ": " + text);
                assertTrue(".?".indexOf(text.charAt(text.length() - 1)) >= 0, id + ": " + text);
              }
            });
  }

  /** The sentences of every part, by its id: what to do, and what is asked. */
  private static Map<String, List<String>> texts() {
    Map<String, List<String>> texts = new LinkedHashMap<>();
    for (Check check : GUIDE.checks()) {
      List<String> all = new ArrayList<>(check.steps());
      all.add(check.question());
      check.cautions().forEach(caution -> all.add(caution.text()));
      texts.put(check.id(), all);
    }
    for (Remedy remedy : GUIDE.remedies()) {
      List<String> all = new ArrayList<>(remedy.steps());
      remedy.cautions().forEach(caution -> all.add(caution.text()));
      texts.put(remedy.id(), all);
    }
    for (MakeSafe rule : GUIDE.makeSafe()) {
      List<String> all = new ArrayList<>(rule.steps());
      rule.cautions().forEach(caution -> all.add(caution.text()));
      texts.put(rule.id(), all);
    }
    return texts;
  }

  @Test
  void aVisitEndsWithWhatItsWorkAsksFor() {
    long always =
        GUIDE.closing().stream().filter(s -> s.isDue(FixtureKind.FAUCET, List.of())).count();
    long afterWater =
        GUIDE.closing().stream()
            .filter(s -> s.isDue(FixtureKind.FAUCET, List.of(Opening.WATER)))
            .count();
    assertEquals(always + 2, afterWater);
    assertTrue(
        GUIDE.closing().stream()
            .filter(s -> s.isDue(FixtureKind.FAUCET, List.of()))
            .anyMatch(s -> s.text().contains("temperature")));
  }
}

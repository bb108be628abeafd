package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import lampwise.decode.Candidate;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.file.GuideReader;
import lampwise.file.SheetReader;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Visits over the built-in guide. */
class DiagnosisTest {
  private static final Guide GUIDE = GuideReader.builtIn();

  private static Diagnosis start(FixtureKind kind, Complaint complaint, Work... recent) {
    return Diagnosis.start(GUIDE, kind, Optional.of(Power.CELLS), complaint, recent);
  }

  private static Diagnosis found(Diagnosis visit, String... pairs) {
    Diagnosis after = visit;
    for (int i = 0; i < pairs.length; i += 2) {
      after = after.with(new Finding(pairs[i], pairs[i + 1]));
    }
    return after;
  }

  private static double chance(Diagnosis visit, String cause) {
    return visit.causes().entrySet().stream()
        .filter(entry -> entry.getKey().id().equals(cause))
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  /** Any visit, answered at random: safe at each step, it ends, and no cause is ever lost. */
  @Tag("long")
  @Test
  void noVisitFlushesBeforeTheBowlWasLookedAt() {
    SplittableRandom random = new SplittableRandom(1125);
    List<Situation> situations = DiagnosisStudy.situations(GUIDE);
    int flushes = 0;
    for (int round = 0; round < 200; round++) {
      Situation situation = situations.get(random.nextInt(situations.size()));
      Diagnosis visit = Diagnosis.start(GUIDE, situation);
      int steps = 0;
      for (Step step = visit.next(); !(step instanceof Step.Close); step = visit.next()) {
        assertTrue(steps++ < 150, "no end: " + situation);
        String bowl = lastAnswer(visit, "bowl");
        boolean flush =
            step instanceof Step.Look look && look.check().flushes()
                || step instanceof Step.Mend mend && mend.remedy().flushes();
        if (flush) {
          flushes++;
          assertEquals("clear", bowl, situation + ": " + step);
          assertFalse(step.cautions().isEmpty(), situation + ": " + step);
        }
        visit = visit.with(any(step, random));
        double sum = 0;
        for (double probability : visit.causes().values()) {
          assertTrue(probability > 0, "a cause was lost");
          sum += probability;
        }
        assertEquals(1, sum, 1e-9);
      }
    }
    assertTrue(flushes > 200, "too few to say anything: " + flushes);
  }

  private static String lastAnswer(Diagnosis visit, String check) {
    String answer = "";
    for (Act act : visit.acts()) {
      if (act instanceof Act.Found found && found.finding().check().equals(check)) {
        answer = found.finding().answer();
      }
    }
    return answer;
  }

  private static Act any(Step step, SplittableRandom random) {
    if (step instanceof Step.Secure secure) {
      return new Act.Secured(secure.rule().id());
    }
    if (step instanceof Step.Look look) {
      if (random.nextInt(12) == 0) {
        return new Act.Skipped(look.check().id());
      }
      List<Answer> answers = look.check().answers();
      int first = random.nextInt(3) > 0 ? 0 : random.nextInt(answers.size());
      return new Act.Found(new Finding(look.check().id(), answers.get(first).word()));
    }
    if (step instanceof Step.Mend mend) {
      return new Act.Tried(mend.remedy().id(), random.nextInt(4) == 0);
    }
    return new Act.Handed(((Step.HandOver) step).to());
  }

  @Test
  void waterThatRunsIsStoppedBeforeAnyQuestion() {
    for (Complaint complaint : List.of(Complaint.RUNS_ON, Complaint.NEVER_STOPS)) {
      Step.Secure step =
          assertInstanceOf(Step.Secure.class, start(FixtureKind.URINAL, complaint).next());
      assertEquals("running", step.rule().id());
      assertFalse(step.cautions().isEmpty());
    }
  }

  @Test
  void aFindingCanCallForMakingSafeAgain() {
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.RUNS_ON);
    visit = visit.with(new Act.Secured("running"));
    visit = found(visit, "danger", "none", "bowl", "clear", "stop-holds", "holds");
    assertFalse(visit.next() instanceof Step.Secure);
    visit = found(visit, "reopen", "runs");
    assertInstanceOf(Step.Secure.class, visit.next());
  }

  @Test
  void nothingGoesOnWhereWaterStandsNearElectrics() {
    Diagnosis visit = found(start(FixtureKind.FAUCET, Complaint.DEAD), "danger", "electrics");
    assertInstanceOf(Step.Secure.class, visit.next());
    visit = visit.with(new Act.Secured("wet-electrics"));
    Step.HandOver over = assertInstanceOf(Step.HandOver.class, visit.next());
    assertEquals(Who.ELECTRICIAN, over.to());
    visit = visit.with(new Act.Handed(over.to()));
    assertEquals(Outcome.MADE_SAFE, assertInstanceOf(Step.Close.class, visit.next()).outcome());
  }

  @Test
  void aSlipOfOneAnswerCanBeMadeGood() {
    Diagnosis visit =
        found(
            start(FixtureKind.WATER_CLOSET, Complaint.DEAD),
            "danger",
            "none",
            "bowl",
            "clear",
            "window",
            "film");
    assertTrue(chance(visit, "film-left") > 0.2);
    Diagnosis corrected = found(visit, "window", "clean");
    Diagnosis straight =
        found(
            start(FixtureKind.WATER_CLOSET, Complaint.DEAD),
            "danger",
            "none",
            "bowl",
            "clear",
            "window",
            "clean");
    assertEquals(straight.causes(), corrected.causes());
  }

  @Test
  void recentWorkRaisesWhatItCanHaveCaused() {
    Diagnosis usual = start(FixtureKind.WATER_CLOSET, Complaint.WEAK);
    Diagnosis after = start(FixtureKind.WATER_CLOSET, Complaint.WEAK, Work.VALVE);
    assertTrue(chance(after, "not-seated") > 3 * chance(usual, "not-seated"));
  }

  @Test
  void aFailedRepairLeavesItsCauseLessLikely() {
    Diagnosis visit =
        found(start(FixtureKind.WATER_CLOSET, Complaint.DEAD), "danger", "none", "bowl", "clear");
    Diagnosis after = visit.with(new Act.Tried("new-cells", false));
    assertTrue(chance(after, "cells-low") < 0.1 * chance(visit, "cells-low"));
    assertTrue(chance(after, "cells-low") > 0);
  }

  @Test
  void aMissingPartCountsASecondTrip() {
    Situation all = Situation.of(FixtureKind.URINAL, Optional.of(Power.CELLS), Complaint.LAMP_ONLY);
    Situation none =
        new Situation(
            all.kind(), all.power(), all.complaint(), List.of(), Optional.of(List.of()), all.may());
    String[] said = {"danger", "none", "bowl", "clear", "cells-date", "old", "cells-load", "low"};
    Diagnosis with = found(Diagnosis.start(GUIDE, all), said);
    Diagnosis without = found(Diagnosis.start(GUIDE, none), said);
    Step.Mend here = assertInstanceOf(Step.Mend.class, with.next());
    Step.Mend later = assertInstanceOf(Step.Mend.class, without.next());
    assertEquals("new-cells", here.remedy().id());
    assertEquals(List.of(), here.missing());
    assertEquals(List.of("cell set"), later.missing());
    double trip = later.expectedMinutes() - here.expectedMinutes();
    assertEquals(GUIDE.secondTripMinutes(), trip, 5);
  }

  /**
   * Probability over prior of each condition, so that the sheet's own priors do not count twice.
   */
  @Test
  void aReadingEntersAsLikelihood() {
    CodeSheet sheet = SheetReader.demo();
    Reading nothing = new LampDecoder().decode(sheet, List.of());
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.DEAD);
    Diagnosis unread = visit.with(sheet, nothing);
    visit
        .causes()
        .forEach((cause, p) -> assertEquals(p, chance(unread, cause.id()), 1e-9, cause.id()));

    List<Candidate> candidates = new ArrayList<>();
    String low =
        sheet.states().stream()
            .filter(state -> state.condition() == Condition.POWER_LOW)
            .findFirst()
            .orElseThrow()
            .name();
    double prior = 1.0 / sheet.states().size();
    sheet
        .states()
        .forEach(
            state ->
                candidates.add(
                    new Candidate(state.name(), prior, 0, state.name().equals(low) ? 1 : 0)));
    Reading sure =
        new Reading(
            new Verdict.Decoded(low, 1, new Window(0, 60)),
            candidates,
            Optional.empty(),
            List.of(),
            List.of());
    Diagnosis after = visit.with(sheet, sure);
    double before = chance(visit, "cells-low") / chance(visit, "window-dirty");
    double ratio = chance(after, "cells-low") / chance(after, "window-dirty");
    // The guide has power-low at 60 % and nothing: the floor of a hundredth beside the best stands.
    assertTrue(ratio > 20 * before, before + " became " + ratio);
    assertTrue(chance(after, "window-dirty") > 0);
  }

  @Test
  void whatIsNotThereIsRefused() {
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.DEAD);
    assertEquals(
        "the guide has no check moon",
        assertThrows(GuideException.class, () -> found(visit, "moon", "full")).getMessage());
    assertEquals(
        "the check bowl has no answer empty",
        assertThrows(GuideException.class, () -> found(visit, "bowl", "empty")).getMessage());
    assertEquals(
        "the check aerator is not for this kind of fixture or power",
        assertThrows(GuideException.class, () -> found(visit, "aerator", "good")).getMessage());
    assertEquals(
        "the guide has no cause for the complaint temperature of a urinal",
        assertThrows(GuideException.class, () -> start(FixtureKind.URINAL, Complaint.TEMPERATURE))
            .getMessage());
  }
}

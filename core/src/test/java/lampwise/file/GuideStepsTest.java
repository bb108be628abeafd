package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lampwise.service.Act;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.Remedy;
import lampwise.service.Situation;
import lampwise.service.Step;
import lampwise.service.Who;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;

/** The next step over a guide that is small enough to reckon by hand. */
class GuideStepsTest {
  /** New cells: 8 min, and one chance in seven that somebody else takes 90 min more. */
  private static final double RENEW = 8 + (1 - 0.9 * 0.95) * 90;

  private static Diagnosis start(String guide, Complaint complaint) throws FileException {
    return start(guide, Power.CELLS, complaint);
  }

  private static Diagnosis start(String guide, Power power, Complaint complaint)
      throws FileException {
    return Diagnosis.start(
        GuideText.read(guide), Situation.of(FixtureKind.URINAL, Optional.of(power), complaint));
  }

  private static Diagnosis found(Diagnosis visit, String... pairs) {
    Diagnosis after = visit;
    for (int i = 0; i < pairs.length; i += 2) {
      after = after.with(new Finding(pairs[i], pairs[i + 1]));
    }
    return after;
  }

  private static String next(Diagnosis visit) {
    Step step = visit.next();
    if (step instanceof Step.Look look) {
      return "look " + look.check().id();
    }
    if (step instanceof Step.Mend mend) {
      return "mend " + mend.remedy().id();
    }
    if (step instanceof Step.HandOver over) {
      return "hand over" + over.remedy().map(remedy -> " " + remedy.id()).orElse("");
    }
    return step instanceof Step.Secure secure ? "secure " + secure.rule().id() : "close";
  }

  private static double minutes(Diagnosis visit) {
    Step step = visit.next();
    if (step instanceof Step.Look look) {
      return look.expectedMinutes();
    }
    return step instanceof Step.Mend mend
        ? mend.expectedMinutes()
        : ((Step.HandOver) step).expectedMinutes();
  }

  @Test
  void whatARemedyWaitsForIsLookedAtFirst() throws FileException {
    Diagnosis visit = start(GuideText.SMALL, Complaint.LAMP_ONLY);
    assertEquals("look bowl", next(visit));
    assertEquals(RENEW + 0.5, minutes(visit), 1e-9);
    assertEquals(
        "It must be known before \"New cells\"; likeliest are \"Cells empty\" (90 %) and"
            + " \"Something else\" (10 %), 22 min expected to a working fixture.",
        visit.next().why());
    Diagnosis clear = found(visit, "bowl", "clear");
    assertEquals("mend renew", next(clear));
    assertEquals(RENEW, minutes(clear), 1e-9);
    assertEquals(
        "It has a chance of 86 % and takes 8.0 min; likeliest are \"Cells empty\" (90 %) and"
            + " \"Something else\" (10 %); 21 min expected to a working fixture, 25 min by asking"
            + " first or handing over.",
        clear.next().why());
  }

  @Test
  void nothingIsMendedThatMayNotBeBegun() throws FileException {
    Diagnosis visit = start(GuideText.SMALL, Complaint.LAMP_ONLY);
    Diagnosis full = found(visit, "bowl", "full");
    assertEquals("secure full", next(full));
    Diagnosis safe = full.with(new Act.Secured("full"));
    assertEquals("hand over", next(safe));
    assertEquals(90, minutes(safe), 1e-9);
    assertTrue(safe.next().why().endsWith("handing over takes 90 min, going on 94 min."));
    Diagnosis asked = found(safe, "cells", "low");
    assertTrue(asked.next().why().endsWith("and nothing else can be done here."));
    Diagnosis skipped = visit.with(new Act.Skipped("bowl"));
    assertEquals("hand over", next(skipped));
    assertTrue(
        skipped.next().why().endsWith("; nothing may flush before the bowl was looked at."),
        skipped.next()::why);
  }

  @Test
  void whatWorkMayHaveChangedIsLookedAtAnew() throws FileException {
    Diagnosis visit =
        found(start(GuideText.SMALL, Complaint.DEAD), "bowl", "full", "cells", "low")
            .with(new Act.Secured("full"));
    Diagnosis tried = visit.with(new Act.Tried("unblock", false));
    assertEquals("look bowl", next(tried));
    assertTrue(tried.next().why().startsWith("It must be known before \"New cells\""));
    assertEquals("mend renew", next(found(tried, "bowl", "clear")));
    Diagnosis both = found(tried, "bowl", "clear").with(new Act.Tried("renew", false));
    assertEquals("hand over", next(both));
    assertTrue(both.next().why().endsWith("and nothing else can be done here."));
  }

  @Test
  void anAnswerIsCorrectedUntilSomethingWasTried() throws FileException {
    Diagnosis visit = found(start(GuideText.SMALL, Complaint.DEAD), "bowl", "full");
    Diagnosis corrected = found(visit, "bowl", "clear");
    assertEquals(
        found(start(GuideText.SMALL, Complaint.DEAD), "bowl", "clear").causes(),
        corrected.causes());
    Diagnosis tried = visit.with(new Act.Tried("unblock", false));
    assertEquals(tried.causes(), found(tried, "bowl", "clear").causes());
    // Asked for the first time after the work, it can be corrected like any other.
    assertEquals(
        found(tried, "cells", "low").causes(),
        found(tried, "cells", "good", "cells", "low").causes());
  }

  @Test
  void checksWaitForOneAnother() throws FileException {
    String both =
        GuideText.changed("before: {bowl: [clear]}", "before: {bowl: [clear], cells: [low]}");
    Diagnosis visit = start(both, Complaint.LAMP_ONLY);
    assertEquals("look bowl", next(visit));
    assertEquals(RENEW + 4.5, minutes(visit), 1e-9);
    assertEquals("look cells", next(found(visit, "bowl", "clear")));
    assertEquals(RENEW + 4, minutes(found(visit, "bowl", "clear")), 1e-9);
    assertEquals("hand over", next(found(visit, "bowl", "clear", "cells", "good")));

    String chain =
        GuideText.changed("before: {bowl: [clear]}", "before: {cells: [low]}")
            .replace("minutes: 4\n", "minutes: 4\n    before: {bowl: [clear]}\n");
    Diagnosis first = start(chain, Complaint.LAMP_ONLY);
    assertEquals("look bowl", next(first));
    assertEquals(RENEW + 4.5, minutes(first), 1e-9);
    assertEquals("look cells", next(found(first, "bowl", "clear")));
    assertEquals("mend renew", next(found(first, "bowl", "clear", "cells", "low")));
    assertEquals("hand over", next(first.with(new Act.Skipped("bowl"))));
    assertEquals("hand over", next(first.with(new Act.Skipped("cells"))));
  }

  @Test
  void othersSeeThemselvesToWhatTheirWorkWaitsFor() throws FileException {
    String plumber = GuideText.changed("who: anyone", "who: plumber");
    Diagnosis visit = start(plumber, Complaint.LAMP_ONLY);
    assertEquals("hand over renew", next(visit));
    assertEquals(RENEW, minutes(visit), 1e-9);
    assertEquals("hand over renew", next(visit.with(new Act.Skipped("bowl"))));
  }

  @Test
  void whoHasTheMostToMendIsHandedOverTo() throws FileException {
    String dear =
        GuideText.changed("minutes: 8\n    who: anyone", "minutes: 200\n    who: electrician");
    Step.HandOver over = (Step.HandOver) start(dear, Complaint.LAMP_ONLY).next();
    assertEquals(Optional.empty(), over.remedy());
    assertEquals(Who.ELECTRICIAN, over.to());
    assertEquals(90, over.expectedMinutes(), 1e-9);
    // What cannot be behind it is nobody's to mend.
    String drain =
        dear.replace("who: electrician", "who: technician")
            .replace("minutes: 20\n", "minutes: 20\n    who: owner\n");
    Step.HandOver other = (Step.HandOver) start(drain, Complaint.LAMP_ONLY).next();
    assertEquals(Who.PLUMBER, other.to());
  }

  @Test
  void aCheckForOthersIsNotAsked() throws FileException {
    String plumber =
        GuideText.changed(
            "power: [cells]\n    opens: [unit]",
            "power: [cells]\n    who: plumber\n    opens: [unit]");
    String waits =
        plumber.replace("before: {bowl: [clear]}", "before: {bowl: [clear], cells: [low]}");
    assertEquals("mend renew", next(found(start(plumber, Complaint.LAMP_ONLY), "bowl", "clear")));
    assertEquals("hand over", next(found(start(waits, Complaint.LAMP_ONLY), "bowl", "clear")));
  }

  @Test
  void aCheckIsWorthItsMinutes() throws FileException {
    Diagnosis visit = start(GuideText.SMALL, Complaint.DEAD);
    assertEquals("look bowl", next(visit));
    assertEquals(
        "Likeliest are \"Cells empty\" (50 %) and \"Blocked\" (33 %); this takes 0.5 min and leaves"
            + " 39 min expected to a working fixture, 42 min without asking.",
        visit.next().why());
    Diagnosis mains = start(GuideText.SMALL, Power.MAINS, Complaint.DEAD);
    assertEquals("look bowl", next(mains));
    assertEquals("hand over", next(found(mains, "bowl", "clear")));
    Diagnosis full = found(mains, "bowl", "full").with(new Act.Secured("full"));
    assertEquals("mend unblock", next(full));
    // Full under "blocked" 9 in 10, usually 1 in 20; each answer slips in 2 of 100.
    double blocked = 2 * (0.98 * 0.9 + 0.01);
    double chance = blocked / (blocked + 0.98 * 0.05 + 0.01);
    assertEquals(20 + (1 - 0.8 * chance) * 90, minutes(full), 1e-9);
  }

  @Test
  void aPartThatIsMissingTakesASecondTrip() throws FileException {
    Guide guide = GuideText.read(GuideText.SMALL);
    Situation without =
        new Situation(
            FixtureKind.URINAL,
            Optional.of(Power.CELLS),
            Complaint.LAMP_ONLY,
            List.of(),
            Optional.of(List.of()),
            Situation.TECHNICIAN);
    Diagnosis visit = found(Diagnosis.start(guide, without), "bowl", "clear", "cells", "low");
    assertEquals(RENEW + 30, minutes(visit), 1e-9);
    assertEquals(List.of("cell set"), ((Step.Mend) visit.next()).missing());
    Remedy renew = guide.remedy("renew").orElseThrow();
    assertEquals(renew.cautions(), visit.next().cautions());
  }
}

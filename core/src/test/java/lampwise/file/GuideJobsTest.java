package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.service.Cause;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Fixture;
import lampwise.service.Job;
import lampwise.service.Outcome;
import lampwise.service.Remedy;
import lampwise.service.Site;
import lampwise.service.Step;
import lampwise.service.Visit;
import lampwise.service.Who;
import lampwise.service.Worklist;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;

/** Jobs over a guide that is small enough to reckon by hand. */
class GuideJobsTest {
  private static final double RENEW = 8 + (1 - 0.9 * 0.95) * 90;

  private static Job job(String guide, Complaint complaint, Visit... visits) throws FileException {
    Fixture fixture =
        new Fixture(
            "a",
            "",
            FixtureKind.URINAL,
            Optional.of(Power.CELLS),
            "",
            "",
            "",
            "",
            false,
            "2026-01-02",
            "",
            Optional.of(complaint));
    Worklist.Basis basis =
        new Worklist.Basis(GuideText.read(guide), Site.unknown(), "2026-11-25", 730);
    return Worklist.of(basis, List.of(fixture), Map.of(), List.of(visits)).jobs().get(0);
  }

  private static Visit renewed(String... remedies) {
    return new Visit(
        "2026-11-20T10:00",
        "a",
        "",
        Optional.empty(),
        Optional.empty(),
        Visit.Lamp.unseen(),
        List.of(),
        new Visit.Done("", List.of(remedies), List.of(), OptionalDouble.empty()),
        List.of(),
        List.of(),
        Outcome.FIXED,
        "",
        "");
  }

  private static List<String> ids(List<Remedy> remedies) {
    return remedies.stream().map(Remedy::id).toList();
  }

  private static double share(Job job, String cause) {
    return job.causes().entrySet().stream()
        .filter(entry -> entry.getKey().id().equals(cause))
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  @Test
  void theBowlIsTakenForClear() throws FileException {
    Job job = job(GuideText.SMALL, Complaint.LAMP_ONLY);
    assertEquals(List.of("bowl"), job.before().stream().map(Check::id).toList());
    assertEquals("renew", ((Step.Mend) job.next().orElseThrow()).remedy().id());
    assertEquals(RENEW, job.minutes(), 1e-9);
    assertEquals(List.of("renew"), ids(job.remedies()));
    assertEquals(List.of("cell set"), job.parts());
    assertEquals(Optional.empty(), job.waitsFor());
    // Whatever answer stands first, the one that calls for nothing is taken.
    String turned =
        GuideText.changed(
                "answers: {clear: Clear, full: Full}", "answers: {full: Full, clear: Clear}")
            .replace("usual: {clear: 95 %, full: 5 %}", "usual: {full: 5 %, clear: 95 %}");
    assertEquals(job.minutes(), job(turned, Complaint.LAMP_ONLY).minutes(), 1e-9);
  }

  @Test
  void aSlowDrainIsNotTakenForClear() throws FileException {
    String slow = GuideText.SMALL.replace("share: {dead: 2}", "share: {slow-drain: 2}");
    Job job = job(slow.replace("lamp-only: 1}", "slow-drain: 1}"), Complaint.SLOW_DRAIN);
    assertEquals(List.of(), job.before());
    assertEquals("bowl", ((Step.Look) job.next().orElseThrow()).check().id());
    assertEquals(((Step.Look) job.next().orElseThrow()).expectedMinutes(), job.minutes());
  }

  @Test
  void aJobForOthersWaitsForThem() throws FileException {
    Job job = job(GuideText.changed("who: anyone", "who: plumber"), Complaint.LAMP_ONLY);
    assertEquals(Optional.of(Who.PLUMBER), job.waitsFor());
    assertEquals(RENEW, job.minutes(), 1e-9);
    assertEquals(List.of(), job.parts());
  }

  @Test
  void aComplaintThatTheGuideDoesNotKnowIsStillAJob() throws FileException {
    Job job = job(GuideText.SMALL, Complaint.WEAK);
    assertEquals(Optional.empty(), job.next());
    assertEquals(Map.of(), job.causes());
    assertTrue(Double.isNaN(job.minutes()));
    assertEquals(List.of(), job.remedies());
  }

  @Test
  void onlyWhatIsLikelyBringsItsRemedy() throws FileException {
    Job dead = job(GuideText.SMALL, Complaint.DEAD);
    // A clear bowl leaves the drain under a fifth.
    assertEquals(
        List.of("empty", "other", "blocked"),
        dead.causes().keySet().stream().map(Cause::id).toList());
    assertTrue(share(dead, "blocked") < 0.2);
    assertEquals(List.of("renew"), ids(dead.remedies()));
    String likely = GuideText.changed("share: {dead: 2}", "share: {dead: 20}");
    assertEquals(
        List.of("renew", "unblock"),
        ids(job(likely, Complaint.DEAD).remedies()).stream().sorted().toList());
  }

  @Test
  void cellsThatWereRenewedLatelyAreLessLikely() throws FileException {
    double usual = share(job(GuideText.SMALL, Complaint.LAMP_ONLY), "empty");
    assertEquals(0.9, usual, 1e-9);
    Job after = job(GuideText.SMALL, Complaint.LAMP_ONLY, renewed("renew"));
    assertEquals(4.5 / 5.5, share(after, "empty"), 1e-9);
    Job other = job(GuideText.SMALL, Complaint.LAMP_ONLY, renewed("unblock", "unknown"));
    assertEquals(0.9, share(other, "empty"), 1e-9);
    String valve =
        GuideText.changed("lately: {cells: 0.5}", "lately: {valve: 0.5}")
            .replace("steps: [Do it]", "opens: [water]\n    steps: [Do it]");
    assertEquals(
        4.5 / 5.5, share(job(valve, Complaint.LAMP_ONLY, renewed("unblock")), "empty"), 1e-9);
    String unit = GuideText.changed("lately: {cells: 0.5}", "lately: {unit: 0.5}");
    assertEquals(
        4.5 / 5.5, share(job(unit, Complaint.LAMP_ONLY, renewed("unblock")), "empty"), 1e-9);
  }
}

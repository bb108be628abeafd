package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.LampDecoder;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.service.CellsDue;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Fixture;
import lampwise.service.GuideException;
import lampwise.service.HandOver;
import lampwise.service.Job;
import lampwise.service.KitLine;
import lampwise.service.LampRead;
import lampwise.service.Outcome;
import lampwise.service.Round;
import lampwise.service.Site;
import lampwise.service.SiteUnits;
import lampwise.service.Step;
import lampwise.service.Urgency;
import lampwise.service.Visit;
import lampwise.service.Who;
import lampwise.service.Worklist;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Worklists from fixtures, readings and visits, by the built-in guide. */
class WorklistTest {
  private static final CodeSheet DEMO = SheetReader.demo();
  private static final String DAY = "2026-11-25";

  private static Fixture fixture(String id, Optional<Complaint> complaint) {
    return fixture(id, complaint, false, "2026-01-02");
  }

  private static Fixture fixture(
      String id, Optional<Complaint> complaint, boolean only, String lastCells) {
    return new Fixture(
        id,
        "Hall",
        FixtureKind.WATER_CLOSET,
        Optional.of(Power.CELLS),
        "4 x LR6",
        "",
        "",
        "",
        only,
        lastCells,
        "",
        complaint);
  }

  private static LampRead blinks(double everySeconds) {
    double[] starts = new double[(int) (60 / everySeconds)];
    Arrays.setAll(starts, i -> 0.4 + i * everySeconds);
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 60), starts);
    return LampRead.of(
        "r.log", DEMO, new LampDecoder().decode(DEMO, List.of(log)), "", Optional.empty());
  }

  private static Visit visit(String when, String fixture, Outcome outcome, String... remedies) {
    return new Visit(
        when,
        fixture,
        "",
        Optional.empty(),
        Optional.empty(),
        Visit.Lamp.unseen(),
        List.of(),
        new Visit.Done("", List.of(remedies), List.of(), OptionalDouble.empty()),
        List.of(),
        List.of(),
        outcome,
        "",
        "");
  }

  private static Worklist list(
      Site site, List<Fixture> fixtures, Map<String, List<LampRead>> read, Visit... visits) {
    Worklist.Basis basis = new Worklist.Basis(site.applyTo(GuideReader.builtIn()), site, DAY, 730);
    return Worklist.of(basis, fixtures, read, List.of(visits));
  }

  private static Worklist list(
      List<Fixture> fixtures, Map<String, List<LampRead>> read, Visit... visits) {
    return list(Site.unknown(), fixtures, read, visits);
  }

  private static List<String> order(Worklist list) {
    return list.jobs().stream().map(job -> job.fixture().id()).toList();
  }

  private static Site weighing(Map<Urgency, Double> weights) {
    return new Site(
        "s",
        Map.of(),
        Map.of(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Map.of(),
        Optional.empty(),
        SiteUnits.unsaid(),
        List.of(),
        weights);
  }

  private static final List<Fixture> FIVE =
      List.of(
          fixture("weak", Optional.of(Complaint.WEAK)),
          fixture("dead", Optional.of(Complaint.DEAD)),
          fixture("only", Optional.of(Complaint.LAMP_ONLY), true, "2026-01-02"),
          fixture("runs", Optional.of(Complaint.RUNS_ON)),
          fixture("weak-2", Optional.of(Complaint.WEAK)));

  @Test
  void runningWaterAndTheOnlyAccessibleOneComeFirst() {
    Worklist list = list(FIVE, Map.of());
    assertEquals(List.of("runs", "only", "dead", "weak", "weak-2"), order(list));
    assertEquals("running", list.jobs().get(0).safe().orElseThrow().id());
    assertEquals(List.of(Urgency.ONLY_ACCESSIBLE, Urgency.LAMP_ONLY), list.jobs().get(1).reasons());
    assertEquals(53, list.jobs().get(1).weight());
  }

  @Test
  void theSiteWeighs() {
    Site site = weighing(Map.of(Urgency.ONLY_ACCESSIBLE, 0.0, Urgency.WEAK, 90.0));
    assertEquals(
        List.of("runs", "weak", "weak-2", "dead", "only"), order(list(site, FIVE, Map.of())));
  }

  @Test
  void aWarningIsAJobAndWhatIsInOrderIsNot() {
    List<Fixture> two =
        List.of(fixture("low", Optional.empty()), fixture("other", Optional.empty()));
    Worklist list = list(two, Map.of("low", List.of(blinks(3.1))));
    assertEquals(List.of("low"), order(list));
    Job job = list.jobs().get(0);
    assertEquals(Complaint.LAMP_ONLY, job.complaint());
    assertEquals("cells-low", job.causes().keySet().iterator().next().id());
    assertEquals(List.of("cell set"), job.parts());
    assertEquals(List.of("danger", "bowl"), job.before().stream().map(c -> c.id()).toList());
    assertTrue(job.next().orElseThrow() instanceof Step.Mend);
    assertTrue(job.minutes() > 0 && job.minutes() < 120, "minutes " + job.minutes());
    assertEquals(List.of(two.get(1)), list.notVisited());
    assertEquals(List.of(new KitLine("cell set (4 x LR6)", 1, List.of("low"))), list.kit());
  }

  @Test
  void theLastReadingCounts() {
    List<Fixture> one = List.of(fixture("a", Optional.empty()));
    Worklist list = list(one, Map.of("a", List.of(blinks(3.1), blinks(3.7))));
    assertEquals(Complaint.PHANTOM, list.jobs().get(0).complaint());
  }

  @Test
  void whatIsNotListedIsToBeRecordedOnceMore() {
    Worklist list =
        list(List.of(fixture("a", Optional.empty())), Map.of("a", List.of(blinks(1.3))));
    assertEquals(List.of(), list.jobs());
    assertEquals("unlisted", list.again().get("a").verdict().word());
    assertEquals(List.of(), list.inOrder());
  }

  @Test
  void whatWasPutRightOnTheDayIsDone() {
    List<Fixture> one = List.of(fixture("A", Optional.empty()));
    Map<String, List<LampRead>> read = Map.of("A", List.of(blinks(3.1)));
    Worklist fixed = list(one, read, visit(DAY + "T11:00", "a", Outcome.FIXED, "new-cells"));
    assertEquals(List.of(), fixed.jobs());
    assertEquals(one, fixed.inOrder());
    Worklist tomorrow = list(one, read, visit("2026-11-26T11:00", "a", Outcome.FIXED));
    assertEquals(1, tomorrow.jobs().size());
  }

  @Test
  void repeatsAreVisitsOfThirtyDays() {
    List<Fixture> one = List.of(fixture("a", Optional.of(Complaint.DEAD)));
    Worklist list =
        list(
            one,
            Map.of(),
            visit("2026-10-25T23:59", "a", Outcome.FIXED, "new-cells"),
            visit("2026-10-26T00:00", "a", Outcome.FIXED, "new-cells"),
            visit("2026-11-02T12:00", "a", Outcome.RESET_WATCH));
    assertEquals(
        List.of("2026-11-02T12:00", "2026-10-26T00:00"),
        list.repeats().get("a").stream().map(Visit::when).toList());
    assertTrue(list.jobs().get(0).reasons().contains(Urgency.REPEAT));
    double fresh = cellsLow(list(one, Map.of()));
    assertTrue(cellsLow(list) < fresh, "cells that were changed lately are less likely");
  }

  private static double cellsLow(Worklist list) {
    return list.jobs().get(0).causes().entrySet().stream()
        .filter(entry -> entry.getKey().id().equals("cells-low"))
        .mapToDouble(Map.Entry::getValue)
        .findFirst()
        .orElse(0);
  }

  @Test
  void cellsAreDueByTheListAndByTheLog() {
    List<Fixture> four =
        List.of(
            fixture("due", Optional.empty(), false, "2024-11-25"),
            fixture("not-yet", Optional.empty(), false, "2024-11-26"),
            fixture("changed", Optional.empty(), false, "2020-01-01"),
            fixture("unknown", Optional.empty(), false, ""));
    Worklist list =
        list(four, Map.of(), visit("2026-05-05T10:00", "changed", Outcome.FIXED, "new-cells"));
    assertEquals(
        List.of("due", "unknown"),
        list.cellsDue().stream().map(due -> due.fixture().id()).toList());
    assertEquals(List.of(730L, -1L), list.cellsDue().stream().map(CellsDue::days).toList());
    assertEquals(2, list.kit().get(0).count());
  }

  @Test
  void whatWasLeftSafeWaitsForAPlumber() {
    List<Fixture> one = List.of(fixture("a", Optional.empty()));
    Visit left = visit("2026-11-20T10:00", "a", Outcome.MADE_SAFE);
    assertEquals(
        List.of(new HandOver(one.get(0), Who.PLUMBER, Optional.empty(), Optional.of(left))),
        list(one, Map.of(), left).handOvers());
    Visit done = visit("2026-11-22T10:00", "a", Outcome.FIXED);
    assertEquals(List.of(), list(one, Map.of(), done, left).handOvers());
  }

  @Tag("long")
  @ParameterizedTest
  @EnumSource(FixtureKind.class)
  void everyComplaintOfEveryKindHasAJob(FixtureKind kind) {
    for (Complaint complaint : Complaint.values()) {
      Fixture fixture =
          new Fixture(
              "x",
              "",
              kind,
              Optional.empty(),
              "",
              "",
              "",
              "",
              false,
              "",
              "",
              Optional.of(complaint));
      Job job = list(List.of(fixture), Map.of()).jobs().get(0);
      assertEquals(complaint, job.complaint());
      assertFalse(job.reasons().isEmpty());
      job.next().ifPresent(step -> assertFalse(step instanceof Step.Secure, complaint.word()));
    }
  }

  /** Over the whole guide: what is offered as the next step flushes only behind a look. */
  @Tag("long")
  @ParameterizedTest
  @EnumSource(FixtureKind.class)
  void nothingFlushesBeforeTheBowlWasLookedAt(FixtureKind kind) {
    int flushing = 0;
    Map<String, List<LampRead>> read = Map.of("x", List.of(blinks(3.1)));
    for (Complaint complaint : Complaint.values()) {
      for (Power power : List.of(Power.CELLS, Power.MAINS)) {
        Fixture fixture =
            new Fixture(
                "x",
                "",
                kind,
                Optional.of(power),
                "",
                "",
                "",
                "",
                false,
                "",
                "",
                Optional.of(complaint));
        Job job = list(List.of(fixture), read).jobs().get(0);
        if (job.next().filter(WorklistTest::flushes).isPresent()) {
          flushing++;
          assertTrue(job.before().stream().anyMatch(Check::bowlLook), job.toString());
          assertFalse(job.next().orElseThrow().cautions().isEmpty(), job.toString());
        }
      }
    }
    assertTrue(flushing > 0, "no step flushes, so nothing was held");
  }

  private static boolean flushes(Step step) {
    return step instanceof Step.Look look
        ? look.check().flushes()
        : step instanceof Step.Mend mend && mend.remedy().flushes();
  }

  @Test
  void aSpreadsheetRunsNothing() {
    Fixture hostile = fixture("=HYPERLINK(\"x\")", Optional.of(Complaint.DEAD));
    Worklist list = list(List.of(hostile), Map.of());
    String csv =
        RoundCsv.write(
            new Round("t", DAY, false, List.of(hostile), Map.of(), list, List.of(), List.of()));
    String row = csv.split("\r\n")[1];
    assertTrue(row.startsWith("1,\"'=HYPERLINK("), row);
    assertEquals(2, csv.split("\r\n").length);
  }

  @Test
  void jsonHoldsWhatTheRoundHolds() throws IOException {
    Worklist list = list(FIVE, Map.of());
    StringWriter out = new StringWriter();
    RoundJson.write(
        out,
        new Round(
            "Site \"x\"",
            DAY,
            true,
            FIVE,
            Map.of(),
            list,
            List.of(new Round.Unused("s.log", "why")),
            List.of()));
    assertTrue(out.toString().startsWith("{\"lampwise-round\":1,\"title\":\"Site \\\"x\\\"\""));
    assertTrue(out.toString().contains("\"strays\":[{\"recording\":\"s.log\",\"why\":\"why\"}]"));
    assertEquals(6, out.toString().split("\"urgent\":", -1).length);
  }

  @Test
  void aDayIsADay() {
    assertThrows(
        GuideException.class,
        () -> new Worklist.Basis(GuideReader.builtIn(), Site.unknown(), "2026-11-31", 730));
  }
}

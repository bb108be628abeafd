package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Verdict;
import lampwise.file.GuideReader;
import lampwise.light.Window;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a day's list makes of a lamp, of cells and of visits. */
class WorklistRulesTest {
  private static final Guide GUIDE = GuideReader.builtIn();
  private static final String DAY = "2026-11-25";

  private static Fixture fixture(
      String id, FixtureKind kind, Power power, String lastCells, Optional<Complaint> complaint) {
    return new Fixture(
        id, "", kind, Optional.of(power), "", "", "", "", false, lastCells, "", complaint);
  }

  private static Fixture closet(String id, Optional<Complaint> complaint) {
    return fixture(id, FixtureKind.WATER_CLOSET, Power.CELLS, "2026-01-02", complaint);
  }

  private static LampRead lamp(Map<Condition, Double> conditions) {
    return new LampRead(
        "r.log",
        Visit.Lamp.unseen(),
        new LampSaid(Map.of(), 1, false),
        new Verdict.Decoded("s", 1, new Window(0, 60)),
        conditions,
        "",
        "",
        Optional.empty());
  }

  private static LampRead lamp(Condition condition) {
    return lamp(Map.of(condition, 1.0));
  }

  private static Visit visit(
      String when, String fixture, Outcome outcome, List<String> remedies, List<String> parts) {
    return new Visit(
        when,
        fixture,
        "",
        Optional.empty(),
        Optional.empty(),
        Visit.Lamp.unseen(),
        List.of(),
        new Visit.Done("", remedies, parts, OptionalDouble.empty()),
        List.of(),
        List.of(),
        outcome,
        "",
        "");
  }

  private static Worklist list(
      List<Fixture> fixtures, Map<String, List<LampRead>> read, Visit... visits) {
    Worklist.Basis basis = new Worklist.Basis(GUIDE, Site.unknown(), DAY, 730);
    return Worklist.of(basis, fixtures, read, List.of(visits));
  }

  @ParameterizedTest
  @CsvSource({
    "READY,-",
    "TARGET_SEEN,-",
    "SETTING_UP,-",
    "HYGIENE_FLUSH,-",
    "POWER_MISSING,dead",
    "VALVE_CIRCUIT,dead",
    "SENSOR_BLOCKED,dead",
    "RANGE_SHORT,dead",
    "HELD_OFF,dead",
    "RANGE_LONG,phantom",
    "RUNNING,runs-on",
    "POWER_LOW,lamp-only",
    "OTHER,lamp-only"
  })
  void aWarningIsTheComplaintThatGoesWithIt(Condition condition, String complaint) {
    LampRead lamp = lamp(condition);
    assertEquals(complaint, lamp.complaint().map(Complaint::word).orElse("-"));
    assertEquals(complaint.equals("-"), lamp.isInOrder());
    assertEquals(!complaint.equals("-"), lamp.warns());
  }

  @Test
  void aLampIsSureFromNinetyFiveInAHundred() {
    Map<Condition, Double> in = new EnumMap<>(Condition.class);
    in.put(Condition.READY, 0.95);
    in.put(Condition.POWER_LOW, 0.05);
    assertTrue(lamp(in).isInOrder());
    assertFalse(lamp(in).warns());
    in.put(Condition.READY, 0.94);
    in.put(Condition.POWER_LOW, 0.06);
    assertFalse(lamp(in).isInOrder());
    in.put(Condition.READY, 0.05);
    in.put(Condition.POWER_LOW, 0.95);
    assertTrue(lamp(in).warns());
    assertFalse(lamp(Map.of(Condition.POWER_LOW, 0.94)).warns());
    // Two warnings together are as sure as one.
    in.put(Condition.READY, 0.0);
    in.put(Condition.POWER_LOW, 0.5);
    in.put(Condition.POWER_MISSING, 0.5);
    assertTrue(lamp(in).warns());
  }

  @Test
  void whatIsInOrderWithoutAComplaintNeedsNothing() {
    List<Fixture> two =
        List.of(closet("fine", Optional.empty()), closet("weak", Optional.of(Complaint.WEAK)));
    List<LampRead> ready = List.of(lamp(Condition.READY));
    Worklist list = list(two, Map.of("fine", ready, "weak", ready));
    assertEquals(List.of(two.get(0)), list.inOrder());
    assertEquals(List.of("weak"), list.jobs().stream().map(job -> job.fixture().id()).toList());
    assertEquals(Map.of(), list.again());
    assertEquals(List.of(), list.notVisited());
  }

  @Test
  void whatWarnsIsNotRecordedAgain() {
    List<Fixture> one = List.of(closet("low", Optional.empty()));
    Worklist list = list(one, Map.of("low", List.of(lamp(Condition.POWER_LOW))));
    assertEquals(1, list.jobs().size());
    assertEquals(Map.of(), list.again());
    assertEquals(List.of(), list.inOrder());
  }

  @Test
  void onlyCellsFallDue() {
    List<Fixture> two =
        List.of(
            fixture("mains", FixtureKind.URINAL, Power.MAINS, "", Optional.empty()),
            fixture("cells", FixtureKind.URINAL, Power.CELLS, "", Optional.empty()));
    List<CellsDue> due = list(two, Map.of()).cellsDue();
    assertEquals(List.of("cells"), due.stream().map(one -> one.fixture().id()).toList());
  }

  @Test
  void cellsAreNewAfterThePartOrTheRemedyOnly() {
    Fixture old = fixture("a", FixtureKind.URINAL, Power.CELLS, "2020-01-01", Optional.empty());
    String other =
        GUIDE.remedies().stream()
            .filter(remedy -> !CellsDue.areCells(remedy.parts()))
            .findFirst()
            .orElseThrow()
            .id();
    Visit parts = visit("2026-05-05T10:00", "a", Outcome.FIXED, List.of(), List.of("cell set"));
    Visit remedy = visit("2026-05-05T10:00", "a", Outcome.FIXED, List.of("new-cells"), List.of());
    Visit neither =
        visit("2026-05-05T10:00", "a", Outcome.FIXED, List.of(other), List.of("O-ring"));
    Visit longAgo = visit("2021-05-05T10:00", "a", Outcome.FIXED, List.of("new-cells"), List.of());
    assertEquals(List.of(), list(List.of(old), Map.of(), parts).cellsDue());
    assertEquals(List.of(), list(List.of(old), Map.of(), remedy).cellsDue());
    assertEquals(
        List.of("2020-01-01"),
        list(List.of(old), Map.of(), neither).cellsDue().stream().map(CellsDue::since).toList());
    assertEquals(
        List.of("2021-05-05"),
        list(List.of(old), Map.of(), longAgo).cellsDue().stream().map(CellsDue::since).toList());
  }

  @Test
  void aFixtureWhoseCellsAreDueAndLowTakesOneSet() {
    Fixture low = fixture("low", FixtureKind.URINAL, Power.CELLS, "2020-01-01", Optional.empty());
    Worklist list = list(List.of(low), Map.of("low", List.of(lamp(Condition.POWER_LOW))));
    assertEquals(1, list.cellsDue().size());
    assertTrue(
        list.kit().contains(new KitLine("cell set", 1, List.of("low"))), list.kit()::toString);
  }

  @Test
  void todaysHandOversComeBeforeEarlierOnes() {
    Fixture left = closet("left", Optional.empty());
    Fixture both =
        fixture("both", FixtureKind.FAUCET, Power.MAINS, "", Optional.of(Complaint.DEAD));
    Visit earlier = visit("2026-11-20T10:00", "left", Outcome.MADE_SAFE, List.of(), List.of());
    Visit before = visit("2026-11-20T10:00", "both", Outcome.HANDED_OVER, List.of(), List.of());
    Worklist list = list(List.of(left, both), Map.of(), earlier, before);
    Job job = list.job("both").orElseThrow();
    assertEquals(Optional.of(Who.ELECTRICIAN), job.waitsFor());
    assertEquals(
        List.of(
            new HandOver(both, Who.ELECTRICIAN, Optional.of(job), Optional.empty()),
            new HandOver(left, Who.PLUMBER, Optional.empty(), Optional.of(earlier))),
        list.handOvers());
  }

  @ParameterizedTest
  @ValueSource(strings = {"2026-11-31", "2026-1-1", "yesterday"})
  void aDayIsADay(String day) {
    assertThrows(
        GuideException.class,
        () -> fixture("a", FixtureKind.URINAL, Power.CELLS, day, Optional.empty()));
  }

  @Test
  void aFixtureHasAnIdOfOneLine() {
    assertEquals("north 7", closet(" North 7 ", Optional.empty()).key());
    assertThrows(GuideException.class, () -> closet(" ", Optional.empty()));
    assertThrows(GuideException.class, () -> closet("a\nb", Optional.empty()));
  }

  @Test
  void cellsThatAreDueAreCountedByTheirKind() {
    Fixture unsaid = fixture("a", FixtureKind.URINAL, Power.CELLS, "", Optional.empty());
    Fixture said =
        new Fixture(
            "b",
            "",
            FixtureKind.URINAL,
            Optional.of(Power.CELLS),
            "4 x LR6",
            "",
            "",
            "",
            false,
            "",
            "",
            Optional.empty());
    CellsDue one = new CellsDue(unsaid, "", -1);
    CellsDue other = new CellsDue(said, "", -1);
    assertEquals(
        List.of(
            new KitLine("cell set", 2, List.of("a", "a")),
            new KitLine("cell set (4 x LR6)", 1, List.of("b"))),
        Worklist.cells(List.of(one, other, one)));
  }

  @Test
  void cellsLastADayAtLeast() {
    assertEquals(1, new Worklist.Basis(GUIDE, Site.unknown(), DAY, 1).cellsDays());
    assertThrows(GuideException.class, () -> new Worklist.Basis(GUIDE, Site.unknown(), DAY, 0));
  }
}

package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.LampState;
import lampwise.sheet.Power;
import lampwise.sheet.Seen;
import lampwise.sheet.SheetCheck;
import lampwise.sheet.SheetWarning;
import org.junit.jupiter.api.Test;

/** What makes the demonstration sheet hard, fact by fact, and what its readers may count on. */
class DemoSheetTest {
  private final CodeSheet sheet = SheetReader.demo();

  private LampState state(String name) {
    return sheet.state(name).orElseThrow();
  }

  private Rhythm.Blinking blinking(String name) {
    return assertInstanceOf(Rhythm.Blinking.class, state(name).rhythm(), name);
  }

  private List<Part> parts(String name) {
    return assertInstanceOf(Cycle.Parts.class, blinking(name).cycle(), name).parts();
  }

  private Ending ending(String name) {
    return assertInstanceOf(Cycle.Parts.class, blinking(name).cycle(), name).ending();
  }

  private double cycleSeconds(String name) {
    return assertInstanceOf(Ending.Every.class, ending(name), name).cycle().fromSeconds();
  }

  private Part.Blinks blinks(String name, int part) {
    return assertInstanceOf(Part.Blinks.class, parts(name).get(part), name);
  }

  private static double apartSeconds(Part.Blinks blinks) {
    return blinks.apart().orElseThrow().fromSeconds();
  }

  /** The names of the states that are one blink after another at an even pace. */
  private List<String> singles() {
    return sheet.states().stream()
        .filter(
            state ->
                state.rhythm() instanceof Rhythm.Blinking blinking
                    && blinking.cycle() instanceof Cycle.Parts parts
                    && parts.parts().size() == 1
                    && parts.parts().get(0) instanceof Part.Blinks blinks
                    && blinks.count().max() == 1)
        .map(LampState::name)
        .toList();
  }

  @Test
  void isInventedAndSaysHow() {
    assertTrue(sheet.isInvented());
    assertTrue(sheet.note().orElseThrow().contains("No such unit exists"));
    assertEquals(List.of(FixtureKind.WATER_CLOSET, FixtureKind.URINAL), sheet.kinds());
    assertEquals(List.of(Power.CELLS), sheet.power());
    assertEquals("4 x LR6", sheet.cells().orElseThrow());
    assertEquals(0.05, sheet.clockTolerance(), 1e-12);
    assertEquals(0.1, sheet.blinkSeconds().orElseThrow(), 0.05);
  }

  @Test
  void hasFourteenStatesAndMostConditions() {
    assertEquals(14, sheet.states().size());
    Set<Condition> conditions =
        sheet.states().stream().map(LampState::condition).collect(Collectors.toSet());
    assertTrue(
        conditions.containsAll(
            Set.of(
                Condition.READY,
                Condition.TARGET_SEEN,
                Condition.RUNNING,
                Condition.RANGE_SHORT,
                Condition.RANGE_LONG,
                Condition.SENSOR_BLOCKED,
                Condition.POWER_LOW,
                Condition.POWER_MISSING,
                Condition.VALVE_CIRCUIT,
                Condition.SETTING_UP,
                Condition.HELD_OFF,
                Condition.HYGIENE_FLUSH)),
        conditions.toString());
  }

  @Test
  void someStatesSayMoreThanTheyMust() {
    assertTrue(sheet.states().stream().anyMatch(state -> state.labelSays().isPresent()));
    assertTrue(sheet.states().stream().anyMatch(state -> state.clearedBy().isPresent()));
    assertTrue(sheet.states().stream().anyMatch(state -> state.weight() > 1));
    assertTrue(sheet.states().stream().anyMatch(state -> state.weight() < 1));
  }

  @Test
  void twoPeriodsLieWithin30PercentOfEachOther() {
    double ratio = cycleSeconds("sees-too-far") / cycleSeconds("cells-low");
    assertTrue(ratio > 1.1 && ratio < 1.3, "ratio " + ratio);
  }

  @Test
  void onePeriodIsExactlyTwiceAnother() {
    assertEquals(2 * cycleSeconds("cells-low"), cycleSeconds("sees-too-near"));
  }

  @Test
  void aSlowRecordingOfSingleBlinksFitsCellsLowOnly() {
    double[] starts = {0.3, 3.5, 6.5, 9.7, 12.8, 15.8, 19.0, 22.0};
    double gap = (starts[starts.length - 1] - starts[0]) / (starts.length - 1);
    assertEquals(3.1, gap, 1e-9);
    assertEquals(Condition.POWER_LOW, state("cells-low").condition());
    assertEquals(
        List.of("cells-low"),
        singles().stream()
            .filter(name -> Math.abs(gap / cycleSeconds(name) - 1) <= sheet.clockTolerance())
            .toList());
    assertEquals(List.of("cells-low", "sees-too-far", "sees-too-near", "starting"), singles());
  }

  @Test
  void twoStatesHaveOneCountAndOnePeriodButOtherGaps() {
    Part.Blinks narrow = blinks("window-covered", 0);
    Part.Blinks wide = blinks("coil-open", 0);
    assertEquals(narrow.count(), wide.count());
    assertEquals(cycleSeconds("window-covered"), cycleSeconds("coil-open"));
    assertTrue(apartSeconds(wide) > 1.5 * apartSeconds(narrow));
  }

  @Test
  void aTwoGroupCodeStartsAsOneOfThem() {
    Part.Blinks first = blinks("coil-shorted", 0);
    assertEquals(blinks("window-covered", 0).count(), first.count());
    assertEquals(2, blinks("coil-shorted", 2).count().min());
    assertEquals(cycleSeconds("window-covered"), cycleSeconds("coil-shorted"), 0.2);
    assertEquals(apartSeconds(blinks("window-covered", 0)), apartSeconds(first), 0.05);
  }

  @Test
  void twoStatesAreDarkAndATargetTellsThemApart() {
    assertEquals(
        List.of("resting", "no-power"),
        sheet.states().stream()
            .filter(state -> state.rhythm() instanceof Rhythm.Dark)
            .map(LampState::name)
            .toList());
    assertEquals(Seen.IDLE, state("resting").seen());
    assertEquals(Seen.ALWAYS, state("no-power").seen());
    assertEquals(Seen.TARGET, state("target-seen").seen());
    assertInstanceOf(Ending.Once.class, ending("target-seen"));
  }

  @Test
  void nothingElseIsOneRhythm() {
    assertEquals(
        List.of(new SheetWarning.SameRhythm("resting", "no-power")), SheetCheck.warnings(sheet));
  }

  @Test
  void someStatesShowAfterSomethingOnly() {
    assertEquals(Seen.AFTER_POWER_UP, state("starting").seen());
    assertFalse(blinking("starting").prelude().isEmpty());
    assertEquals(Seen.SET_UP, state("learning").seen());
    assertEquals(Seen.WHILE_RUNNING, state("flushing").seen());
    assertInstanceOf(Ending.Once.class, ending("flushing"));
  }

  @Test
  void oneRateIsARange() {
    Rate rate = assertInstanceOf(Cycle.Rated.class, blinking("learning").cycle()).rate();
    assertEquals(Rate.Form.RANGE, rate.form());
  }

  @Test
  void oneStateIsLitMostOfTheTime() {
    assertInstanceOf(Part.Lit.class, parts("held-off").get(0));
    double dark =
        assertInstanceOf(Part.Unlit.class, parts("held-off").get(1))
            .length()
            .orElseThrow()
            .fromSeconds();
    assertTrue(dark < 0.1 * cycleSeconds("held-off"));
  }

  @Test
  void oneStateHasLongAndShortBlinks() {
    assertEquals(Size.LONG, blinks("hygiene-flush", 0).size());
    assertEquals(Size.SHORT, blinks("hygiene-flush", 1).size());
  }
}

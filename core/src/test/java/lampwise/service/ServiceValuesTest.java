package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Candidate;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a lamp, a figure, a visit and a site cannot say, and their borders. */
class ServiceValuesTest {
  private static final double NAN = Double.NaN;
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static void assertRefused(String message, Executable building) {
    assertEquals(message, assertThrows(GuideException.class, building).getMessage());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, NAN, Double.POSITIVE_INFINITY})
  void aLampsRatioIsNoughtOrMore(double bad) {
    String message = "a ratio of the lamp must be 0 or more: " + bad;
    assertRefused(message, () -> new LampSaid(Map.of(), bad, false));
    assertRefused(message, () -> new LampSaid(Map.of(Condition.READY, bad), 1, false));
    assertEquals(0, new LampSaid(Map.of(Condition.READY, 0.0), 0, false).unlisted());
  }

  /** Probability over prior, by condition; what no state can say counts as unlisted. */
  @Test
  void aReadingIsTakenAsRatios() {
    CodeSheet sheet =
        CodeSheet.of(
            "T",
            Basis.LABEL,
            List.of(
                LampState.of("a", new Rhythm.Dark(), "A", Condition.READY),
                LampState.of("b", new Rhythm.Steady(), "B", Condition.READY),
                LampState.of("c", new Rhythm.Steady(), "C", Condition.OTHER)));
    Reading reading =
        new Reading(
            new Verdict.Decoded("a", 0.8, new Window(0, 60)),
            List.of(
                new Candidate("a", 0.2, 0, 0.8),
                new Candidate("b", 0.2, 0, 0.0),
                new Candidate("c", 0.5, 0, 0.1),
                new Candidate("unlisted", 0.05, 0, 0.1),
                new Candidate("no-rhythm", 0.05, 0, 0.0)),
            Optional.empty(),
            List.of(),
            List.of());
    LampSaid said = LampSaid.of(sheet, reading);
    assertEquals(2, said.conditions().getOrDefault(Condition.READY, NAN), 1e-12);
    assertEquals(0.2, said.conditions().getOrDefault(Condition.OTHER, NAN), 1e-12);
    assertEquals(2, said.unlisted(), 1e-12);
    Cause other =
        new Cause(
            "other",
            "N",
            "L",
            Area.POWER,
            List.of(),
            List.of(),
            Map.of(Complaint.DEAD, 1.0),
            Map.of(),
            Map.of(Condition.OTHER, 0.5),
            Optional.empty());
    Guide guide =
        new Guide(
            "T",
            "B",
            60,
            30,
            Map.of(Condition.READY, 1.0),
            List.of(other),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    assertEquals(0.95 * (0.5 * 0.2 + 0.5 * 2) + 0.05 * 2, said.likelihood(guide, other), 1e-12);
  }

  /** From 1 to 2 L with a guard band: inside up to its border, outside only beyond it. */
  @ParameterizedTest
  @CsvSource({
    "1.25, 0.25, PASS",
    "1.125, 0.125, PASS",
    "1.75, 0.25, PASS",
    "1.8125, 0.25, NOT_DECIDED",
    "1.1875, 0.25, NOT_DECIDED",
    "2.25, 0.25, NOT_DECIDED",
    "2.3125, 0.25, FAIL",
    "0.75, 0.25, NOT_DECIDED",
    "0.6875, 0.25, FAIL"
  })
  void aFigureIsComparedWithItsUncertainty(double litres, double unsure, WaterVerdict verdict) {
    WaterLimit limit =
        new WaterLimit(
            Measure.FLUSH_VOLUME,
            List.of(),
            "",
            OptionalDouble.of(1),
            OptionalDouble.of(2),
            WaterUnit.LITRE,
            "b",
            "s");
    WaterFigure figure = WaterFigure.read(limit, litres, unsure);
    assertEquals(verdict, figure.verdict());
    assertEquals(unsure, figure.unsure());
    assertEquals(
        verdict,
        WaterFigure.of(limit, new Volume(litres, unsure, 1, Volume.Method.CATCH, 0)).verdict());
  }

  @Test
  void theNearerLimitIsTheOneToDecide() {
    WaterLimit limit =
        new WaterLimit(
            Measure.FLUSH_VOLUME,
            List.of(),
            "",
            OptionalDouble.of(1),
            OptionalDouble.of(2),
            WaterUnit.LITRE,
            "b",
            "s");
    Volume low = new Volume(1.125, 0.25, 1, Volume.Method.CATCH, 0);
    assertEquals(3, WaterFigure.of(limit, low).moreFlushes());
    Volume high = new Volume(1.875, 0.25, 1, Volume.Method.CATCH, 0);
    assertEquals(3, WaterFigure.of(limit, high).moreFlushes());
    // A temperature's zero lies elsewhere; its uncertainty does not.
    WaterLimit warm =
        new WaterLimit(
            Measure.TEMPERATURE,
            List.of(),
            "",
            NONE,
            OptionalDouble.of(120),
            WaterUnit.FAHRENHEIT,
            "b",
            "s");
    assertEquals(1.8, WaterFigure.read(warm, 40, 1).unsure(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "FAHRENHEIT, 212, 100",
    "FAHRENHEIT, 32, 0",
    "FAHRENHEIT, -40, -40",
    "CELSIUS, 48, 48",
    "BAR, 2, 200",
    "GALLON, 2, 7.570823568"
  })
  void aUnitIsThereAndBack(WaterUnit unit, double value, double base) {
    assertEquals(base, unit.toBase(value), 1e-9);
    assertEquals(value, unit.fromBase(base), 1e-9);
    assertEquals(Optional.of(unit), WaterUnit.of(unit.word()));
    assertEquals(true, WaterUnit.words(unit.of()).contains(unit.word()));
  }

  @Test
  void theLampOfAVisitIsWhatWasDecoded() {
    CodeSheet sheet =
        CodeSheet.of(
            "T",
            Basis.LABEL,
            List.of(LampState.of("a", new Rhythm.Dark(), "A", Condition.POWER_LOW)));
    Reading decoded =
        new Reading(
            new Verdict.Decoded("a", 0.97, new Window(0, 60)),
            List.of(),
            Optional.empty(),
            List.of(),
            List.of());
    Visit.Lamp lamp = Visit.Lamp.of(sheet, decoded, List.of("r.log"));
    assertEquals(new Visit.Lamp(List.of("r.log"), "a", "power-low", OptionalDouble.of(0.97)), lamp);
    Reading nothing = new LampDecoder().decode(sheet, List.of());
    Visit.Lamp none = Visit.Lamp.of(sheet, nothing, List.of("r.log"));
    assertEquals(new Visit.Lamp(List.of("r.log"), nothing.verdict().word(), "", NONE), none);
    assertEquals(new Visit.Lamp(List.of(), "", "", NONE), Visit.Lamp.unseen());
    assertEquals(new Visit.Done("", List.of(), List.of(), NONE), Visit.Done.none());
  }

  @Test
  void aVisitIsOfAFixtureAtATime() {
    assertRefused("a visit needs the fixture it was made at", () -> visit("2026-11-25T09:40", " "));
    assertRefused(
        "a visit's time must be like 2026-11-25T09:40: noon", () -> visit("noon", "north-07"));
    assertEquals("north-07", visit(" 2026-11-25T09:40 ", " north-07 ").fixture());
    assertThrows(
        GuideException.class, () -> new Visit.Lamp(List.of(), "", "", OptionalDouble.of(1.01)));
    assertThrows(
        GuideException.class,
        () -> new Visit.Done("", List.of(), List.of(), OptionalDouble.of(-1)));
    assertThrows(
        GuideException.class,
        () -> new Visit.Done("", List.of(), List.of(), OptionalDouble.of(1e9)));
    Visit.Done done =
        new Visit.Done(" a ", List.of(" b ", " "), List.of(), OptionalDouble.of(1.23456789));
    assertEquals(new Visit.Done("a", List.of("b"), List.of(), OptionalDouble.of(1.234568)), done);
    assertEquals(
        1, new Visit.Lamp(List.of(), "", "", OptionalDouble.of(1)).probability().orElse(0));
  }

  private static Visit visit(String when, String fixture) {
    return new Visit(
        when,
        fixture,
        "",
        Optional.empty(),
        Optional.empty(),
        Visit.Lamp.unseen(),
        List.of(),
        new Visit.Done("", List.of(), List.of(), NONE),
        List.of(),
        List.of(),
        Outcome.FIXED,
        "",
        "");
  }

  @Test
  void aSitesWeightsAndLimitsHaveBorders() {
    Site any = Site.unknown();
    assertEquals(Urgency.DEAD.usualWeight(), any.weight(Urgency.DEAD));
    assertEquals(0, weighing(0).weight(Urgency.DEAD));
    assertRefused("a weight must be 0 or more: -1.0", () -> weighing(-1));
    assertRefused("a weight must be 0 or more: NaN", () -> weighing(NAN));
    OptionalDouble one = OptionalDouble.of(1);
    assertEquals(one, new SiteLimit(Measure.FLOW, List.of(), one, one, "gpm", "c").atMost());
    assertThrows(
        GuideException.class,
        () -> new SiteLimit(Measure.FLOW, List.of(), OptionalDouble.of(-1), NONE, "gpm", "c"));
    OptionalDouble endless = OptionalDouble.of(Double.POSITIVE_INFINITY);
    assertThrows(
        GuideException.class,
        () -> new SiteLimit(Measure.FLOW, List.of(), NONE, endless, "gpm", "c"));
  }

  private static Site weighing(double dead) {
    Site any = Site.unknown();
    return new Site(
        "S",
        any.shares(),
        any.minutes(),
        any.handOverMinutes(),
        any.secondTripMinutes(),
        any.who(),
        any.water(),
        any.units(),
        any.limits(),
        Map.of(Urgency.DEAD, dead));
  }
}

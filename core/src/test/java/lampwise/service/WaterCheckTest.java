package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.sheet.FixtureKind;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** What figures say against the limits of each basis. */
class WaterCheckTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static OptionalDouble psi(double value) {
    return OptionalDouble.of(WaterUnit.PSI.toBase(value));
  }

  private static OptionalDouble gallons(double value) {
    return OptionalDouble.of(WaterUnit.GALLON.toBase(value));
  }

  private static WaterFound closet(OptionalDouble still, OptionalDouble flowing) {
    return new WaterFound(
        FixtureKind.WATER_CLOSET,
        "siphonic",
        still,
        flowing,
        Optional.empty(),
        NONE,
        NONE,
        NONE,
        WaterUnit.GALLON);
  }

  private static WaterVerdict by(WaterCheck check, Measure of, String basis) {
    return check.figures().stream()
        .filter(figure -> figure.limit().of() == of && figure.limit().basis().equals(basis))
        .findFirst()
        .orElseThrow()
        .verdict();
  }

  private static WaterCheck check(WaterFound found) {
    return WaterCheck.of(found, Site.unknown(), Optional.empty());
  }

  /** IPC table 604.3 and NSPC 10.14.2 disagree, and both are shown. */
  @Test
  void theSourcesDisagreeAndEachIsNamed() {
    WaterCheck check = check(closet(psi(65), psi(28)));
    assertEquals(WaterVerdict.FAIL, by(check, Measure.FLOWING_PRESSURE, "IPC table 604.3"));
    assertEquals(WaterVerdict.PASS, by(check, Measure.FLOWING_PRESSURE, "NSPC 10.14.2"));
    assertEquals(WaterVerdict.PASS, by(check, Measure.STATIC_PRESSURE, "UPC 608.2"));
    WaterCheck one = WaterCheck.of(closet(psi(65), psi(28)), Site.unknown(), Optional.of("nspc"));
    assertEquals(1, one.figures().size());
  }

  /** The residual of 43.46 psi: enough for a siphonic bowl, not for a blowout bowl (IPC). */
  @Test
  void theBowlDecides() {
    WaterCheck siphonic = check(closet(psi(47), psi(43.46)));
    assertEquals(WaterVerdict.PASS, by(siphonic, Measure.FLOWING_PRESSURE, "IPC table 604.3"));
    WaterFound blowout =
        new WaterFound(
            FixtureKind.WATER_CLOSET,
            "blowout",
            psi(47),
            psi(43.46),
            Optional.empty(),
            NONE,
            NONE,
            NONE,
            WaterUnit.GALLON);
    assertEquals(
        WaterVerdict.FAIL, by(check(blowout), Measure.FLOWING_PRESSURE, "IPC table 604.3"));
  }

  /** UPC 608.2 asks for a regulator above 80 psi; exactly 80 is right. */
  @Test
  void bordersCountAsInside() {
    assertEquals(
        WaterVerdict.PASS, by(check(closet(psi(80), NONE)), Measure.STATIC_PRESSURE, "UPC 608.2"));
    assertEquals(
        WaterVerdict.FAIL,
        by(check(closet(psi(80.1), NONE)), Measure.STATIC_PRESSURE, "UPC 608.2"));
  }

  /** JCGM 106 (from memory): the meter's example is above 1.28 gal beyond its uncertainty. */
  @Test
  void aGuardBandDecidesVolumes() {
    Volume volume =
        Volume.byMeter(WaterUnit.GALLON.toBase(13.1), 10, WaterUnit.GALLON.toBase(0.1), 0.015);
    WaterFound found =
        new WaterFound(
            FixtureKind.WATER_CLOSET,
            "",
            NONE,
            NONE,
            Optional.of(volume),
            NONE,
            NONE,
            NONE,
            WaterUnit.GALLON);
    WaterCheck check = check(found);
    assertEquals(WaterVerdict.PASS, by(check, Measure.FLUSH_VOLUME, "EPAct 1992"));
    assertEquals(WaterVerdict.FAIL, by(check, Measure.FLUSH_VOLUME, "EPA WaterSense"));
    assertEquals(WaterUnit.LITRE.toBase(4.96), volume.litres(), 0.01);
  }

  @Test
  void whatIsNotDecidedSaysHowManyMoreFlushesAndIntoWhat() {
    Volume rough = Volume.byMeter(4.7, 1, 1, 0.001);
    WaterFound found =
        new WaterFound(
            FixtureKind.WATER_CLOSET,
            "",
            NONE,
            NONE,
            Optional.of(rough),
            NONE,
            NONE,
            OptionalDouble.of(4.8),
            WaterUnit.LITRE);
    WaterCheck check = check(found);
    assertEquals(WaterVerdict.NOT_DECIDED, check.figures().get(0).verdict());
    int more = check.figures().get(0).moreFlushes();
    assertTrue(more > 0, "more flushes decide");
    assertTrue(
        check
            .says()
            .contains(
                more
                    + " more flushes would decide by marking on the fixture, each only into a bowl"
                    + " that is clear and drains."),
        check.says().toString());
  }

  /** EPA WaterSense at Work, p. 63 and 69: valve and fixture must have the same rated volume. */
  @Test
  void markingsStandBeforePublishedLimitsAndMustBeAlike() {
    WaterFound found =
        new WaterFound(
            FixtureKind.WATER_CLOSET,
            "",
            NONE,
            NONE,
            Optional.of(Volume.byMeter(50, 10, 0.1, 0.001)),
            NONE,
            gallons(1.6),
            gallons(1.28),
            WaterUnit.GALLON);
    WaterCheck check = check(found);
    assertEquals(1, check.figures().size());
    assertEquals("marking on the fixture", check.figures().get(0).limit().basis());
    assertEquals(1.28, check.figures().get(0).limit().atMost().orElse(0), 1e-9);
    assertTrue(check.says().get(0).startsWith("Valve and fixture are marked for different"));
    // 1.28 gal is written 4.8 L: the two are one marking.
    WaterFound alike =
        new WaterFound(
            FixtureKind.WATER_CLOSET,
            "",
            NONE,
            NONE,
            Optional.empty(),
            NONE,
            gallons(1.28),
            OptionalDouble.of(4.8),
            WaterUnit.LITRE);
    assertEquals(List.of(), check(alike).says());
  }

  @Test
  void aSitesOwnLimitOverridesAll() {
    Site unknown = Site.unknown();
    Site site =
        new Site(
            "Terminal",
            unknown.shares(),
            unknown.minutes(),
            unknown.handOverMinutes(),
            unknown.secondTripMinutes(),
            unknown.who(),
            unknown.water(),
            unknown.units(),
            List.of(
                new SiteLimit(
                    Measure.STATIC_PRESSURE,
                    List.of(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(5),
                    "bar",
                    "harbour rules")),
            Map.of());
    WaterCheck check = WaterCheck.of(closet(psi(75), psi(40)), site, Optional.empty());
    List<WaterFigure> still =
        check.figures().stream()
            .filter(figure -> figure.limit().of() == Measure.STATIC_PRESSURE)
            .toList();
    assertEquals(1, still.size());
    assertEquals("harbour rules", still.get(0).limit().basis());
    assertEquals(WaterVerdict.FAIL, still.get(0).verdict());
    assertEquals(5.17, still.get(0).value(), 0.01);
  }

  /** Common practice, no source: where a weak flush comes from, by its pressures. */
  @Test
  void pressuresTellSupplyFromRestriction() {
    assertTrue(check(closet(psi(65), psi(12))).says().get(0).contains("something restricts it"));
    assertTrue(check(closet(psi(20), psi(12))).says().get(0).contains("it is the supply"));
    assertTrue(check(closet(psi(95), psi(40))).says().get(0).contains("licensed plumber"));
    assertEquals(List.of(), check(closet(psi(65), psi(40))).says());
  }

  @Test
  void whatWasNotMeasuredStaysUnproven() {
    WaterCheck nothing = check(WaterFound.nothing(FixtureKind.URINAL));
    assertEquals(4, nothing.unproven().size());
    assertTrue(nothing.unproven().get(2).contains("never flush into a bowl that is full"));
    assertTrue(nothing.unproven().get(0).contains("cross-connection"));
    WaterCheck faucet = check(WaterFound.nothing(FixtureKind.FAUCET));
    assertFalse(faucet.unproven().toString().contains("bowl"), faucet.unproven().toString());
  }

  private static WaterFound measured(
      FixtureKind kind,
      OptionalDouble still,
      OptionalDouble flowing,
      Optional<Volume> volume,
      OptionalDouble flow,
      OptionalDouble valve,
      OptionalDouble fixture) {
    return new WaterFound(
        kind, "siphonic", still, flowing, volume, flow, valve, fixture, WaterUnit.LITRE);
  }

  @Test
  void aFaucetHasAFlowAndNoMarking() {
    WaterFound found =
        measured(
            FixtureKind.FAUCET, NONE, NONE, Optional.empty(), OptionalDouble.of(2), NONE, NONE);
    WaterCheck check = check(found);
    assertEquals(WaterVerdict.FAIL, by(check, Measure.FLOW, "IPC table 604.4, public"));
    assertEquals(2, check.unproven().size(), check.unproven()::toString);
    assertEquals(
        "The flow: ten seconds into a measuring jug.",
        check(WaterFound.nothing(FixtureKind.FAUCET)).unproven().get(2));
    assertEquals(3, check(WaterFound.nothing(FixtureKind.FAUCET)).unproven().size());
  }

  @Test
  void whatWasAllMeasuredIsAllProven() {
    Optional<Volume> volume = Optional.of(Volume.byMeter(48, 10, 0.1, 0.001));
    OptionalDouble mark = OptionalDouble.of(6);
    FixtureKind closet = FixtureKind.WATER_CLOSET;
    assertEquals(
        List.of(), check(measured(closet, psi(65), psi(40), volume, NONE, mark, mark)).unproven());
    String alike = "That valve and fixture are rated alike: read the marking on both.";
    assertEquals(
        List.of(alike),
        check(measured(closet, psi(65), psi(40), volume, NONE, NONE, mark)).unproven());
    assertEquals(
        List.of(alike),
        check(measured(closet, psi(65), psi(40), volume, NONE, mark, NONE)).unproven());
  }

  /** Common practice, no source. */
  @Test
  void goodPressuresLeaveTheVolumeToTheValve() {
    String valves = "Pressures are good: what is wrong with the volume is the valve's.";
    Optional<Volume> volume = Optional.of(Volume.byMeter(80, 10, 0.1, 0.001));
    FixtureKind closet = FixtureKind.WATER_CLOSET;
    for (OptionalDouble still : List.of(NONE, psi(20), psi(65), psi(105))) {
      for (OptionalDouble flowing : List.of(NONE, psi(12), psi(40))) {
        boolean good = still.equals(psi(65)) && flowing.equals(psi(40));
        WaterFound found = measured(closet, still, flowing, volume, NONE, NONE, NONE);
        assertEquals(good, check(found).says().contains(valves), found::toString);
      }
    }
    assertFalse(
        check(measured(closet, psi(65), psi(40), Optional.empty(), NONE, NONE, NONE))
            .says()
            .contains(valves));
  }

  /** Four published limits: 35, 20, 15 and 15 psi. */
  @Test
  void aRestrictionIsSaidWhereHalfOfTheLimitsAreMissed() {
    assertTrue(check(closet(psi(65), psi(17))).says().get(0).contains("something restricts it"));
    assertEquals(List.of(), check(closet(psi(65), psi(28))).says());
  }

  @Test
  void whatFurtherFlushesCanDecideIsSaid() {
    OptionalDouble mark = OptionalDouble.of(4.8);
    Volume nearly = new Volume(4.7, 0.12, 1, Volume.Method.METER, 0);
    FixtureKind closet = FixtureKind.WATER_CLOSET;
    assertEquals(
        List.of(
            "1 more flush would decide by marking on the fixture, each only into a bowl that is"
                + " clear and drains."),
        check(measured(closet, NONE, NONE, Optional.of(nearly), NONE, NONE, mark)).says());
    Volume never = Volume.byMeter(48, 10, 0.1, 0.05);
    assertEquals(
        List.of(
            "No number of further flushes decides by marking on the valve; a finer scale or a"
                + " better meter is needed."),
        check(measured(closet, NONE, NONE, Optional.of(never), NONE, mark, NONE)).says());
  }

  @Test
  void markingsMayDifferByTheirRounding() {
    FixtureKind closet = FixtureKind.WATER_CLOSET;
    OptionalDouble five = OptionalDouble.of(5);
    for (double other : new double[] {4.91, 5, 5.09}) {
      WaterFound found =
          measured(closet, NONE, NONE, Optional.empty(), NONE, OptionalDouble.of(other), five);
      assertEquals(List.of(), check(found).says());
    }
    for (double other : new double[] {4.89, 5.11}) {
      WaterFound found =
          measured(closet, NONE, NONE, Optional.empty(), NONE, OptionalDouble.of(other), five);
      assertEquals(1, check(found).says().size());
    }
  }

  @Test
  void eachBasisIsNamedOnce() {
    List<String> bases = WaterCheck.bases();
    assertEquals("UPC 608.2", bases.get(0));
    assertTrue(bases.contains("IPC table 604.3"), bases::toString);
    assertEquals(bases.size(), bases.stream().distinct().count());
  }

  /** No limit rests on memory, and each names how sure it is. */
  @Test
  void everyLimitNamesItsBasis() {
    for (WaterLimit limit : WaterCheck.published()) {
      assertTrue(
          List.of("seen", "seen in secondary text", "common practice, no source")
              .contains(limit.sure()),
          limit.toString());
      assertFalse(limit.basis().isBlank());
      assertTrue(limit.atLeast().isPresent() || limit.atMost().isPresent());
    }
    assertEquals(
        1,
        WaterCheck.published().stream()
            .filter(limit -> limit.sure().startsWith("common"))
            .filter(limit -> limit.atLeast().orElse(0) == 25 && limit.atMost().orElse(0) == 80)
            .count(),
        "25 to 80 psi as a general range");
  }

  @Property(tries = 200)
  void morePressureNeverTurnsAPassOfALowerBoundIntoAFail(
      @ForAll @DoubleRange(min = 0, max = 100) double less,
      @ForAll @DoubleRange(min = 0, max = 100) double more) {
    WaterCheck low = check(closet(NONE, psi(Math.min(less, more))));
    WaterCheck high = check(closet(NONE, psi(Math.max(less, more))));
    for (int i = 0; i < low.figures().size(); i++) {
      assertTrue(
          low.figures().get(i).verdict() != WaterVerdict.PASS
              || high.figures().get(i).verdict() == WaterVerdict.PASS);
    }
  }
}

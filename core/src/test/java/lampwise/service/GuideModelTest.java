package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GuideModelTest {
  private static final List<Answer> YES_NO =
      List.of(new Answer("yes", "It does"), new Answer("no", "It does not"));

  private static Cause cause(String id, Map<Complaint, Double> shares) {
    return new Cause(
        id,
        "Name",
        "Looks",
        Area.POWER,
        List.of(FixtureKind.FAUCET),
        List.of(Power.CELLS),
        shares,
        Map.of(Work.CELLS, 3.0, Work.VALVE, 0.5),
        Map.of(Condition.POWER_LOW, 0.5),
        Optional.empty());
  }

  private static Check check(String id, List<Double> row, List<Requirement> before) {
    return new Check(
        id,
        "Does it?",
        List.of(),
        2,
        List.of(),
        List.of(),
        List.of(Power.MAINS),
        List.of(Complaint.DEAD),
        YES_NO,
        List.of(0.5, 0.5),
        Map.of("low", row),
        false,
        false,
        false,
        List.of(),
        Who.ANYONE,
        before,
        List.of(),
        Optional.empty());
  }

  private static Check check(String id) {
    return check(id, List.of(0.9, 0.1), List.of());
  }

  private static Remedy remedy(Map<String, Double> fixes, List<Requirement> verify) {
    return new Remedy(
        "mend",
        "Mend it",
        fixes,
        List.of(FixtureKind.URINAL),
        List.of(),
        List.of(),
        List.of("Do it"),
        List.of(),
        List.of(),
        5,
        Who.OWNER,
        List.of(),
        false,
        List.of(),
        verify,
        Optional.empty(),
        false,
        Optional.empty());
  }

  private static Guide guide(List<Cause> causes, List<Check> checks, List<Remedy> remedies) {
    return new Guide(
        "Title",
        "Basis",
        60,
        30,
        Map.of(Condition.READY, 0.8, Condition.OTHER, 0.2),
        causes,
        checks,
        remedies,
        List.of(),
        List.of());
  }

  private static final Cause LOW = cause("low", Map.of(Complaint.DEAD, 2.0));
  private static final Cause OTHER = cause("other", Map.of(Complaint.DEAD, 1.0));

  private static void assertRefused(String message, Executable building) {
    assertEquals(message, assertThrows(GuideException.class, building).getMessage());
  }

  @Test
  void aShareIsThatOfTheComplaintTimesWhatWasDoneLately() {
    assertEquals(2, LOW.share(Complaint.DEAD, List.of()));
    assertEquals(3, LOW.share(Complaint.DEAD, List.of(Work.CELLS, Work.VALVE)));
    assertEquals(2, LOW.share(Complaint.DEAD, List.of(Work.ROOM)));
    assertEquals(0, LOW.share(Complaint.WEAK, List.of(Work.CELLS)));
  }

  @Test
  void aPartFitsWhatItNamesAndUnknownPower() {
    assertTrue(LOW.fits(FixtureKind.FAUCET, Optional.of(Power.CELLS)));
    assertTrue(LOW.fits(FixtureKind.FAUCET, Optional.empty()));
    assertFalse(LOW.fits(FixtureKind.FAUCET, Optional.of(Power.MAINS)));
    assertFalse(LOW.fits(FixtureKind.URINAL, Optional.empty()));
    Check check = check("check");
    assertTrue(check.fits(FixtureKind.URINAL, Optional.of(Power.MAINS), Complaint.DEAD));
    assertFalse(check.fits(FixtureKind.URINAL, Optional.of(Power.CELLS), Complaint.DEAD));
    assertFalse(check.fits(FixtureKind.URINAL, Optional.empty(), Complaint.WEAK));
    Remedy remedy = remedy(Map.of("low", 0.5), List.of());
    assertTrue(remedy.fits(FixtureKind.URINAL, Optional.of(Power.CELLS)));
    assertFalse(remedy.fits(FixtureKind.FAUCET, Optional.empty()));
  }

  @Test
  void aCauseWithoutRowHasTheUsualChances() {
    assertEquals(List.of(0.9, 0.1), check("check").chances("low"));
    assertEquals(List.of(0.5, 0.5), check("check").chances("other"));
    assertEquals("It does", check("check").answer("yes").orElseThrow().means());
    assertEquals(Optional.empty(), check("check").answer("perhaps"));
  }

  @Test
  void theLampSaysWhatTheCauseSaysAndTheUsualForTheRest() {
    Guide guide = guide(List.of(LOW, OTHER), List.of(), List.of());
    assertEquals(0.5, guide.chance(LOW, Condition.POWER_LOW), 1e-12);
    assertEquals(0.4, guide.chance(LOW, Condition.READY), 1e-12);
    assertEquals(0, guide.chance(LOW, Condition.RUNNING), 1e-12);
  }

  @Test
  void findsPartsByTheirIdsAndCausesByComplaint() {
    Check check = check("check");
    Remedy remedy = remedy(Map.of("low", 0.5), List.of());
    Guide guide = guide(List.of(LOW, OTHER), List.of(check), List.of(remedy));
    assertEquals(Optional.of(LOW), guide.cause("low"));
    assertEquals(Optional.of(check), guide.check("check"));
    assertEquals(Optional.of(remedy), guide.remedy("mend"));
    assertEquals(Optional.empty(), guide.remedy("low"));
    assertEquals(
        List.of(LOW, OTHER), guide.causes(FixtureKind.FAUCET, Optional.empty(), Complaint.DEAD));
    assertEquals(List.of(), guide.causes(FixtureKind.FAUCET, Optional.empty(), Complaint.WEAK));
    assertEquals(List.of(), guide.causes(FixtureKind.URINAL, Optional.empty(), Complaint.DEAD));
  }

  @Test
  void aRequirementIsMetByOneOfItsAnswers() {
    Requirement bowl = new Requirement("bowl", List.of("clear", "slow"));
    assertTrue(bowl.metBy(new Finding("bowl", "slow")));
    assertFalse(bowl.metBy(new Finding("bowl", "full")));
    assertFalse(bowl.metBy(new Finding("stop", "clear")));
    assertRefused(
        "a requirement needs at least one answer of bowl",
        () -> new Requirement("bowl", List.of()));
  }

  @Test
  void keepsCopiesInTheirOrder() {
    Map<Complaint, Double> shares = new LinkedHashMap<>();
    shares.put(Complaint.WEAK, 1.0);
    shares.put(Complaint.DEAD, 2.0);
    Cause cause = cause("low", shares);
    shares.clear();
    assertEquals(List.of(Complaint.WEAK, Complaint.DEAD), new ArrayList<>(cause.shares().keySet()));
    assertThrows(UnsupportedOperationException.class, () -> cause.shares().clear());
    assertThrows(UnsupportedOperationException.class, () -> check("c").rows().clear());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesNumbersOutOfRange(double bad) {
    assertRefused(
        "the share of low must be over 0: " + bad, () -> cause("low", Map.of(Complaint.DEAD, bad)));
    assertRefused(
        "the minutes of check must be over 0: " + bad, () -> check("check").with(bad, Who.ANYONE));
    assertRefused(
        "the minutes of mend must be over 0: " + bad,
        () -> remedy(Map.of("low", 0.5), List.of()).with(bad, Who.ANYONE));
    assertRefused(
        "a chance to fix of mend must be over 0: " + bad,
        () -> remedy(Map.of("low", bad), List.of()));
    assertThrows(GuideException.class, () -> new WaterPrice(1, "EUR", bad));
  }

  @Test
  void refusesRowsThatAreNotChances() {
    assertRefused(
        "the row low of check must have 2 chances: 1",
        () -> check("check", List.of(1.0), List.of()));
    assertRefused(
        "the row low of check sums to 0.75 in place of 1",
        () -> check("check", List.of(0.5, 0.25), List.of()));
    assertRefused(
        "the row low of check holds NaN",
        () -> check("check", List.of(Double.NaN, 1.0), List.of()));
    assertRefused(
        "the row low of check holds 1.5", () -> check("check", List.of(1.5, -0.5), List.of()));
  }

  @Test
  void refusesConditionsAboveOne() {
    Function<Map<Condition, Double>, Cause> with =
        conditions ->
            new Cause(
                "low",
                "Name",
                "Looks",
                Area.POWER,
                List.of(),
                List.of(),
                Map.of(Complaint.DEAD, 1.0),
                Map.of(),
                conditions,
                Optional.empty());
    assertRefused(
        "the chances of the conditions under low sum to more than 1",
        () -> with.apply(Map.of(Condition.READY, 0.6, Condition.OTHER, 0.5)));
    assertRefused(
        "the chance of a condition under low is -0.5",
        () -> with.apply(Map.of(Condition.READY, -0.5)));
  }

  @Test
  void refusesPartsThatNameWhatIsNotThere() {
    List<Cause> causes = List.of(LOW, OTHER);
    assertRefused("the cause other is missing", () -> guide(List.of(LOW), List.of(), List.of()));
    assertRefused(
        "the cause low stands twice", () -> guide(List.of(LOW, LOW, OTHER), List.of(), List.of()));
    assertRefused(
        "the check check stands twice",
        () -> guide(causes, List.of(check("check"), check("check")), List.of()));
    assertRefused(
        "mend names the unknown cause high",
        () -> guide(causes, List.of(), List.of(remedy(Map.of("high", 0.5), List.of()))));
    assertRefused(
        "mend names the unknown check look",
        () ->
            guide(
                causes,
                List.of(),
                List.of(
                    remedy(Map.of("low", 0.5), List.of(new Requirement("look", List.of("yes")))))));
    assertRefused(
        "mend names the unknown answer perhaps of check",
        () ->
            guide(
                causes,
                List.of(check("check")),
                List.of(
                    remedy(
                        Map.of("low", 0.5),
                        List.of(new Requirement("check", List.of("perhaps")))))));
  }

  @Test
  void refusesChecksThatWaitForEachOther() {
    Check one = check("one", List.of(1.0, 0.0), List.of(new Requirement("two", List.of("yes"))));
    Check two = check("two", List.of(1.0, 0.0), List.of(new Requirement("one", List.of("yes"))));
    assertRefused(
        "the check one must be made before itself",
        () -> guide(List.of(LOW, OTHER), List.of(one, two), List.of()));
  }

  @Test
  void refusesASiteThatNamesWhatIsNotThere() {
    Guide guide = guide(List.of(LOW, OTHER), List.of(check("check")), List.of());
    assertRefused(
        "A site names the unknown check or remedy chekc",
        () -> site(Map.of(), Map.of("chekc", 2.0)).applyTo(guide));
    assertRefused(
        "A site names the unknown cause lo",
        () -> site(Map.of("lo", Map.of(Complaint.DEAD, 1.0)), Map.of()).applyTo(guide));
    assertRefused(
        "the share of low must be over 0: 0.0",
        () -> site(Map.of("low", Map.of(Complaint.DEAD, 0.0)), Map.of()).applyTo(guide));
  }

  private static Site site(
      Map<String, Map<Complaint, Double>> shares, Map<String, Double> minutes) {
    return new Site(
        "A site",
        shares,
        minutes,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Map.of(),
        Optional.empty(),
        SiteUnits.unsaid(),
        List.of(),
        Map.of());
  }

  @Test
  void refusesLimitsThatCannotBe() {
    assertRefused(
        "the limit of flow needs a bound",
        () -> limit(OptionalDouble.empty(), OptionalDouble.empty(), "gpm"));
    assertRefused(
        "the limit of flow must run from a smaller to a larger number of 0 or more",
        () -> limit(OptionalDouble.of(2), OptionalDouble.of(1), "gpm"));
    assertRefused(
        "the limit of flow must run from a smaller to a larger number of 0 or more",
        () -> limit(OptionalDouble.of(Double.NaN), OptionalDouble.of(1), "gpm"));
    assertRefused(
        "the limit of flow cannot be in gal",
        () -> limit(OptionalDouble.of(1), OptionalDouble.of(1), "gal"));
  }

  private static SiteLimit limit(OptionalDouble least, OptionalDouble most, String unit) {
    return new SiteLimit(Measure.FLOW, List.of(), least, most, unit, "code");
  }

  @Test
  void everyClosedListIsFoundByItsWords() {
    for (Complaint value : Complaint.values()) {
      assertEquals(Optional.of(value), Complaint.of(value.word()));
    }
    for (Work value : Work.values()) {
      assertEquals(Optional.of(value), Work.of(value.word()));
    }
    for (Who value : Who.values()) {
      assertEquals(Optional.of(value), Who.of(value.word()));
    }
    for (Opening value : Opening.values()) {
      assertEquals(Optional.of(value), Opening.of(value.word()));
    }
    for (Area value : Area.values()) {
      assertEquals(Optional.of(value), Area.of(value.word()));
    }
    for (Measure value : Measure.values()) {
      assertEquals(Optional.of(value), Measure.of(value.word()));
    }
    for (Urgency value : Urgency.values()) {
      assertEquals(Optional.of(value), Urgency.of(value.word()));
    }
    assertEquals(Optional.empty(), Complaint.of("Dead"));
  }
}

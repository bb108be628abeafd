package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which parts of a guide cannot be, and their borders. */
class GuidePartsTest {
  private static final double NAN = Double.NaN;
  private static final Answer YES = new Answer("yes", "It does");
  private static final Answer NO = new Answer("no", "It does not");
  private static final Cause LOW = cause("low", Map.of(Complaint.DEAD, 2.0), Map.of(), Map.of());
  private static final Cause OTHER =
      cause("other", Map.of(Complaint.DEAD, 1.0), Map.of(), Map.of());

  private static void assertRefused(String message, Executable building) {
    assertEquals(message, assertThrows(GuideException.class, building).getMessage());
  }

  private static String name(String what, String id) {
    return what
        + "'s id must be lower-case letters, digits and hyphens, starting with a letter: "
        + id;
  }

  private static Cause cause(
      String id,
      Map<Complaint, Double> shares,
      Map<Work, Double> lately,
      Map<Condition, Double> lamp) {
    return new Cause(
        id, "N", "L", Area.POWER, List.of(), List.of(), shares, lately, lamp, Optional.empty());
  }

  private static Check check(
      String id,
      List<Answer> answers,
      List<Double> usual,
      Map<String, List<Double>> rows,
      List<Requirement> before) {
    return new Check(
        id,
        "Does it?",
        List.of(),
        2,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        answers,
        usual,
        rows,
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
    return check(id, List.of(YES, NO), List.of(0.5, 0.5), Map.of(), List.of());
  }

  private static Remedy remedy(
      String id, Map<String, Double> fixes, List<String> steps, List<Requirement> before) {
    return new Remedy(
        id,
        "N",
        fixes,
        List.of(),
        List.of(),
        List.of(),
        steps,
        List.of(),
        List.of(),
        5,
        Who.ANYONE,
        List.of(),
        false,
        before,
        List.of(),
        Optional.empty(),
        false,
        Optional.empty());
  }

  private static MakeSafe rule(
      String id, List<Complaint> complaints, List<Requirement> found, List<String> steps) {
    return new MakeSafe(
        id, "S", List.of(), List.of(), complaints, found, List.of(), steps, Optional.empty());
  }

  private static Guide guide(
      double handOver,
      double secondTrip,
      Map<Condition, Double> usual,
      List<Check> checks,
      List<Remedy> remedies,
      List<MakeSafe> rules) {
    return new Guide(
        "T",
        "B",
        handOver,
        secondTrip,
        usual,
        List.of(LOW, OTHER),
        checks,
        remedies,
        rules,
        List.of());
  }

  private static Guide guide(List<Check> checks, List<Remedy> remedies, List<MakeSafe> rules) {
    return guide(60, 30, Map.of(Condition.READY, 1.0), checks, remedies, rules);
  }

  @Test
  void everyPartHasAName() {
    assertRefused(name("a cause", "Low"), () -> cause("Low", Map.of(), Map.of(), Map.of()));
    assertRefused(name("a check", "A b"), () -> check("A b"));
    assertRefused(
        name("a remedy", ""), () -> remedy("", Map.of("low", 1.0), List.of("Do"), List.of()));
    assertRefused(
        name("a rule to make safe", "9"),
        () -> rule("9", List.of(Complaint.DEAD), List.of(), List.of("Do")));
  }

  @Test
  void nothingIsMissingOfAPart() {
    assertRefused(
        "the cause low needs a share of at least one complaint",
        () -> cause("low", Map.of(), Map.of(), Map.of()));
    assertRefused(
        "the check look needs at least two answers",
        () -> check("look", List.of(YES), List.of(1.0), Map.of(), List.of()));
    assertRefused(
        "the answer yes of look doubles",
        () -> check("look", List.of(YES, YES), List.of(0.5, 0.5), Map.of(), List.of()));
    assertRefused(
        "the row usual of look must have 2 chances: 1",
        () -> check("look", List.of(YES, NO), List.of(1.0), Map.of(), List.of()));
    assertRefused(
        "the remedy mend needs a cause that it fixes",
        () -> remedy("mend", Map.of(), List.of("Do"), List.of()));
    assertRefused(
        "the remedy mend needs at least one step",
        () -> remedy("mend", Map.of("low", 1.0), List.of(), List.of()));
    assertRefused(
        "nothing calls for full", () -> rule("full", List.of(), List.of(), List.of("Do")));
    assertRefused(
        "making safe, full, needs at least one step",
        () -> rule("full", List.of(Complaint.DEAD), List.of(), List.of()));
    assertRefused(
        "a requirement needs at least one answer of look",
        () -> new Requirement("look", List.of()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, NAN, Double.POSITIVE_INFINITY})
  void factorsAndMinutesAreOverNothing(double bad) {
    assertRefused(
        "what earlier work does to low must be over 0: " + bad,
        () -> cause("low", Map.of(Complaint.DEAD, 1.0), Map.of(Work.CELLS, bad), Map.of()));
    Map<Condition, Double> usual = Map.of(Condition.READY, 1.0);
    assertRefused(
        "the minutes of handing over must be over 0: " + bad,
        () -> guide(bad, 30, usual, List.of(), List.of(), List.of()));
    assertRefused(
        "the minutes of a second trip must be over 0: " + bad,
        () -> guide(60, bad, usual, List.of(), List.of(), List.of()));
  }

  @Test
  void bordersOfChancesAreInside() {
    Map<Complaint, Double> share = Map.of(Complaint.DEAD, Double.MAX_VALUE);
    Map<Condition, Double> all = Map.of(Condition.READY, 1.0, Condition.OTHER, 0.0);
    assertEquals(all, cause("low", share, Map.of(Work.CELLS, 1e-9), all).conditions());
    assertEquals(1, remedy("mend", Map.of("low", 1.0), List.of("Do"), List.of()).fixes().size());
    assertRefused(
        "a chance to fix of mend must be over 0: 1.01",
        () -> remedy("mend", Map.of("low", 1.01), List.of("Do"), List.of()));
    assertRefused(
        "the chances of the usual conditions sum to 0.5",
        () -> guide(60, 30, Map.of(Condition.READY, 0.5), List.of(), List.of(), List.of()));
    assertRefused(
        "the chance of a usual condition is 1.5",
        () -> guide(60, 30, Map.of(Condition.READY, 1.5), List.of(), List.of(), List.of()));
    assertEquals(0, new WaterPrice(0, "EUR", 1).of(9));
    assertRefused(
        "a price must be a number of 0 or more: -1.0", () -> new WaterPrice(-1, "EUR", 1));
    assertRefused(
        "a price must be a number of 0 or more: NaN", () -> new WaterPrice(NAN, "EUR", 1));
  }

  @Test
  void whatIsNamedMustBeThere() {
    List<Requirement> moon = List.of(new Requirement("moon", List.of("yes")));
    List<Answer> answers = List.of(YES, NO);
    List<Double> half = List.of(0.5, 0.5);
    assertRefused(
        "look names the unknown cause high",
        () ->
            guide(
                List.of(check("look", answers, half, Map.of("high", half), List.of())),
                List.of(),
                List.of()));
    assertRefused(
        "look names the unknown check moon",
        () -> guide(List.of(check("look", answers, half, Map.of(), moon)), List.of(), List.of()));
    assertRefused(
        "mend names the unknown check moon",
        () ->
            guide(
                List.of(),
                List.of(remedy("mend", Map.of("low", 1.0), List.of("Do"), moon)),
                List.of()));
    assertRefused(
        "full names the unknown check moon",
        () -> guide(List.of(), List.of(), List.of(rule("full", List.of(), moon, List.of("Do")))));
    MakeSafe full = rule("full", List.of(Complaint.DEAD), List.of(), List.of("Do"));
    assertRefused(
        "the rule to make safe full stands twice",
        () -> guide(List.of(), List.of(), List.of(full, full)));
    Remedy mend = remedy("mend", Map.of("low", 1.0), List.of("Do"), List.of());
    assertRefused(
        "the remedy mend stands twice", () -> guide(List.of(), List.of(mend, mend), List.of()));
  }

  @Test
  void dangersComeInTheGuidesOrder() {
    Requirement yes = new Requirement("look", List.of("yes"));
    Requirement no = new Requirement("look", List.of("no"));
    MakeSafe worst = rule("worst", List.of(), List.of(yes), List.of("Do"));
    MakeSafe bad = rule("bad", List.of(Complaint.DEAD), List.of(no), List.of("Do"));
    Guide guide = guide(List.of(check("look")), List.of(), List.of(worst, bad));
    Situation dead = Situation.of(FixtureKind.URINAL, Optional.empty(), Complaint.DEAD);
    Act found = new Act.Found(new Finding("look", "yes"));
    assertEquals(List.of(bad), new Progress(guide, dead, List.of()).due());
    assertEquals(List.of(worst, bad), new Progress(guide, dead, List.of(found)).due());
    Progress secured = new Progress(guide, dead, List.of(found, new Act.Secured("bad")));
    assertEquals(List.of(worst), secured.due());
    assertEquals(true, secured.wasSecured());
    assertEquals(false, new Progress(guide, dead, List.of(found)).wasSecured());
  }
}

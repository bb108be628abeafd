package lampwise.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * Causes, checks, remedies and cautions of the trade, independent of any one unit.
 *
 * @param title what it is about
 * @param basis where its shares, chances and minutes come from
 * @param handOverMinutes what handing over to somebody else costs, in minutes; over 0
 * @param secondTripMinutes what another trip for a missing part costs, in minutes; over 0
 * @param usualConditions what a lamp says where the cause does not show in it; sums to 1
 * @param causes the causes, {@link #OTHER} among them
 * @param checks the checks, in the guide's order
 * @param remedies the remedies
 * @param makeSafe what comes before any question, the most urgent first
 * @param closing what ends every visit, in order
 */
public record Guide(
    String title,
    String basis,
    double handOverMinutes,
    double secondTripMinutes,
    Map<Condition, Double> usualConditions,
    List<Cause> causes,
    List<Check> checks,
    List<Remedy> remedies,
    List<MakeSafe> makeSafe,
    List<ClosingStep> closing) {
  /** The id of the cause that stands for every cause that is not listed. */
  public static final String OTHER = "other";

  /**
   * Keeps copies and checks what the parts say of each other.
   *
   * @throws GuideException if an id stands twice among parts of one sort, there is no cause {@link
   *     #OTHER}, a part names a cause, check or answer that is not there, or a number is out of
   *     range
   */
  public Guide {
    usualConditions = Rules.copy(usualConditions);
    causes = List.copyOf(causes);
    checks = List.copyOf(checks);
    remedies = List.copyOf(remedies);
    makeSafe = List.copyOf(makeSafe);
    closing = List.copyOf(closing);
    Rules.minutes("handing over", handOverMinutes);
    Rules.minutes("a second trip", secondTripMinutes);
    for (double chance : usualConditions.values()) {
      Rules.that(Rules.isChance(chance), "the chance of a usual condition is " + chance);
    }
    Rules.that(
        Math.abs(Rules.sum(usualConditions.values()) - 1) <= Rules.SLACK,
        "the chances of the usual conditions sum to " + Rules.sum(usualConditions.values()));
    GuideLinks.verify(causes, checks, remedies, makeSafe);
  }

  /**
   * Finds a cause.
   *
   * @param id its id
   * @return the cause, or empty if there is none
   */
  public Optional<Cause> cause(String id) {
    return find(causes, Cause::id, id);
  }

  /**
   * Finds a check.
   *
   * @param id its id
   * @return the check, or empty if there is none
   */
  public Optional<Check> check(String id) {
    return find(checks, Check::id, id);
  }

  /**
   * Finds a remedy.
   *
   * @param id its id
   * @return the remedy, or empty if there is none
   */
  public Optional<Remedy> remedy(String id) {
    return find(remedies, Remedy::id, id);
  }

  private static <T> Optional<T> find(List<T> parts, Function<T, String> idOf, String id) {
    return parts.stream().filter(part -> idOf.apply(part).equals(id)).findFirst();
  }

  /**
   * The causes that can be behind a complaint, in the guide's order.
   *
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @param complaint the complaint
   * @return those that fit and have a share of the complaint
   */
  public List<Cause> causes(FixtureKind kind, Optional<Power> power, Complaint complaint) {
    return causes.stream()
        .filter(cause -> cause.fits(kind, power) && cause.shares().containsKey(complaint))
        .toList();
  }

  /**
   * The chance that the lamp says a condition under a cause: what the cause says itself, and the
   * usual conditions for the rest. Over all conditions it sums to 1.
   *
   * @param cause the cause
   * @param condition the condition
   * @return the chance, 0 to 1
   */
  public double chance(Cause cause, Condition condition) {
    double rest = Math.max(0, 1 - Rules.sum(cause.conditions().values()));
    return cause.conditions().getOrDefault(condition, 0.0)
        + rest * usualConditions.getOrDefault(condition, 0.0);
  }
}

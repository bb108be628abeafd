package lampwise.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * Why a fixture does not work. What puts it right, with minutes, parts and who may do it, stands in
 * the {@link Remedy remedies}.
 *
 * @param id its id; {@link Guide#OTHER} stands for every cause that the guide does not list
 * @param name what it is, in a few words
 * @param looksLike what somebody at the fixture notices
 * @param area where it sits
 * @param kinds the kinds of fixture that can have it; empty for all
 * @param powers the kinds of power that can have it; empty for all
 * @param shares how common it is behind each complaint, relative to the other causes of that
 *     complaint; over 0 and finite. A complaint that is not there is never brought about by it
 * @param lately by how much a piece of earlier work multiplies the shares; over 0 and finite, 1 for
 *     work that is not there
 * @param conditions how likely the lamp then says each condition: chances that sum to at most 1;
 *     the rest is as {@link Guide#usualConditions} has it
 * @param source where it is published; empty for common practice without a source
 */
public record Cause(
    String id,
    String name,
    String looksLike,
    Area area,
    List<FixtureKind> kinds,
    List<Power> powers,
    Map<Complaint, Double> shares,
    Map<Work, Double> lately,
    Map<Condition, Double> conditions,
    Optional<String> source) {
  /**
   * Keeps copies, in the order given, and checks the values.
   *
   * @throws GuideException if the id is no name, there is no share, or a number is out of range
   */
  public Cause {
    Rules.id("a cause", id);
    kinds = List.copyOf(kinds);
    powers = List.copyOf(powers);
    shares = Rules.copy(shares);
    lately = Rules.copy(lately);
    conditions = Rules.copy(conditions);
    Rules.that(!shares.isEmpty(), "the cause " + id + " needs a share of at least one complaint");
    for (Map.Entry<Complaint, Double> share : shares.entrySet()) {
      Rules.that(
          share.getValue() > 0 && share.getValue() <= Double.MAX_VALUE,
          "the share of " + id + " must be over 0: " + share.getValue());
    }
    for (double factor : lately.values()) {
      Rules.that(
          factor > 0 && factor <= Double.MAX_VALUE,
          "what earlier work does to " + id + " must be over 0: " + factor);
    }
    for (double chance : conditions.values()) {
      Rules.that(Rules.isChance(chance), "the chance of a condition under " + id + " is " + chance);
    }
    Rules.that(
        Rules.sum(conditions.values()) <= 1 + Rules.SLACK,
        "the chances of the conditions under " + id + " sum to more than 1");
  }

  /**
   * Whether a unit can have it.
   *
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @return true if neither rules it out
   */
  public boolean fits(FixtureKind kind, Optional<Power> power) {
    return Rules.fits(kinds, powers, kind, power);
  }

  /**
   * How common it is, relative to the other causes.
   *
   * @param complaint the complaint
   * @param recent what was worked on lately; may be empty
   * @return 0 or more; it is not normalised
   */
  public double share(Complaint complaint, List<Work> recent) {
    double share = shares.getOrDefault(complaint, 0.0);
    for (Work work : recent) {
      share *= lately.getOrDefault(work, 1.0);
    }
    return share;
  }

  /**
   * The same cause with other shares.
   *
   * @param other shares by complaint, as for a new cause
   * @return the cause
   * @throws GuideException if there is no share or one is out of range
   */
  public Cause withShares(Map<Complaint, Double> other) {
    return new Cause(id, name, looksLike, area, kinds, powers, other, lately, conditions, source);
  }
}

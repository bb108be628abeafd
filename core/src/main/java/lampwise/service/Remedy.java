package lampwise.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * Work that puts one or more causes right.
 *
 * @param id its id
 * @param name what it is, in a few words
 * @param fixes the chance that it puts a cause right, by the cause's id; over 0 and at most 1
 * @param kinds the kinds of fixture it is for; empty for all
 * @param powers the kinds of power it is for; empty for all
 * @param cautions shown before the first step
 * @param steps what to do, at least one
 * @param parts parts that it uses up; without one of them a second trip is needed. May be empty
 * @param tools tools that it needs; may be empty
 * @param minutes how long it takes, verifying included; over 0
 * @param who who may do it
 * @param opens what it opens; empty if nothing
 * @param flushes whether it makes water flow by a flush, verifying included
 * @param before the checks that must have been made before, all of them
 * @param verify the checks that prove it, with the answers that do
 * @param clears what clears the lamp's warning afterwards; empty if nothing needs clearing
 * @param watch whether the fault may come back, so that the visit ends with {@code reset, watch}
 * @param source where it is published; empty for common practice without a source
 */
public record Remedy(
    String id,
    String name,
    Map<String, Double> fixes,
    List<FixtureKind> kinds,
    List<Power> powers,
    List<Caution> cautions,
    List<String> steps,
    List<String> parts,
    List<String> tools,
    double minutes,
    Who who,
    List<Opening> opens,
    boolean flushes,
    List<Requirement> before,
    List<Requirement> verify,
    Optional<String> clears,
    boolean watch,
    Optional<String> source) {
  /**
   * Keeps copies and checks the values.
   *
   * @throws GuideException if the id is no name, nothing is fixed, there is no step, or a number is
   *     out of range
   */
  public Remedy {
    Rules.id("a remedy", id);
    Rules.minutes(id, minutes);
    fixes = Rules.copy(fixes);
    kinds = List.copyOf(kinds);
    powers = List.copyOf(powers);
    cautions = List.copyOf(cautions);
    steps = List.copyOf(steps);
    parts = List.copyOf(parts);
    tools = List.copyOf(tools);
    opens = List.copyOf(opens);
    before = List.copyOf(before);
    verify = List.copyOf(verify);
    Rules.that(!fixes.isEmpty(), "the remedy " + id + " needs a cause that it fixes");
    Rules.that(!steps.isEmpty(), "the remedy " + id + " needs at least one step");
    for (double chance : fixes.values()) {
      Rules.that(
          chance > 0 && chance <= 1, "a chance to fix of " + id + " must be over 0: " + chance);
    }
  }

  /**
   * Whether it is for a unit.
   *
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @return true if neither rules it out
   */
  public boolean fits(FixtureKind kind, Optional<Power> power) {
    return Rules.fits(kinds, powers, kind, power);
  }

  /**
   * The same remedy with other minutes, done by others.
   *
   * @param otherMinutes how long it takes, over 0
   * @param otherWho who may do it
   * @return the remedy
   * @throws GuideException if the minutes are not over 0
   */
  public Remedy with(double otherMinutes, Who otherWho) {
    return new Remedy(
        id,
        name,
        fixes,
        kinds,
        powers,
        cautions,
        steps,
        parts,
        tools,
        otherMinutes,
        otherWho,
        opens,
        flushes,
        before,
        verify,
        clears,
        watch,
        source);
  }
}

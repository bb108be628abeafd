package lampwise.service;

import java.util.List;
import java.util.Optional;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * What to do at once about a danger, before any question and whatever it costs.
 *
 * @param id its id
 * @param sign what shows the danger
 * @param kinds the kinds of fixture it is about; empty for all
 * @param powers the kinds of power it is about; empty for all
 * @param complaints complaints that call for it by themselves; may be empty
 * @param findings findings that call for it, each by itself; may be empty
 * @param cautions shown before the first step
 * @param steps what to do, at least one
 * @param source where it is published; empty for common practice without a source
 */
public record MakeSafe(
    String id,
    String sign,
    List<FixtureKind> kinds,
    List<Power> powers,
    List<Complaint> complaints,
    List<Requirement> findings,
    List<Caution> cautions,
    List<String> steps,
    Optional<String> source) {
  /**
   * Keeps copies and checks the values.
   *
   * @throws GuideException if the id is no name, nothing calls for it, or there is no step
   */
  public MakeSafe {
    Rules.id("a rule to make safe", id);
    kinds = List.copyOf(kinds);
    powers = List.copyOf(powers);
    complaints = List.copyOf(complaints);
    findings = List.copyOf(findings);
    cautions = List.copyOf(cautions);
    steps = List.copyOf(steps);
    Rules.that(!complaints.isEmpty() || !findings.isEmpty(), "nothing calls for " + id);
    Rules.that(!steps.isEmpty(), "making safe, " + id + ", needs at least one step");
  }

  /**
   * Whether what is known of a fixture calls for it.
   *
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @param complaint the complaint
   * @param found the findings so far
   * @return true if the complaint or one of the findings does
   */
  public boolean calledFor(
      FixtureKind kind, Optional<Power> power, Complaint complaint, List<Finding> found) {
    return Rules.fits(kinds, powers, kind, power)
        && (complaints.contains(complaint)
            || findings.stream().anyMatch(sign -> found.stream().anyMatch(sign::metBy)));
  }
}

package lampwise.service;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.sheet.FixtureKind;

/**
 * A limit that holds at a site, such as that of a locally adopted code. It overrides every default.
 *
 * @param of what is limited
 * @param kinds the kinds of fixture it is for; empty for all
 * @param atLeast the smallest value that is right, inclusive; empty for none
 * @param atMost the largest value that is right, inclusive; empty for none
 * @param unit the unit of both, one of {@link Measure#units}
 * @param basis where the limit comes from, in words
 */
public record SiteLimit(
    Measure of,
    List<FixtureKind> kinds,
    OptionalDouble atLeast,
    OptionalDouble atMost,
    String unit,
    String basis) {
  /**
   * Keeps a copy of the list and checks the values.
   *
   * @throws GuideException if there is no bound, a bound is negative or not finite, they are the
   *     wrong way round, or the unit is none of the measure's
   */
  public SiteLimit {
    kinds = List.copyOf(kinds);
    String what = "the limit of " + of.word();
    Rules.that(atLeast.isPresent() || atMost.isPresent(), what + " needs a bound");
    Rules.that(
        atLeast.orElse(0) >= 0
            && atMost.orElse(Double.MAX_VALUE) <= Double.MAX_VALUE
            && atLeast.orElse(0) <= atMost.orElse(Double.MAX_VALUE),
        what + " must run from a smaller to a larger number of 0 or more");
    Rules.that(of.units().contains(unit), what + " cannot be in " + unit);
  }
}

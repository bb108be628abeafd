package lampwise.service;

import java.util.LinkedHashMap;
import java.util.Map;
import lampwise.decode.Candidate;
import lampwise.decode.Reading;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;

/**
 * What a reading of the lamp says about the unit, without what was believed of the lamp before: how
 * many times likelier the reading has made each condition. Whoever weighs causes by it counts no
 * prior twice.
 *
 * @param conditions probability after the reading over that before, of each condition that the
 *     sheet has a state for; 0 or more and finite
 * @param unlisted the same for a state that the sheet does not list
 * @param invented whether the sheet is an invented one, so that it says nothing of a real unit
 */
public record LampSaid(Map<Condition, Double> conditions, double unlisted, boolean invented) {
  /** The share of units that show what their sheet does not list. */
  private static final double OFF_SHEET = 0.05;

  /**
   * Keeps a copy and checks the values.
   *
   * @throws GuideException if a ratio is negative or not finite
   */
  public LampSaid {
    conditions = Rules.copy(conditions);
    check(unlisted);
    for (double ratio : conditions.values()) {
      check(ratio);
    }
  }

  private static void check(double ratio) {
    Rules.that(
        ratio >= 0 && ratio <= Double.MAX_VALUE, "a ratio of the lamp must be 0 or more: " + ratio);
  }

  /**
   * Takes it from a reading.
   *
   * @param sheet the sheet that was decoded against
   * @param reading the reading; one without candidates says nothing
   * @return the ratios; all are 1 where nothing was said
   */
  public static LampSaid of(CodeSheet sheet, Reading reading) {
    Map<Condition, Double> before = new LinkedHashMap<>();
    Map<Condition, Double> after = new LinkedHashMap<>();
    double unlisted = 1;
    for (Candidate candidate : reading.candidates()) {
      LampState state = sheet.state(candidate.state()).orElse(null);
      if (state != null) {
        before.merge(state.condition(), candidate.prior(), Double::sum);
        after.merge(state.condition(), candidate.probability(), Double::sum);
      } else if (candidate.state().equals("unlisted")) {
        unlisted = ratio(candidate.probability(), candidate.prior());
      }
    }
    Map<Condition, Double> ratios = new LinkedHashMap<>();
    before.forEach(
        (condition, prior) ->
            ratios.put(condition, ratio(after.getOrDefault(condition, 0.0), prior)));
    return new LampSaid(ratios, unlisted, sheet.isInvented());
  }

  private static double ratio(double after, double before) {
    return before > 0 && after >= 0 ? Math.min(after / before, 1e9) : 1;
  }

  /**
   * How likely the reading is under a cause, up to a factor that is the same for all causes. What a
   * cause makes the lamp say and the sheet has no state for counts as unlisted.
   *
   * @param guide the guide
   * @param cause the cause
   * @return 0 or more
   */
  double likelihood(Guide guide, Cause cause) {
    double sum = 0;
    for (Condition condition : Condition.values()) {
      sum += guide.chance(cause, condition) * conditions.getOrDefault(condition, unlisted);
    }
    return (1 - OFF_SHEET) * sum + OFF_SHEET * unlisted;
  }
}

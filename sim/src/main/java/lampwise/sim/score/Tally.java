package lampwise.sim.score;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The outcomes of one decoder, counted.
 *
 * @param all how many
 * @param right those whose likeliest candidate is the truth, whatever the verdict
 * @param decoded those with the verdict {@code decoded}
 * @param misread those of the decoded that are wrong
 * @param undecided those with the verdict {@code undecided}
 * @param unreadable those with the verdict {@code unreadable}
 * @param unlisted those with the verdict {@code unlisted}
 * @param listedCalledUnlisted those with the verdict {@code unlisted} that are of a listed state
 * @param logLoss the mean of -ln(probability of the truth), in nat; NaN if there are none
 */
public record Tally(
    int all,
    int right,
    int decoded,
    int misread,
    int undecided,
    int unreadable,
    int unlisted,
    int listedCalledUnlisted,
    double logLoss) {
  /** A probability below this counts as this in the log loss. */
  public static final double LEAST_PROBABILITY = 1e-6;

  /**
   * Counts outcomes.
   *
   * @param outcomes the outcomes
   * @return the counts
   */
  public static Tally of(List<Outcome> outcomes) {
    double loss = 0;
    for (Outcome outcome : outcomes) {
      loss += outcome.logLoss();
    }
    return new Tally(
        outcomes.size(),
        (int) outcomes.stream().filter(Outcome::isRight).count(),
        with(outcomes, "decoded"),
        (int) outcomes.stream().filter(Outcome::isMisread).count(),
        with(outcomes, "undecided"),
        with(outcomes, "unreadable"),
        with(outcomes, "unlisted"),
        (int)
            outcomes.stream()
                .filter(o -> o.verdict().equals("unlisted") && o.isOfListedState())
                .count(),
        outcomes.isEmpty() ? Double.NaN : loss / outcomes.size());
  }

  private static int with(List<Outcome> outcomes, String verdict) {
    return (int) outcomes.stream().filter(o -> o.verdict().equals(verdict)).count();
  }

  /**
   * The share of right answers.
   *
   * @return the share and its interval
   */
  public Interval rightShare() {
    return Interval.share(right, all);
  }

  /**
   * The share of the decoded that is wrong.
   *
   * @return the share and its interval; NaN if nothing was decoded
   */
  public Interval misreadShare() {
    return Interval.share(misread, decoded);
  }

  /**
   * How often each truth was taken for each candidate.
   *
   * @param outcomes the outcomes
   * @return truth, then likeliest candidate, then how often; both by name, only what occurs
   */
  public static Map<String, Map<String, Integer>> confusion(List<Outcome> outcomes) {
    Map<String, Map<String, Integer>> counts = new TreeMap<>();
    for (Outcome outcome : outcomes) {
      counts
          .computeIfAbsent(outcome.truth(), truth -> new TreeMap<>())
          .merge(outcome.top(), 1, Integer::sum);
    }
    return counts;
  }
}

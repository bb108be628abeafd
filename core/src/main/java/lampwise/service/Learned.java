package lampwise.service;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a site's own visits say of how common causes are and how long remedies take.
 *
 * <p>Shares are the mean of a Dirichlet distribution: the guide's shares of a complaint count as
 * {@value #GUIDE_VISITS} visits, and each visit whose cause was found counts as one (Gelman et al.,
 * Bayesian Data Analysis, 3rd ed. 2013, section 3.4, from memory). Minutes of a remedy are the mean
 * over its visits with the guide's minutes counted {@value #GUIDE_MINUTES} times; of a visit's
 * minutes those of its checks are taken off. Both strengths are ours.
 *
 * @param site the site's figures, for {@link Site#applyTo}
 * @param visits how many visits told a cause
 * @param timed how many visits told the minutes of a remedy
 */
public record Learned(Site site, int visits, int timed) {
  /** How many visits the guide's shares of a complaint are worth. */
  public static final int GUIDE_VISITS = 20;

  /** How many visits the guide's minutes of a remedy are worth. */
  public static final int GUIDE_MINUTES = 5;

  /** What a remedy takes at the least, whatever the log says. */
  private static final double LEAST_MINUTES = 1;

  /**
   * Learns from visits.
   *
   * <p>A visit tells a cause if it ended {@code fixed} or {@code reset, watch} and its cause and
   * complaint are known to the guide, as one that can be behind the other. It tells the minutes of
   * a remedy if besides just one was tried and its minutes stand in the log.
   *
   * @param guide the guide, with what else the site says
   * @param visits the visits, corrected
   * @return the figures; without a visit that tells anything those of the guide
   */
  public static Learned from(Guide guide, List<Visit> visits) {
    Map<String, Map<Complaint, Double>> shares = new LinkedHashMap<>();
    Map<String, Double> minutes = new LinkedHashMap<>();
    Map<String, Integer> times = new LinkedHashMap<>();
    int told = 0;
    int timed = 0;
    for (Visit visit : visits) {
      Optional<Cause> cause = causeOf(guide, visit);
      if (cause.isEmpty()) {
        continue;
      }
      Complaint complaint = visit.complaint().orElseThrow();
      shares
          .computeIfAbsent(cause.get().id(), id -> new LinkedHashMap<>())
          .merge(complaint, unit(guide, complaint), Double::sum);
      told++;
      OptionalDouble took = minutesOf(guide, visit);
      if (took.isPresent()) {
        minutes.merge(visit.done().remedies().get(0), took.getAsDouble(), Double::sum);
        times.merge(visit.done().remedies().get(0), 1, Integer::sum);
        timed++;
      }
    }
    shares.forEach(
        (id, own) ->
            own.replaceAll(
                (complaint, sum) ->
                    sum + guide.cause(id).orElseThrow().share(complaint, List.of())));
    minutes.replaceAll(
        (id, sum) -> {
          double usual = guide.remedy(id).orElseThrow().minutes();
          return (GUIDE_MINUTES * usual + sum) / (GUIDE_MINUTES + times.getOrDefault(id, 0));
        });
    Site none = Site.unknown();
    Site site =
        new Site(
            "the visit log",
            shares,
            minutes,
            none.handOverMinutes(),
            none.secondTripMinutes(),
            none.who(),
            none.water(),
            none.units(),
            none.limits(),
            none.urgency());
    return new Learned(site, told, timed);
  }

  /** What one visit adds to a share of a complaint, on the guide's own scale. */
  private static double unit(Guide guide, Complaint complaint) {
    double all = 0;
    for (Cause cause : guide.causes()) {
      all += cause.share(complaint, List.of());
    }
    return all / GUIDE_VISITS;
  }

  private static Optional<Cause> causeOf(Guide guide, Visit visit) {
    boolean found = visit.outcome() == Outcome.FIXED || visit.outcome() == Outcome.RESET_WATCH;
    return guide
        .cause(visit.done().cause())
        .filter(cause -> found && visit.complaint().isPresent())
        .filter(cause -> cause.share(visit.complaint().orElseThrow(), List.of()) > 0);
  }

  private static OptionalDouble minutesOf(Guide guide, Visit visit) {
    List<String> remedies = visit.done().remedies();
    if (visit.done().minutes().isEmpty()
        || remedies.size() != 1
        || guide.remedy(remedies.get(0)).isEmpty()) {
      return OptionalDouble.empty();
    }
    double left = visit.done().minutes().getAsDouble();
    for (Finding finding : visit.findings()) {
      left -= guide.check(finding.check()).map(Check::minutes).orElse(0.0);
    }
    return OptionalDouble.of(Math.max(left, LEAST_MINUTES));
  }
}

package lampwise.service;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * What a site's own visits say of how common causes are and how long remedies take, for one kind of
 * fixture.
 *
 * <p>Shares are the mean of a Dirichlet distribution over the causes that fit the fixture: the
 * guide's shares of a complaint count as {@value #GUIDE_VISITS} visits, and each visit whose cause
 * was found counts as one (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, section 3.4, from
 * memory). Minutes of a remedy are the weighted geometric mean of the guide's minutes, with weight
 * {@value #GUIDE_MINUTES}, and of the median over its visits, weighted by their number, so that one
 * odd visit moves them little; of a visit's minutes those of its checks are taken off. Both
 * strengths are ours.
 *
 * @param site the site's figures, for {@link Site#applyTo}; its shares are meant for the kind and
 *     power that were asked for, and for no other
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
   * <p>A visit tells a cause if it was to a fixture of that kind, ended {@code fixed} or {@code
   * reset, watch}, and its cause is one that the guide has for its complaint at that kind and
   * power. A visit without a kind or a complaint tells nothing. It tells the minutes of a remedy if
   * besides just one was tried and its minutes stand in the log.
   *
   * @param guide the guide, with what else the site says
   * @param visits the visits, corrected
   * @param kind the kind of fixture at hand
   * @param power what it runs on; empty if that is not known
   * @return the figures; without a visit that tells anything those of the guide
   */
  public static Learned from(
      Guide guide, List<Visit> visits, FixtureKind kind, Optional<Power> power) {
    Map<String, Map<Complaint, Double>> shares = new LinkedHashMap<>();
    Map<String, List<Double>> took = new LinkedHashMap<>();
    int told = 0;
    int timed = 0;
    for (Visit visit : visits) {
      if (!visit.kind().equals(Optional.of(kind)) || visit.complaint().isEmpty()) {
        continue;
      }
      Complaint complaint = visit.complaint().get();
      List<Cause> fitting = guide.causes(kind, power, complaint);
      Optional<Cause> cause = causeOf(fitting, visit);
      if (cause.isEmpty()) {
        continue;
      }
      shares
          .computeIfAbsent(cause.get().id(), id -> new LinkedHashMap<>())
          .merge(complaint, unit(fitting, complaint), Double::sum);
      told++;
      OptionalDouble minutes = minutesOf(guide, visit);
      if (minutes.isPresent()) {
        took.computeIfAbsent(visit.done().remedies().get(0), id -> new ArrayList<>())
            .add(minutes.getAsDouble());
        timed++;
      }
    }
    shares.forEach(
        (id, own) ->
            own.replaceAll(
                (complaint, sum) ->
                    sum + guide.cause(id).orElseThrow().share(complaint, List.of())));
    Map<String, Double> minutes = new LinkedHashMap<>();
    took.forEach(
        (id, all) -> minutes.put(id, shrunk(guide.remedy(id).orElseThrow().minutes(), all)));
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
  private static double unit(List<Cause> fitting, Complaint complaint) {
    double all = 0;
    for (Cause cause : fitting) {
      all += cause.share(complaint, List.of());
    }
    return all / GUIDE_VISITS;
  }

  private static Optional<Cause> causeOf(List<Cause> fitting, Visit visit) {
    boolean found = visit.outcome() == Outcome.FIXED || visit.outcome() == Outcome.RESET_WATCH;
    return fitting.stream()
        .filter(cause -> found && cause.id().equals(visit.done().cause()))
        .findFirst();
  }

  /** The guide's minutes and the median of the visits, between them by their weights. */
  private static double shrunk(double usual, List<Double> took) {
    double share = took.size() / (double) (GUIDE_MINUTES + took.size());
    return usual * StrictMath.pow(median(took) / usual, share);
  }

  private static double median(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    int middle = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(middle)
        : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
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

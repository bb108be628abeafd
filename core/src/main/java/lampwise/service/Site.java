package lampwise.service;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a site knows better than the guide: its own shares and minutes, who may do what, its price
 * of water, its limits and what it finds urgent.
 *
 * @param title what the site is
 * @param shares shares of causes, by their ids; a complaint that is not there keeps the guide's
 *     share
 * @param minutes minutes of checks and remedies, by their ids
 * @param handOverMinutes what handing over costs, in minutes; empty for the guide's
 * @param secondTripMinutes what another trip costs, in minutes; empty for the guide's
 * @param who who may make a check or do a remedy, by their ids
 * @param water the price of water; empty if it is not known
 * @param units the units in which figures are printed
 * @param limits limits that override every default
 * @param urgency weights of what makes a fixture urgent; one that is not there has its usual weight
 */
public record Site(
    String title,
    Map<String, Map<Complaint, Double>> shares,
    Map<String, Double> minutes,
    OptionalDouble handOverMinutes,
    OptionalDouble secondTripMinutes,
    Map<String, Who> who,
    Optional<WaterPrice> water,
    SiteUnits units,
    List<SiteLimit> limits,
    Map<Urgency, Double> urgency) {
  /**
   * Keeps copies. Ids and numbers are looked at when the site meets a guide.
   *
   * @throws GuideException if a weight is negative or not finite
   */
  public Site {
    Map<String, Map<Complaint, Double>> copies = new LinkedHashMap<>();
    shares.forEach((cause, byComplaint) -> copies.put(cause, Rules.copy(byComplaint)));
    shares = Rules.copy(copies);
    minutes = Rules.copy(minutes);
    who = Rules.copy(who);
    limits = List.copyOf(limits);
    urgency = Rules.copy(urgency);
    for (double weight : urgency.values()) {
      Rules.that(
          weight >= 0 && weight <= Double.MAX_VALUE, "a weight must be 0 or more: " + weight);
    }
  }

  /**
   * A site that knows nothing better than the guide.
   *
   * @return the site
   */
  public static Site unknown() {
    return new Site(
        "any site",
        Map.of(),
        Map.of(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Map.of(),
        Optional.empty(),
        SiteUnits.unsaid(),
        List.of(),
        Map.of());
  }

  /**
   * The weight of what makes a fixture urgent.
   *
   * @param reason what makes it urgent
   * @return the site's weight or else the usual one, 0 or more
   */
  public double weight(Urgency reason) {
    return urgency.getOrDefault(reason, reason.usualWeight());
  }

  /**
   * The guide with this site's figures in place of its own.
   *
   * @param guide the guide
   * @return a guide with the same parts
   * @throws GuideException if the site names a part that the guide does not have, or a number is
   *     out of range
   */
  public Guide applyTo(Guide guide) {
    for (String id : shares.keySet()) {
      Rules.that(guide.cause(id).isPresent(), title + " names the unknown cause " + id);
    }
    for (Map<String, ?> named : List.of(minutes, who)) {
      for (String id : named.keySet()) {
        Rules.that(
            guide.check(id).isPresent() || guide.remedy(id).isPresent(),
            title + " names the unknown check or remedy " + id);
      }
    }
    return new Guide(
        guide.title(),
        guide.basis(),
        handOverMinutes.orElse(guide.handOverMinutes()),
        secondTripMinutes.orElse(guide.secondTripMinutes()),
        guide.usualConditions(),
        guide.causes().stream().map(this::applyTo).toList(),
        guide.checks().stream().map(this::applyTo).toList(),
        guide.remedies().stream().map(this::applyTo).toList(),
        guide.makeSafe(),
        guide.closing());
  }

  private Cause applyTo(Cause cause) {
    Map<Complaint, Double> own = shares.getOrDefault(cause.id(), Map.of());
    if (own.isEmpty()) {
      return cause;
    }
    Map<Complaint, Double> both = new LinkedHashMap<>(cause.shares());
    both.putAll(own);
    return cause.withShares(both);
  }

  private Check applyTo(Check check) {
    return check.with(
        minutes.getOrDefault(check.id(), check.minutes()),
        who.getOrDefault(check.id(), check.who()));
  }

  private Remedy applyTo(Remedy remedy) {
    return remedy.with(
        minutes.getOrDefault(remedy.id(), remedy.minutes()),
        who.getOrDefault(remedy.id(), remedy.who()));
  }
}

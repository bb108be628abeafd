package lampwise.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is to be done at one fixture.
 *
 * @param fixture the fixture
 * @param complaint what is wrong, as it was said or as the lamp says it
 * @param lamp the reading that counts; empty if there is none
 * @param reasons what makes it urgent, the weightiest first
 * @param weight the sum of the reasons' weights
 * @param lately visits of the last 30 days, the latest first
 * @param causes the likeliest causes with their probabilities, three at the most; none where the
 *     guide knows nothing of such a complaint
 * @param safe what is made safe before all else; empty if nothing is known that calls for it
 * @param before what is asked first, the look into the bowl included
 * @param next the next step after that, if the answers to what is asked first are harmless; empty
 *     where the guide knows nothing of such a complaint
 * @param remedies what to be prepared for: the remedy of the likeliest cause, and of each other
 *     cause that is at least 20 % likely
 * @param minutes expected minutes to a working fixture; NaN where that is not known
 */
public record Job(
    Fixture fixture,
    Complaint complaint,
    Optional<LampRead> lamp,
    List<Urgency> reasons,
    double weight,
    List<Visit> lately,
    Map<Cause, Double> causes,
    Optional<MakeSafe> safe,
    List<Check> before,
    Optional<Step> next,
    List<Remedy> remedies,
    double minutes) {
  /** Keeps copies. */
  public Job {
    reasons = List.copyOf(reasons);
    lately = List.copyOf(lately);
    causes = Rules.copy(causes);
    before = List.copyOf(before);
    remedies = List.copyOf(remedies);
  }

  /**
   * The parts to bring along.
   *
   * @return the parts of the remedies that a technician does, each once
   */
  public List<String> parts() {
    return remedies.stream()
        .filter(remedy -> Situation.TECHNICIAN.contains(remedy.who()))
        .flatMap(remedy -> remedy.parts().stream())
        .distinct()
        .toList();
  }

  /**
   * Whom it waits for, if the next step or the remedy of the likeliest cause is not a technician's.
   *
   * @return who; empty if a technician can go on
   */
  public Optional<Who> waitsFor() {
    if (next.isPresent() && next.get() instanceof Step.HandOver over) {
      return Optional.of(over.to());
    }
    return remedies.stream()
        .limit(1)
        .map(Remedy::who)
        .filter(who -> !Situation.TECHNICIAN.contains(who))
        .findFirst();
  }

  /** Running water before all, then the only accessible one, where the site weighs them at all. */
  int rank(Site site) {
    if (has(site, Urgency.OVERFLOWING) || has(site, Urgency.RUNNING)) {
      return 0;
    }
    return has(site, Urgency.ONLY_ACCESSIBLE) ? 1 : 2;
  }

  private boolean has(Site site, Urgency reason) {
    return reasons.contains(reason) && site.weight(reason) > 0;
  }
}

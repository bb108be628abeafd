package lampwise.service;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What can still be done at a fixture, as a {@link Problem}: remedies and checks that fit, were not
 * made yet, and wait for nothing that was found to forbid them.
 */
final class OpenWork {
  private final Guide guide;
  private final Situation situation;
  private final Progress progress;
  private final List<Remedy> remedies = new ArrayList<>();
  private final List<Check> checks = new ArrayList<>();

  OpenWork(Guide guide, Situation situation, Progress progress) {
    this.guide = guide;
    this.situation = situation;
    this.progress = progress;
    for (Remedy remedy : guide.remedies()) {
      if (remedy.fits(situation.kind(), situation.power())
          && !progress.wasTried(remedy)
          && !isForbidden(remedy)) {
        remedies.add(remedy);
      }
    }
    for (Check check : guide.checks()) {
      if (canBeAsked(check) && !progress.isOpenAgain(check) && waitsForPossible(check.before())) {
        checks.add(check);
      }
    }
    // What is asked again tells nothing new, but other work may wait for it.
    Set<Check> waited = new LinkedHashSet<>();
    remedies.forEach(remedy -> addOpen(needsOf(remedy), waited));
    checks.forEach(check -> addOpen(check.before(), waited));
    waited.removeAll(checks);
    checks.addAll(waited);
  }

  List<Remedy> remedies() {
    return remedies;
  }

  List<Check> checks() {
    return checks;
  }

  /** Whether it is somebody else's work, so that doing it means handing over. */
  boolean isForOthers(Remedy remedy) {
    return !situation.may().contains(remedy.who());
  }

  /** What a remedy costs, in minutes, a second trip for missing parts included. */
  double minutes(Remedy remedy) {
    boolean second = !isForOthers(remedy) && !situation.missing(remedy).isEmpty();
    return remedy.minutes() + (second ? guide.secondTripMinutes() : 0);
  }

  /** What a remedy waits for; others see to that themselves. */
  List<Requirement> needsOf(Remedy remedy) {
    return isForOthers(remedy) ? List.of() : remedy.before();
  }

  /** The first check that must be made before, and that waits for nothing itself. */
  Optional<Check> firstNeeded(List<Requirement> before) {
    Set<Check> open = new LinkedHashSet<>();
    addOpen(before, open);
    return open.stream().filter(check -> isMet(check.before())).findFirst();
  }

  /** The problem; repairs and checks stand in the order of the two lists. */
  Problem problem(Map<Cause, Double> causes) {
    List<Cause> order = List.copyOf(causes.keySet());
    List<Problem.Repair> repairs = new ArrayList<>();
    for (Remedy remedy : remedies) {
      double[] fixes = new double[order.size()];
      for (int i = 0; i < fixes.length; i++) {
        fixes[i] = remedy.fixes().getOrDefault(order.get(i).id(), 0.0);
      }
      repairs.add(new Problem.Repair(minutes(remedy), 0, fixes, bits(needsOf(remedy))));
    }
    List<Problem.Test> tests = new ArrayList<>();
    for (Check check : checks) {
      double[][] likelihoods =
          progress.isOpenAgain(check) ? nothingNew(order) : likelihoods(check, order);
      tests.add(new Problem.Test(check.minutes(), likelihoods, bits(check.before())));
    }
    return new Problem(order.size(), repairs, tests, guide.handOverMinutes());
  }

  private static double[][] nothingNew(List<Cause> causes) {
    double[] row = new double[causes.size()];
    Arrays.fill(row, 1);
    return new double[][] {row};
  }

  private static double[][] likelihoods(Check check, List<Cause> causes) {
    double[][] rows = new double[check.answers().size()][causes.size()];
    for (int answer = 0; answer < rows.length; answer++) {
      for (int i = 0; i < causes.size(); i++) {
        rows[answer][i] = Weighing.chance(check, answer, causes.get(i));
      }
    }
    return rows;
  }

  private long bits(List<Requirement> before) {
    Set<Check> open = new LinkedHashSet<>();
    addOpen(before, open);
    long bits = 0;
    for (Check check : open) {
      bits |= 1L << checks.indexOf(check);
    }
    return bits;
  }

  /** The checks that are to be made before, those before them first. */
  private void addOpen(List<Requirement> before, Set<Check> open) {
    for (Requirement requirement : before) {
      if (!progress.isMet(requirement)) {
        Check check = guide.check(requirement.check()).orElseThrow();
        addOpen(check.before(), open);
        open.add(check);
      }
    }
  }

  private boolean isMet(List<Requirement> before) {
    return before.stream().allMatch(progress::isMet);
  }

  private boolean isForbidden(Remedy remedy) {
    return !waitsForPossible(needsOf(remedy));
  }

  /** Whether all that is waited for is met or can still be. */
  private boolean waitsForPossible(List<Requirement> before) {
    for (Requirement requirement : before) {
      Check check = guide.check(requirement.check()).orElseThrow();
      if (!progress.isMet(requirement)
          && !(canBeAsked(check) && waitsForPossible(check.before()))) {
        return false;
      }
    }
    return true;
  }

  private boolean canBeAsked(Check check) {
    return check.fits(situation.kind(), situation.power(), situation.complaint())
        && situation.may().contains(check.who())
        && !progress.isAnswered(check)
        && !progress.wasSkipped(check);
  }
}

package lampwise.service;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Looks for what is wrong with a guide as a whole: causes that no check can reach, work without
 * caution or proof, a flush before anybody has looked into the bowl.
 */
public final class GuideCheck {
  /** By how much a chance must differ from the usual one for a check to say anything. */
  private static final double TELLING = 0.1;

  /** An answer less likely than this under every cause is one that nothing brings about. */
  private static final double NEVER = 0.005;

  private final Guide guide;
  private final List<GuideWarning> warnings = new ArrayList<>();

  private GuideCheck(Guide guide) {
    this.guide = guide;
  }

  /**
   * The warnings about a guide.
   *
   * @param guide the guide
   * @return the warnings: causes first, then checks, remedies and rules, each in the guide's order;
   *     none for a guide that is in order
   */
  public static List<GuideWarning> warnings(Guide guide) {
    GuideCheck check = new GuideCheck(guide);
    guide.causes().forEach(check::cause);
    guide.checks().forEach(check::check);
    guide.remedies().forEach(check::remedy);
    guide.makeSafe().forEach(check::makeSafe);
    return List.copyOf(check.warnings);
  }

  private void warn(String part, String message) {
    warnings.add(new GuideWarning(part, message));
  }

  private void cause(Cause cause) {
    if (cause.id().equals(Guide.OTHER)) {
      return;
    }
    first(
            s ->
                s.fits(cause)
                    && guide.checks().stream().noneMatch(c -> s.fits(c) && tells(c, cause)))
        .ifPresent(s -> warn(cause.id(), "no check can reach it at: " + s.words()));
    first(
            s ->
                s.fits(cause)
                    && guide.remedies().stream()
                        .noneMatch(r -> s.fits(r) && r.fixes().containsKey(cause.id())))
        .ifPresent(s -> warn(cause.id(), "no remedy fixes it at: " + s.words()));
    first(s -> s.fits(cause))
        .ifPresentOrElse(
            s -> {}, () -> warn(cause.id(), "no kind, power and complaint can have it"));
  }

  private static boolean tells(Check check, Cause cause) {
    List<Double> row = check.chances(cause.id());
    for (int i = 0; i < row.size(); i++) {
      if (Math.abs(row.get(i) - check.usual().get(i)) >= TELLING) {
        return true;
      }
    }
    return false;
  }

  private void check(Check check) {
    for (int i = 0; i < check.answers().size(); i++) {
      int answer = i;
      if (check.usual().get(i) < NEVER
          && check.rows().values().stream().allMatch(row -> row.get(answer) < NEVER)) {
        warn(check.id(), "no cause brings about the answer " + check.answers().get(i).word());
      }
    }
    if (check.first() && (check.flushes() || !check.opens().isEmpty())) {
      warn(
          check.id(),
          "it is asked before everything else and must neither flush nor open anything");
    }
    if (check.bowlLook() && check.flushes()) {
      warn(check.id(), "it looks into the bowl and must not flush");
    }
    work(check.id(), check.flushes(), check.opens(), check.cautions(), check.before());
    first(s -> s.fits(check) && !allAsked(check.before(), s))
        .ifPresent(
            s -> warn(check.id(), "it waits for a check that is not asked at: " + s.words()));
  }

  private void remedy(Remedy remedy) {
    work(remedy.id(), remedy.flushes(), remedy.opens(), remedy.cautions(), remedy.before());
    if (remedy.verify().isEmpty()) {
      warn(remedy.id(), "nothing verifies it");
    }
    if (!remedy.flushes() && remedy.verify().stream().anyMatch(r -> flushes(r.check()))) {
      warn(remedy.id(), "it is verified by a flush and must say that it flushes");
    }
    first(s -> treats(remedy, s) && !allAsked(remedy.before(), s))
        .ifPresent(
            s -> warn(remedy.id(), "it waits for a check that is not asked at: " + s.words()));
    first(s -> treats(remedy, s) && remedy.verify().stream().noneMatch(r -> canVerify(r, s)))
        .ifPresent(s -> warn(remedy.id(), "no check can verify it at: " + s.words()));
    for (String cause : remedy.fixes().keySet()) {
      if (first(s -> s.fits(remedy) && guide.cause(cause).filter(s::fits).isPresent()).isEmpty()) {
        warn(remedy.id(), "it cannot meet the cause " + cause + " at any kind and power");
      }
    }
  }

  private void makeSafe(MakeSafe rule) {
    if (rule.cautions().isEmpty()) {
      warn(rule.id(), "it needs a caution");
    }
  }

  /** What holds for checks and remedies alike. */
  private void work(
      String id,
      boolean flushes,
      List<Opening> opens,
      List<Caution> cautions,
      List<Requirement> before) {
    if (cautions.isEmpty() && !opens.isEmpty()) {
      warn(id, "it opens " + opens.get(0).word() + " and needs a caution");
    } else if (cautions.isEmpty() && flushes) {
      warn(id, "it makes water flow and needs a caution");
    }
    if (flushes && before.stream().noneMatch(this::looksFirst)) {
      warn(id, "it flushes before anybody has looked whether the water can run off");
    }
  }

  /** Whether a requirement is a look into the bowl that rules something out. */
  private boolean looksFirst(Requirement requirement) {
    Optional<Check> look = guide.check(requirement.check()).filter(Check::bowlLook);
    return look.isPresent() && requirement.answers().size() < look.get().answers().size();
  }

  private boolean flushes(String check) {
    return guide.check(check).filter(Check::flushes).isPresent();
  }

  private boolean allAsked(List<Requirement> before, Surrounding s) {
    return before.stream().allMatch(r -> guide.check(r.check()).filter(s::fits).isPresent());
  }

  private boolean canVerify(Requirement proof, Surrounding s) {
    return guide
        .check(proof.check())
        .filter(check -> Rules.fits(check.kinds(), check.powers(), s.kind(), s.power()))
        .isPresent();
  }

  private boolean treats(Remedy remedy, Surrounding s) {
    return s.fits(remedy)
        && remedy.fixes().keySet().stream()
            .anyMatch(cause -> guide.cause(cause).filter(s::fits).isPresent());
  }

  private static Optional<Surrounding> first(Predicate<Surrounding> which) {
    return Surrounding.all().stream().filter(which).findFirst();
  }
}

package lampwise.service;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Whether the parts of a guide name only parts that are there. */
final class GuideLinks {
  private GuideLinks() {}

  static void verify(
      List<Cause> causes, List<Check> checks, List<Remedy> remedies, List<MakeSafe> makeSafe) {
    Set<String> causeIds = byId("cause", causes, Cause::id).keySet();
    Map<String, Check> checkIds = byId("check", checks, Check::id);
    byId("remedy", remedies, Remedy::id);
    byId("rule to make safe", makeSafe, MakeSafe::id);
    Rules.that(causeIds.contains(Guide.OTHER), "the cause " + Guide.OTHER + " is missing");
    for (Check check : checks) {
      known(check.id(), check.rows().keySet(), causeIds);
      requirements(check.id(), check.before(), checkIds);
    }
    for (Remedy remedy : remedies) {
      known(remedy.id(), remedy.fixes().keySet(), causeIds);
      requirements(remedy.id(), remedy.before(), checkIds);
      requirements(remedy.id(), remedy.verify(), checkIds);
    }
    for (MakeSafe rule : makeSafe) {
      requirements(rule.id(), rule.findings(), checkIds);
    }
    for (Check check : checks) {
      Rules.that(
          !waitsForItself(check, checkIds),
          "the check " + check.id() + " must be made before itself");
    }
  }

  private static <T> Map<String, T> byId(String what, List<T> parts, Function<T, String> idOf) {
    Map<String, T> byId = new LinkedHashMap<>();
    for (T part : parts) {
      String id = idOf.apply(part);
      Rules.that(byId.putIfAbsent(id, part) == null, "the " + what + " " + id + " stands twice");
    }
    return byId;
  }

  private static void known(String where, Set<String> named, Set<String> causes) {
    for (String cause : named) {
      Rules.that(causes.contains(cause), where + " names the unknown cause " + cause);
    }
  }

  private static void requirements(
      String where, List<Requirement> requirements, Map<String, Check> checks) {
    for (Requirement requirement : requirements) {
      Check check = checks.get(requirement.check());
      Rules.that(check != null, where + " names the unknown check " + requirement.check());
      for (String answer : requirement.answers()) {
        Rules.that(
            check == null || check.answer(answer).isPresent(),
            where + " names the unknown answer " + answer + " of " + requirement.check());
      }
    }
  }

  private static boolean waitsForItself(Check start, Map<String, Check> checks) {
    Deque<Check> open = new ArrayDeque<>(List.of(start));
    Set<String> seen = new HashSet<>();
    while (!open.isEmpty()) {
      for (Requirement requirement : open.pop().before()) {
        if (requirement.check().equals(start.id())) {
          return true;
        }
        Check next = checks.get(requirement.check());
        if (next != null && seen.add(next.id())) {
          open.push(next);
        }
      }
    }
    return false;
  }
}

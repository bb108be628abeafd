package lampwise.service;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What the acts of a visit have come to. */
final class Progress {
  private final Map<String, Finding> findings = new LinkedHashMap<>();
  private final Set<String> asked = new HashSet<>();
  private final Set<String> skipped = new HashSet<>();
  private final Set<String> tried = new HashSet<>();
  private final Set<Opening> opened = new HashSet<>();
  private final List<MakeSafe> due = new ArrayList<>();
  private boolean secured;

  Progress(Guide guide, Situation situation, List<Act> acts) {
    addDue(guide, situation, List.of());
    for (Act act : acts) {
      if (act instanceof Act.Found found) {
        Finding finding = found.finding();
        findings.put(finding.check(), finding);
        asked.add(finding.check());
        skipped.remove(finding.check());
        opened.addAll(guide.check(finding.check()).orElseThrow().opens());
        addDue(guide, situation, List.of(finding));
      } else if (act instanceof Act.Skipped skip) {
        skipped.add(skip.check());
      } else if (act instanceof Act.Secured safe) {
        due.removeIf(rule -> rule.id().equals(safe.rule()));
        secured = true;
      } else if (act instanceof Act.Tried attempt) {
        Remedy remedy = guide.remedy(attempt.remedy()).orElseThrow();
        tried.add(remedy.id());
        opened.addAll(remedy.opens());
        // The work may have changed what was found; it is looked at anew where it matters.
        remedy.verify().forEach(requirement -> findings.remove(requirement.check()));
      }
    }
  }

  /** What calls for making safe: at the start the complaint, later each finding. */
  private void addDue(Guide guide, Situation situation, List<Finding> found) {
    for (MakeSafe rule : guide.makeSafe()) {
      boolean calls =
          found.isEmpty()
              ? rule.calledFor(
                  situation.kind(), situation.power(), situation.complaint(), List.of())
              : rule.findings().stream().anyMatch(sign -> found.stream().anyMatch(sign::metBy))
                  && rule.calledFor(
                      situation.kind(), situation.power(), situation.complaint(), found);
      if (calls && !due.contains(rule)) {
        due.add(rule);
      }
    }
    due.sort((a, b) -> guide.makeSafe().indexOf(a) - guide.makeSafe().indexOf(b));
  }

  /** The rules to make safe that were called for and not yet followed, most urgent first. */
  List<MakeSafe> due() {
    return due;
  }

  boolean wasSecured() {
    return secured;
  }

  List<Opening> opened() {
    return List.copyOf(opened);
  }

  boolean wasTried(Remedy remedy) {
    return tried.contains(remedy.id());
  }

  boolean wasSkipped(Check check) {
    return skipped.contains(check.id());
  }

  /** Whether the check has an answer that still holds. */
  boolean isAnswered(Check check) {
    return findings.containsKey(check.id());
  }

  /** Whether it was answered once, before work that may have changed the answer. */
  boolean isOpenAgain(Check check) {
    return asked.contains(check.id()) && !isAnswered(check);
  }

  boolean isMet(Requirement requirement) {
    Finding finding = findings.get(requirement.check());
    return finding != null && requirement.metBy(finding);
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lampwise.service.Answer;
import lampwise.service.Cause;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Guide;
import lampwise.service.Remedy;
import lampwise.service.Work;
import lampwise.sheet.FixtureKind;

/** The words of the guide, as a list. */
final class GuideText {
  private GuideText() {}

  /** What fits a kind and a complaint; all where they are not given. */
  static List<String> list(Guide guide, Optional<FixtureKind> kind, Optional<Complaint> complaint) {
    List<String> lines = new ArrayList<>();
    lines.addAll(VisitText.wrapped("Guide: ", guide.title()));
    lines.addAll(VisitText.wrapped("Basis: ", guide.basis()));
    lines.add("");
    lines.add("Complaints");
    lines.addAll(plain(Stream.of(Complaint.values()).map(Complaint::word).toList()));
    lines.add("");
    lines.add("Recent work");
    lines.addAll(plain(Stream.of(Work.values()).map(Work::word).toList()));
    lines.add("");
    lines.add("Causes");
    for (Cause cause : guide.causes()) {
      if (fits(cause.kinds(), kind)
          && complaint.map(c -> cause.shares().containsKey(c)).orElse(true)) {
        lines.addAll(VisitText.wrapped("  " + Layout.padded(cause.id(), 22), cause.name()));
      }
    }
    lines.add("");
    lines.add("Checks");
    for (Check check : guide.checks()) {
      if (fits(check.kinds(), kind)
          && complaint
              .map(c -> check.complaints().isEmpty() || check.complaints().contains(c))
              .orElse(true)) {
        lines.addAll(VisitText.wrapped("  " + Layout.padded(check.id(), 22), check.question()));
        lines.addAll(
            VisitText.wrapped(
                "      ", String.join(", ", check.answers().stream().map(Answer::word).toList())));
      }
    }
    lines.add("");
    lines.add("Remedies");
    Set<String> parts = new TreeSet<>();
    for (Remedy remedy : guide.remedies()) {
      if (fits(remedy.kinds(), kind)) {
        parts.addAll(remedy.parts());
        lines.addAll(VisitText.wrapped("  " + Layout.padded(remedy.id(), 22), remedy.name()));
      }
    }
    lines.add("");
    lines.add("Parts");
    lines.addAll(plain(List.copyOf(parts)));
    lines.add("");
    lines.add("Dangers");
    guide
        .makeSafe()
        .forEach(
            rule ->
                lines.addAll(VisitText.wrapped("  " + Layout.padded(rule.id(), 22), rule.sign())));
    return lines;
  }

  private static List<String> plain(List<String> words) {
    return VisitText.wrapped("  ", String.join(", ", words));
  }

  private static boolean fits(List<FixtureKind> kinds, Optional<FixtureKind> kind) {
    return kinds.isEmpty() || kind.map(kinds::contains).orElse(true);
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwise.service.Answer;
import lampwise.service.Cause;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.ClosingStep;
import lampwise.service.Diagnosis;
import lampwise.service.Guide;
import lampwise.service.Remedy;
import lampwise.service.Requirement;
import lampwise.service.Step;

/** A visit in words, in lines of 80 columns. */
final class VisitText {
  private static final double LEAST_SHOWN = 0.02;

  private VisitText() {}

  /** The next step: cautions before its first line, then what to do, then why. */
  static List<String> step(Diagnosis visit) {
    Step step = visit.next();
    List<String> lines = new ArrayList<>();
    if (step instanceof Step.Secure secure) {
      lines.addAll(wrapped("MAKE SAFE: ", secure.rule().sign()));
      cautions(lines, step);
      numbered(lines, secure.rule().steps());
    } else if (step instanceof Step.Look look) {
      look(lines, look);
    } else if (step instanceof Step.Mend mend) {
      mend(lines, visit.guide(), mend);
    } else if (step instanceof Step.HandOver over) {
      String what = over.remedy().map(remedy -> ": " + remedy.name()).orElse("");
      lines.addAll(wrapped("HAND OVER: ", "to " + over.to().word() + what));
      cautions(lines, step);
      over.remedy().ifPresent(remedy -> numbered(lines, remedy.steps()));
    } else if (step instanceof Step.Close close) {
      lines.addAll(wrapped("CLOSE: ", "result: " + close.outcome().word()));
      for (ClosingStep line : close.lines()) {
        lines.addAll(wrapped("  [ ] ", line.text()));
      }
    }
    lines.addAll(wrapped("  Why: ", step.why()));
    return lines;
  }

  private static void look(List<String> lines, Step.Look look) {
    Check check = look.check();
    lines.addAll(wrapped("CHECK: ", check.question() + " [" + check.id() + "]"));
    cautions(lines, look);
    if (!check.needs().isEmpty()) {
      lines.addAll(wrapped("  Tools: ", String.join(", ", check.needs())));
    }
    check.steps().forEach(line -> lines.addAll(wrapped("  - ", line)));
    int number = 1;
    for (Answer answer : check.answers()) {
      lines.addAll(wrapped("  " + number++ + " ", answer.word() + ": " + answer.means()));
    }
  }

  private static void mend(List<String> lines, Guide guide, Step.Mend mend) {
    Remedy remedy = mend.remedy();
    lines.addAll(wrapped("REPAIR: ", remedy.name() + " [" + remedy.id() + "]"));
    cautions(lines, mend);
    if (!remedy.parts().isEmpty()) {
      lines.addAll(wrapped("  Parts: ", String.join(", ", remedy.parts())));
    }
    if (!mend.missing().isEmpty()) {
      String missing = String.join(", ", mend.missing());
      lines.addAll(wrapped("  Not at hand: ", missing + "; a second trip is counted"));
    }
    if (!remedy.tools().isEmpty()) {
      lines.addAll(wrapped("  Tools: ", String.join(", ", remedy.tools())));
    }
    numbered(lines, remedy.steps());
    remedy.clears().ifPresent(clears -> lines.addAll(wrapped("  Clears the warning: ", clears)));
    for (Requirement proof : remedy.verify()) {
      String question = guide.check(proof.check()).orElseThrow().question();
      lines.addAll(
          wrapped("  Prove it: ", question + " (" + String.join(" or ", proof.answers()) + ")"));
    }
  }

  private static void cautions(List<String> lines, Step step) {
    for (Caution caution : step.cautions()) {
      lines.addAll(wrapped("  ! ", caution.text()));
    }
  }

  private static void numbered(List<String> lines, List<String> steps) {
    for (int i = 0; i < steps.size(); i++) {
      lines.addAll(wrapped("  " + (i + 1) + ". ", steps.get(i)));
    }
  }

  /** The causes, likeliest first; the least likely ones in one line. */
  static List<String> causes(Diagnosis visit) {
    List<String> lines = new ArrayList<>();
    double rest = 0;
    for (Map.Entry<Cause, Double> entry : visit.causes().entrySet()) {
      if (entry.getValue() < LEAST_SHOWN) {
        rest += entry.getValue();
      } else {
        String chance = Words.percent(entry.getValue());
        String text = entry.getKey().name() + ": " + entry.getKey().looksLike();
        lines.addAll(
            wrapped("  " + " ".repeat(Math.max(0, 5 - chance.length())) + chance + "  ", text));
      }
    }
    if (rest > 0) {
      lines.add("  all others together " + Words.percent(rest));
    }
    return lines;
  }

  /** A text behind a label, further lines as far in as the label. */
  static List<String> wrapped(String label, String text) {
    int in = Math.min(label.length(), 12);
    List<String> lines = new ArrayList<>();
    List<String> parts = Layout.wrap(text, Layout.WIDTH - label.length(), Layout.WIDTH - in);
    for (String part : parts) {
      lines.add((lines.isEmpty() ? label : " ".repeat(in)) + part);
    }
    return lines;
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import lampwise.service.Answer;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.Fixture;
import lampwise.service.HandOver;
import lampwise.service.Job;
import lampwise.service.LampRead;
import lampwise.service.MakeSafe;
import lampwise.service.Remedy;
import lampwise.service.Round;
import lampwise.service.Step;
import lampwise.service.Visit;
import lampwise.service.Worklist;

/**
 * A round as one page to read on a phone or a desk and to print. It needs nothing outside it, runs
 * nothing, and whatever comes from a file stands in it as escaped text.
 */
final class RoundPage {
  private final StringBuilder page = new StringBuilder();
  private final Round round;
  private final Worklist worklist;

  private RoundPage(Round round) {
    this.round = round;
    worklist = round.worklist();
  }

  /** The whole report, the hand-overs at its end on pages of their own. */
  static String of(Round round) {
    RoundPage report = new RoundPage(round);
    report.summary();
    int number = 1;
    for (Job job : report.worklist.jobs()) {
      report.job(number++, job);
    }
    report.again();
    report.lists();
    report.recordings();
    report.worklist.handOvers().forEach(report::over);
    return report.filled(RoundText.title(round));
  }

  /** One hand-over as a page by itself. */
  static String handOver(Round round, HandOver over) {
    RoundPage report = new RoundPage(round);
    report.over(over);
    return report.filled("Hand-over of " + over.fixture().id());
  }

  private String filled(String title) {
    return PageTemplate.filled("round.html", Map.of("title", text(title), "body", page.toString()));
  }

  private void summary() {
    page.append("<h1>").append(text(RoundText.title(round))).append("</h1>\n");
    invented();
    paragraph("", RoundText.summary(round));
    if (worklist.jobs().isEmpty()) {
      paragraph("", "Nothing is to be done.");
      return;
    }
    page.append("<p class=\"stop\"><b>At every fixture first:</b> is there any danger? Water");
    page.append(" that runs or overflows, sewage, water near wiring, water too hot: make it safe");
    page.append(" before anything else. Look into the bowl before any flush.</p>\n");
    page.append("<h2>Jobs</h2>\n<table class=\"jobs\">\n<thead><tr><th></th><th>Fixture</th>");
    page.append("<th>Urgent</th><th>Next</th></tr></thead>\n<tbody>\n");
    int number = 1;
    for (Job job : worklist.jobs()) {
      String next = job.safe().map(MakeSafe::sign).map(sign -> "make safe: " + sign).orElse("");
      page.append("<tr><td>").append(number).append("</td><td><a href=\"#job-");
      page.append(number++).append("\">").append(text(job.fixture().id())).append("</a>, ");
      page.append(text(job.fixture().place())).append("</td><td>");
      page.append(text(RoundText.urgent(job))).append("</td><td>");
      page.append(text(next.isEmpty() ? job.next().map(RoundText::step).orElse("look") : next));
      page.append("</td></tr>\n");
    }
    page.append("</tbody>\n</table>\n");
  }

  private void invented() {
    if (round.invented()) {
      page.append("<p class=\"invented\">INVENTED, for trying and teaching: no real unit blinks");
      page.append(" like this.</p>\n");
    }
  }

  private void job(int number, Job job) {
    page.append("<section class=\"job\" id=\"job-").append(number).append("\">\n<h2>");
    page.append(number).append(". ").append(text(RoundText.name(job.fixture()))).append(": ");
    page.append(job.complaint().word()).append("</h2>\n");
    body(job);
    page.append("</section>\n");
  }

  private void body(Job job) {
    paragraph("Urgent", RoundText.urgent(job));
    job.lamp().ifPresent(this::lamp);
    job.lately().forEach(visit -> paragraph("Repeat", RoundText.visit(visit)));
    if (job.safe().isPresent()) {
      page.append("<h3>First: make safe</h3>\n");
      cautions(job.safe().get().cautions());
      paragraph("Sign", job.safe().get().sign());
      steps(job.safe().get().steps());
    }
    paragraph("Likely", RoundText.causes(job));
    if (!job.before().isEmpty()) {
      page.append("<h3>Ask first</h3>\n");
      job.before().forEach(check -> cautions(check.cautions()));
      page.append("<ul>\n");
      job.before().forEach(check -> item(check.question()));
      page.append("</ul>\n");
    }
    job.next().ifPresent(this::step);
    if (job.minutes() >= 0) {
      paragraph("Minutes", "about " + Words.decimal(job.minutes(), 0) + " to a working fixture");
    }
    paragraph("Parts", String.join(", ", job.parts()));
    Fixture fixture = job.fixture();
    paragraph("Riser valve", fixture.riserValve());
    paragraph("Valve rated for", fixture.valveRating());
    paragraph("Fixture rated for", fixture.fixtureRating());
    page.append("<p class=\"write\">Found<i></i>Done<i></i>Minutes<i></i></p>\n");
  }

  private void lamp(LampRead lamp) {
    page.append("<figure>").append(RoundStrip.svg(lamp)).append("<figcaption>");
    page.append(text(RoundText.lamp(lamp)));
    if (!lamp.means().isEmpty()) {
      page.append(": ").append(text(lamp.means()));
    }
    page.append("</figcaption></figure>\n");
  }

  private void step(Step step) {
    page.append("<h3>Next: ").append(text(RoundText.step(step))).append("</h3>\n");
    cautions(step.cautions());
    if (step instanceof Step.Look look) {
      Check check = look.check();
      paragraph("Tools", String.join(", ", check.needs()));
      steps(check.steps());
      page.append("<ul>\n");
      for (Answer answer : check.answers()) {
        item(answer.word() + ": " + answer.means());
      }
      page.append("</ul>\n");
    } else if (step instanceof Step.Mend mend) {
      paragraph("Tools", String.join(", ", mend.remedy().tools()));
      steps(mend.remedy().steps());
      paragraph("Clears the warning", mend.remedy().clears().orElse(""));
    }
    paragraph("Why", step.why());
  }

  private void cautions(List<Caution> cautions) {
    if (cautions.isEmpty()) {
      return;
    }
    page.append("<ul class=\"stop\">\n");
    cautions.forEach(caution -> item(caution.text()));
    page.append("</ul>\n");
  }

  private void steps(List<String> steps) {
    if (!steps.isEmpty()) {
      page.append("<ol>\n");
      steps.forEach(this::item);
      page.append("</ol>\n");
    }
  }

  private void item(String text) {
    page.append("<li>").append(text(text)).append("</li>\n");
  }

  private void paragraph(String label, String text) {
    if (!text.isEmpty()) {
      page.append("<p>");
      page.append(label.isEmpty() ? "" : "<b>" + label + ":</b> ");
      page.append(text(text)).append("</p>\n");
    }
  }

  private void again() {
    if (worklist.again().isEmpty()) {
      return;
    }
    page.append("<h2>Not decided: record once more</h2>\n");
    for (Map.Entry<String, LampRead> entry : worklist.again().entrySet()) {
      page.append("<section class=\"read\">\n");
      page.append("<h3>").append(text(entry.getKey())).append("</h3>\n");
      lamp(entry.getValue());
      paragraph("How", RoundText.again(entry.getValue()));
      page.append("</section>\n");
    }
  }

  private <T> void list(String heading, List<T> items, Function<T, String> said) {
    if (!items.isEmpty()) {
      page.append("<h2>").append(heading).append("</h2>\n<ul>\n");
      items.forEach(item -> item(said.apply(item)));
      page.append("</ul>\n");
    }
  }

  private void lists() {
    list("Kit", worklist.kit(), RoundText::kit);
    list("Waits for others", worklist.handOvers(), RoundText::handOver);
    list("Cells due", worklist.cellsDue(), RoundText::due);
    list("In order", worklist.inOrder(), RoundText::name);
    list("Not visited", worklist.notVisited(), RoundText::name);
    Function<Round.Unused, String> unused = one -> one.recording() + ": " + one.why();
    list("Recordings that belong to no fixture", round.strays(), unused);
    list("Refused", round.refused(), unused);
  }

  private void recordings() {
    Set<LampRead> shown = new HashSet<>(worklist.again().values());
    worklist.jobs().forEach(job -> job.lamp().ifPresent(shown::add));
    if (round.readings().values().stream().allMatch(shown::containsAll)) {
      return;
    }
    page.append("<h2>Other recordings</h2>\n");
    for (Map.Entry<String, List<LampRead>> entry : round.readings().entrySet()) {
      List<LampRead> others =
          entry.getValue().stream().filter(lamp -> !shown.contains(lamp)).toList();
      for (LampRead lamp : others) {
        page.append("<section class=\"read\">\n<h3>").append(text(entry.getKey()));
        page.append("</h3>\n");
        lamp(lamp);
        page.append("</section>\n");
      }
    }
  }

  private void over(HandOver over) {
    Fixture fixture = over.fixture();
    page.append("<section class=\"over\">\n<h1>Hand-over to the ").append(over.who().word());
    page.append("</h1>\n");
    invented();
    paragraph("", RoundText.title(round));
    paragraph("Fixture", RoundText.name(fixture));
    paragraph("Power", fixture.power().map(power -> power.word()).orElse(""));
    paragraph("Riser valve", fixture.riserValve().isEmpty() ? "not known" : fixture.riserValve());
    paragraph("Valve rated for", fixture.valveRating());
    paragraph("Fixture rated for", fixture.fixtureRating());
    paragraph("Only accessible one", fixture.onlyAccessible() ? "yes: name another first" : "");
    paragraph("Why", RoundText.handOver(over));
    over.visit().ifPresent(this::left);
    Optional<Job> job = over.job();
    job.ifPresent(
        one -> {
          paragraph("Complaint", one.complaint().word());
          one.lamp().ifPresent(this::lamp);
          paragraph("Likely", RoundText.causes(one));
          one.lately().forEach(visit -> paragraph("Earlier", RoundText.visit(visit)));
        });
    job.flatMap(one -> repair(one, over)).ifPresent(this::repair);
    page.append("<p class=\"write\">Taken over by<i></i>Day<i></i></p>\n");
    page.append("<p class=\"write\">Result<i></i>Figures<i></i></p>\n</section>\n");
  }

  private void left(Visit visit) {
    List<String> figures = new ArrayList<>(visit.before());
    figures.addAll(visit.after());
    paragraph("Left by", visit.who());
    paragraph("Note", visit.note());
    paragraph("Figures", String.join("; ", figures));
  }

  /** The repair that is to be made by whom it is handed to. */
  private static Optional<Remedy> repair(Job job, HandOver over) {
    if (job.next().isPresent()
        && job.next().get() instanceof Step.HandOver step
        && step.remedy().isPresent()) {
      return step.remedy();
    }
    return job.remedies().stream().filter(remedy -> remedy.who() == over.who()).findFirst();
  }

  private void repair(Remedy remedy) {
    page.append("<h3>Likely repair: ").append(text(remedy.name())).append("</h3>\n");
    cautions(remedy.cautions());
    steps(remedy.steps());
    paragraph("Parts", String.join(", ", remedy.parts()));
  }

  private static String text(String text) {
    return RhythmStrip.escaped(Layout.clean(text));
  }
}

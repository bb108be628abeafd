package lampwise.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import lampwise.decode.Candidate;
import lampwise.decode.Next;
import lampwise.decode.Verdict;
import lampwise.service.Caution;
import lampwise.service.CellsDue;
import lampwise.service.Fixture;
import lampwise.service.HandOver;
import lampwise.service.Job;
import lampwise.service.KitLine;
import lampwise.service.LampRead;
import lampwise.service.Remedy;
import lampwise.service.Round;
import lampwise.service.Step;
import lampwise.service.Urgency;
import lampwise.service.Visit;
import lampwise.service.Worklist;

/** A round in words, in lines of 80 columns. */
final class RoundText {
  /** What stands before all that was read against an invented sheet. */
  static final String INVENTED = "[invented sheet] ";

  private final List<String> lines = new ArrayList<>();

  private RoundText() {}

  /** The whole round. */
  static List<String> of(Round round) {
    RoundText text = new RoundText();
    text.head(round);
    int number = 1;
    for (Job job : round.worklist().jobs()) {
      text.job(number++, job);
    }
    text.rest(round);
    return text.lines;
  }

  private void head(Round round) {
    Worklist worklist = round.worklist();
    add(round.invented() ? INVENTED : "", title(round));
    add("", summary(round));
    if (!worklist.jobs().isEmpty()) {
      add(
          "",
          "Ask first at each: is there any danger, is the bowl clear? The next step is for"
              + " harmless answers; steps and strips are in the page of --report.");
      before(worklist.jobs());
    }
  }

  /** Day and place of a round. */
  static String title(Round round) {
    return "Round of " + at(round.day(), round.title());
  }

  /** A day and a site, as far as it has a name. */
  static String at(String day, String site) {
    return day + (site.isEmpty() ? "" : ", " + site);
  }

  /** A round in figures. */
  static String summary(Round round) {
    Worklist worklist = round.worklist();
    long recordings = round.readings().values().stream().mapToInt(List::size).sum();
    double minutes =
        worklist.jobs().stream().mapToDouble(Job::minutes).filter(value -> value >= 0).sum();
    return Words.count(round.fixtures().size(), "fixture")
        + ", "
        + Words.count((int) recordings, "reading")
        + "; "
        + Words.count(worklist.jobs().size(), "job")
        + (minutes > 0 ? " of about " + Words.decimal(minutes, 0) + " min in all" : "")
        + ", "
        + worklist.inOrder().size()
        + " in order, "
        + worklist.notVisited().size()
        + " not visited, "
        + round.refused().size()
        + " refused";
  }

  private void add(String label, String text) {
    lines.addAll(VisitText.wrapped(label, text));
  }

  private void row(String label, String text) {
    if (!text.isEmpty()) {
      String padded = "  " + Layout.padded(label, 10);
      lines.addAll(VisitText.wrapped(padded, text));
    }
  }

  private void heading(String text, boolean due) {
    if (due) {
      lines.add("");
      lines.add(text);
    }
  }

  private void job(int number, Job job) {
    lines.add("");
    add(number + ". ", name(job.fixture()) + ": " + job.complaint().word());
    row("urgent", urgent(job));
    job.lamp().ifPresent(lamp -> row("lamp", lamp(lamp)));
    if (job.safe().isPresent()) {
      row("FIRST", "make safe: " + job.safe().get().sign());
    }
    row("likely", causes(job));
    if (job.next().isPresent()) {
      row("cautions", cautions(job).stream().map(Caution::id).collect(Collectors.joining(", ")));
      row("next", step(job.next().get()));
    } else {
      row("next", "the guide knows nothing of this complaint here; look for yourself");
    }
    if (job.minutes() >= 0) {
      row("minutes", "about " + Words.decimal(job.minutes(), 0) + " to a working fixture");
    }
    row("parts", String.join(", ", job.parts()));
    job.waitsFor().ifPresent(who -> row("waits for", who.word()));
    for (Visit visit : job.lately()) {
      row("repeat", visit(visit));
    }
  }

  /** Every caution of the day once; the jobs name them. */
  private void before(List<Job> jobs) {
    Set<Caution> all = new LinkedHashSet<>();
    jobs.forEach(job -> all.addAll(cautions(job)));
    heading("Before any work", !all.isEmpty());
    all.forEach(caution -> add("  ! ", caution.id() + ": " + caution.text()));
  }

  private static Set<Caution> cautions(Job job) {
    Set<Caution> all = new LinkedHashSet<>();
    job.safe().ifPresent(rule -> all.addAll(rule.cautions()));
    job.before().forEach(check -> all.addAll(check.cautions()));
    job.next().ifPresent(step -> all.addAll(step.cautions()));
    return all;
  }

  private void rest(Round round) {
    Worklist worklist = round.worklist();
    heading("Not decided: record once more", !worklist.again().isEmpty());
    worklist
        .again()
        .forEach((id, lamp) -> add("  - ", id + ": " + lamp(lamp) + "; " + again(lamp)));
    heading("Kit", !worklist.kit().isEmpty());
    for (KitLine line : worklist.kit()) {
      add("  - ", kit(line));
    }
    heading("Waits for others", !worklist.handOvers().isEmpty());
    worklist.handOvers().forEach(over -> add("  - ", handOver(over)));
    heading("Cells due", !worklist.cellsDue().isEmpty());
    worklist.cellsDue().forEach(due -> add("  - ", due(due)));
    heading("In order", !worklist.inOrder().isEmpty());
    if (!worklist.inOrder().isEmpty()) {
      add("  - ", ids(worklist.inOrder()));
    }
    heading("Not visited", !worklist.notVisited().isEmpty());
    worklist.notVisited().forEach(fixture -> add("  - ", name(fixture)));
    heading("Recordings that belong to no fixture", !round.strays().isEmpty());
    round.strays().forEach(stray -> add("  - ", stray.recording() + ": " + stray.why()));
    heading("Refused", !round.refused().isEmpty());
    round.refused().forEach(one -> add("  - ", one.recording() + ": " + one.why()));
  }

  /** A fixture and where it is. */
  static String name(Fixture fixture) {
    return fixture.id()
        + " ("
        + fixture.kind().word()
        + (fixture.place().isEmpty() ? "" : ", " + fixture.place())
        + ")";
  }

  /** What makes a job urgent. */
  static String urgent(Job job) {
    return job.reasons().stream().map(Urgency::word).collect(Collectors.joining(", "));
  }

  /** The likeliest causes. */
  static String causes(Job job) {
    return job.causes().entrySet().stream()
        .map(entry -> entry.getKey().name() + " (" + Words.percent(entry.getValue()) + ")")
        .collect(Collectors.joining(", "));
  }

  /** What a lamp said, and in which file. */
  static String lamp(LampRead lamp) {
    return verdict(lamp) + ", in " + lamp.recording();
  }

  /** The verdict in a few words. */
  static String verdict(LampRead lamp) {
    if (lamp.verdict() instanceof Verdict.Decoded decoded) {
      return decoded.state() + " (" + Words.percent(decoded.probability()) + ")";
    }
    if (lamp.verdict() instanceof Verdict.Undecided undecided) {
      return "undecided: "
          + undecided.candidates().stream()
              .limit(3)
              .map(RoundText::candidate)
              .collect(Collectors.joining(" or "));
    }
    if (lamp.verdict() instanceof Verdict.Unreadable unreadable) {
      return "unreadable: " + unreadable.reason();
    }
    return "unlisted" + (lamp.observed().isEmpty() ? "" : ": " + lamp.observed());
  }

  private static String candidate(Candidate candidate) {
    return candidate.state() + " (" + Words.percent(candidate.probability()) + ")";
  }

  /** What would settle a reading that is not decided. */
  static String again(LampRead lamp) {
    Verdict verdict = lamp.verdict();
    if (verdict instanceof Verdict.Undecided undecided) {
      return next(undecided.next());
    }
    return verdict instanceof Verdict.Unreadable unreadable
        ? next(unreadable.next())
        : "check that the sheet is this unit's own, then record once more";
  }

  private static String next(Next next) {
    return ReadingText.next(next);
  }

  /** A step in one line, with its minutes. */
  static String step(Step step) {
    if (step instanceof Step.Look look) {
      return "check: " + look.check().question() + " (" + minutes(look.check().minutes()) + ")";
    }
    if (step instanceof Step.Mend mend) {
      return "repair: " + mend.remedy().name() + " (" + minutes(mend.remedy().minutes()) + ")";
    }
    if (step instanceof Step.HandOver over) {
      return "hand over to "
          + over.to().word()
          + over.remedy().map(Remedy::name).map(name -> ": " + name).orElse("");
    }
    return step instanceof Step.Secure secure ? "make safe: " + secure.rule().sign() : "close";
  }

  /** Minutes in words. */
  static String minutes(double minutes) {
    return Words.decimal(minutes, 1) + " min";
  }

  /** A visit in one line. */
  static String visit(Visit visit) {
    return visit.when().substring(0, 10)
        + ": "
        + visit.outcome().word()
        + (visit.done().cause().isEmpty() ? "" : "; cause " + visit.done().cause())
        + (visit.done().remedies().isEmpty()
            ? ""
            : "; tried " + String.join(", ", visit.done().remedies()));
  }

  /** A part, how many, for which fixtures. */
  static String kit(KitLine line) {
    return line.count() + " x " + line.part() + ": " + String.join(", ", line.fixtures());
  }

  /** What waits for whom. */
  static String handOver(HandOver over) {
    String why =
        over.job()
            .flatMap(Job::next)
            .filter(step -> over.visit().isEmpty() && step instanceof Step.HandOver)
            .map(RoundText::step)
            .orElse(
                over.visit()
                    .map(visit -> "left on " + visit(visit))
                    .orElse(
                        over.job()
                            .map(job -> "the likeliest repair is theirs: " + first(job))
                            .orElse("")));
    return over.fixture().id() + ", " + over.who().word() + ": " + why;
  }

  private static String first(Job job) {
    return job.remedies().isEmpty() ? "" : job.remedies().get(0).name();
  }

  /** When the cells of a fixture were changed. */
  static String due(CellsDue due) {
    String since =
        due.since().isEmpty()
            ? "last change not known"
            : "last changed " + due.since() + ", " + due.days() + " days ago";
    String cells = due.fixture().cells();
    return due.fixture().id() + ": " + since + (cells.isEmpty() ? "" : "; " + cells);
  }

  private static String ids(List<Fixture> fixtures) {
    return fixtures.stream().map(Fixture::id).collect(Collectors.joining(", "));
  }
}

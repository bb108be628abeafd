package lampwise.cli;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwise.file.FileException;
import lampwise.service.Act;
import lampwise.service.Answer;
import lampwise.service.Check;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Step;
import lampwise.service.Who;

/** A visit as questions and answers, one at a time. */
final class DiagnoseTalk {
  private static final List<String> YES = List.of("yes", "y");
  private static final List<String> NO = List.of("no", "n");

  private final Surroundings here;
  private final Questions questions;
  private final DiagnoseOptions options;
  private final Optional<DiagnoseLog> log;
  private final Deque<Diagnosis> before = new ArrayDeque<>();

  DiagnoseTalk(
      Surroundings here, Questions questions, DiagnoseOptions options, Optional<DiagnoseLog> log) {
    this.here = here;
    this.questions = questions;
    this.options = options;
    this.log = log;
  }

  /** Asks until the visit is closed, the answers end or the user leaves. */
  int run(Diagnosis start) throws UsageException {
    Diagnosis visit = start;
    boolean shown = false;
    try {
      while (true) {
        Step step = visit.next();
        if (!shown) {
          VisitText.step(visit).forEach(here.out()::println);
        }
        if (step instanceof Step.Close close) {
          return close(visit, close);
        }
        String answer = questions.ask(ask(step), "").toLowerCase(Locale.ROOT);
        shown = false;
        if (answer.equals("quit")) {
          break;
        } else if (answer.equals("back")) {
          if (before.isEmpty()) {
            questions.say("This is the first question.");
          } else {
            visit = before.pop();
          }
        } else if (answer.equals("causes")) {
          VisitText.causes(visit).forEach(here.out()::println);
          shown = true;
        } else {
          Optional<Act> act = act(step, answer);
          if (act.isPresent()) {
            before.push(visit);
            visit = visit.with(act.get());
            options.keep(visit);
            here.out().println();
          } else {
            questions.say("Not understood: " + (answer.isEmpty() ? "nothing said" : answer) + ".");
            shown = true;
          }
        }
      }
    } catch (Questions.Ended e) {
      here.out().println();
    }
    options.keep(visit);
    left();
    return Main.DONE;
  }

  private static String ask(Step step) {
    if (step instanceof Step.Look) {
      return "Answer (number or word, ? don't know)";
    }
    if (step instanceof Step.Mend) {
      return "Does it work now (yes, no)";
    }
    return step instanceof Step.HandOver ? "Handed over (yes)" : "Done (yes)";
  }

  /** What an answer stands for; empty if it cannot be understood. */
  private static Optional<Act> act(Step step, String answer) {
    if (step instanceof Step.Secure secure) {
      return YES.contains(answer)
          ? Optional.of(new Act.Secured(secure.rule().id()))
          : Optional.empty();
    }
    if (answer.equals("over")) {
      Who to = step instanceof Step.HandOver over ? over.to() : Who.PLUMBER;
      return Optional.of(new Act.Handed(to));
    }
    if (step instanceof Step.Look look) {
      return look(look.check(), answer);
    }
    if (step instanceof Step.Mend mend) {
      boolean worked = YES.contains(answer);
      return worked || NO.contains(answer)
          ? Optional.of(new Act.Tried(mend.remedy().id(), worked))
          : Optional.empty();
    }
    return step instanceof Step.HandOver over && YES.contains(answer)
        ? Optional.of(new Act.Handed(over.to()))
        : Optional.empty();
  }

  private static Optional<Act> look(Check check, String answer) {
    for (int i = 0; i < check.answers().size(); i++) {
      Answer known = check.answers().get(i);
      if (known.word().equals(answer) || Integer.toString(i + 1).equals(answer)) {
        return Optional.of(new Act.Found(new Finding(check.id(), known.word())));
      }
    }
    return answer.equals("?") || answer.equals("don't know")
        ? Optional.of(new Act.Skipped(check.id()))
        : Optional.empty();
  }

  private int close(Diagnosis visit, Step.Close close) throws UsageException {
    here.out().println("Causes, as far as they are known");
    VisitText.causes(visit).forEach(here.out()::println);
    options.keep(visit);
    if (log.isEmpty()) {
      return Main.DONE;
    }
    log.get().ask(visit, questions);
    try {
      options.keep(log.get().write(visit, close));
      return Main.DONE;
    } catch (FileException e) {
      log.get().failed(e);
      left();
      return Main.REFUSED;
    }
  }

  private void left() {
    questions.say(
        options
            .session()
            .map(name -> "The visit is kept in " + Layout.clean(name) + "; call it again to go on.")
            .orElse("The visit is left open and was not kept; --session FILE keeps it."));
  }
}

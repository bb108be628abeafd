package lampwise.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwise.file.DiagnosisJson;
import lampwise.file.FileException;
import lampwise.service.Diagnosis;
import lampwise.service.Step;
import lampwise.service.Visit;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise diagnose}: from a complaint, findings and a reading to the next step. */
final class DiagnoseCommand implements Command {
  @Override
  public String name() {
    return "diagnose";
  }

  @Override
  public String summary() {
    return "from a complaint to a working fixture: what to check or repair next";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    DiagnoseOptions.addTo(spec);
    ReadingFlags.flag(spec, "--once", "print the next step alone and ask nothing");
    ReadingFlags.flag(spec, "--json", "print the visit as one JSON object and ask nothing");
    ReadingFlags.flag(spec, "--list", "list complaints, causes, checks and parts, and ask nothing");
    ReadingFlags.one(spec, "--session", "FILE", "keep the visit here; go on with it if it exists");
    DiagnoseLog.addTo(spec);
    SheetOption.addTo(spec);
    RecordingArguments.addTo(spec);
    spec.usageMessage()
        .description(
            "Leads from a complaint to a working fixture: makes safe first, then asks, repairs"
                + " or hands over, whatever has the fewest expected minutes. A reading of the"
                + " lamp is weighed if there is one.")
        .footer(
            "",
            "While it asks: a number or a word answers; ? is \"don't know\"; back, causes,",
            "over (hand over) and quit work at every question. Answers may be piped in.",
            "Exit status: 0 done or left open, 1 a recording was refused, 2 wrong use.",
            "",
            "Example: what next, as JSON, when the override runs on:",
            "  lampwise diagnose --kind urinal --complaint dead --found danger=none \\",
            "    --found bowl=clear --found override=runs --json",
            "Example: asked in a terminal, kept to be gone on with, ended in a row of a log:",
            "  lampwise diagnose --kind water-closet --power cells --complaint weak \\",
            "    --recent valve --session stall-3.txt --fixture north-03 --log visits.csv")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    DiagnoseOptions options = new DiagnoseOptions(parsed, here);
    if (parsed.hasMatchedOption("--list")) {
      GuideText.list(options.guide(), options.kind(), options.complaint())
          .forEach(here.out()::println);
      return Main.DONE;
    }
    boolean json = parsed.hasMatchedOption("--json");
    boolean once = parsed.hasMatchedOption("--once");
    Questions questions = new Questions(here);
    if (!json && !once) {
      try {
        options.askWhatIsMissing(questions);
      } catch (Questions.Ended e) {
        throw new UsageException("--kind and --complaint are needed; the answers ended before");
      }
    }
    Diagnosis visit = options.start();
    if (options.status() != Main.DONE) {
      return options.status();
    }
    Optional<DiagnoseLog> log = DiagnoseLog.of(parsed, here);
    List<Visit> repeats;
    try {
      repeats = log.isPresent() ? log.get().repeats() : List.of();
    } catch (FileException e) {
      log.orElseThrow().failed(e);
      return Main.REFUSED;
    }
    if (json) {
      here.out().append(json(visit, options.learnedFrom(), repeats)).append('\n');
      return written(visit, log, options, here);
    }
    options.learned().ifPresent(questions::say);
    log.ifPresent(known -> known.lately(repeats).forEach(here.out()::println));
    if (visit.isInvented()) {
      here.out().println("[invented sheet] The lamp was read against an invented sheet.");
    }
    if (once) {
      VisitText.step(visit).forEach(here.out()::println);
      return written(visit, log, options, here);
    }
    return new DiagnoseTalk(here, questions, options, log).run(visit);
  }

  /** Writes the row of a visit that is closed, from what the options say. */
  private static int written(
      Diagnosis visit, Optional<DiagnoseLog> log, DiagnoseOptions options, Surroundings here)
      throws UsageException {
    if (log.isEmpty()) {
      return Main.DONE;
    }
    if (!(visit.next() instanceof Step.Close close)) {
      here.err().println("lampwise diagnose: the visit is not closed yet, no row was written");
      return Main.DONE;
    }
    try {
      options.keep(log.get().write(visit, close));
      return Main.DONE;
    } catch (FileException e) {
      log.get().failed(e);
      return Main.REFUSED;
    }
  }

  private static String json(Diagnosis visit, OptionalInt learnedFrom, List<Visit> repeats) {
    StringWriter object = new StringWriter();
    try {
      DiagnosisJson.write(object, visit, learnedFrom, repeats);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return object.toString();
  }
}

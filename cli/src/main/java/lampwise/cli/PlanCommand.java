package lampwise.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import lampwise.decode.PlanException;
import lampwise.decode.RecordingPlan;
import lampwise.decode.Watching;
import lampwise.file.PlanJson;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Person;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise plan}: how long to record so that the states of a sheet can be told apart. */
final class PlanCommand implements Command {
  @Override
  public String name() {
    return "plan";
  }

  @Override
  public String summary() {
    return "say how long to watch so that states can be told apart";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    SheetOption.addTo(spec);
    ObserverOption.addTo(spec);
    ReadingFlags.one(
        spec, "--rate", "HZ", "a light sensor with so many samples a second, and no person");
    ReadingFlags.flag(spec, "--json", "print every pair of states as one JSON object");
    spec.usageMessage()
        .description(
            "Finds for each pair of a sheet's states the shortest recording that tells them apart"
                + " in 99 of 100 cases, whatever the phase and the unit's clock, and the pairs"
                + " that no such recording tells apart, with what does. Found by rehearsal on"
                + " made-up recordings, always the same ones.")
        .footer(
            "",
            "Exit status: 0 done, 2 wrong use.",
            "",
            "Example: lampwise plan --sheet unit.sheet.yaml --observer hurried")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    CodeSheet sheet = SheetOption.needed(parsed, here);
    Optional<String> rate = ReadingFlags.text(parsed, "--rate");
    String by;
    Watching watching;
    try {
      if (rate.isPresent()) {
        if (parsed.hasMatchedOption("--observer")
            || parsed.hasMatchedOption("--notes")
            || parsed.hasMatchedOption("--set")) {
          throw new UsageException("--rate is a light sensor; it goes without --observer");
        }
        watching = Watching.bySensor(NumberOption.of("--rate", rate.get()));
        by = "a light sensor, " + Layout.clean(rate.get()) + " samples a second";
      } else {
        ObserverOption observer = ObserverOption.read(parsed);
        watching = hand(observer);
        by = "taps, observer " + observer.name();
      }
    } catch (PlanException e) {
      throw new UsageException(
          (rate.isPresent() ? "--rate: " : "--set: ")
              + Main.oneLine(String.valueOf(e.getMessage())));
    }
    List<RecordingPlan.Pair> pairs = pairs(here, new RecordingPlan(sheet, watching));
    if (parsed.hasMatchedOption("--json")) {
      print(here, sheet, by, watching, pairs);
    } else {
      PlanText.lines(sheet, by, pairs).forEach(here.out()::println);
    }
    return Main.DONE;
  }

  private static Watching hand(ObserverOption observer) throws UsageException {
    if (!(observer.observer() instanceof Person person)) {
      throw new UsageException("--observer takes a person here; for a light sensor give --rate HZ");
    }
    if (person.notes() == Person.Notes.WORDS) {
      throw new UsageException("--notes words cannot be planned; take taps or holds");
    }
    Watching taps =
        Watching.byHand(
            person.timingSd(),
            person.missed(),
            person.straysPerMinute() / 60,
            person.firstLateSeconds());
    return person.notes() == Person.Notes.HOLDS ? taps.withEnds() : taps;
  }

  private static List<RecordingPlan.Pair> pairs(Surroundings here, RecordingPlan plan) {
    Progress progress = new Progress(here, plan.count(), System::nanoTime);
    AtomicInteger done = new AtomicInteger();
    List<RecordingPlan.Pair> pairs =
        plan.pairs(
            () -> {
              synchronized (progress) {
                progress.done(done.incrementAndGet());
              }
            });
    progress.end();
    return pairs;
  }

  private static void print(
      Surroundings here,
      CodeSheet sheet,
      String by,
      Watching watching,
      List<RecordingPlan.Pair> pairs) {
    StringWriter object = new StringWriter();
    try {
      PlanJson.write(object, sheet, by, watching, pairs);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    here.out().append(object.getBuffer()).append('\n');
  }
}

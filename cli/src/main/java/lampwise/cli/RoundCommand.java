package lampwise.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.RoundCsv;
import lampwise.file.RoundJson;
import lampwise.service.HandOver;
import lampwise.service.Round;
import lampwise.service.Worklist;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise round}: a day's recordings and visits to a worklist. */
final class RoundCommand implements Command {
  private static final int MOST_THREADS = 256;

  @Override
  public String name() {
    return "round";
  }

  @Override
  public String summary() {
    return "from a day's recordings to a worklist, a kit list and a report";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    spec.addPositional(
        PositionalParamSpec.builder()
            .type(List.class)
            .auxiliaryTypes(String.class)
            .arity("0..1")
            .paramLabel("DIR")
            .description("the folder of the day's recordings")
            .build());
    ReadingFlags.one(spec, "--fixtures", "FILE", "the site's fixtures, a CSV file");
    ReadingFlags.one(
        spec, "--log", "FILE", "the visit log; LAMPWISE_LOG may name one where it is not given");
    ReadingFlags.one(spec, "--site", "FILE", "what the site knows better than the guide");
    ReadingFlags.one(spec, "--day", "DAY", "the day, such as 2026-11-25; today if not given");
    ReadingFlags.one(
        spec, "--cells-days", "N", "cells are due after so many days; 730 if not given");
    SheetOption.addTo(spec);
    ReadingFlags.flag(spec, "--json", "print the round as one JSON object");
    ReadingFlags.flag(spec, "--csv", "print the jobs as rows for a spreadsheet");
    ReadingFlags.one(spec, "--report", "FILE", "write a page to read and print (HTML)");
    ReadingFlags.one(
        spec, "--hand-over", "DIR", "write a page (HTML) for each job that waits for others");
    ReadingFlags.flag(spec, "--force", "write over files that are there");
    ReadingFlags.flag(spec, "--prepare", "before the round: route, kit and cards, no recordings");
    ReadingFlags.flag(
        spec, "--demo", "take invented sheets; alone, show the built-in invented round");
    ReadingFlags.one(spec, "--threads", "N", "recordings read at once; all cores if not given");
    spec.usageMessage()
        .description(
            "Reads the day's recordings, joins them to the fixtures they name or whose id stands"
                + " in their file's name, looks into the visit log, and says what to do where:"
                + " running water and the only accessible fixture first, then by the site's"
                + " weights.")
        .footer(
            "",
            "Exit status: 0 done, 1 a recording was refused (the others count), 2 wrong use.",
            "",
            "Example: lampwise round day --fixtures fixtures.csv --log visits.csv \\",
            "           --report round.html",
            "Example, all of it invented, one file refused:",
            "  lampwise round --demo   # status 1")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    if (parsed.hasMatchedOption("--json") && parsed.hasMatchedOption("--csv")) {
      throw new UsageException("--json and --csv go to one place; give one of them");
    }
    boolean force = parsed.hasMatchedOption("--force");
    Optional<String> report = ReadingFlags.text(parsed, "--report");
    if (report.isPresent()) {
      OutputFiles.check(here, report.get(), force);
    }
    RoundInput input = RoundInput.of(parsed, here);
    if (parsed.hasMatchedOption("--prepare")) {
      return RoundPrepare.run(input, parsed, here);
    }
    List<String> folders = parsed.matchedPositionalValue(0, List.<String>of());
    if (folders.isEmpty() && !input.builtIn()) {
      throw new UsageException("which recordings is not said; name their folder");
    }
    RoundFiles files =
        input.builtIn()
            ? new RoundFiles.Demonstration()
            : RoundFiles.Folder.of(here, folders.get(0), input.own());
    Round round = round(input, files, threads(parsed), parsed.hasMatchedOption("--trace"), here);
    if (parsed.hasMatchedOption("--json")) {
      here.out().append(json(round)).append('\n');
    } else if (parsed.hasMatchedOption("--csv")) {
      here.out().append(RoundCsv.write(round));
    } else {
      RoundText.of(round).forEach(here.out()::println);
    }
    here.out().flush();
    if (report.isPresent()) {
      OutputFiles.write(here, report.get(), RoundPage.of(round), force);
    }
    Optional<String> handOver = ReadingFlags.text(parsed, "--hand-over");
    if (handOver.isPresent()) {
      handOvers(here, round, handOver.get(), force);
    }
    return round.refused().isEmpty() ? Main.DONE : Main.REFUSED;
  }

  /** Reads the recordings and makes the worklist. */
  static Round round(
      RoundInput input, RoundFiles files, int threads, boolean trace, Surroundings here) {
    RoundRun run = new RoundRun(here, files, input.fixtures(), input.sheets(), trace);
    run.run(threads);
    return new Round(
        input.title(),
        input.basis().day(),
        input.isInvented(),
        input.fixtures(),
        run.readings(),
        Worklist.of(input.basis(), input.fixtures(), run.readings(), input.visits()),
        run.strays(),
        run.refused());
  }

  private static int threads(ParseResult parsed) throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, "--threads");
    return given.isEmpty()
        ? Runtime.getRuntime().availableProcessors()
        : (int) NumberOption.whole("--threads", given.get(), 1, MOST_THREADS);
  }

  private static String json(Round round) {
    StringWriter object = new StringWriter();
    try {
      RoundJson.write(object, round);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return object.toString();
  }

  private static void handOvers(Surroundings here, Round round, String folder, boolean force)
      throws UsageException {
    Path path = here.folder().resolve(folder);
    try {
      Files.createDirectories(path);
    } catch (IOException e) {
      throw new UsageException(Layout.clean(folder) + ": no folder can be made there");
    }
    List<String> names = new ArrayList<>();
    for (HandOver over : round.worklist().handOvers()) {
      String plain = over.fixture().id().replaceAll("[^A-Za-z0-9-]+", "-");
      String name = "hand-over-" + plain + (names.contains(plain) ? "-" + names.size() : "");
      names.add(plain);
      OutputFiles.write(
          here, Path.of(folder, name + ".html").toString(), RoundPage.handOver(round, over), force);
    }
  }
}

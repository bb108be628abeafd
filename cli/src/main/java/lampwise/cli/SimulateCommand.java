package lampwise.cli;

import java.util.Optional;
import lampwise.file.LightShape;
import lampwise.sheet.CodeSheet;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise simulate}: makes up recordings and says what is true of each. */
final class SimulateCommand implements Command {
  private static final String STANDARD_OUTPUT = "-";
  private static final int MOST_RECORDINGS = 1_000_000;

  @Override
  public String name() {
    return "simulate";
  }

  @Override
  public String summary() {
    return "make up recordings of a lamp and say what is true of each";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    SheetOption.addTo(spec);
    SceneOptions.addTo(spec);
    ObserverOption.addTo(spec);
    ShapeOption.addTo(spec);
    ReadingFlags.one(spec, "--seed", "N", "another seed gives other recordings; 1 if not given");
    ReadingFlags.one(
        spec, "--count", "N", "how many, of each state if there are several; 1 if not given");
    ReadingFlags.one(
        spec, "--out", "DIR", "the folder to write into; - prints one recording without its truth");
    ReadingFlags.flag(spec, "--force", "write even over files that are there");
    ReadingFlags.flag(spec, "--list", "print the observers and the shapes, and end");
    spec.usageMessage()
        .description(
            "Makes up recordings of a lamp as people note them or light sensors write them, and"
                + " truth.jsonl, a line for each recording with what is true of it. The same"
                + " options give the same bytes on every machine. Where neither targets nor"
                + " events are given, a state gets those that it shows with.")
        .footer(
            "",
            "Exit status: 0 written, 1 it could not be written, 2 wrong use.",
            "",
            "Example: lampwise simulate --sheet demo --state cells-low --seconds 60 \\",
            "           --observer hurried --seed 7 --count 100 --out made-up")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    if (parsed.hasMatchedOption("--list")) {
      ObserverTable.lines().forEach(here.out()::println);
      here.out().println();
      ShapeOption.lines().forEach(here.out()::println);
      return Main.DONE;
    }
    CodeSheet sheet = SheetOption.needed(parsed, here);
    Optional<String> out = ReadingFlags.text(parsed, "--out");
    if (out.isEmpty()) {
      throw new UsageException("where to write is not said; give --out DIR, or --out -");
    }
    SceneOptions scenes = SceneOptions.read(parsed, sheet);
    ObserverOption observer = ObserverOption.read(parsed);
    LightShape shape = ShapeOption.read(parsed, observer);
    long all = number(parsed, "--count", 1, MOST_RECORDINGS) * scenes.kinds();
    if (all > MOST_RECORDINGS) {
      throw new UsageException("at most " + MOST_RECORDINGS + " recordings are made in one go");
    }
    long seed = number(parsed, "--seed", Long.MIN_VALUE, Long.MAX_VALUE);
    SimulateRun run = new SimulateRun(here, sheet, scenes, observer, shape, seed);
    if (!out.get().equals(STANDARD_OUTPUT)) {
      return run.write(out.get(), (int) all, parsed.hasMatchedOption("--force"));
    }
    if (all > 1) {
      throw new UsageException("--out - prints one recording; several need a folder");
    }
    return run.print();
  }

  private static long number(ParseResult parsed, String option, long least, long most)
      throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, option);
    return given.isEmpty() ? 1 : NumberOption.whole(option, given.get(), least, most);
  }
}

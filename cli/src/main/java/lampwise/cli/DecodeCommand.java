package lampwise.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise decode}: reads recordings and says which state they show. */
final class DecodeCommand implements Command {
  @Override
  public String name() {
    return "decode";
  }

  @Override
  public String summary() {
    return "read recordings and say which state of the code sheet they show";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    SheetOption.addTo(spec);
    RecordingArguments.addTo(spec);
    ReadingFlags.flag(spec, "--json", "print one JSON object a line");
    spec.usageMessage()
        .description("Reads recordings of a lamp and says which state of the code sheet they show.")
        .footer(
            "",
            "Times are seconds, or written as the file writes them.",
            "Exit status: 0 all were read, 1 one was refused, 2 wrong use.",
            "",
            "Example: blinks noted at 3.1, 6.2 and 9.3 s while watching for 12 s:",
            "  printf '3.1 6.2 9.3' | lampwise decode --to 12 --sheet unit.sheet.yaml",
            "Example: somebody watched for 40 s and counted:",
            "  lampwise decode --saw \"3 blinks every 7 to 9 s\" --watched 40")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    RecordingArguments given = RecordingArguments.of(parsed);
    DecodeRun run =
        new DecodeRun(
            here,
            SheetOption.read(parsed, here),
            given.options(),
            given.said(),
            parsed.hasMatchedOption("--json"),
            parsed.hasMatchedOption("--trace"),
            given.several());
    return given.together() ? run.together(given.names()) : run.each(given.names());
  }
}

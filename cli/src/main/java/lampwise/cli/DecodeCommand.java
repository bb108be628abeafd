package lampwise.cli;

import java.util.List;
import lampwise.file.ReadOptions;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
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
    spec.addPositional(
        PositionalParamSpec.builder()
            .type(List.class)
            .auxiliaryTypes(String.class)
            .arity("0..*")
            .paramLabel("FILE")
            .description("recordings; standard input if there is none, or where it is -")
            .build());
    SheetOption.addTo(spec);
    ReadingFlags.addTo(spec);
    ReadingFlags.flag(spec, "--together", "all recordings are of one lamp in one unchanged unit");
    ReadingFlags.flag(spec, "--json", "print one JSON object a line");
    spec.usageMessage()
        .description("Reads recordings of a lamp and says which state of the code sheet they show.")
        .footer(
            "",
            "Times are seconds, or written as the file writes them.",
            "Exit status: 0 all were read, 1 one was refused, 2 wrong use.",
            "",
            "Example: blinks noted at 3.1, 6.2 and 9.3 s while watching for 12 s:",
            "  printf '3.1 6.2 9.3' | lampwise decode --to 12 --sheet unit.sheet.yaml")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    ReadOptions options = ReadingFlags.of(parsed);
    List<String> files = parsed.matchedPositionalValue(0, List.<String>of());
    DecodeRun run =
        new DecodeRun(
            here,
            SheetOption.read(parsed, here),
            options,
            parsed.hasMatchedOption("--json"),
            parsed.hasMatchedOption("--trace"),
            files.size() > 1);
    List<String> names = files.isEmpty() ? List.of(DecodeRun.STANDARD_INPUT) : files;
    return parsed.hasMatchedOption("--together") ? run.together(names) : run.each(names);
  }
}

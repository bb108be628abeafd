package lampwise.cli;

import java.util.List;
import java.util.Optional;
import lampwise.file.OptionException;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.light.Recording;
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
    addSaidTo(spec);
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
            "  printf '3.1 6.2 9.3' | lampwise decode --to 12 --sheet unit.sheet.yaml",
            "Example: somebody watched for 40 s and counted:",
            "  lampwise decode --saw \"3 blinks every 7 to 9 s\" --watched 40")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    ReadOptions options = ReadingFlags.of(parsed);
    List<String> files = parsed.matchedPositionalValue(0, List.<String>of());
    Optional<Recording> said = said(parsed, options);
    DecodeRun run =
        new DecodeRun(
            here,
            SheetOption.read(parsed, here),
            options,
            said,
            parsed.hasMatchedOption("--json"),
            parsed.hasMatchedOption("--trace"),
            files.size() + (said.isPresent() ? 1 : 0) > 1);
    boolean standardInput = files.isEmpty() && said.isEmpty();
    List<String> names = standardInput ? List.of(RecordingFiles.STANDARD_INPUT) : files;
    return parsed.hasMatchedOption("--together") ? run.together(names) : run.each(names);
  }

  /** Adds the options of what somebody saw. */
  static void addSaidTo(CommandSpec spec) {
    ReadingFlags.one(spec, "--saw", "PHRASE", "what somebody saw, in words; or nothing");
    ReadingFlags.one(spec, "--watched", "SECONDS", "how long they watched");
  }

  /** What was said in words, if anything was. */
  static Optional<Recording> said(ParseResult parsed, ReadOptions options) throws UsageException {
    Optional<String> said = ReadingFlags.text(parsed, "--saw");
    Optional<String> watched = ReadingFlags.text(parsed, "--watched");
    if (said.isEmpty()) {
      if (watched.isPresent()) {
        throw new UsageException("--watched goes with --saw; for other recordings use --to");
      }
      return Optional.empty();
    }
    try {
      ReadOptions own = watched.isPresent() ? options.watched(watched.get()) : options;
      return Optional.of(RecordingReader.described(said.get(), own));
    } catch (OptionException e) {
      throw new UsageException(Layout.clean(String.valueOf(e.getMessage())));
    }
  }
}

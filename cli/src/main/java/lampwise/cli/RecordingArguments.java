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

/**
 * What a command that reads recordings is given to read: files, standard input, what somebody saw.
 *
 * @param names the files, as the user wrote them; standard input alone if nothing was given
 * @param said what somebody saw, in words
 * @param options how to understand the files
 * @param together whether all recordings are of one lamp in one unchanged unit
 */
record RecordingArguments(
    List<String> names, Optional<Recording> said, ReadOptions options, boolean together) {

  /** Adds the files and the options to a command. */
  static void addTo(CommandSpec spec) {
    spec.addPositional(
        PositionalParamSpec.builder()
            .type(List.class)
            .auxiliaryTypes(String.class)
            .arity("0..*")
            .paramLabel("FILE")
            .description("recordings; standard input if there is none, or where it is -")
            .build());
    ReadingFlags.one(spec, "--saw", "PHRASE", "what somebody saw, in words; or nothing");
    ReadingFlags.one(spec, "--watched", "SECONDS", "how long they watched");
    ReadingFlags.addTo(spec);
    ReadingFlags.flag(spec, "--together", "all recordings are of one lamp in one unchanged unit");
  }

  /**
   * Takes what the command was given.
   *
   * @throws UsageException if an option cannot be understood
   */
  static RecordingArguments of(ParseResult parsed) throws UsageException {
    ReadOptions options = ReadingFlags.of(parsed);
    Optional<Recording> said = said(parsed, options);
    List<String> files = parsed.matchedPositionalValue(0, List.<String>of());
    boolean standardInput = files.isEmpty() && said.isEmpty();
    return new RecordingArguments(
        standardInput ? List.of(RecordingFiles.STANDARD_INPUT) : files,
        said,
        options,
        parsed.hasMatchedOption("--together"));
  }

  private static Optional<Recording> said(ParseResult parsed, ReadOptions options)
      throws UsageException {
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

  /** Whether there is more than one thing to read, so that each must be called by its name. */
  boolean several() {
    return names.size() + (said.isPresent() ? 1 : 0) > 1;
  }
}

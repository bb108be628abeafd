package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.FileException;
import lampwise.file.FileFault;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The option {@code --sheet FILE|demo}; the variable LAMPWISE_SHEET stands in for it. */
final class SheetOption {
  /** The name of the built-in invented sheet. */
  static final String DEMO = "demo";

  /** The variable of the environment that may name a site's own sheet. */
  static final String VARIABLE = "LAMPWISE_SHEET";

  private SheetOption() {}

  /** Adds the option to a command. */
  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec,
        "--sheet",
        "FILE|demo",
        "the unit's code sheet, or the built-in invented one; where it is not given,"
            + " the variable LAMPWISE_SHEET may name one");
  }

  /**
   * Reads the sheet of a command that cannot do without.
   *
   * @throws UsageException if none is named, or with a line for each fault
   */
  static CodeSheet needed(ParseResult parsed, Surroundings here) throws UsageException {
    return read(parsed, here)
        .orElseThrow(
            () ->
                new UsageException("which sheet is not said; give --sheet FILE, or --sheet demo"));
  }

  /**
   * Reads the sheet that the option or the variable names.
   *
   * @return the sheet; empty if neither names one
   * @throws UsageException with a line for each fault
   */
  static Optional<CodeSheet> read(ParseResult parsed, Surroundings here) throws UsageException {
    Optional<String> option = ReadingFlags.text(parsed, "--sheet");
    Optional<String> name = option.isPresent() ? option : here.variable(VARIABLE);
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (name.get().equals(DEMO)) {
      return Optional.of(SheetReader.demo());
    }
    try {
      byte[] content = InputFiles.read(here, name.get(), "a code sheet, or the word demo");
      return Optional.of(SheetReader.read(name.get(), content));
    } catch (FileException e) {
      List<String> lines = new ArrayList<>();
      for (FileFault fault : e.faults()) {
        lines.add(Layout.clean(fault.toString()));
      }
      if (option.isEmpty()) {
        lines.set(0, lines.get(0) + " (named by " + VARIABLE + ")");
      }
      throw new UsageException(lines);
    }
  }
}

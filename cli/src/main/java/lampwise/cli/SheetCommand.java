package lampwise.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import lampwise.file.FileException;
import lampwise.file.SheetJson;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise sheet}: checks and lists a code sheet, prints its card, or writes a new one. */
final class SheetCommand implements Command {
  @Override
  public String name() {
    return "sheet";
  }

  @Override
  public String summary() {
    return "check and list a code sheet, print its card, or write a new one";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    spec.addPositional(
        PositionalParamSpec.builder()
            .type(List.class)
            .auxiliaryTypes(String.class)
            .index("0")
            .arity("0..1")
            .paramLabel("FILE|demo")
            .description(
                "the code sheet, or the built-in invented one; with --new, the file to write")
            .build());
    ReadingFlags.flag(spec, "--json", "print states, warnings and faults as one JSON object");
    ReadingFlags.one(spec, "--print", "FILE", "write the card for the wall or the cart (HTML)");
    ReadingFlags.flag(spec, "--new", "ask for each line of a label and write the sheet");
    ReadingFlags.flag(spec, "--force", "write over a file that exists");
    spec.usageMessage()
        .description(
            "Checks a code sheet and lists its states, each with a strip of its light: a full"
                + " block is light, a low line dark, // a time that is not said, ~ one that is"
                + " about so long.")
        .footer(
            "",
            "Exit status: 0 the sheet is right or was written, 1 it has faults or the answers",
            "to --new ended too early, 2 wrong use.",
            "",
            "Example: lampwise sheet unit.sheet.yaml --print unit-card.html",
            "Example, asked line by line: lampwise sheet --new basin.sheet.yaml")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    List<String> files = parsed.matchedPositionalValue(0, List.<String>of());
    boolean force = parsed.hasMatchedOption("--force");
    boolean json = parsed.hasMatchedOption("--json");
    Optional<String> card = ReadingFlags.text(parsed, "--print");
    if (parsed.hasMatchedOption("--new")) {
      if (json || card.isPresent()) {
        throw new UsageException("--new goes without --json and --print");
      }
      return new NewSheet(here, force).run(files.stream().findFirst());
    }
    Optional<String> file =
        files.stream().findFirst().or(() -> here.variable(SheetOption.VARIABLE));
    if (file.isEmpty()) {
      throw new UsageException("which sheet is not said; give its FILE, demo, or --new");
    }
    if (json && card.isPresent()) {
      throw new UsageException("--json and --print do not go together");
    }
    if (card.isPresent()) {
      OutputFiles.check(here, card.get(), force);
    }
    Optional<CodeSheet> sheet = read(here, file.get(), json, parsed.hasMatchedOption("--trace"));
    if (sheet.isEmpty()) {
      return Main.REFUSED;
    }
    if (card.isPresent()) {
      OutputFiles.write(here, card.get(), SheetCard.page(sheet.get()), force);
      here.out()
          .println(Layout.clean(card.get()) + " is written; print it on one side, A4 or Letter");
    } else if (json) {
      print(here, out -> SheetJson.right(out, file.get(), sheet.get()));
    } else {
      show(here, SheetText.lines(sheet.get(), SheetText.blocks(here)));
    }
    return Main.DONE;
  }

  private static Optional<CodeSheet> read(
      Surroundings here, String name, boolean json, boolean trace) {
    if (name.equals(SheetOption.DEMO)) {
      return Optional.of(SheetReader.demo());
    }
    try {
      byte[] content = InputFiles.read(here, name, "a code sheet, or the word demo");
      return Optional.of(SheetReader.read(name, content));
    } catch (FileException e) {
      if (json) {
        print(here, out -> SheetJson.refused(out, name, e.faults()));
      }
      here.out().flush();
      e.faults().forEach(fault -> here.err().println(Layout.clean(fault.toString())));
      if (trace) {
        e.printStackTrace(here.err());
      }
      return Optional.empty();
    }
  }

  /** Prints lines, the first one strong where that can be shown. */
  static void show(Surroundings here, List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      boolean strong = i == 0 && here.colour();
      here.out().println(strong ? "\u001b[1m" + lines.get(i) + "\u001b[0m" : lines.get(i));
    }
  }

  private interface JsonLine {
    void writeTo(StringWriter out) throws IOException;
  }

  private static void print(Surroundings here, JsonLine line) {
    StringWriter object = new StringWriter();
    try {
      line.writeTo(object);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    here.out().append(object.getBuffer()).append('\n');
  }
}

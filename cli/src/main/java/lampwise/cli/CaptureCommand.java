package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import lampwise.sheet.CodeSheet;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise capture}: writes the page on which a phone's user marks what a lamp does. */
final class CaptureCommand implements Command {
  private static final String OUT = "capture.html";
  private static final String STANDARD_OUTPUT = "-";
  private static final int MOST_CHARACTERS = 80;

  @Override
  public String name() {
    return "capture";
  }

  @Override
  public String summary() {
    return "write the page on which a phone's user marks what a lamp does";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    SheetOption.addTo(spec);
    ReadingFlags.one(spec, "--fixture", "NAME", "the fixture's name, to begin with");
    ReadingFlags.one(
        spec, "--out", "FILE", "where to write; " + OUT + " if not given, standard output if -");
    ReadingFlags.flag(spec, "--force", "write even over a file that is there");
    spec.usageMessage()
        .description(
            "Writes one web page for a phone. While somebody watches a lamp and holds the page's"
                + " large area whenever the lamp is lit, it keeps the times; it gives them as a"
                + " recording that lampwise decode reads. The page needs no network and sends"
                + " nothing. With a sheet it says how long to watch and lists the states.")
        .footer(
            "",
            "Exit status: 0 written, 1 it could not be written, 2 wrong use.",
            "",
            "Example: lampwise capture --sheet unit.sheet.yaml --fixture north-07")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    String fixture = Layout.clean(ReadingFlags.text(parsed, "--fixture").orElse(""));
    if (fixture.codePointCount(0, fixture.length()) > MOST_CHARACTERS) {
      throw new UsageException("--fixture takes at most " + MOST_CHARACTERS + " characters");
    }
    Optional<CodeSheet> sheet = SheetOption.read(parsed, here);
    String page = CapturePage.of(fixture, sheet);
    String out = ReadingFlags.text(parsed, "--out").orElse(OUT);
    if (out.equals(STANDARD_OUTPUT)) {
      here.out().print(page);
      return Main.DONE;
    }
    return write(page, out, parsed.hasMatchedOption("--force"), sheet, here);
  }

  private static int write(
      String page, String out, boolean force, Optional<CodeSheet> sheet, Surroundings here)
      throws UsageException {
    String said = out.isEmpty() ? "\"\"" : Layout.clean(out);
    try {
      Path path = here.folder().resolve(out);
      if (out.isEmpty() || Files.isDirectory(path)) {
        throw new UsageException(said + ": is a folder; --out takes the file to write");
      }
      OutputFiles.put(path, page.getBytes(StandardCharsets.UTF_8), force);
    } catch (FileAlreadyExistsException e) {
      throw new UsageException(said + ": is there already; --force writes over it");
    } catch (NoSuchFileException | InvalidPathException e) {
      throw new UsageException(said + ": cannot be made; expected a path in a folder that exists");
    } catch (IOException e) {
      here.err()
          .println(
              said + ": cannot be written (" + Layout.clean(String.valueOf(e.getMessage())) + ")");
      return Main.REFUSED;
    }
    String invented = sheet.filter(CodeSheet::isInvented).isPresent() ? "  [invented sheet]" : "";
    here.out().println("written to " + said + "; open it on the phone" + invented);
    return Main.DONE;
  }
}

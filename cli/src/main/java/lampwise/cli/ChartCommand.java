package lampwise.cli;

import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise chart}: draws recordings and what was read in them. */
final class ChartCommand implements Command {
  private static final int USUAL_WIDTH = 1000;
  private static final int LEAST_WIDTH = 240;
  private static final int MOST_WIDTH = 4000;

  @Override
  public String name() {
    return "chart";
  }

  @Override
  public String summary() {
    return "draw recordings and what was read in them, as PNG or SVG";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    SheetOption.addTo(spec);
    ReadingFlags.one(
        spec,
        "--out",
        "FILE.png|FILE.svg",
        "the picture; else FILE's own name with .png, in the current folder."
            + " Several are numbered");
    ReadingFlags.one(
        spec, "--width", "PX", "how wide, in pixels: 240 to 4000, else 1000; 360 suits a phone");
    ReadingFlags.flag(spec, "--force", "replace a picture that exists");
    RecordingArguments.addTo(spec);
    spec.usageMessage()
        .description("Draws each recording, its blinks and what they mean, over its own seconds.")
        .footer(
            "",
            "Exit status: 0 all were drawn, 1 one was refused, 2 wrong use.",
            "",
            "Example: lampwise chart --sheet unit.sheet.yaml --out visit.svg tapped.txt")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    RecordingArguments given = RecordingArguments.of(parsed);
    Optional<String> out = ReadingFlags.text(parsed, "--out");
    ChartRun.Asked asked =
        new ChartRun.Asked(
            SheetOption.read(parsed, here),
            given.options(),
            image(out),
            width(parsed),
            parsed.hasMatchedOption("--trace"));
    System.setProperty("java.awt.headless", "true");
    if (!ChartImage.hasLetters()) {
      here.err().println("lampwise chart: this machine has no font; install one, then try again");
      return Main.REFUSED;
    }
    ChartFiles charts = new ChartFiles(here, out, parsed.hasMatchedOption("--force"));
    return new ChartRun(here, asked, charts, given.several())
        .run(given.names(), given.said(), given.together());
  }

  private static ChartImage image(Optional<String> out) throws UsageException {
    if (out.isEmpty()) {
      return ChartImage.PNG;
    }
    Optional<ChartImage> image = ChartImage.of(out.get());
    if (image.isEmpty()) {
      throw new UsageException(
          "--out takes a name that ends in .png or .svg, not " + Layout.clean(out.get()));
    }
    return image.get();
  }

  private static int width(ParseResult parsed) throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, "--width");
    if (given.isEmpty()) {
      return USUAL_WIDTH;
    }
    try {
      int width = Integer.parseInt(given.get());
      if (width >= LEAST_WIDTH && width <= MOST_WIDTH) {
        return width;
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw new UsageException(
        "--width takes "
            + LEAST_WIDTH
            + " to "
            + MOST_WIDTH
            + " pixels, not "
            + Layout.clean(given.get()));
  }
}

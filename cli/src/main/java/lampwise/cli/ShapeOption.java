package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwise.file.LightShape;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** How a light file is written: the option {@code --shape}. */
final class ShapeOption {
  private ShapeOption() {}

  /** Adds the option to a command. */
  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec,
        "--shape",
        "NAME",
        "how a light sensor's file is written; see --list; plain if not given");
  }

  /**
   * Reads the option.
   *
   * @throws UsageException if there is no such shape, or no light file to shape
   */
  static LightShape read(ParseResult parsed, ObserverOption observer) throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, "--shape");
    if (given.isEmpty()) {
      return LightShape.PLAIN;
    }
    if (observer.notedAs().isPresent()) {
      throw new UsageException(
          "--shape goes with a light sensor; " + observer.name() + " is a person");
    }
    Optional<LightShape> shape = LightShape.of(given.get());
    if (shape.isEmpty()) {
      List<String> known = Stream.of(LightShape.values()).map(LightShape::word).toList();
      throw new UsageException(
          "--shape: there is no shape "
              + Layout.clean(given.get())
              + "; "
              + Near.said(given.get(), known));
    }
    return shape.get();
  }

  /** The shapes and what each is, a line each. */
  static List<String> lines() {
    int width = Stream.of(LightShape.values()).mapToInt(s -> s.word().length()).max().orElse(0);
    List<String> lines = new ArrayList<>(List.of("Shapes of light files"));
    for (LightShape shape : LightShape.values()) {
      lines.add(Layout.padded(shape.word(), width) + "  " + shape.what());
    }
    return lines;
  }
}

package lampwise.cli;

import java.util.List;
import java.util.Optional;
import lampwise.file.ReadOptions;
import lampwise.light.LightCurve;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** The options of every command that reads recordings: how to understand the file. */
final class ReadingFlags {
  private static final WordOption<ReadOptions.Shape> SHAPE =
      WordOption.ofEnum("--as", ReadOptions.Shape.values());
  private static final WordOption<ReadOptions.Unit> UNIT =
      WordOption.ofEnum("--unit", ReadOptions.Unit.values());
  private static final WordOption<ReadOptions.Dates> DATES =
      WordOption.ofEnum("--dates", ReadOptions.Dates.values());
  private static final WordOption<ReadOptions.Decimal> DECIMAL =
      WordOption.ofEnum("--decimal", ReadOptions.Decimal.values());
  private static final WordOption<LightCurve.Lit> LIT =
      new WordOption<>(
          "--lit",
          List.of(LightCurve.Lit.DARKER, LightCurve.Lit.BRIGHTER),
          lit -> lit == LightCurve.Lit.DARKER ? "dark" : "bright");
  private static final double MOST_HZ = 100_000;

  private ReadingFlags() {}

  /** Adds the options to a command. */
  static void addTo(CommandSpec spec) {
    one(spec, "--from", "T", "where the window that was watched starts");
    one(spec, "--to", "T", "where it ends; it starts at 0 if only this is given");
    many(spec, "--target", "none|all|A..B", "when somebody was before the sensor; repeatable");
    many(spec, "--event", "NAME@T", "power-up, button, flush or door, and when; repeatable");
    many(spec, "--covered", "A..B", "when the lamp was covered; repeatable");
    one(spec, "--as", "SHAPE", "what the file holds: times, gaps, spans or levels");
    one(spec, "--column", "NAME", "the column of the light levels, a name or a number");
    one(spec, "--time", "NAME", "the column of the times, a name or a number");
    one(spec, "--unit", "UNIT", "the unit of a numeric time column: s, ms, us or ns");
    one(spec, "--rate", "HZ", "rows a second, where the file holds no times");
    one(spec, "--dates", "ORDER", "dmy or mdy, where a date such as 1/2/2030 could be either");
    one(spec, "--decimal", "MARK", "point or comma, where a number such as 1,234 could be either");
    one(spec, "--lit", "WAY", "dark if the level falls when the lamp is on, else bright");
  }

  /**
   * Reads the options.
   *
   * @throws UsageException if a word is not one of its list
   */
  static ReadOptions of(ParseResult parsed) throws UsageException {
    return new ReadOptions(
        SHAPE.one(parsed),
        text(parsed, "--column"),
        text(parsed, "--time"),
        UNIT.one(parsed),
        LIT.one(parsed).orElse(LightCurve.Lit.BRIGHTER),
        text(parsed, "--from"),
        text(parsed, "--to"),
        parsed.matchedOptionValue("--target", List.<String>of()),
        parsed.matchedOptionValue("--event", List.<String>of()),
        parsed.matchedOptionValue("--covered", List.<String>of()),
        writing(parsed));
  }

  private static ReadOptions.Writing writing(ParseResult parsed) throws UsageException {
    double rate = Double.NaN;
    Optional<String> given = text(parsed, "--rate");
    if (given.isPresent()) {
      rate = NumberOption.of("--rate", given.get());
      if (!(rate > 0 && rate <= MOST_HZ)) {
        throw new UsageException(
            "--rate takes rows a second, more than 0 and at most 100000, not "
                + Layout.clean(given.get()));
      }
    }
    return new ReadOptions.Writing(rate, DATES.one(parsed), DECIMAL.one(parsed));
  }

  /** The value of an option that was given once. */
  static Optional<String> text(ParseResult parsed, String name) {
    return parsed.hasMatchedOption(name)
        ? Optional.of(parsed.matchedOptionValue(name, ""))
        : Optional.empty();
  }

  /** Adds an option with one value. */
  static void one(CommandSpec spec, String name, String label, String description) {
    spec.addOption(
        OptionSpec.builder(name)
            .type(String.class)
            .arity("1")
            .paramLabel(label)
            .description(description)
            .build());
  }

  /** Adds an option that may be given more than once. */
  static void many(CommandSpec spec, String name, String label, String description) {
    spec.addOption(
        OptionSpec.builder(name)
            .type(List.class)
            .auxiliaryTypes(String.class)
            .arity("1")
            .paramLabel(label)
            .description(description)
            .build());
  }

  /** Adds an option without a value. */
  static void flag(CommandSpec spec, String name, String description) {
    spec.addOption(
        OptionSpec.builder(name).type(boolean.class).arity("0").description(description).build());
  }
}

package lampwise.cli;

import java.nio.file.InvalidPathException;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import lampwise.file.FileException;
import lampwise.file.VisitLog;
import lampwise.service.Guide;
import lampwise.service.Learned;
import lampwise.service.Situation;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The visit log that {@code lampwise diagnose} learns shares and minutes from, if one is named. */
final class LearnOption {
  private final Optional<String> log;
  private final Surroundings here;
  private Optional<Learned> learned = Optional.empty();
  private String kind = "";

  LearnOption(ParseResult parsed, Surroundings here) {
    this.log = ReadingFlags.text(parsed, "--learn");
    this.here = here;
  }

  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec, "--learn", "LOG", "learn shares and minutes from the log's visits to the same kind");
  }

  /**
   * The guide as the log's visits to such fixtures have it.
   *
   * @return the guide as told if no log is named
   * @throws UsageException if the log cannot be read
   */
  Guide applyTo(Guide told, Situation situation) throws UsageException {
    if (log.isEmpty()) {
      return told;
    }
    try {
      Learned from =
          Learned.from(
              told,
              VisitLog.read(here.folder().resolve(log.get())).visits(),
              situation.kind(),
              situation.power());
      learned = Optional.of(from);
      kind = situation.kind().word();
      return from.site().applyTo(told);
    } catch (FileException e) {
      throw new UsageException(e);
    } catch (InvalidPathException e) {
      throw new UsageException("--learn: no file can have the name " + Layout.clean(log.get()));
    }
  }

  /** How many visits told a cause; empty if nothing was to be learned. */
  OptionalInt visits() {
    return learned.isPresent() ? OptionalInt.of(learned.get().visits()) : OptionalInt.empty();
  }

  /** What the shares rest on besides the guide; empty for nothing. */
  Optional<String> said() {
    return learned.map(
        from ->
            String.format(
                Locale.ROOT,
                "Shares are learned from %s to a %s in %s, beside %d of the guide's; the"
                    + " minutes of remedies from %d.",
                Words.count(from.visits(), "visit"),
                kind,
                Layout.clean(log.orElse("")),
                Learned.GUIDE_VISITS,
                from.timed()));
  }
}

package lampwise.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.service.Caution;
import lampwise.service.Opening;
import lampwise.service.Remedy;
import lampwise.service.Requirement;
import lampwise.service.Who;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/** Reads one remedy of a guide. */
final class RemedyReader {
  private static final GuideFields.Keys KEYS =
      GuideFields.Keys.of(
          List.of("name", "fixes", "steps", "minutes", "verify"),
          "kind",
          "power",
          "cautions",
          "parts",
          "tools",
          "who",
          "opens",
          "flushes",
          "before",
          "clears",
          "watch",
          "source");

  private RemedyReader() {}

  /** The remedy; empty after a fault. */
  static Optional<Remedy> read(GuideItem item, GuideNames names) {
    GuideFields fields = GuideFields.of(item, KEYS);
    String name = fields.text("name");
    Map<String, Double> fixes = fields.fixes("fixes", names.causes());
    List<FixtureKind> kinds = fields.kinds();
    List<Power> powers = fields.powers();
    List<Caution> cautions = fields.cautions(names);
    List<String> steps = fields.someTexts("steps");
    List<String> parts = fields.texts("parts");
    List<String> tools = fields.texts("tools");
    double minutes = fields.positive("minutes");
    Who who = fields.who();
    List<Opening> opens = fields.openings("opens");
    boolean flushes = fields.yes("flushes");
    List<Requirement> before = fields.requirements("before", names);
    List<Requirement> verify = fields.requirements("verify", names);
    Optional<String> clears = fields.table().text("clears");
    boolean watch = fields.yes("watch");
    Optional<String> source = fields.source();
    if (fixes.isEmpty() && !fields.faulty()) {
      item.faults().add(item.key(), "fixes must name at least one cause");
    }
    if (fields.faulty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Remedy(
            item.id(), name, fixes, kinds, powers, cautions, steps, parts, tools, minutes, who,
            opens, flushes, before, verify, clears, watch, source));
  }
}

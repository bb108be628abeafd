package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.service.Caution;
import lampwise.service.ClosingStep;
import lampwise.service.Complaint;
import lampwise.service.MakeSafe;
import lampwise.service.Opening;
import lampwise.service.Requirement;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/** Reads the cautions of a guide, what it makes safe first, and what ends every visit. */
final class SafetyReader {
  private static final GuideFields.Keys CAUTION_KEYS =
      GuideFields.Keys.of(List.of("say"), "source");
  private static final GuideFields.Keys MAKE_SAFE_KEYS =
      GuideFields.Keys.of(
          List.of("sign", "steps"), "kind", "power", "complaint", "found", "cautions", "source");
  private static final GuideFields.Keys CLOSING_KEYS =
      GuideFields.Keys.of(List.of("say"), "kind", "opened");

  private SafetyReader() {}

  /** A caution; empty after a fault. */
  static Optional<Caution> caution(GuideItem item) {
    GuideFields fields = GuideFields.of(item, CAUTION_KEYS);
    String say = fields.text("say");
    Optional<String> source = fields.source();
    return fields.faulty() ? Optional.empty() : Optional.of(new Caution(item.id(), say, source));
  }

  /** A rule to make safe; empty after a fault. */
  static Optional<MakeSafe> makeSafe(GuideItem item, GuideNames names) {
    GuideFields fields = GuideFields.of(item, MAKE_SAFE_KEYS);
    String sign = fields.text("sign");
    List<FixtureKind> kinds = fields.kinds();
    List<Power> powers = fields.powers();
    List<Complaint> complaints = fields.complaints();
    List<Requirement> found = fields.requirements("found", names);
    List<Caution> cautions = fields.cautions(names);
    List<String> steps = fields.someTexts("steps");
    Optional<String> source = fields.source();
    if (complaints.isEmpty() && found.isEmpty() && !fields.faulty()) {
      item.faults()
          .add(item.key(), "one of the keys complaint and found must say what calls for it");
    }
    if (fields.faulty()) {
      return Optional.empty();
    }
    return Optional.of(
        new MakeSafe(item.id(), sign, kinds, powers, complaints, found, cautions, steps, source));
  }

  /** The lines that end a visit, of one file. */
  static List<ClosingStep> closing(GuideFile file) {
    Optional<YamlNode> value = file.table().node("closing");
    List<ClosingStep> steps = new ArrayList<>();
    if (value.isPresent() && value.get() instanceof YamlNode.Items list) {
      for (YamlNode node : list.items()) {
        closingStep(file, node).ifPresent(steps::add);
      }
    } else {
      value.ifPresent(
          node ->
              file.faults()
                  .add(
                      node,
                      "closing must be a list of tables such as - say: ..."
                          + YamlTable.found(node)));
    }
    return steps;
  }

  private static Optional<ClosingStep> closingStep(GuideFile file, YamlNode node) {
    if (!(node instanceof YamlNode.Table table)) {
      if (!(node instanceof YamlNode.Faulty)) {
        file.faults()
            .add(
                node,
                "an item of closing must be a table with the key say" + YamlTable.found(node));
      }
      return Optional.empty();
    }
    GuideFields fields = new GuideFields(node, table, file.faults(), CLOSING_KEYS);
    String say = fields.text("say");
    List<FixtureKind> kinds = fields.kinds();
    List<Opening> opened = fields.openings("opened");
    return fields.faulty() ? Optional.empty() : Optional.of(new ClosingStep(say, kinds, opened));
  }
}

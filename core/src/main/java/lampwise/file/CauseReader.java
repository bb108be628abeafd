package lampwise.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.service.Area;
import lampwise.service.Cause;
import lampwise.service.Complaint;
import lampwise.service.Work;
import lampwise.sheet.Condition;

/** Reads one cause of a guide. */
final class CauseReader {
  private static final GuideFields.Keys KEYS =
      GuideFields.Keys.of(
          List.of("name", "looks-like", "area", "share"),
          "kind",
          "power",
          "lately",
          "lamp",
          "source");

  private CauseReader() {}

  /** The cause; empty after a fault. */
  static Optional<Cause> read(GuideItem item) {
    GuideFields fields = GuideFields.of(item, KEYS);
    Optional<Area> area =
        fields.table().word("area", Area::of, YamlTable.wordsOf(Area.values(), Area::word));
    Map<Complaint, Double> shares = fields.weights("share", Complaint.values(), Complaint::word);
    Map<Work, Double> lately = fields.weights("lately", Work.values(), Work::word);
    Map<Condition, Double> lamp = fields.chances("lamp", Condition.values(), Condition::word);
    double sum = lamp.values().stream().mapToDouble(Double::doubleValue).sum();
    if (sum > 1 + 1e-6) {
      item.faults()
          .add(
              item.key(),
              "the chances under lamp must sum to at most 100 %; they sum to "
                  + GuideFields.percent(sum));
    }
    if (shares.isEmpty() && !fields.faulty()) {
      item.faults().add(item.key(), "share must name at least one complaint");
    }
    String name = fields.text("name");
    String looksLike = fields.text("looks-like");
    var kinds = fields.kinds();
    var powers = fields.powers();
    Optional<String> source = fields.source();
    if (fields.faulty() || area.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Cause(
            item.id(), name, looksLike, area.get(), kinds, powers, shares, lately, lamp, source));
  }
}

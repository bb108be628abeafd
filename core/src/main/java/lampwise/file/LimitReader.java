package lampwise.file;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.service.Measure;
import lampwise.service.SiteLimit;
import lampwise.sheet.FixtureKind;

/** Reads one limit of a site. */
final class LimitReader {
  private static final GuideFields.Keys KEYS =
      GuideFields.Keys.of(List.of("of", "basis"), "kind", "at-least", "at-most");

  private LimitReader() {}

  /** The limit; empty after a fault. */
  static Optional<SiteLimit> read(YamlNode node, FaultList faults) {
    if (!(node instanceof YamlNode.Table table)) {
      if (!(node instanceof YamlNode.Faulty)) {
        faults.add(
            node, "a limit must be a table with the keys of and basis" + YamlTable.found(node));
      }
      return Optional.empty();
    }
    GuideFields fields = new GuideFields(node, table, faults, KEYS);
    Optional<Measure> of =
        fields.table().word("of", Measure::of, YamlTable.wordsOf(Measure.values(), Measure::word));
    List<FixtureKind> kinds = fields.kinds();
    String basis = fields.text("basis");
    Optional<Amount> least = of.flatMap(measure -> amount(fields, "at-least", measure, faults));
    Optional<Amount> most = of.flatMap(measure -> amount(fields, "at-most", measure, faults));
    if (fields.faulty() || of.isEmpty()) {
      return Optional.empty();
    }
    if (least.isEmpty() && most.isEmpty()) {
      faults.add(node, "a limit needs at-least or at-most");
    } else if (least.isPresent() && most.isPresent()) {
      if (!least.get().unit().equals(most.get().unit())) {
        faults.add(node, "at-least and at-most must be in one unit");
      } else if (!(least.get().value() <= most.get().value())) {
        faults.add(node, "at-least must not be more than at-most");
      }
    }
    if (fields.faulty()) {
      return Optional.empty();
    }
    return Optional.of(
        new SiteLimit(
            of.get(),
            kinds,
            number(least),
            number(most),
            least.or(() -> most).map(Amount::unit).orElse(""),
            basis));
  }

  private static OptionalDouble number(Optional<Amount> amount) {
    return amount.isPresent() ? OptionalDouble.of(amount.get().value()) : OptionalDouble.empty();
  }

  private static Optional<Amount> amount(
      GuideFields fields, String key, Measure of, FaultList faults) {
    Optional<YamlNode.Text> scalar = fields.table().scalar(key);
    Optional<Amount> amount = scalar.flatMap(text -> Amount.of(text.text(), of.units()));
    if (scalar.isPresent() && amount.isEmpty()) {
      faults.add(
          scalar.get(),
          key
              + " must be a number and one of the units "
              + Wording.list(of.units())
              + YamlTable.found(scalar.get()));
    }
    return amount;
  }
}

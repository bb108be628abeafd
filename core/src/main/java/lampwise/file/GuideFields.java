package lampwise.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import lampwise.service.Caution;
import lampwise.service.Complaint;
import lampwise.service.Opening;
import lampwise.service.Requirement;
import lampwise.service.Who;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/** The keys that several parts of a guide have in common. */
final class GuideFields {
  /** What a positive number is expected to be, for messages. */
  private static final String POSITIVE = "a number over 0 such as 2.5";

  private static final String CHANCE = "a percentage from 0 % to 100 % such as 5 %";

  private final YamlTable table;
  private final FaultList faults;
  private final int faultsBefore;
  private boolean misnamed;

  /** The keys of one table. */
  GuideFields(YamlNode where, YamlNode.Table node, FaultList faults, Keys keys) {
    this.faults = faults;
    this.faultsBefore = faults.size();
    this.table = YamlTable.of(where, node, keys.known(), keys.required(), faults);
  }

  /** A table whose keys were looked at already. */
  GuideFields(YamlTable table, FaultList faults) {
    this.faults = faults;
    this.faultsBefore = faults.size();
    this.table = table;
  }

  /** The keys of one part. */
  static GuideFields of(GuideItem item, Keys keys) {
    GuideFields fields = new GuideFields(item.key(), item.node(), item.faults(), keys);
    fields.misnamed = !item.isNamed();
    return fields;
  }

  /** The keys of a table and which of them it must have. */
  record Keys(List<String> required, List<String> known) {
    static Keys of(List<String> required, String... optional) {
      List<String> known = new ArrayList<>(required);
      known.addAll(Arrays.asList(optional));
      return new Keys(required, List.copyOf(known));
    }
  }

  /** Whether anything was wrong in this table or with its name. */
  boolean faulty() {
    return misnamed || faults.size() > faultsBefore;
  }

  YamlTable table() {
    return table;
  }

  /** A text that must be there; empty text after a fault, which then was told. */
  String text(String key) {
    return table.text(key).orElse("");
  }

  Optional<String> source() {
    return table.text("source");
  }

  List<FixtureKind> kinds() {
    return table.words(
        "kind", FixtureKind::of, YamlTable.wordsOf(FixtureKind.values(), FixtureKind::word));
  }

  List<Power> powers() {
    return table.words("power", Power::of, YamlTable.wordsOf(Power.values(), Power::word));
  }

  List<Complaint> complaints() {
    return table.words(
        "complaint", Complaint::of, YamlTable.wordsOf(Complaint.values(), Complaint::word));
  }

  List<Opening> openings(String key) {
    return table.words(key, Opening::of, YamlTable.wordsOf(Opening.values(), Opening::word));
  }

  Who who() {
    return table
        .word("who", Who::of, YamlTable.wordsOf(Who.values(), Who::word))
        .orElse(Who.TECHNICIAN);
  }

  double positive(String key) {
    return table.quantity(key, Quantities::number, GuideFields::isPositive, POSITIVE).orElse(1);
  }

  /** A word {@code yes} or {@code no}; false if it is not there. */
  boolean yes(String key) {
    return table
        .word(
            key,
            word ->
                word.equals("yes") || word.equals("no")
                    ? Optional.of(word.equals("yes"))
                    : Optional.<Boolean>empty(),
            List.of("yes", "no"))
        .orElse(false);
  }

  /** A list of texts on one line each. */
  List<String> texts(String key) {
    return table.list(key, "[first, second]").stream()
        .map(text -> Wording.onOneLine(text.text()))
        .toList();
  }

  /** A list of texts that must hold at least one. */
  List<String> someTexts(String key) {
    List<String> texts = texts(key);
    if (texts.isEmpty() && !faulty()) {
      table.node(key).ifPresent(node -> faults.add(node, key + " must hold at least one text"));
    }
    return texts;
  }

  /** The cautions of a list of their ids. */
  List<Caution> cautions(GuideNames names) {
    Map<String, Caution> known = names.cautions();
    List<String> ids = known.isEmpty() ? List.of("none") : List.copyOf(known.keySet());
    return table.words("cautions", id -> Optional.ofNullable(known.get(id)), ids);
  }

  /** Checks with their answers; none if the key is not there or after a fault. */
  List<Requirement> requirements(String key, GuideNames names) {
    List<Requirement> requirements = new ArrayList<>();
    subTable(key, "a check and its answers such as {bowl: [clear]}", names.checks().keySet())
        .ifPresent(
            checks ->
                names
                    .checks()
                    .forEach(
                        (check, answers) -> {
                          if (checks.has(check) && !answers.isEmpty()) {
                            requirement(checks, check, answers).ifPresent(requirements::add);
                          }
                        }));
    return requirements;
  }

  private Optional<Requirement> requirement(YamlTable checks, String check, List<String> answers) {
    int before = faults.size();
    List<String> words =
        checks.words(check, word -> Optional.of(word).filter(answers::contains), answers);
    if (words.isEmpty() && faults.size() == before) {
      checks
          .node(check)
          .ifPresent(node -> faults.add(node, check + " must hold at least one of its answers"));
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(new Requirement(check, words));
  }

  /** Numbers over 0 by the words of a closed list. */
  <T> Map<T, Double> weights(String key, T[] values, Function<T, String> word) {
    return numbers(key, values, word, Quantities::number, GuideFields::isPositive, POSITIVE);
  }

  /** Chances by the words of a closed list. */
  <T> Map<T, Double> chances(String key, T[] values, Function<T, String> word) {
    return numbers(key, values, word, Quantities::percentage, GuideFields::isChance, CHANCE);
  }

  private <T> Map<T, Double> numbers(
      String key,
      T[] values,
      Function<T, String> word,
      Function<String, OptionalDouble> parse,
      DoublePredicate fits,
      String expected) {
    Map<T, Double> numbers = new LinkedHashMap<>();
    List<String> words = YamlTable.wordsOf(values, word);
    subTable(key, "a table such as {" + words.get(0) + ": ...}", words)
        .ifPresent(
            sub -> {
              for (T value : values) {
                sub.quantity(word.apply(value), parse, fits, expected)
                    .ifPresent(number -> numbers.put(value, number));
              }
            });
    return numbers;
  }

  /** Chances by the ids of causes, over 0. */
  Map<String, Double> fixes(String key, List<String> causes) {
    Map<String, Double> chances = new LinkedHashMap<>();
    subTable(key, "a table of causes and chances such as {drain-blocked: 90 %}", causes)
        .ifPresent(
            sub -> {
              for (String cause : causes) {
                sub.quantity(
                        cause,
                        Quantities::percentage,
                        chance -> chance > 0 && chance <= 1,
                        "a percentage over 0 % and at most 100 %")
                    .ifPresent(chance -> chances.put(cause, chance));
              }
            });
    return chances;
  }

  /**
   * The chance of each answer, in their order; those left out have none. Empty after a fault, such
   * as chances that do not sum to 100 %.
   */
  Optional<List<Double>> row(YamlNode where, YamlNode value, List<String> answers) {
    int before = faults.size();
    if (!(value instanceof YamlNode.Table node)) {
      if (!(value instanceof YamlNode.Faulty)) {
        faults.add(
            value,
            "expected a table of answers and chances such as {"
                + answers.get(0)
                + ": 100 %}"
                + YamlTable.found(value));
      }
      return Optional.empty();
    }
    YamlTable row = YamlTable.of(where, node, answers, List.of(), faults);
    List<Double> chances = new ArrayList<>();
    double sum = 0;
    for (String answer : answers) {
      double chance =
          row.quantity(answer, Quantities::percentage, GuideFields::isChance, CHANCE).orElse(0);
      chances.add(chance);
      sum += chance;
    }
    if (faults.size() == before && !(Math.abs(sum - 1) <= 1e-6)) {
      faults.add(
          where, "the chances of the answers must sum to 100 %; they sum to " + percent(sum));
    }
    return faults.size() == before ? Optional.of(chances) : Optional.empty();
  }

  Optional<YamlTable> subTable(String key, String expected, Collection<String> known) {
    Optional<YamlNode> value = table.node(key);
    if (value.isPresent() && value.get() instanceof YamlNode.Table node) {
      return Optional.of(YamlTable.of(node, node, List.copyOf(known), List.of(), faults));
    }
    value.ifPresent(node -> faults.add(node, key + " must be " + expected + YamlTable.found(node)));
    return Optional.empty();
  }

  static boolean isPositive(double value) {
    return value > 0 && value <= Double.MAX_VALUE;
  }

  static boolean isChance(double value) {
    return value >= 0 && value <= 1;
  }

  static String percent(double fraction) {
    return Numbers.text(fraction * 100) + " %";
  }
}

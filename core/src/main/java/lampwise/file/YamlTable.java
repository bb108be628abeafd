package lampwise.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Function;

/** A table whose keys are known beforehand. Unknown and doubled keys are faults. */
final class YamlTable {
  private final Map<String, YamlNode.Entry> entries = new HashMap<>();
  private final FaultList faults;

  private YamlTable(FaultList faults) {
    this.faults = faults;
  }

  /**
   * Looks at the keys of a table.
   *
   * @param where where a missing key is told
   * @param node the table
   * @param known the keys it may have
   * @param required those of them that it must have
   * @param faults takes what is wrong
   * @return the table; it holds the first of doubled keys
   */
  static YamlTable of(
      YamlNode where,
      YamlNode.Table node,
      List<String> known,
      List<String> required,
      FaultList faults) {
    YamlTable table = new YamlTable(faults);
    for (YamlNode.Entry entry : node.entries()) {
      table.add(entry, known);
    }
    for (String key : required) {
      if (!table.entries.containsKey(key)) {
        faults.add(where, "the key \"" + key + "\" is missing");
      }
    }
    return table;
  }

  private void add(YamlNode.Entry entry, List<String> known) {
    String key = entry.key().text();
    if (!known.contains(key)) {
      String hint =
          Wording.nearest(key, known)
              .map(nearest -> "; did you mean \"" + nearest + "\"?")
              .orElse("; known here: " + Wording.list(known));
      faults.add(entry.key(), "unknown key " + Wording.quote(key) + hint);
    } else {
      refuseDoubled("key", entry.key(), Optional.ofNullable(entries.get(key)), faults);
      entries.putIfAbsent(key, entry);
    }
  }

  /** Adds a fault if there was an entry of the same key before. */
  static void refuseDoubled(
      String what, YamlNode.Text key, Optional<YamlNode.Entry> first, FaultList faults) {
    first.ifPresent(
        entry ->
            faults.add(
                key,
                "the "
                    + what
                    + " "
                    + Wording.quote(key.text())
                    + " stands twice; it stood in line "
                    + entry.key().line()
                    + " already"));
  }

  /** The value of a key; empty if it is not there or has a fault that was told. */
  Optional<YamlNode> node(String key) {
    return Optional.ofNullable(entries.get(key))
        .map(YamlNode.Entry::value)
        .filter(value -> !(value instanceof YamlNode.Faulty));
  }

  /** The scalar of a key, not empty and printable; empty if it is not there or after a fault. */
  Optional<YamlNode.Text> scalar(String key) {
    return node(key).flatMap(value -> scalar(key, value, faults));
  }

  /** The value as a scalar that is not empty and printable; empty after a fault. */
  static Optional<YamlNode.Text> scalar(String key, YamlNode value, FaultList faults) {
    if (!(value instanceof YamlNode.Text text) || Wording.onOneLine(text.text()).isEmpty()) {
      faults.add(value, key + " must be a text; found " + value.what());
      return Optional.empty();
    }
    Optional<String> unprintable = Wording.unprintable(Wording.onOneLine(text.text()));
    if (unprintable.isPresent()) {
      faults.add(value, key + " holds the character " + unprintable.get() + ", which is not text");
      return Optional.empty();
    }
    return Optional.of(text);
  }

  /** The text of a key on one line; empty if it is not there or after a fault. */
  Optional<String> text(String key) {
    return scalar(key).map(text -> Wording.onOneLine(text.text()));
  }

  /** The list of a key, without faulty items; empty if it is not there or after a fault. */
  List<YamlNode.Text> list(String key, String example) {
    Optional<YamlNode> value = node(key);
    if (value.isPresent() && value.get() instanceof YamlNode.Items list) {
      return list.items().stream()
          .filter(item -> !(item instanceof YamlNode.Faulty))
          .flatMap(item -> scalar("an item of " + key, item, faults).stream())
          .toList();
    }
    value.ifPresent(
        node -> faults.add(node, key + " must be a list such as " + example + found(node)));
    return List.of();
  }

  /** Whether a key is there, even with a faulty value. */
  boolean has(String key) {
    return entries.containsKey(key);
  }

  /** The word of a key out of a closed list; empty if it is not there or after a fault. */
  <T> Optional<T> word(String key, Function<String, Optional<T>> of, List<String> words) {
    return scalar(key).flatMap(scalar -> word(key, scalar, of, words, faults));
  }

  /** The scalar as a word out of a closed list; empty after a fault. */
  static <T> Optional<T> word(
      String key,
      YamlNode.Text scalar,
      Function<String, Optional<T>> of,
      List<String> words,
      FaultList faults) {
    Optional<T> value = of.apply(scalar.text());
    if (value.isEmpty()) {
      String hint =
          Wording.nearest(scalar.text(), words).map(w -> "; did you mean " + w + "?").orElse("");
      faults.add(scalar, key + " must be one of " + Wording.list(words) + found(scalar) + hint);
    }
    return value;
  }

  /** The list of a key of words out of a closed list, none of them twice. */
  <T> List<T> words(String key, Function<String, Optional<T>> of, List<String> words) {
    List<T> values = new ArrayList<>();
    Set<T> before = new HashSet<>();
    for (YamlNode.Text item : list(key, "[" + words.get(0) + "]")) {
      Optional<T> value = word("an item of " + key, item, of, words, faults);
      if (value.isPresent() && !before.add(value.get())) {
        faults.add(item, item.text() + " stands twice in " + key);
      }
      value.ifPresent(values::add);
    }
    return values;
  }

  /** The number of a key; empty if it is not there or after a fault. */
  OptionalDouble quantity(
      String key, Function<String, OptionalDouble> parse, DoublePredicate fits, String expected) {
    Optional<YamlNode.Text> scalar = scalar(key);
    return scalar.isPresent()
        ? quantity(key, scalar.get(), parse, fits, expected, faults)
        : OptionalDouble.empty();
  }

  /** The scalar as a number; empty after a fault. */
  static OptionalDouble quantity(
      String key,
      YamlNode.Text scalar,
      Function<String, OptionalDouble> parse,
      DoublePredicate fits,
      String expected,
      FaultList faults) {
    OptionalDouble value = parse.apply(scalar.text());
    if (value.isEmpty() || !fits.test(value.getAsDouble())) {
      faults.add(scalar, key + " must be " + expected + found(scalar));
      return OptionalDouble.empty();
    }
    return value;
  }

  /** The words of a closed list of values. */
  static <T> List<String> wordsOf(T[] values, Function<T, String> word) {
    return Arrays.stream(values).map(word).toList();
  }

  /** The end of a message: what stands there instead. */
  static String found(YamlNode node) {
    return "; found " + node.what();
  }
}

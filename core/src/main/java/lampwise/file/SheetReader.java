package lampwise.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.LampState;
import lampwise.sheet.Power;
import lampwise.sheet.Seen;

/**
 * Reads code sheets: YAML 1.2, strictly. Unknown and doubled keys, missing ones, wrong types and
 * bad values are faults, and so are anchors, aliases, tags and further documents.
 */
public final class SheetReader {
  /** The version of the format that is read. */
  private static final String VERSION = "1";

  private static final String VERSION_KEY = "lampwise-sheet";
  private static final String DEMO = "demo.sheet.yaml";

  private static final List<String> SHEET_REQUIRED =
      List.of(VERSION_KEY, "title", "basis", "states");
  private static final List<String> SHEET_KEYS =
      List.of(
          VERSION_KEY,
          "title",
          "basis",
          "note",
          "kind",
          "power",
          "cells",
          "lamp",
          "clock",
          "blink",
          "states");
  private static final List<String> STATE_REQUIRED = List.of("rhythm", "means", "condition");
  private static final List<String> STATE_KEYS =
      List.of("rhythm", "means", "condition", "seen", "weight", "label-says", "cleared-by", "lamp");

  private final FaultList faults;

  private SheetReader(FaultList faults) {
    this.faults = faults;
  }

  /**
   * Reads a sheet. A byte order mark at the start is skipped. Texts that run over several lines are
   * joined with blanks.
   *
   * @param name the file's name, for messages
   * @param content its bytes, UTF-8, at most 1 MiB
   * @return the sheet
   * @throws FileException with every fault of the file, sorted by line and column; if the YAML
   *     itself is broken, with the faults up to there; if the file says a newer version of the
   *     format, with that alone
   */
  public static CodeSheet read(String name, byte[] content) throws FileException {
    FaultList faults = new FaultList(name);
    Optional<YamlNode> root =
        StrictYaml.read(content, "a code sheet that starts with lampwise-sheet: 1", faults);
    Optional<CodeSheet> sheet = root.flatMap(node -> new SheetReader(faults).sheet(node));
    faults.throwIfAny();
    return sheet.orElseThrow(() -> new FileException(name, 0, 0, "not a code sheet"));
  }

  /**
   * The built-in invented sheet.
   *
   * @return the sheet of the name {@code demo}
   */
  public static CodeSheet demo() {
    try (InputStream in =
        Objects.requireNonNull(SheetReader.class.getResourceAsStream(DEMO), DEMO)) {
      return read("demo", in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FileException e) {
      throw new AssertionError("the built-in sheet has a fault", e);
    }
  }

  private Optional<CodeSheet> sheet(YamlNode root) {
    if (!(root instanceof YamlNode.Table node)) {
      faults.add(root, "a code sheet must be a table of keys" + YamlTable.found(root));
      return Optional.empty();
    }
    Optional<YamlNode.Text> newer = newerVersion(node);
    if (newer.isPresent()) {
      refuseVersion(newer.get());
      return Optional.empty();
    }
    YamlTable table = YamlTable.of(node, node, SHEET_KEYS, SHEET_REQUIRED, faults);
    table
        .scalar(VERSION_KEY)
        .filter(version -> !VERSION.equals(version.text()))
        .ifPresent(this::refuseVersion);
    Optional<String> title = table.text("title");
    Optional<Basis> basis = word(table, "basis", Basis::of, words(Basis.values(), Basis::word));
    Optional<String> note = table.text("note");
    List<FixtureKind> kinds =
        words(table, "kind", FixtureKind::of, words(FixtureKind.values(), FixtureKind::word));
    List<Power> power = words(table, "power", Power::of, words(Power.values(), Power::word));
    Optional<String> cells = table.text("cells");
    Optional<String> lamp = table.text("lamp");
    double clock =
        quantity(
                table,
                "clock",
                Quantities::percentage,
                fraction -> fraction < 0.5,
                "a percentage such as 5 %, from 0 % to below 50 %")
            .orElse(CodeSheet.DEFAULT_CLOCK);
    OptionalDouble blink =
        quantity(
            table,
            "blink",
            Quantities::seconds,
            seconds -> seconds > 0 && seconds <= 60,
            "one duration such as 120 ms, over 0 s and at most 60 s");
    List<LampState> states = states(table);
    if (title.isEmpty() || basis.isEmpty() || states.isEmpty() || faults.any()) {
      return Optional.empty();
    }
    return Optional.of(
        new CodeSheet(
            title.get(), basis.get(), note, kinds, power, cells, lamp, clock, blink, states));
  }

  /** The version if it is a whole number above the one that is read here. */
  private static Optional<YamlNode.Text> newerVersion(YamlNode.Table node) {
    for (YamlNode.Entry entry : node.entries()) {
      if (entry.key().text().equals(VERSION_KEY) && entry.value() instanceof YamlNode.Text text) {
        OptionalDouble number = Quantities.number(text.text());
        return number.isPresent() && number.getAsDouble() >= 2
            ? Optional.of(text)
            : Optional.empty();
      }
    }
    return Optional.empty();
  }

  private void refuseVersion(YamlNode.Text version) {
    faults.add(version, VERSION_KEY + " must be " + VERSION + YamlTable.found(version));
  }

  private List<LampState> states(YamlTable sheet) {
    Optional<YamlNode> value = sheet.node("states");
    if (value.isEmpty()) {
      return List.of();
    }
    if (!(value.get() instanceof YamlNode.Table node) || node.entries().isEmpty()) {
      faults.add(
          value.get(),
          "states must be a table of at least one state and its keys"
              + YamlTable.found(value.get()));
      return List.of();
    }
    List<LampState> states = new ArrayList<>();
    Map<String, YamlNode.Entry> seen = new HashMap<>();
    for (YamlNode.Entry entry : node.entries()) {
      String name = entry.key().text();
      YamlTable.refuseDoubled("state", entry.key(), Optional.ofNullable(seen.get(name)), faults);
      seen.putIfAbsent(name, entry);
      state(entry).ifPresent(states::add);
    }
    return states;
  }

  private Optional<LampState> state(YamlNode.Entry entry) {
    String name = entry.key().text();
    if (!LampState.isName(name)) {
      faults.add(
          entry.key(),
          "a state's name must be lower-case letters, digits and hyphens, starting with a letter"
              + YamlTable.found(entry.key()));
    } else if (CodeSheet.isReserved(name)) {
      faults.add(entry.key(), "the name " + name + " is reserved; choose another");
    }
    if (!(entry.value() instanceof YamlNode.Table node)) {
      if (!(entry.value() instanceof YamlNode.Faulty)) {
        faults.add(
            entry.value(),
            "the state "
                + Wording.quote(name)
                + " must be a table of keys such as rhythm"
                + YamlTable.found(entry.value()));
      }
      return Optional.empty();
    }
    YamlTable table = YamlTable.of(entry.key(), node, STATE_KEYS, STATE_REQUIRED, faults);
    Optional<Rhythm> rhythm = rhythm(table);
    Optional<String> means = table.text("means");
    Optional<Condition> condition =
        word(table, "condition", Condition::of, words(Condition.values(), Condition::word));
    Seen seen = word(table, "seen", Seen::of, words(Seen.values(), Seen::word)).orElse(Seen.ALWAYS);
    double weight =
        quantity(
                table,
                "weight",
                Quantities::number,
                number -> number > 0 && number <= Double.MAX_VALUE,
                "a number over 0 such as 2.5")
            .orElse(1);
    Optional<String> labelSays = table.text("label-says");
    Optional<String> clearedBy = table.text("cleared-by");
    Optional<String> lamp = table.text("lamp");
    if (rhythm.isEmpty() || means.isEmpty() || condition.isEmpty() || faults.any()) {
      return Optional.empty();
    }
    return Optional.of(
        new LampState(
            name,
            rhythm.get(),
            means.get(),
            condition.get(),
            seen,
            weight,
            labelSays,
            clearedBy,
            lamp));
  }

  private Optional<Rhythm> rhythm(YamlTable table) {
    Optional<YamlNode.Text> scalar = table.scalar("rhythm");
    if (scalar.isEmpty()) {
      return Optional.empty();
    }
    YamlNode.Text node = scalar.get();
    boolean verbatim = node.textColumn() > 0;
    String phrase = verbatim ? node.text() : Wording.onOneLine(node.text());
    try {
      return Optional.of(Phrase.parse(phrase));
    } catch (PhraseException e) {
      int column = verbatim ? node.textColumn() + charactersBefore(phrase, e.column()) : 0;
      faults.add(
          node.line(),
          verbatim ? column : node.column(),
          "rhythm: "
              + e.reason()
              + e.suggestion().map(s -> "; try \"" + Wording.printable(s) + '"').orElse(""));
      return Optional.empty();
    }
  }

  /** How many characters of the file stand before a column of the phrase. */
  private static int charactersBefore(String phrase, int column) {
    return phrase.codePointCount(0, Math.max(0, Math.min(column - 1, phrase.length())));
  }

  private <T> Optional<T> word(
      YamlTable table, String key, Function<String, Optional<T>> of, List<String> words) {
    return table.scalar(key).flatMap(scalar -> word(key, scalar, of, words));
  }

  private <T> Optional<T> word(
      String key, YamlNode.Text scalar, Function<String, Optional<T>> of, List<String> words) {
    Optional<T> value = of.apply(scalar.text());
    if (value.isEmpty()) {
      String hint =
          Wording.nearest(scalar.text(), words).map(w -> "; did you mean " + w + "?").orElse("");
      faults.add(
          scalar, key + " must be one of " + Wording.list(words) + YamlTable.found(scalar) + hint);
    }
    return value;
  }

  private <T> List<T> words(
      YamlTable table, String key, Function<String, Optional<T>> of, List<String> words) {
    List<T> values = new ArrayList<>();
    Set<T> before = new HashSet<>();
    for (YamlNode.Text item : table.list(key, "[" + words.get(0) + "]")) {
      Optional<T> value = word("an item of " + key, item, of, words);
      if (value.isPresent() && !before.add(value.get())) {
        faults.add(item, item.text() + " stands twice in " + key);
      }
      value.ifPresent(values::add);
    }
    return values;
  }

  private static <T> List<String> words(T[] values, Function<T, String> word) {
    return Arrays.stream(values).map(word).toList();
  }

  private OptionalDouble quantity(
      YamlTable table,
      String key,
      Function<String, OptionalDouble> parse,
      DoublePredicate fits,
      String expected) {
    Optional<YamlNode.Text> scalar = table.scalar(key);
    if (scalar.isEmpty()) {
      return OptionalDouble.empty();
    }
    OptionalDouble value = parse.apply(scalar.get().text());
    if (value.isEmpty() || !fits.test(value.getAsDouble())) {
      faults.add(scalar.get(), key + " must be " + expected + YamlTable.found(scalar.get()));
      return OptionalDouble.empty();
    }
    return value;
  }
}

package lampwise.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
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
    if (!FormatVersion.accept(VERSION_KEY, node, faults)) {
      return Optional.empty();
    }
    YamlTable table = YamlTable.of(node, node, SHEET_KEYS, SHEET_REQUIRED, faults);
    Optional<String> title = table.text("title");
    Optional<Basis> basis =
        table.word("basis", Basis::of, YamlTable.wordsOf(Basis.values(), Basis::word));
    Optional<String> note = table.text("note");
    List<FixtureKind> kinds =
        table.words(
            "kind", FixtureKind::of, YamlTable.wordsOf(FixtureKind.values(), FixtureKind::word));
    List<Power> power =
        table.words("power", Power::of, YamlTable.wordsOf(Power.values(), Power::word));
    Optional<String> cells = table.text("cells");
    Optional<String> lamp = table.text("lamp");
    double clock =
        table
            .quantity(
                "clock",
                Quantities::percentage,
                fraction -> fraction < 0.5,
                "a percentage such as 5 %, from 0 % to below 50 %")
            .orElse(CodeSheet.DEFAULT_CLOCK);
    OptionalDouble blink =
        table.quantity(
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
        table.word(
            "condition", Condition::of, YamlTable.wordsOf(Condition.values(), Condition::word));
    Seen seen =
        table
            .word("seen", Seen::of, YamlTable.wordsOf(Seen.values(), Seen::word))
            .orElse(Seen.ALWAYS);
    double weight =
        table
            .quantity(
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
}

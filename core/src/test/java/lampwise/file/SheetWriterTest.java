package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmArbitraries;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.LampState;
import lampwise.sheet.Power;
import lampwise.sheet.Seen;
import lampwise.sheet.SheetException;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SheetWriterTest {
  private static final LampState DARK =
      LampState.of("resting", new Rhythm.Dark(), "Ready", Condition.READY);

  @Test
  void writesInTheOneWay() {
    LampState second =
        new LampState(
            "on",
            new Rhythm.Steady(),
            "note: a hand",
            Condition.TARGET_SEEN,
            Seen.TARGET,
            2.5,
            Optional.of("lit, \"steady\""),
            Optional.of("its leaving"),
            Optional.of("red"));
    CodeSheet sheet =
        new CodeSheet(
            "Unit 7, north wall",
            Basis.LABEL,
            Optional.of("# not a remark"),
            List.of(FixtureKind.URINAL, FixtureKind.FAUCET),
            List.of(Power.MAINS),
            Optional.of("4 x LR6"),
            Optional.of("amber"),
            0.023,
            OptionalDouble.of(0.06),
            List.of(DARK, second));
    assertEquals(
        """
        lampwise-sheet: 1
        title: Unit 7, north wall
        basis: label
        note: "# not a remark"
        kind: [urinal, faucet]
        power: [mains]
        cells: 4 x LR6
        lamp: amber
        clock: 2.3 %
        blink: 60 ms
        states:
          resting:
            rhythm: dark
            means: Ready
            condition: ready
          on:
            rhythm: steady
            means: "note: a hand"
            condition: target-seen
            seen: target
            weight: 2.5
            label-says: "lit, \\"steady\\""
            cleared-by: its leaving
            lamp: red
        """,
        SheetWriter.write(sheet));
  }

  @Test
  void theDemoSheetIsReadBack() throws FileException {
    assertEquals(SheetReader.demo(), back(SheetReader.demo()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " \n", "a\u0007b", "a\u2028b", "\ud83d"})
  void whatCouldNotBeReadIsNotWritten(String text) {
    CodeSheet sheet = CodeSheet.of(text, Basis.LABEL, List.of(DARK));
    assertThrows(SheetException.class, () -> SheetWriter.write(sheet));
  }

  @Property
  void isReadBackExactly(@ForAll("sheets") CodeSheet sheet) throws FileException {
    assertEquals(sheet, back(sheet));
  }

  private static CodeSheet back(CodeSheet sheet) throws FileException {
    return SheetReader.read("f", SheetWriter.write(sheet).getBytes(StandardCharsets.UTF_8));
  }

  @Provide
  Arbitrary<CodeSheet> sheets() {
    Arbitrary<Optional<String>> texts = texts().optional();
    Arbitrary<CodeSheet> bare =
        Combinators.combine(texts(), Arbitraries.of(Basis.class), states()).as(CodeSheet::of);
    return Combinators.combine(
            bare,
            texts,
            Arbitraries.of(FixtureKind.class).set().map(List::copyOf),
            Arbitraries.of(Power.class).set().map(List::copyOf),
            texts,
            texts,
            fractions().map(x -> x * 0.4999),
            fractions().map(x -> 1e-9 + x * 59.9).optional())
        .as(
            (sheet, note, kinds, power, cells, lamp, clock, blink) ->
                new CodeSheet(
                    sheet.title(),
                    sheet.basis(),
                    note,
                    kinds,
                    power,
                    cells,
                    lamp,
                    clock,
                    blink.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                    sheet.states()));
  }

  /** Round ones and ones of all the digits that a double has, from 0 to below 1. */
  private static Arbitrary<Double> fractions() {
    return Arbitraries.oneOf(
        Arbitraries.integers().between(0, 999).map(n -> n / 1000.0),
        Arbitraries.randomValue(random -> random.nextDouble()));
  }

  private static Arbitrary<List<LampState>> states() {
    Arbitrary<LampState> state =
        Combinators.combine(
                names(),
                RhythmArbitraries.rhythms(),
                texts(),
                Arbitraries.of(Condition.class),
                Arbitraries.of(Seen.class),
                Arbitraries.oneOf(
                    Arbitraries.just(1.0), fractions().map(x -> StrictMath.exp(x * 50 - 25))),
                texts().optional(),
                texts().optional())
            .as(
                (name, rhythm, means, condition, seen, weight, says, lamp) ->
                    new LampState(name, rhythm, means, condition, seen, weight, says, lamp, says));
    return state.list().ofMinSize(1).ofMaxSize(4).map(SheetWriterTest::withoutDoubles);
  }

  private static List<LampState> withoutDoubles(List<LampState> states) {
    Map<String, LampState> byName = new LinkedHashMap<>();
    states.forEach(state -> byName.putIfAbsent(state.name(), state));
    return new ArrayList<>(byName.values());
  }

  private static Arbitrary<String> names() {
    return Arbitraries.oneOf(
        Arbitraries.of("on", "off", "no", "yes", "true", "null", "y", "e5", "x-", "a--b"),
        Arbitraries.strings()
            .withCharRange('a', 'z')
            .numeric()
            .withChars('-')
            .ofMinLength(1)
            .ofMaxLength(12)
            .filter(name -> LampState.isName(name) && !CodeSheet.isReserved(name)));
  }

  /** Texts that a sheet can hold: on one line, printable, not empty. */
  private static Arbitrary<String> texts() {
    Arbitrary<String> any = Arbitraries.strings().ofMaxLength(30);
    Arbitrary<String> hard =
        Arbitraries.of(
                "a",
                "1",
                " ",
                ": ",
                ":",
                "#",
                " #",
                "- ",
                "-",
                "?",
                "[",
                "]",
                "{",
                "}",
                ",",
                "\"",
                "'",
                "&",
                "*",
                "!",
                "|",
                ">",
                "%",
                "@",
                "`",
                "\\",
                "~",
                "=",
                "<<",
                "null",
                "---",
                "...",
                "\u00e9",
                "\uD83D\uDE00",
                "\u00a0",
                "\u3000",
                "\uFEFF",
                "0x1",
                "1e3",
                ".5")
            .list()
            .ofMinSize(1)
            .ofMaxSize(6)
            .map(list -> String.join("", list));
    return Arbitraries.oneOf(any, hard)
        .map(Wording::onOneLine)
        .filter(text -> !text.isEmpty() && Wording.unprintable(text).isEmpty());
  }
}

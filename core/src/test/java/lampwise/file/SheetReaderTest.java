package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.Testdata;
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
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SheetReaderTest {
  private static final String HEAD = "lampwise-sheet: 1\ntitle: T\nbasis: invented\n";
  private static final String STATE =
      "states:\n  awake:\n    rhythm: dark\n    means: M\n    condition: ready\n";

  private static CodeSheet read(String text) throws FileException {
    return SheetReader.read("f", text.getBytes(StandardCharsets.UTF_8));
  }

  private static String refused(byte[] content) {
    return assertThrows(FileException.class, () -> SheetReader.read("f", content)).getMessage();
  }

  private static String refused(String text) {
    return refused(text.getBytes(StandardCharsets.UTF_8));
  }

  private static CodeSheet testdata(String name) throws FileException {
    return SheetReader.read(name, Testdata.bytes("sheets", name));
  }

  @Test
  void aMinimalSheetHasTheDefaultsOfTheRest() throws FileException, PhraseException {
    CodeSheet expected =
        CodeSheet.of(
            "Least there can be",
            Basis.INVENTED,
            List.of(
                LampState.of(
                    "awake",
                    Phrase.parse("1 blink every 4.4 s"),
                    "The unit works",
                    Condition.READY)));
    assertEquals(expected, testdata("minimal.sheet.yaml"));
  }

  @Test
  void everyOptionalKeyIsRead() throws FileException, PhraseException {
    CodeSheet expected =
        new CodeSheet(
            "Unit with a green and a red lamp",
            Basis.INVENTED,
            Optional.of("The green lamp serves the user, the red one the technician."),
            List.of(FixtureKind.FAUCET),
            List.of(Power.GENERATOR, Power.CELLS),
            Optional.of("2 x LR14"),
            Optional.of("green"),
            0.125,
            OptionalDouble.of(0.09),
            List.of(
                new LampState(
                    "on",
                    new Rhythm.Steady(),
                    "Hands are under the spout",
                    Condition.RUNNING,
                    Seen.WHILE_RUNNING,
                    1,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty()),
                new LampState(
                    "wait",
                    new Rhythm.Dark(),
                    "Nobody there",
                    Condition.READY,
                    Seen.ALWAYS,
                    8,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty()),
                new LampState(
                    "spent",
                    Phrase.parse("2 blinks 0.33 s apart every 5.2 s"),
                    "The generator does not charge",
                    Condition.POWER_LOW,
                    Seen.ALWAYS,
                    1,
                    Optional.of("red, red"),
                    Optional.of("a minute of running water"),
                    Optional.of("red"))));
    assertEquals(expected, testdata("two-lamps.sheet.yaml"));
  }

  @Test
  void wordsOfOlderYamlStayWords() throws FileException {
    CodeSheet sheet =
        read(
            "lampwise-sheet: 1\ntitle: no\nbasis: invented\nnote: 1e3\nlamp: ~\n"
                + "states: {on: {rhythm: dark, means: yes, condition: ready},"
                + " off: {rhythm: steady, means: null, condition: other}}\n");
    assertEquals("no", sheet.title());
    assertEquals(Optional.of("1e3"), sheet.note());
    assertEquals(Optional.of("~"), sheet.lamp());
    assertEquals("yes", sheet.state("on").orElseThrow().means());
    assertEquals("null", sheet.state("off").orElseThrow().means());
  }

  @ParameterizedTest
  @CsvSource({
    "clock: 0 %,      0",
    "clock: 5 %,      0.05",
    "clock: 7.5%,     0.075",
    "clock: 49.9 %,   0.499",
    "'clock: \"5 %\"', 0.05",
    "note: no clock,  0.10",
  })
  void clock(String line, double fraction) throws FileException {
    assertEquals(fraction, read(HEAD + line + "\n" + STATE).clockTolerance(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "120 ms, 0.12",
    "0.12 s, 0.12",
    "1 s, 1",
    "60 s, 60",
    "1 min, 60",
    "0.001 h, 3.6",
    "80ms, 0.08"
  })
  void blink(String text, double seconds) throws FileException {
    CodeSheet sheet = read(HEAD + "blink: " + text + "\n" + STATE);
    assertEquals(seconds, sheet.blinkSeconds().orElseThrow(), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "clock: 50 %",
        "clock: -5 %",
        "clock: 5",
        "clock: 0.05",
        "clock: '5,5 %'",
        "clock: NaN %",
        "clock: '%'",
        "clock: 5 % or so",
        "clock: . %",
        "clock: 1.2.3 %",
        "blink: 120",
        "blink: 0 s",
        "blink: 61 s",
        "blink: 2 min",
        "blink: under 1 s",
        "blink: 0.1 to 0.2 s",
        "blink: 1e-1 s",
        "blink: 0x1 s",
        "blink: 1d s",
        "blink: fast",
        "blink: '\u0661 s'",
        "blink: 120 msec",
        "blink:",
        "blink: [1 s]",
        "kind: urinal",
        "power: {cells: 4}",
        "lampwise-sheet: 1",
        "'': x",
      })
  void badLinesAreRefusedWhereTheyStand(String line) {
    String message = refused(HEAD + line + "\n" + STATE);
    assertTrue(message.startsWith("f:4:"), message);
    assertEquals(1, message.lines().count(), message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1", "few", "Infinity", "1e5", "1,5", "", "[1]", "0.0"})
  void badWeights(String weight) {
    String message = refused(HEAD + STATE + "    weight: " + weight + "\n");
    assertTrue(message.startsWith("f:9:") && message.contains("weight must be"), message);
  }

  @Test
  void aWeightBeyondAllNumbersIsRefused() {
    String message = refused(HEAD + STATE + "    weight: " + "9".repeat(400) + "\n");
    assertTrue(message.startsWith("f:9:13: weight must be a number over 0"), message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.0", "0", "one", "v1", "''"})
  void otherVersionsAreToldWithAllOtherFaults(String version) {
    String message = refused("lampwise-sheet: " + version + "\nbasis: invented\n" + STATE);
    assertTrue(message.contains("f:1:17: lampwise-sheet must be"), message);
    assertTrue(message.contains("f:1:1: the key \"title\" is missing"), message);
  }

  @Test
  void aNewerVersionIsToldAlone() {
    assertEquals(
        "f:2:17: lampwise-sheet must be 1; found \"2\"",
        refused("new-key: 5\nlampwise-sheet: 2\n"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"Awake", "a b", "9a", "-a", "\u00e4", "''", "a_b", "unlisted", "no-rhythm"})
  void badNames(String name) {
    String message = refused(HEAD + STATE.replace("awake", name));
    assertTrue(message.startsWith("f:5:3: "), message);
    assertEquals(1, message.lines().count(), message);
  }

  @Test
  void messagesStayOnOneLineWhateverAKeyHolds() {
    String message = refused(HEAD + "\"a\\nb\\e[31m" + "x".repeat(500) + "\": 1\n" + STATE);
    assertEquals(1, message.lines().count(), message);
    assertTrue(message.startsWith("f:4:1: unknown key \"a\uFFFDb\uFFFD[31mxxx"), message);
    assertTrue(message.length() < 300, message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n\n", "# only a remark\n", "\uFEFF"})
  void emptyFiles(String text) {
    assertEquals(
        "f: the file is empty; expected a code sheet that starts with lampwise-sheet: 1",
        refused(text));
  }

  @Test
  void aByteOrderMarkIsSkipped() throws FileException {
    assertEquals(read(HEAD + STATE), read("\uFEFF" + HEAD + STATE));
  }

  @Test
  void allLineEndsCount() throws FileException {
    assertEquals(read(HEAD + STATE), read((HEAD + STATE).replace("\n", "\r\n")));
    assertEquals(read(HEAD + STATE), read((HEAD + STATE).replace('\n', '\r')));
  }

  @Test
  void aDocumentMarkAndAVersionLineAreNoFault() throws FileException {
    assertEquals(read(HEAD + STATE), read("%YAML 1.2\n---\n" + HEAD + STATE + "...\n"));
  }

  @Test
  void bytesThatAreNotUtf8() {
    byte[] latin = "lampwise-sheet: 1\r\ntitle: \u00e4\n".getBytes(StandardCharsets.ISO_8859_1);
    assertEquals("f:2:8: the byte 0xE4 is not UTF-8; save the file as UTF-8", refused(latin));
    byte[] cut = {'a', ':', ' ', (byte) 0xE2, (byte) 0x82};
    assertEquals("f:1:4: the byte 0xE2 is not UTF-8; save the file as UTF-8", refused(cut));
    assertEquals(
        "f:1:1: the byte 0xFE is not UTF-8; save the file as UTF-8",
        refused("a: b".getBytes(StandardCharsets.UTF_16)));
  }

  @Test
  void charactersThatAreNotText() {
    assertEquals("f:2:2: the character U+0000 is not text", refused("a: \uD83D\uDE00\nb\0"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "title: a: b | f:1:9: broken YAML: mapping values are not allowed here; a text with a"
            + " colon and a blank in it needs quotation marks",
        "title: 'a | f:1:8: broken YAML: while scanning a quoted scalar: found unexpected end of"
            + " stream",
        "[ | f:1:2: broken YAML: while parsing a flow node: expected the node content, but found"
            + " '<stream end>'",
        "title: \"\\U99999999\" | f:1:1: the YAML after this place cannot be read",
      },
      quoteCharacter = '`')
  void brokenYamlIsOneLine(String text, String expected) {
    assertEquals(expected, refused(text));
  }

  @ParameterizedTest
  @CsvSource({
    "just words, 'f:1:1: a code sheet must be a table of keys; found \"just words\"'",
    "[a], f:1:1: a code sheet must be a table of keys; found a list",
  })
  void otherShapes(String text, String expected) {
    assertEquals(expected, refused(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"states:", "states: {}", "states: [a]", "states: a"})
  void statesMustBeATable(String line) {
    String message = refused(HEAD + line + "\n");
    assertTrue(message.startsWith("f:4:"), message);
    assertTrue(message.contains("states must be a table of at least one state"), message);
  }

  @Test
  void tagsAnchorsAndAliasesAreToldInEveryPlace() {
    assertEquals(
        String.join(
            "\n",
            "f:1:1: tags are not allowed; leave the %TAG line out",
            "f:6:7: anchors (&) are not allowed; write the value out",
            "f:6:11: aliases (*) are not allowed; write the value out",
            "f:7:1: a key must be a text; found a list",
            "f:8:9: tags (!) are not allowed; write the value alone"),
        refused(
            "%TAG ! tag:x\n---\n"
                + HEAD
                + "kind: &k [*k]\n[a]: b\nstates: !s\n  awake:\n    rhythm: dark\n"
                + "    means: M\n    condition: ready\n"));
  }

  @Test
  void deepNestingIsRefused() {
    String message = refused("[".repeat(100_000));
    assertEquals("f:1:17: nested deeper than 16 levels", message);
    assertEquals("f:1:33: nested deeper than 16 levels", refused("- ".repeat(100_000) + "a"));
    assertTrue(refused("? ".repeat(100_000)).endsWith("nested deeper than 16 levels"));
  }

  @Test
  void hugeFilesAreRefusedUnread() {
    assertEquals(
        "f: the file has 1048577 bytes; expected a code sheet that starts with lampwise-sheet: 1"
            + " of at most 1048576",
        refused(new byte[(1 << 20) + 1]));
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(strings = {"a, ", "a:\n- ", "x: y\n", "? a\n", "'' ", "\n", "{a: [", "&a ", "%a\n"})
  void longFilesTakeAMomentOnly(String piece) {
    String many = piece.repeat(200_000 / piece.length());
    for (String text : List.of(many, "kind: [" + many, "states:\n  a: {rhythm: " + many)) {
      assertTimeoutPreemptively(Duration.ofSeconds(60), () -> refused(text));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 blinks | 13",
        "'0 blinks' | 14",
        "\"0 blinks\" | 14",
        "\"\\x30 blinks\" | 13",
        "'0 blinks then ''' | 13",
      },
      quoteCharacter = '`')
  void aFaultOfAPhraseStandsWhereThePhraseHasIt(String written, int column) {
    String message = refused(HEAD + STATE.replace("dark", written));
    assertTrue(message.startsWith("f:6:" + column + ": rhythm: "), message);
  }

  @Test
  void aFaultOfAPhraseOverSeveralLinesStandsAtItsStart() {
    String message = refused(HEAD + STATE.replace("dark", ">\n      3 blinks\n      evry 4 s"));
    assertTrue(message.startsWith("f:6:13: rhythm: "), message);
  }

  @Test
  void aPhraseMayRunOverSeveralLines() throws FileException, PhraseException {
    CodeSheet sheet = read(HEAD + STATE.replace("dark", "3 blinks 0.5 s apart\n      every 4 s"));
    assertEquals(Phrase.parse("3 blinks 0.5 s apart every 4 s"), sheet.states().get(0).rhythm());
  }
}

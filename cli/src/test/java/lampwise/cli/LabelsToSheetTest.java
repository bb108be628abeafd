package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lampwise.decode.Candidate;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LabelEntry;
import lampwise.sheet.LabelException;
import lampwise.sheet.LabelWords;
import lampwise.sheet.LampState;
import lampwise.sheet.SheetCheck;
import lampwise.sheet.SheetWarning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * From a label to an answer: how labels speak, typed into {@code sheet --new} with every offer
 * taken, gives a sheet that decodes clean recordings of each of its states. The sayings are common
 * practice, no source, in our own short form; their numbers are invented. Each list is a unit.
 */
class LabelsToSheetTest {
  private static final List<List<String>> UNITS =
      List.of(
          List.of(
              "one flash every 6 s: normal",
              "two quick flashes every 15 s: sees too far",
              "four flashes 0.4 s apart, 3 s off: coil",
              "0.5 s on, 0.5 s off: setting",
              "three to four flashes a second: flush by the clock",
              "always lit, winks off 0.3 s every 10 s: held off for cleaning"),
          List.of(
              "three flashes, pause, repeat: replace cells",
              "two, pause, five, long pause: coil",
              "one long, two short: window covered",
              "about 90 flashes a minute: sees too far",
              "lit 5 s, then one flash every 10 s until set-up ends"),
          List.of(
              "lit 3 s when a hand comes",
              "two flashes after the user walks away",
              "lit 2 s then six flashes after the cells go in",
              "twice a second for 20 s after the button",
              "once per second: window covered"),
          List.of("one flash when the user is accepted, five instead when cells are low"),
          List.of("slow flash means cells, fast flash means sensor"),
          List.of("number of flashes is the range step, 1 to 5"),
          List.of("always lit, winks off now and then: in store", "flashes while water runs"),
          List.of(
              "one flash a minute: store mode", "no light: cells dead, but also normal when idle"),
          List.of("answers each user for the first 10 min after power-up, then dark"),
          List.of(
              "flashing",
              "4 flashes, 2 s off, sent twice, when the button is pressed",
              "4 flashes sent three times, then dark, when a hand comes"),
          List.of("flashes until the cells are pulled", "lit as long as a hand is there"),
          List.of("red flash fault, green flash ready"));

  @TempDir Path folder;

  static Stream<List<String>> units() {
    return UNITS.stream();
  }

  @Test
  void thereAreThirtyOfThem() {
    assertTrue(UNITS.stream().mapToInt(List::size).sum() >= 30);
  }

  @ParameterizedTest
  @MethodSource("units")
  void aLabelBecomesASheetThatDecodes(List<String> unit)
      throws IOException, FileException, LabelException {
    CodeSheet sheet = typed(unit);
    List<String> wrong = new ArrayList<>();
    for (LampState state : sheet.states()) {
      Set<String> alike = alike(sheet, state);
      Reading reading =
          new LampDecoder()
              .decode(
                  sheet,
                  List.of(
                      ShownLamp.of(state, sheet.blinkSeconds(), SheetCard.watchSeconds(sheet))));
      Set<String> answered = answered(reading.verdict());
      if (!answered.equals(alike)) {
        wrong.add(
            state.name()
                + ": "
                + Phrase.print(state.rhythm())
                + " gave "
                + reading.verdict()
                + reading.candidates());
      }
    }
    assertEquals("", String.join("\n", wrong));
  }

  @Test
  void aLampThatIsLitWhileAHandIsThere() throws IOException, FileException, LabelException {
    CodeSheet sheet = typed(List.of("one flash every 6 s", "lit as long as a hand is there"));
    LampState state = sheet.states().get(1);
    Reading reading =
        new LampDecoder().decode(sheet, List.of(ShownLamp.of(state, sheet.blinkSeconds(), 30)));
    assertEquals(Set.of(state.name()), answered(reading.verdict()));
  }

  /** The state and those that no lamp can tell from it. */
  private static Set<String> alike(CodeSheet sheet, LampState state) {
    Set<String> alike = new TreeSet<>(Set.of(state.name()));
    for (SheetWarning warning : SheetCheck.warnings(sheet)) {
      if (warning.first().equals(state.name()) || warning.second().equals(state.name())) {
        alike.addAll(List.of(warning.first(), warning.second()));
      }
    }
    // Colour is nothing that a recording holds.
    for (LampState other : sheet.states()) {
      if (other.rhythm().equals(state.rhythm()) && other.seen() == state.seen()) {
        alike.add(other.name());
      }
    }
    return alike;
  }

  private static Set<String> answered(Verdict verdict) {
    if (verdict instanceof Verdict.Decoded decoded) {
      return Set.of(decoded.state());
    }
    Set<String> left = new TreeSet<>();
    if (verdict instanceof Verdict.Undecided undecided) {
      undecided.candidates().stream().map(Candidate::state).forEach(left::add);
    }
    return left;
  }

  /** Types the labels of a unit, taking every offer, and reads the sheet that comes of it. */
  private CodeSheet typed(List<String> unit) throws IOException, FileException, LabelException {
    StringBuilder answers = new StringBuilder("Unit from a label\n\n\n0.1 s\n");
    for (String words : unit) {
      List<LabelEntry> entries = LabelWords.read(words);
      answers.append(words).append('\n');
      answers.append(entries.size() > 1 ? "yes\n" : "");
      answers.append("\n\n\n\n\n".repeat(entries.size()));
    }
    answers.append("done\n\n");
    CommandRun run =
        CommandRun.Setting.in(folder).run(answers.toString(), "sheet", "--new", "unit.sheet.yaml");
    assertEquals("", run.err());
    assertEquals(0, run.status(), run.out());
    CodeSheet sheet =
        SheetReader.read("unit", Files.readAllBytes(folder.resolve("unit.sheet.yaml")));
    assertFalse(sheet.states().isEmpty());
    return sheet;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "red and green alternating",
        "red and amber at once",
        "dim glow that fades",
        "random flicker",
        "flashes faster the nearer the hand",
      })
  void whatCannotBeSaidIsRefusedWithTheReason(String words) throws IOException, FileException {
    String answers = "Unit\n\n\n\n" + words + "\nskip\none flash every 6 s\n\n\n\n\n\ndone\n\n";
    CommandRun run =
        CommandRun.Setting.in(folder).run(answers, "sheet", "--new", "unit.sheet.yaml");
    assertEquals(0, run.status(), run.out() + run.err());
    assertTrue(
        run.out().contains("cannot be taken: a rhythm is one lamp, one colour, on or off: "),
        run.out());
    CodeSheet sheet =
        SheetReader.read("unit", Files.readAllBytes(folder.resolve("unit.sheet.yaml")));
    assertEquals(1, sheet.states().size());
  }
}

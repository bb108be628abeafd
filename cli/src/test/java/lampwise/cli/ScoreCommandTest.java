package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Presets;
import lampwise.sim.score.Cell;
import lampwise.sim.score.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

class ScoreCommandTest {
  private static final List<String> FILES =
      List.of("calibration.svg", "readings.csv", "score.json", "scores.csv");

  /** Says {@code tick}, sure of it, to everything. */
  public static final class Stubborn implements Decoder {
    /** Makes one. */
    public Stubborn() {}

    @Override
    public Reading decode(CodeSheet sheet, List<Recording> recordings) {
      return new Reading(
          new Verdict.Decoded("tick", 0.99, new Window(0, 1)),
          List.of(new Candidate("tick", 0.1, 0, 0.99), new Candidate("tock", 0.1, -5, 0.01)),
          Optional.empty(),
          List.of(),
          List.of());
    }
  }

  /** Fails. */
  public static final class Failing implements Decoder {
    /** Makes one. */
    public Failing() {}

    @Override
    public Reading decode(CodeSheet sheet, List<Recording> recordings) {
      throw new IllegalStateException("out of\norder");
    }
  }

  /** Cannot be made without a number. */
  public static final class Needy implements Decoder {
    private final int number;

    /** Makes one. */
    public Needy(int number) {
      this.number = number;
    }

    @Override
    public Reading decode(CodeSheet sheet, List<Recording> recordings) {
      throw new IllegalStateException("never called " + number);
    }
  }

  /** Fails when it is made. */
  public static final class Unmade implements Decoder {
    /** Makes none. */
    public Unmade() {
      throw new IllegalStateException("no licence");
    }

    @Override
    public Reading decode(CodeSheet sheet, List<Recording> recordings) {
      throw new IllegalStateException("never called");
    }
  }

  @TempDir Path temp;

  private CommandRun score(String words, String... more) {
    List<String> args = new ArrayList<>(List.of("score"));
    args.addAll(Arrays.asList(words.split(" ")));
    args.addAll(List.of(more));
    return CommandRun.Setting.in(temp).run("", args.toArray(new String[0]));
  }

  private static String named(Class<?> decoder) {
    return decoder.getName();
  }

  private byte[] bytes(String folder, String file) throws IOException {
    return Files.readAllBytes(temp.resolve(folder).resolve(file));
  }

  @Test
  void tablesFitAndFilesAreWritten() throws IOException {
    CommandRun run =
        score("--observer careful --observer meter --window 10 --count 12 --reference --out a/b");
    assertEquals("", run.err());
    assertEquals(0, run.status());
    run.outLines().forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
    assertTrue(run.outLines().get(0).contains(" on [invented sheet] Bench unit,"), run.out());
    assertTrue(run.out().contains("\ncareful 10 s     12 "), run.out());
    assertTrue(run.out().contains("\nmeter 10 s       12 "), run.out());
    assertTrue(
        run.out()
            .contains("\nOf a light sensor's recording it also knows the light of the room.\n"),
        run.out());
    assertTrue(run.out().contains("\nLess the reference, same candidates:\n"), run.out());
    assertTrue(run.out().contains("\nLess the reference, told the unlisted:\n"), run.out());
    try (Stream<Path> files = Files.list(temp.resolve("a/b"))) {
      assertEquals(FILES, files.map(f -> f.getFileName().toString()).sorted().toList());
    }
    List<String> rows = Files.readAllLines(temp.resolve("a/b/scores.csv"));
    assertEquals(3, rows.size());
    for (String row : rows) {
      assertEquals(23, row.split(",", -1).length, row);
    }
    List<String> readings = Files.readAllLines(temp.resolve("a/b/readings.csv"));
    assertEquals(25, readings.size());
    for (String row : readings) {
      assertEquals(15, row.split(",", -1).length, row);
      // A light sensor has but the one reference.
      assertEquals(row.startsWith("meter"), row.endsWith(",,,"), row);
      assertFalse(row.contains(",,,,"), row);
    }
    assertTrue(new String(bytes("a/b", "calibration.svg"), "UTF-8").contains("stated"));
  }

  @Test
  void theSameOptionsGiveTheSameBytes() throws IOException {
    String words = "--observer hurried --window 20 --count 20";
    CommandRun first = score(words, "--out", "a");
    assertEquals(0, first.status(), first.err());
    assertEquals(first, score(words, "--out", "b"));
    for (String file : FILES) {
      assertArrayEquals(bytes("a", file), bytes("b", file), file);
    }
    assertNotEquals(first.out(), score(words, "--seed", "7").out());
  }

  @Test
  void keptAnswersGiveTheSameBytesAndAreTaken() throws IOException {
    String words = "--observer careful --window 10 --count 5 --reference --stored kept.txt";
    CommandRun first = score(words);
    assertEquals(0, first.status(), first.err());
    Path kept = temp.resolve("kept.txt");
    List<String> lines = Files.readAllLines(kept);
    assertEquals(11, lines.size());
    assertEquals(first.out(), score(words).out());
    assertEquals(lines, Files.readAllLines(kept));
    // What is kept is believed: here that nothing is ever listed.
    List<String> changed = new ArrayList<>(lines.subList(0, 1));
    for (String line : lines.subList(1, 11)) {
      String[] key = line.split(" ", -1);
      changed.add(String.join(" ", key[0], key[1], key[2]) + " 0".repeat(12) + " 0 1");
    }
    Files.writeString(kept, String.join("\n", changed) + "\n");
    assertNotEquals(first.out(), score(words).out());
    // Another seed asks for other answers and keeps both.
    assertEquals(0, score(words, "--seed", "3").status());
    assertEquals(21, Files.readAllLines(kept).size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          other                             | line 1: expected the line
          lampwise-reference: 1/             | line 1: expected the line
          lampwise-reference: 2/k same 1 0.5 0.4/ | line 2: the probabilities do not sum to 1
          lampwise-reference: 2/k same 1 x 0.4/   | line 2: expected a probability, not x
          lampwise-reference: 2/k same 1/         | line 2: expected a checksum
          lampwise-reference: 2/k same 1 0.5 0.5  | line 2: the last line is not whole
          """)
  void aBrokenStoreIsOneLine(String text, String message) throws IOException {
    Files.writeString(temp.resolve("kept.txt"), text.replace('/', '\n'));
    CommandRun run = score("--count 1 --reference --stored kept.txt");
    assertEquals(2, run.status());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().startsWith("kept.txt: " + message), run.err());
  }

  @Test
  void anyDecoderCanBeScored() throws IOException {
    CommandRun run =
        score("--observer exact --window 45 --count 50 --json", "--decoder", named(Stubborn.class));
    assertEquals("", run.err());
    JsonNode json = new ObjectMapper().readTree(run.out());
    assertEquals(50, json.at("/all/n").asInt());
    assertEquals(50, json.at("/all/decoded").asInt());
    int right = json.at("/confusion/tick/tick").asInt();
    assertTrue(right > 0 && right < 20, run.out());
    assertEquals(50 - right, json.at("/all/misread").asInt());
    assertEquals(right / 50.0, json.at("/all/right/0").asDouble(), 1e-9);
    assertEquals(0.99 - right / 50.0, json.at("/calibration/error").asDouble(), 1e-6);
    assertTrue(json.at("/difference").isNull());
    assertTrue(json.at("/same_difference").isNull());
  }

  /** The widest names and numbers that can be asked for. */
  @Test
  void theWidestTableFits() {
    Cell cell = new Cell("careless", Presets.named("careless"), 999);
    Outcome wrong = new Outcome("a", "b", 1, 0, "decoded", Optional.of("b"));
    Outcome right = new Outcome("a", "a", 1, 1, "decoded", Optional.of("a"));
    List<Outcome> outcomes = Collections.nCopies(9_999, wrong);
    CellScore score =
        new CellScore(
            cell,
            outcomes,
            Optional.of(Collections.nCopies(9_999, right)),
            Optional.of(Collections.nCopies(9_999, right)));
    ScoreResult result =
        new ScoreResult(
            "t".repeat(90),
            true,
            "a.B",
            -1L << 63,
            9_999,
            Optional.of("careless with first-late=0.12".repeat(4)),
            false,
            List.of(score));
    List<String> lines = ScoreText.lines(result);
    lines.forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
    assertTrue(
        lines.contains(
            "careless 999 s 9999   0.0    0.0-0.0 100.0 -100.0 100.0 100.0   0.0    0.0 13.82"),
        String.join("\n", lines));
  }

  @Test
  void unlistedRhythmsAlone() throws IOException {
    CommandRun run =
        score("--unlisted --observer exact --count 15", "--decoder", named(Stubborn.class));
    assertEquals("", run.err());
    assertTrue(run.out().contains("\nexact 45 s       15        100.0 (79.6-100.0) "), run.out());
    assertTrue(run.out().contains("\nexact 90 s       15 "), run.out());
    run.outLines().forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
  }

  @Test
  void aDecoderThatFailsIsOneLine() {
    String words = "--observer exact --window 10 --count 1 --decoder " + named(Failing.class);
    CommandRun run = score(words);
    assertEquals(1, run.status());
    assertEquals(
        named(Failing.class)
            + " failed on recording 0 of exact 10 s:"
            + " java.lang.IllegalStateException: out of order",
        run.err().strip());
    assertTrue(score(words, "--trace").errLines().size() > 1);
  }

  @Test
  void whatIsNoDecoderIsSaid() {
    assertEquals(
        List.of(
            "--decoder: java.lang.String does not implement lampwise.decode.Decoder",
            "--decoder: no.Such is not on the class path",
            "--decoder: lampwise.decode.Decoder is not a public class that can be made",
            "--decoder: " + named(Needy.class) + " has no public constructor without arguments",
            "--decoder: "
                + named(Unmade.class)
                + " cannot be made: java.lang.IllegalStateException: no licence"),
        Stream.of(
                "java.lang.String",
                "no.Such",
                "lampwise.decode.Decoder",
                named(Needy.class),
                named(Unmade.class))
            .map(name -> score("--count 1", "--decoder", name).err().strip())
            .toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --count 0                     | --count takes a whole number from 1 to 9999, not 0
          --seed x                      | --seed takes a whole number
          --window 0                    | --window takes a whole number from 1 to 999, not 0
          --window NaN                  | --window takes a whole number from 1 to 999, not NaN
          --observer carful             | --observer: there is no observer named carful; near: careful
          --set missed=0.1              | --set changes one observer; give --observer NAME once
          --observer careful --set a=1  | --set: there is no setting a;
          --observer careful --set missed=2 | --set:
          --stored a                    | --stored keeps the reference's answers; give --reference too
          --unlisted --reference        | --unlisted and --reference do not go together
          --sheet no.yaml               | no.yaml
          --out kept                    | --out takes the name of a folder, not "kept"
          --sheet demo --observer exact --count 1 --reference | the reference decoder does not cover
          --observer meter --set full-scale-lux=300 --count 1 --reference | the reference for light
          """)
  void whatCannotBeIsOneLine(String words, String message) throws IOException {
    Files.writeString(temp.resolve("kept"), "");
    CommandRun run = score(words);
    assertEquals(2, run.status(), run.out());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
  }

  @Test
  void anotherSheetCanBeScored() {
    CommandRun run = score("--sheet demo --observer exact --window 10 --count 2");
    assertEquals("", run.err());
    assertTrue(run.out().contains("\nexact 10 s        2 "), run.out());
  }

  @Test
  void anObserverOfOnesOwnCanBeScored() throws IOException {
    String words = "--window 10 --count 30 --observer careful";
    CommandRun blind = score(words + " --set missed=1 --set strays-per-minute=0");
    assertEquals("", blind.err());
    assertTrue(
        blind.out().contains("\nown: careful with missed=1, strays-per-minute=0\n"), blind.out());
    assertTrue(blind.out().contains("\nown 10 s         30 "), blind.out());
    assertTrue(blind.out().contains("\nmisread: 0 of 0 decoded\n"), blind.out());
    CommandRun json = score(words + " --set missed=0.2 --json");
    assertEquals(
        "careful with missed=0.2",
        new ObjectMapper().readTree(json.out()).at("/own_observer").asString());
  }

  @Test
  void theHelpNamesEachOption() {
    CommandRun run = score("--help");
    assertEquals(0, run.status());
    for (String option :
        List.of(
            "--sheet",
            "--decoder",
            "--observer",
            "--set",
            "--window",
            "--count",
            "--seed",
            "--reference",
            "--stored",
            "--unlisted",
            "--out",
            "--json",
            "--trace")) {
      assertTrue(run.out().contains("\n      " + option), option + " is missing");
    }
    run.outLines().forEach(line -> assertTrue(line.length() <= Layout.WIDTH, line));
  }
}

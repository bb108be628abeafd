package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.decode.Decoder;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Mix;
import lampwise.sim.Observer;
import lampwise.sim.Presets;
import lampwise.sim.SimulationException;
import lampwise.sim.score.Bench;
import lampwise.sim.score.Cell;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise score}: how good a decoder is, and how far from the best possible. */
final class ScoreCommand implements Command {
  private static final String BENCH = "bench";

  /** The name of an observer with settings of one's own. */
  private static final String OWN = "own";

  private static final int MOST_RECORDINGS = 9_999;
  private static final int MOST_SECONDS = 999;
  private static final List<Double> UNLISTED_WINDOWS = List.of(45.0, 90.0);

  @Override
  public String name() {
    return "score";
  }

  @Override
  public String summary() {
    return "measure a decoder on made-up recordings";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    ReadingFlags.one(
        spec,
        "--sheet",
        "bench|demo|FILE",
        "the code sheet; bench, which is invented, if not given");
    DecoderOption.addTo(spec);
    ReadingFlags.many(
        spec,
        "--observer",
        "NAME",
        "who watches: " + String.join(", ", Presets.names()) + "; repeatable; all if not given");
    ReadingFlags.many(
        spec,
        "--set",
        "NAME=VALUE",
        "another setting of the one observer that is named, who is then called "
            + OWN
            + "; repeatable; see simulate --list");
    ReadingFlags.many(
        spec,
        "--window",
        "SECONDS",
        "for how long; repeatable; 10, 20, 45 and 90 for people, 30 and 90 for light sensors if"
            + " not given");
    ReadingFlags.one(spec, "--count", "N", "recordings for each cell; 1000 if not given");
    ReadingFlags.one(spec, "--seed", "N", "another seed gives other recordings; 1125 if not given");
    ReadingFlags.flag(spec, "--reference", "compare with the best possible answers; takes minutes");
    ReadingFlags.one(
        spec, "--stored", "FILE", "keep the references' answers there; a second run is then fast");
    ReadingFlags.flag(
        spec,
        "--unlisted",
        "show only rhythms that the sheet does not list; windows of 45 and 90 s if not given");
    ReadingFlags.one(
        spec,
        "--out",
        "DIR",
        "a folder for scores.csv, readings.csv, score.json and calibration.svg, which are written"
            + " over");
    ReadingFlags.flag(spec, "--json", "print score.json instead of the tables");
    spec.usageMessage()
        .description(
            "Makes up recordings of a sheet's states, of rhythms that it does not list and of"
                + " blinks in no order, has a decoder read them, and counts. Right is what has the"
                + " truth for its likeliest candidate, misread what is decoded as a wrong state."
                + " The same options give the same bytes.")
        .footer(
            "",
            "Exit status: 0 done, 1 the decoder failed or a file could not be written, 2 wrong use.",
            "",
            "Example: lampwise score --observer careful --window 45 --count 200")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    boolean unlisted = parsed.hasMatchedOption("--unlisted");
    boolean reference = parsed.hasMatchedOption("--reference");
    Optional<String> file = ReadingFlags.text(parsed, "--stored");
    if (unlisted && reference) {
      throw new UsageException("--unlisted and --reference do not go together");
    }
    if (file.isPresent() && !reference) {
      throw new UsageException("--stored keeps the reference's answers; give --reference too");
    }
    Decoder decoder = DecoderOption.read(parsed);
    CodeSheet sheet = sheet(parsed, here);
    List<Cell> cells = cells(parsed, unlisted);
    int count = (int) number(parsed, "--count", Bench.COUNT, 1, MOST_RECORDINGS);
    long seed = number(parsed, "--seed", Bench.SEED, Long.MIN_VALUE, Long.MAX_VALUE);
    Optional<Path> out = folder(parsed, here);
    Optional<StoredReference> stored =
        reference ? Optional.of(StoredReference.open(here, file)) : Optional.empty();
    Mix mix = unlisted ? Bench.unlistedMix(sheet) : Bench.mix(sheet);
    Progress progress =
        new Progress(here, count * cells.size() * (reference ? 2 : 1), System::nanoTime);
    List<CellScore> scores;
    try {
      scores = new ScoreRun(mix, seed, count, progress).cells(cells, decoder, stored);
    } catch (ScoreRun.Failed e) {
      progress.end();
      here.err().println(Main.oneLine(String.valueOf(e.getMessage())));
      if (parsed.hasMatchedOption("--trace")) {
        e.printStackTrace(here.err());
      }
      return Main.REFUSED;
    } catch (SimulationException e) {
      throw new UsageException(Main.oneLine(String.valueOf(e.getMessage())));
    } finally {
      progress.end();
    }
    ScoreResult result =
        new ScoreResult(
            sheet.title(),
            sheet.isInvented(),
            decoder.getClass().getName(),
            seed,
            count,
            own(parsed),
            unlisted,
            scores);
    return say(result, parsed, out, stored, here);
  }

  private static int say(
      ScoreResult result,
      ParseResult parsed,
      Optional<Path> out,
      Optional<StoredReference> stored,
      Surroundings here)
      throws UsageException {
    if (parsed.hasMatchedOption("--json")) {
      here.out().print(ScoreFiles.json(result));
    } else {
      ScoreText.lines(result).forEach(here.out()::println);
    }
    try {
      if (stored.isPresent()) {
        stored.get().write();
      }
      if (out.isPresent()) {
        write(out.get(), result);
      }
      return Main.DONE;
    } catch (IOException e) {
      here.err().println(Layout.clean("cannot be written: " + e.getMessage()));
      return Main.REFUSED;
    }
  }

  private static void write(Path folder, ScoreResult result) throws IOException {
    Files.createDirectories(folder);
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("scores.csv", bytes(ScoreFiles.cellsCsv(result)));
    files.put("readings.csv", bytes(ScoreFiles.readingsCsv(result)));
    files.put("score.json", bytes(ScoreFiles.json(result)));
    if (!result.unlisted() && ChartImage.hasLetters()) {
      files.put("calibration.svg", ChartImage.SVG.bytes(new ScoreChart(result.calibration())));
    }
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      OutputFiles.put(folder.resolve(file.getKey()), file.getValue(), true);
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static CodeSheet sheet(ParseResult parsed, Surroundings here) throws UsageException {
    Optional<String> name = ReadingFlags.text(parsed, "--sheet");
    if (name.isEmpty() || name.get().equals(BENCH)) {
      return Bench.sheet();
    }
    return SheetOption.read(parsed, here).orElseThrow();
  }

  private static List<Cell> cells(ParseResult parsed, boolean unlisted) throws UsageException {
    Map<String, Observer> observers = observers(parsed);
    List<Double> windows = new ArrayList<>();
    for (String given : parsed.matchedOptionValue("--window", List.<String>of())) {
      windows.add((double) NumberOption.whole("--window", given, 1, MOST_SECONDS));
    }
    List<Cell> cells = new ArrayList<>();
    observers.forEach(
        (name, observer) -> {
          List<Double> usual = unlisted ? UNLISTED_WINDOWS : Bench.windows(observer);
          for (double seconds :
              (windows.isEmpty() ? usual : windows).stream().distinct().toList()) {
            cells.add(new Cell(name, observer, seconds));
          }
        });
    return cells;
  }

  /** Who watches, by name, in the order given. */
  private static Map<String, Observer> observers(ParseResult parsed) throws UsageException {
    Map<String, Observer> observers = new LinkedHashMap<>();
    List<String> names = parsed.matchedOptionValue("--observer", Presets.names());
    if (parsed.hasMatchedOption("--set")) {
      if (names.size() != 1) {
        throw new UsageException("--set changes one observer; give --observer NAME once");
      }
      observers.put(OWN, ObserverOption.withSettings(observer(names.get(0)), parsed));
      return observers;
    }
    for (String name : names) {
      observers.put(name, observer(name));
    }
    return observers;
  }

  /** What the observer called own is made of; empty without one. */
  private static Optional<String> own(ParseResult parsed) {
    return parsed.hasMatchedOption("--set")
        ? Optional.of(
            parsed.matchedOptionValue("--observer", Presets.names()).get(0)
                + " with "
                + String.join(", ", parsed.matchedOptionValue("--set", List.<String>of())))
        : Optional.empty();
  }

  private static Observer observer(String name) throws UsageException {
    try {
      return Presets.named(name);
    } catch (SimulationException e) {
      throw new UsageException("--observer: " + Main.oneLine(String.valueOf(e.getMessage())));
    }
  }

  private static Optional<Path> folder(ParseResult parsed, Surroundings here)
      throws UsageException {
    Optional<String> name = ReadingFlags.text(parsed, "--out");
    if (name.isEmpty()) {
      return Optional.empty();
    }
    try {
      Path folder = here.folder().resolve(name.get());
      if (!name.get().isEmpty() && (Files.isDirectory(folder) || Files.notExists(folder))) {
        return Optional.of(folder);
      }
    } catch (InvalidPathException e) {
      // Said below.
    }
    throw new UsageException(
        "--out takes the name of a folder, not \"" + Layout.clean(name.get()) + "\"");
  }

  private static long number(ParseResult parsed, String option, long usual, long least, long most)
      throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, option);
    return given.isEmpty() ? usual : NumberOption.whole(option, given.get(), least, most);
  }
}

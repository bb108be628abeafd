package lampwise.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.file.FileException;
import lampwise.file.FileFault;
import lampwise.file.FixtureList;
import lampwise.file.SheetReader;
import lampwise.file.VisitLog;
import lampwise.service.Fixture;
import lampwise.service.Site;
import lampwise.service.Visit;
import lampwise.service.Worklist;
import lampwise.sheet.CodeSheet;
import picocli.CommandLine.ParseResult;

/**
 * What a round is given: the site, its fixtures and their sheets, the visit log, the day.
 *
 * @param basis guide, site and day
 * @param fixtures the fixtures, in the list's order
 * @param sheets the sheets by the ids of the fixtures; a fixture without one is not there
 * @param visits the visits of the log
 * @param own the files that were named, which are no recordings
 * @param builtIn whether it is the demonstration
 */
record RoundInput(
    Worklist.Basis basis,
    List<Fixture> fixtures,
    Map<String, CodeSheet> sheets,
    List<Visit> visits,
    List<Path> own,
    boolean builtIn) {
  /** After how many days cells are due if nobody says: common practice, no source. */
  static final int CELLS_DAYS = 730;

  private static final int MOST_DAYS = 10_000;

  /**
   * Takes what the command was given.
   *
   * @throws UsageException with a line for each fault
   */
  static RoundInput of(ParseResult parsed, Surroundings here) throws UsageException {
    boolean demo = parsed.hasMatchedOption("--demo");
    Optional<String> list = ReadingFlags.text(parsed, "--fixtures");
    boolean builtIn =
        demo && list.isEmpty() && parsed.matchedPositionalValue(0, List.<String>of()).isEmpty();
    if (list.isEmpty() && !builtIn) {
      throw new UsageException(
          "the list of fixtures is needed: --fixtures fixtures.csv; --demo alone shows a round");
    }
    try {
      List<Path> own = new ArrayList<>();
      String name = list.orElse(RoundFiles.Demonstration.FIXTURES);
      List<Fixture> fixtures =
          FixtureList.read(
              name,
              builtIn
                  ? RoundFiles.Demonstration.bytes(name)
                  : InputFiles.read(here, name, "a list of fixtures"));
      for (String option : List.of("--fixtures", "--log", "--site", "--report", "--sheet")) {
        if (ReadingFlags.text(parsed, option).isPresent()) {
          own.add(here.folder().resolve(ReadingFlags.text(parsed, option).get()));
        }
      }
      return new RoundInput(
          basis(parsed, here, builtIn),
          fixtures,
          builtIn ? builtInSheets(fixtures) : sheets(parsed, here, name, fixtures, demo),
          visits(parsed, here, builtIn),
          own,
          builtIn);
    } catch (FileException e) {
      throw new UsageException(e);
    } catch (InvalidPathException e) {
      throw new UsageException(Layout.clean(e.getInput()) + ": is not the name of a file");
    }
  }

  private static Worklist.Basis basis(ParseResult parsed, Surroundings here, boolean builtIn)
      throws UsageException {
    SiteOption site = new SiteOption(parsed, here);
    int cellsDays = CELLS_DAYS;
    Optional<String> given = ReadingFlags.text(parsed, "--cells-days");
    if (given.isPresent()) {
      cellsDays = (int) NumberOption.whole("--cells-days", given.get(), 1, MOST_DAYS);
    }
    String today = builtIn ? RoundFiles.Demonstration.DAY : LocalDate.now(here.clock()).toString();
    String day = ReadingFlags.text(parsed, "--day").orElse(today);
    if (!Fixture.isDay(day)) {
      throw new UsageException(
          "--day takes a day such as 2026-11-25, not \"" + Layout.clean(day) + "\"");
    }
    return new Worklist.Basis(site.guide(), site.site(), day, cellsDays);
  }

  private static List<Visit> visits(ParseResult parsed, Surroundings here, boolean builtIn)
      throws FileException {
    Optional<String> log =
        ReadingFlags.text(parsed, "--log").or(() -> here.variable(DiagnoseLog.VARIABLE));
    if (builtIn && !parsed.hasMatchedOption("--log")) {
      String name = RoundFiles.Demonstration.VISITS;
      return VisitLog.read(name, RoundFiles.Demonstration.bytes(name)).visits();
    }
    return log.isEmpty() ? List.of() : VisitLog.read(here.folder().resolve(log.get())).visits();
  }

  private static Map<String, CodeSheet> builtInSheets(List<Fixture> fixtures) throws FileException {
    Map<String, CodeSheet> sheets = new LinkedHashMap<>();
    for (Fixture fixture : fixtures) {
      String name = fixture.sheet();
      sheets.put(
          fixture.id(),
          name.equals(SheetOption.DEMO)
              ? SheetReader.demo()
              : SheetReader.read(name, RoundFiles.Demonstration.bytes(name)));
    }
    return sheets;
  }

  /** Each sheet is read once; its path is as seen from the list. */
  private static Map<String, CodeSheet> sheets(
      ParseResult parsed, Surroundings here, String list, List<Fixture> fixtures, boolean demo)
      throws UsageException, FileException {
    Optional<CodeSheet> usual = SheetOption.read(parsed, here);
    Map<String, CodeSheet> read = new LinkedHashMap<>();
    Map<String, CodeSheet> sheets = new LinkedHashMap<>();
    List<FileFault> faults = new ArrayList<>();
    List<String> wrong = new ArrayList<>();
    for (Fixture fixture : fixtures) {
      String name = fixture.sheet();
      if (name.isEmpty()) {
        if (usual.isPresent()) {
          checkInvented(usual.get(), demo);
          sheets.put(fixture.id(), usual.get());
        }
      } else if (!wrong.contains(name)) {
        try {
          if (!read.containsKey(name)) {
            read.put(name, sheet(here, list, name));
            checkInvented(read.get(name), demo);
          }
          sheets.put(fixture.id(), read.get(name));
        } catch (FileException e) {
          faults.addAll(e.faults());
          wrong.add(name);
        }
      }
    }
    if (!faults.isEmpty()) {
      throw new FileException(faults);
    }
    return sheets;
  }

  private static CodeSheet sheet(Surroundings here, String list, String name) throws FileException {
    if (name.equals(SheetOption.DEMO)) {
      return SheetReader.demo();
    }
    String path = Path.of(list).resolveSibling(name).toString();
    return SheetReader.read(path, InputFiles.read(here, path, "a code sheet"));
  }

  private static void checkInvented(CodeSheet sheet, boolean demo) throws UsageException {
    if (sheet.isInvented() && !demo) {
      throw new UsageException(
          "the sheet \""
              + Layout.clean(sheet.title())
              + "\" is invented and says nothing of a real unit; --demo takes it for trying");
    }
  }

  /** What the site is called; empty where nobody says. */
  String title() {
    if (builtIn) {
      return "Ferry terminal";
    }
    Site site = basis.site();
    return site.equals(Site.unknown()) ? "" : site.title();
  }

  /** Whether a sheet of the round is invented, so that all of it is for trying only. */
  boolean isInvented() {
    return builtIn || sheets.values().stream().anyMatch(CodeSheet::isInvented);
  }
}

package lampwise.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import lampwise.decode.LampDecoder;
import lampwise.file.FileException;
import lampwise.file.FileFault;
import lampwise.file.GuideReader;
import lampwise.file.SessionFile;
import lampwise.file.SiteReader;
import lampwise.light.Recording;
import lampwise.service.Act;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.GuideException;
import lampwise.service.Remedy;
import lampwise.service.Situation;
import lampwise.service.Who;
import lampwise.service.Work;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** What {@code lampwise diagnose} is given to start from. */
final class DiagnoseOptions implements RecordingFiles.Refusals {
  private static final List<String> START =
      List.of("--kind", "--power", "--complaint", "--recent", "--have", "--may");

  private final ParseResult parsed;
  private final Surroundings here;
  private final Guide guide;
  private final LearnOption learn;
  private Optional<FixtureKind> kind;
  private Optional<Complaint> complaint;
  private int status = Main.DONE;

  static void addTo(CommandSpec spec) {
    ReadingFlags.one(spec, "--kind", "KIND", words(FixtureKind.values(), FixtureKind::word));
    ReadingFlags.one(spec, "--power", "POWER", words(Power.values(), Power::word));
    ReadingFlags.one(spec, "--complaint", "WORD", words(Complaint.values(), Complaint::word));
    ReadingFlags.many(
        spec,
        "--recent",
        "WORK",
        "what was worked on lately: " + words(Work.values(), Work::word) + "; repeatable");
    ReadingFlags.many(spec, "--found", "CHECK=ANSWER", "what a check showed; repeatable");
    ReadingFlags.many(spec, "--safe", "RULE", "a danger that was dealt with; repeatable");
    ReadingFlags.many(spec, "--tried", "REMEDY", "a remedy that did not help; repeatable");
    ReadingFlags.one(spec, "--worked", "REMEDY", "the remedy after which it worked");
    ReadingFlags.one(
        spec, "--over", "WHO", "it was handed over to: " + words(Who.values(), Who::word));
    ReadingFlags.many(
        spec, "--have", "PART", "a part at hand, or none; if not given, all are; repeatable");
    ReadingFlags.many(
        spec, "--may", "WHO", "whose work you may do besides, such as plumber; repeatable");
    ReadingFlags.one(spec, "--site", "FILE", "the site's own shares, minutes and people");
    LearnOption.addTo(spec);
    ReadingFlags.flag(spec, "--demo", "take an invented sheet too");
  }

  private static <T> String words(T[] values, Function<T, String> word) {
    return String.join(", ", Stream.of(values).map(word).toList());
  }

  DiagnoseOptions(ParseResult parsed, Surroundings here) throws UsageException {
    this.parsed = parsed;
    this.here = here;
    guide = readGuide();
    learn = new LearnOption(parsed, here);
    kind = word("--kind", FixtureKind.values(), FixtureKind::word);
    complaint = word("--complaint", Complaint.values(), Complaint::word);
  }

  Guide guide() {
    return guide;
  }

  Optional<FixtureKind> kind() {
    return kind;
  }

  Optional<Complaint> complaint() {
    return complaint;
  }

  int status() {
    return status;
  }

  Optional<String> session() {
    return ReadingFlags.text(parsed, "--session");
  }

  /** What the shares of a visit that was started rest on besides the guide; empty for nothing. */
  Optional<String> learned() {
    return learn.said();
  }

  /** From how many visits they are learned; empty if nothing was to be learned. */
  OptionalInt learnedFrom() {
    return learn.visits();
  }

  /** Keeps the visit in its session, if it has one. */
  void keep(Diagnosis visit) throws UsageException {
    Optional<String> session = session();
    if (session.isPresent()) {
      OutputFiles.write(here, session.get(), SessionFile.write(visit), true);
    }
  }

  private Guide readGuide() throws UsageException {
    Guide builtIn = GuideReader.builtIn();
    Optional<String> site = ReadingFlags.text(parsed, "--site");
    if (site.isEmpty()) {
      return builtIn;
    }
    try {
      byte[] content = InputFiles.read(here, site.get(), "a site");
      return SiteReader.read(site.get(), content, builtIn).applyTo(builtIn);
    } catch (FileException e) {
      throw new UsageException(e);
    } catch (GuideException e) {
      throw new UsageException(Layout.clean(site.get() + ": " + e.getMessage()));
    }
  }

  /** Asks for kind and complaint where they were not given; a session to go on with has them. */
  void askWhatIsMissing(Questions questions) throws Questions.Ended, UsageException {
    if (sessionExists()) {
      return;
    }
    while (kind.isEmpty()) {
      kind = choose(questions, "Kind", FixtureKind.values(), FixtureKind::word);
    }
    while (complaint.isEmpty()) {
      complaint = choose(questions, "Complaint", Complaint.values(), Complaint::word);
    }
  }

  private static <T> Optional<T> choose(
      Questions questions, String what, T[] values, Function<T, String> word)
      throws Questions.Ended {
    String answer = questions.ask(what + " (" + words(values, word) + ")", "");
    return Stream.of(values).filter(value -> word.apply(value).equals(answer)).findFirst();
  }

  /**
   * The visit as it starts, or as it was left.
   *
   * @throws UsageException if something was not said or is not known
   */
  Diagnosis start() throws UsageException {
    Diagnosis visit = readLamp(sessionExists() ? goOn() : begin());
    for (Act act : given()) {
      try {
        visit = visit.with(act);
      } catch (GuideException e) {
        throw new UsageException(Layout.clean(String.valueOf(e.getMessage())));
      }
    }
    return visit;
  }

  private Diagnosis begin() throws UsageException {
    if (kind.isEmpty() || complaint.isEmpty()) {
      throw new UsageException("--kind and --complaint are needed; --list shows the words");
    }
    Situation situation =
        new Situation(
            kind.get(),
            word("--power", Power.values(), Power::word),
            complaint.get(),
            words("--recent", Work.values(), Work::word),
            have(),
            may());
    try {
      return Diagnosis.start(learn.applyTo(guide, situation), situation);
    } catch (GuideException e) {
      throw new UsageException(Layout.clean(String.valueOf(e.getMessage())));
    }
  }

  private Diagnosis goOn() throws UsageException {
    for (String option : START) {
      if (parsed.hasMatchedOption(option)) {
        throw new UsageException(
            option + " stands in the session already; leave it out or name a new file");
      }
    }
    String name = session().orElseThrow();
    try {
      byte[] content = InputFiles.read(here, name, "a session");
      Situation situation = SessionFile.read(name, content, guide).situation();
      Diagnosis visit = SessionFile.read(name, content, learn.applyTo(guide, situation));
      checkInvented(visit.isInvented());
      return visit;
    } catch (FileException e) {
      throw new UsageException(e);
    }
  }

  private boolean sessionExists() {
    try {
      return session().isPresent() && Files.exists(here.folder().resolve(session().get()));
    } catch (InvalidPathException e) {
      return false;
    }
  }

  private List<Act> given() throws UsageException {
    List<Act> acts = new ArrayList<>();
    for (String rule : many("--safe")) {
      acts.add(new Act.Secured(rule));
    }
    for (String finding : many("--found")) {
      int equals = finding.indexOf('=');
      if (equals < 1) {
        throw new UsageException(
            "--found takes CHECK=ANSWER, such as bowl=clear, not " + Layout.clean(finding));
      }
      acts.add(found(finding.substring(0, equals), finding.substring(equals + 1)));
    }
    for (String remedy : many("--tried")) {
      acts.add(tried("--tried", remedy, false));
    }
    Optional<String> worked = ReadingFlags.text(parsed, "--worked");
    if (worked.isPresent()) {
      acts.add(tried("--worked", worked.get(), true));
    }
    word("--over", Who.values(), Who::word).ifPresent(who -> acts.add(new Act.Handed(who)));
    return acts;
  }

  private Act tried(String option, String remedy, boolean worked) throws UsageException {
    if (guide.remedy(remedy).isEmpty()) {
      throw new UsageException(
          option
              + ": unknown remedy "
              + Layout.clean(remedy)
              + "; "
              + Near.said(remedy, guide.remedies().stream().map(Remedy::id).toList()));
    }
    return new Act.Tried(remedy, worked);
  }

  private Act found(String id, String word) throws UsageException {
    Optional<Check> check = guide.check(id);
    if (check.isEmpty()) {
      throw new UsageException(
          "--found: unknown check "
              + Layout.clean(id)
              + "; "
              + Near.said(id, guide.checks().stream().map(Check::id).toList()));
    }
    if (word.equals("?")) {
      return new Act.Skipped(id);
    }
    if (check.get().answer(word).isEmpty()) {
      List<String> known = check.get().answers().stream().map(answer -> answer.word()).toList();
      throw new UsageException(
          "--found: "
              + id
              + " has no answer "
              + Layout.clean(word)
              + "; known: "
              + String.join(", ", known)
              + ", ?");
    }
    return new Act.Found(new Finding(id, word));
  }

  private Optional<List<String>> have() throws UsageException {
    List<String> given = many("--have");
    if (given.isEmpty()) {
      return Optional.empty();
    }
    Set<String> parts = new LinkedHashSet<>();
    guide.remedies().forEach(remedy -> parts.addAll(remedy.parts()));
    for (String part : given) {
      if (!part.equals("none") && !parts.contains(part)) {
        throw new UsageException(
            "--have: no remedy takes a part "
                + Layout.clean(part)
                + "; "
                + Near.said(part, parts)
                + ", none");
      }
    }
    return Optional.of(given.stream().filter(part -> !part.equals("none")).toList());
  }

  private List<Who> may() throws UsageException {
    Set<Who> may = new LinkedHashSet<>(Situation.TECHNICIAN);
    may.addAll(words("--may", Who.values(), Who::word));
    return List.copyOf(may);
  }

  private Diagnosis readLamp(Diagnosis visit) throws UsageException {
    RecordingArguments given = RecordingArguments.of(parsed);
    boolean named = !parsed.matchedPositionalValue(0, List.<String>of()).isEmpty();
    if (!named && given.said().isEmpty()) {
      return visit;
    }
    if (given.names().contains(RecordingFiles.STANDARD_INPUT)) {
      throw new UsageException("diagnose takes answers on standard input; name the recording");
    }
    Optional<CodeSheet> sheet = SheetOption.read(parsed, here);
    if (sheet.isEmpty()) {
      throw new UsageException("a recording needs the unit's code sheet: --sheet FILE");
    }
    checkInvented(sheet.get().isInvented());
    List<Recording> recordings = new ArrayList<>();
    RecordingFiles files = new RecordingFiles(here, given.options(), given.several());
    for (String name : given.names()) {
      if (named) {
        recordings.addAll(files.read(name, this));
      }
    }
    given.said().ifPresent(recordings::add);
    DecodeRun.checkOneLamp(recordings);
    return recordings.isEmpty()
        ? visit
        : visit.with(
            sheet.get(),
            new LampDecoder().decode(sheet.get(), recordings),
            named ? given.names() : List.of());
  }

  private void checkInvented(boolean invented) throws UsageException {
    if (invented && !parsed.hasMatchedOption("--demo")) {
      throw new UsageException(
          "the sheet is invented and says nothing of a real unit; --demo takes it for trying");
    }
  }

  private List<String> many(String option) {
    return parsed.hasMatchedOption(option)
        ? parsed.<List<String>>matchedOptionValue(option, List.of())
        : List.of();
  }

  private <T> Optional<T> word(String option, T[] values, Function<T, String> word)
      throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, option);
    return given.isEmpty() ? Optional.empty() : Optional.of(one(option, given.get(), values, word));
  }

  private <T> List<T> words(String option, T[] values, Function<T, String> word)
      throws UsageException {
    List<T> found = new ArrayList<>();
    for (String given : many(option)) {
      found.add(one(option, given, values, word));
    }
    return found;
  }

  private static <T> T one(String option, String given, T[] values, Function<T, String> word)
      throws UsageException {
    Optional<T> value = Stream.of(values).filter(v -> word.apply(v).equals(given)).findFirst();
    if (value.isEmpty()) {
      throw new UsageException(
          option + " takes " + words(values, word) + ", not " + Layout.clean(given));
    }
    return value.get();
  }

  @Override
  public void refuse(String name, FileFault fault, String line, int newStatus) {
    status = Math.max(status, newStatus);
    if (!line.isEmpty()) {
      here.err().println(Layout.clean(line));
    }
  }

  @Override
  public void fault(String name, String label, RuntimeException e) {
    status = Math.max(status, Main.REFUSED);
    Main.internalFault(label, e, parsed.hasMatchedOption("--trace"), here);
  }

  @Override
  public void cause(Exception e) {
    if (parsed.hasMatchedOption("--trace")) {
      e.printStackTrace(here.err());
    }
  }
}

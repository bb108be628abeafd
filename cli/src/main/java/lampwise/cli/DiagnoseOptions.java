package lampwise.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import lampwise.decode.LampDecoder;
import lampwise.file.FileException;
import lampwise.file.FileFault;
import lampwise.file.SessionFile;
import lampwise.light.Recording;
import lampwise.service.Act;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Guide;
import lampwise.service.GuideException;
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

  /** The kind of fixture; {@code lampwise water} takes it too. */
  static final WordOption<FixtureKind> KIND =
      new WordOption<>("--kind", FixtureKind.values(), FixtureKind::word);

  private static final WordOption<Power> POWER =
      new WordOption<>("--power", Power.values(), Power::word);
  private static final WordOption<Complaint> COMPLAINT =
      new WordOption<>("--complaint", Complaint.values(), Complaint::word);
  private static final WordOption<Work> RECENT =
      new WordOption<>("--recent", Work.values(), Work::word);
  private static final WordOption<Who> MAY = new WordOption<>("--may", Who.values(), Who::word);

  private final ParseResult parsed;
  private final Surroundings here;
  private final Guide guide;
  private final LearnOption learn;
  private Optional<FixtureKind> kind;
  private Optional<Complaint> complaint;
  private int status = Main.DONE;

  static void addTo(CommandSpec spec) {
    KIND.addOnce(spec, "KIND", "");
    POWER.addOnce(spec, "POWER", "");
    COMPLAINT.addOnce(spec, "WORD", "");
    RECENT.addMany(spec, "WORK", "what was worked on lately: ");
    ActOptions.addTo(spec);
    ReadingFlags.many(
        spec, "--have", "PART", "a part at hand, or none; if not given, all are; repeatable");
    ReadingFlags.many(
        spec, "--may", "WHO", "whose work you may do besides, such as plumber; repeatable");
    ReadingFlags.one(spec, "--site", "FILE", "the site's own shares, minutes and people");
    LearnOption.addTo(spec);
    ReadingFlags.flag(spec, "--demo", "take an invented sheet too");
  }

  DiagnoseOptions(ParseResult parsed, Surroundings here) throws UsageException {
    this.parsed = parsed;
    this.here = here;
    guide = new SiteOption(parsed, here).guide();
    learn = new LearnOption(parsed, here);
    kind = KIND.one(parsed);
    complaint = COMPLAINT.one(parsed);
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

  /** Asks for kind and complaint where they were not given; a session to go on with has them. */
  void askWhatIsMissing(Questions questions) throws Questions.Ended, UsageException {
    if (sessionExists()) {
      return;
    }
    while (kind.isEmpty()) {
      kind = choose(questions, "Kind", KIND);
    }
    while (complaint.isEmpty()) {
      complaint = choose(questions, "Complaint", COMPLAINT);
    }
  }

  private static <T> Optional<T> choose(Questions questions, String what, WordOption<T> words)
      throws Questions.Ended {
    return words.of(questions.ask(what + " (" + words.known() + ")", ""));
  }

  /**
   * The visit as it starts, or as it was left.
   *
   * @throws UsageException if something was not said or is not known
   */
  Diagnosis start() throws UsageException {
    Diagnosis visit = readLamp(sessionExists() ? goOn() : begin());
    for (Act act : ActOptions.given(parsed, guide)) {
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
            kind.get(), POWER.one(parsed), complaint.get(), RECENT.many(parsed), have(), may());
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

  private Optional<List<String>> have() throws UsageException {
    List<String> given = parsed.matchedOptionValue("--have", List.<String>of());
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
    may.addAll(MAY.many(parsed));
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

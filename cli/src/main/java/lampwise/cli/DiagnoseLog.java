package lampwise.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.file.FileException;
import lampwise.file.FileFault;
import lampwise.file.VisitLog;
import lampwise.service.Act;
import lampwise.service.Cause;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Remedy;
import lampwise.service.Step;
import lampwise.service.Visit;
import lampwise.service.Worklist;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** How {@code lampwise diagnose} ends a visit in a row of the visit log. */
final class DiagnoseLog {
  /** The variable that names the log where {@code --log} does not. */
  static final String VARIABLE = "LAMPWISE_LOG";

  private static final double MOST_MINUTES = 10_000;

  private final Surroundings here;
  private final Path log;
  private final String name;
  private final String fixture;
  private final ParseResult parsed;
  private final List<String> parts;
  private final List<String> before;
  private final List<String> after;
  private OptionalDouble minutes;
  private String note;
  private boolean asked;

  private DiagnoseLog(ParseResult parsed, Surroundings here, String name, String fixture)
      throws UsageException {
    this.parsed = parsed;
    this.here = here;
    this.name = name;
    this.fixture = fixture;
    try {
      log = here.folder().resolve(name);
    } catch (InvalidPathException e) {
      throw new UsageException("--log: no file can have the name " + Layout.clean(name));
    }
    parts = many("--part");
    before = figures("--before");
    after = figures("--after");
    note = ReadingFlags.text(parsed, "--note").orElse("");
    minutes = minutes();
  }

  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec, "--log", "FILE", "write a row here when the visit closes; else $" + VARIABLE);
    ReadingFlags.one(spec, "--fixture", "ID", "the fixture, needed for the log");
    ReadingFlags.one(spec, "--place", "TEXT", "where it is");
    ReadingFlags.one(spec, "--who", "NAME", "who is there");
    ReadingFlags.one(spec, "--minutes", "N", "how long the visit took");
    ReadingFlags.many(spec, "--part", "PART", "a part that was used up; repeatable");
    ReadingFlags.many(
        spec, "--before", "FIGURE", "measured before, such as \"static 410 kPa\"; repeatable");
    ReadingFlags.many(
        spec, "--after", "FIGURE", "measured after, such as \"volume 6.0 L\"; repeatable");
    ReadingFlags.one(spec, "--note", "TEXT", "anything else for the log");
  }

  /**
   * The log of a call.
   *
   * @return empty if neither an option nor the environment names one
   * @throws UsageException if a log is named without a fixture, or figures cannot be understood
   */
  static Optional<DiagnoseLog> of(ParseResult parsed, Surroundings here) throws UsageException {
    Optional<String> option = ReadingFlags.text(parsed, "--log");
    Optional<String> fixture = ReadingFlags.text(parsed, "--fixture").filter(id -> !id.isBlank());
    Optional<String> name = option.or(() -> here.variable(VARIABLE));
    if (name.isEmpty() || (option.isEmpty() && fixture.isEmpty())) {
      return Optional.empty();
    }
    if (fixture.isEmpty()) {
      throw new UsageException("--log needs --fixture ID, the fixture that the visit is to");
    }
    return Optional.of(new DiagnoseLog(parsed, here, name.get(), fixture.get().strip()));
  }

  private List<String> many(String option) {
    List<String> given = new ArrayList<>();
    if (parsed.hasMatchedOption(option)) {
      given.addAll(parsed.<List<String>>matchedOptionValue(option, List.of()));
    }
    return given;
  }

  private OptionalDouble minutes() throws UsageException {
    Optional<String> given = ReadingFlags.text(parsed, "--minutes");
    if (given.isEmpty()) {
      return OptionalDouble.empty();
    }
    double value = NumberOption.of("--minutes", given.get());
    if (!(value >= 0 && value <= MOST_MINUTES)) {
      throw new UsageException(
          "--minutes takes 0 to " + (int) MOST_MINUTES + ", not " + Layout.clean(given.get()));
    }
    return OptionalDouble.of(value);
  }

  private List<String> figures(String option) throws UsageException {
    List<String> figures = many(option);
    for (String figure : figures) {
      if (!isFigure(figure)) {
        throw new UsageException(
            option
                + " takes a name, a number and a unit, such as \"static 410 kPa\", not "
                + Layout.clean(figure));
      }
    }
    return figures;
  }

  /** Whether a text has a name, a number and a unit. */
  static boolean isFigure(String text) {
    return text.strip().matches("\\p{L}[^;]*? [0-9]+([.,][0-9]+)? *[^\\s;0-9][^\\s;]*");
  }

  /**
   * The visits to this fixture that the log has within 30 days.
   *
   * @return them in the log's order; none if there is no log yet
   * @throws FileException if there is a log and it has a fault
   */
  List<Visit> repeats() throws FileException {
    if (!Files.exists(log)) {
      return List.of();
    }
    LocalDate today = LocalDate.now(here.clock());
    List<Visit> lately = new ArrayList<>();
    for (Visit visit : VisitLog.read(log).visits()) {
      long days = ChronoUnit.DAYS.between(dayOf(visit), today);
      if (visit.fixture().equals(fixture) && days >= 0 && days <= Worklist.REPEAT_DAYS) {
        lately.add(visit);
      }
    }
    return lately;
  }

  /** A line or two on repeats, to show first; none without any. */
  List<String> lately(List<Visit> repeats) {
    return repeats.isEmpty()
        ? List.of()
        : VisitText.wrapped("REPEAT: ", said(repeats, LocalDate.now(here.clock())));
  }

  private static LocalDate dayOf(Visit visit) {
    return LocalDateTime.parse(visit.when()).toLocalDate();
  }

  private static String said(List<Visit> lately, LocalDate today) {
    Visit visit = lately.get(lately.size() - 1);
    Visit.Done done = visit.done();
    long days = ChronoUnit.DAYS.between(dayOf(visit), today);
    return String.format(
        Locale.ROOT,
        "%s was visited %s%s (%s): %s%s%s",
        Layout.clean(visit.fixture()),
        lately.size() > 1
            ? lately.size() + " times within " + Worklist.REPEAT_DAYS + " days, last "
            : "",
        days == 0 ? "today" : days == 1 ? "yesterday" : days + " days ago",
        dayOf(visit),
        visit.outcome().word(),
        done.cause().isEmpty() ? "" : "; cause " + Layout.clean(done.cause()),
        done.remedies().isEmpty()
            ? ""
            : "; tried " + Layout.clean(String.join(", ", done.remedies())));
  }

  /** Asks for what the log takes and no option gave; when the answers end, the rest is left out. */
  void ask(Diagnosis visit, Questions questions) {
    questions.say("");
    questions.say("For the visit log (an empty answer takes what stands in brackets, or nothing)");
    asked = true;
    Optional<Visit> old = earlier(visit);
    try {
      if (parts.isEmpty()) {
        askParts(visit, old.map(row -> row.done().parts()), questions);
      }
      askFigures(
          questions,
          "Figures before, such as static 410 kPa; volume 3.1 L",
          old.map(Visit::before),
          before);
      askFigures(questions, "Figures after", old.map(Visit::after), after);
      if (minutes.isEmpty()) {
        askMinutes(questions, old.map(row -> row.done().minutes()).orElse(minutes));
      }
      note = note.isEmpty() ? questions.ask("Note", old.map(Visit::note).orElse("")) : note;
    } catch (Questions.Ended e) {
      here.out().println();
    }
  }

  /** What the log has of this very visit already. */
  private Optional<Visit> earlier(Diagnosis visit) {
    if (visit.loggedRow().isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.ofNullable(VisitLog.read(log).byRow().get(visit.loggedRow().getAsInt()));
    } catch (FileException e) {
      return Optional.empty();
    }
  }

  private void askMinutes(Questions questions, OptionalDouble offered) throws Questions.Ended {
    String offer = offered.isPresent() ? Fixed.of(offered.getAsDouble(), 1, 0) : "";
    while (minutes.isEmpty()) {
      String answer = questions.ask("Minutes for the visit", offer);
      if (answer.isEmpty()) {
        return;
      }
      minutes = number(answer);
      if (minutes.isEmpty()) {
        questions.say("Not understood: " + answer + "; expected a number such as 25.");
      }
    }
  }

  private void askParts(Diagnosis visit, Optional<List<String>> old, Questions questions)
      throws Questions.Ended {
    Set<String> offered = new LinkedHashSet<>();
    tried(visit).forEach(remedy -> offered.addAll(remedy.parts()));
    String offer = String.join("; ", old.orElse(List.copyOf(offered)));
    String answer = questions.ask("Parts used, none if none", offer);
    if (!answer.equals("none")) {
      parts.addAll(split(answer));
    }
  }

  private static void askFigures(
      Questions questions, String question, Optional<List<String>> old, List<String> figures)
      throws Questions.Ended {
    String offer = String.join("; ", old.orElse(List.of()));
    while (figures.isEmpty()) {
      List<String> answer = split(questions.ask(question, offer));
      Optional<String> odd = answer.stream().filter(text -> !isFigure(text)).findFirst();
      if (odd.isEmpty()) {
        figures.addAll(answer);
        return;
      }
      questions.say("Not understood: " + odd.get() + "; expected a name, a number and a unit.");
    }
  }

  private static OptionalDouble number(String text) {
    try {
      double value = Double.parseDouble(text.replace(',', '.'));
      return value >= 0 && value <= MOST_MINUTES
          ? OptionalDouble.of(value)
          : OptionalDouble.empty();
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  private static List<String> split(String answer) {
    return Stream.of(answer.split(";")).map(String::strip).filter(text -> !text.isEmpty()).toList();
  }

  private static List<Remedy> tried(Diagnosis visit) {
    return visit.acts().stream()
        .filter(Act.Tried.class::isInstance)
        .map(act -> visit.guide().remedy(((Act.Tried) act).remedy()).orElseThrow())
        .toList();
  }

  /**
   * Writes the row, or the correction of the row that the visit already has.
   *
   * @return the visit, with its row
   * @throws FileException if nothing was written, and why
   */
  Diagnosis write(Diagnosis visit, Step.Close close) throws FileException {
    if (!asked) {
      earlier(visit).ifPresent(this::keepWhatIsNotSaidAnew);
    }
    Visit row =
        new Visit(
            LocalDateTime.now(here.clock()).truncatedTo(ChronoUnit.MINUTES).toString(),
            fixture,
            ReadingFlags.text(parsed, "--place").orElse(""),
            Optional.of(visit.situation().kind()),
            Optional.of(visit.situation().complaint()),
            visit.lamp(),
            findings(visit),
            new Visit.Done(
                visit.settled().map(Cause::id).orElse(""),
                tried(visit).stream().map(Remedy::id).toList(),
                parts,
                minutes),
            before,
            after,
            close.outcome(),
            ReadingFlags.text(parsed, "--who").orElse(""),
            note);
    OptionalInt written = visit.loggedRow();
    VisitLog.Added added =
        written.isEmpty()
            ? VisitLog.append(log, row)
            : VisitLog.correct(log, written.getAsInt(), row);
    added
        .setAside()
        .ifPresent(
            aside ->
                say(
                    "an unfinished row at the end of "
                        + name
                        + " was set aside in "
                        + aside.getFileName()));
    say(
        written.isEmpty()
            ? "row " + added.row() + " of " + name + ": " + fixture + ", " + row.outcome().word()
            : "row " + added.row() + " of " + name + " corrects row " + written.getAsInt());
    return visit.with(new Act.Logged(added.row()));
  }

  private void keepWhatIsNotSaidAnew(Visit old) {
    parts.addAll(parts.isEmpty() ? old.done().parts() : List.of());
    before.addAll(before.isEmpty() ? old.before() : List.of());
    after.addAll(after.isEmpty() ? old.after() : List.of());
    minutes = minutes.isEmpty() ? old.done().minutes() : minutes;
    note = note.isEmpty() ? old.note() : note;
  }

  private static List<Finding> findings(Diagnosis visit) {
    return visit.acts().stream()
        .filter(Act.Found.class::isInstance)
        .map(act -> ((Act.Found) act).finding())
        .toList();
  }

  /** A line beside the output, so that what is read by a program stays as it is. */
  private void say(String text) {
    here.err().println(Layout.clean("lampwise diagnose: " + text));
  }

  /** Says why no row was written, a line a fault. */
  void failed(FileException e) {
    for (FileFault fault : e.faults()) {
      here.err().println(Layout.clean(fault.toString()));
    }
  }
}

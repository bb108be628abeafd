package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;

/** Reads Lampwise logs strictly: every fault of the file with its line and column. */
final class LogReader {
  private static final List<String> KEYS =
      List.of("fixture", "window", "target", "event", "covered", "saw");

  private final SourceText source;
  private final FaultList faults;
  private final List<Recording> recordings = new ArrayList<>();
  private Section section = new Section(0, Optional.empty());

  private LogReader(SourceText source) {
    this.source = source;
    this.faults = new FaultList(source.name());
  }

  /** Whether a text is a Lampwise log: its first line that is not blank says so. */
  static boolean is(SourceText source) {
    return source.text().stripLeading().startsWith(LampwiseLog.FIRST);
  }

  /**
   * Reads a log.
   *
   * @throws FileException with every fault
   */
  static List<Recording> read(SourceText source) throws FileException {
    LogReader reader = new LogReader(source);
    List<String> lines = source.text().lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      reader.line(i + 1, lines.get(i));
    }
    reader.end();
    if (reader.recordings.isEmpty()) {
      reader.recordings.add(
          new BlinkLog(
              new Origin(source.name(), Optional.empty(), source.notes()),
              Marks.nothing(),
              List.of()));
    }
    reader.faults.throwIfAny();
    return reader.recordings;
  }

  /** What one fixture's lines say so far. */
  private static final class Section {
    final int line;
    final Optional<String> fixture;
    final List<Blink> blinks = new ArrayList<>();
    final List<Event> events = new ArrayList<>();
    final List<Window> covered = new ArrayList<>();
    final List<TargetSpan> targets = new ArrayList<>();
    Optional<Window> window = Optional.empty();
    Optional<String> said = Optional.empty();
    boolean nobody;
    boolean any;

    Section(int line, Optional<String> fixture) {
      this.line = line;
      this.fixture = fixture;
    }

    Marks marks() {
      boolean known = nobody || !targets.isEmpty();
      return new Marks(
          window, known ? Targets.during(targets) : Targets.unknown(), events, covered);
    }
  }

  private void line(int number, String raw) {
    int hash = raw.indexOf('#');
    String text = (hash < 0 ? raw : raw.substring(0, hash)).stripTrailing();
    LineCursor line = new LineCursor(text);
    if (line.atEnd()) {
      return;
    }
    try {
      if (!section.any && recordings.isEmpty() && section.line == 0) {
        version(line);
        section = new Section(number, Optional.empty());
      } else if (line.word("on")) {
        blink(line);
      } else {
        key(number, line);
      }
    } catch (LineCursor.Fault e) {
      faults.add(number, e.column(), e.reason());
    }
  }

  private static void version(LineCursor line) throws LineCursor.Fault {
    line.expect(LampwiseLog.FIRST);
    double version = line.number();
    line.end();
    if (version != LampwiseLog.VERSION) {
      throw line.fault("this version is not known; expected " + LampwiseLog.VERSION);
    }
  }

  private void key(int number, LineCursor line) throws LineCursor.Fault {
    String key = line.key();
    switch (key) {
      case "fixture" -> fixture(number, line);
      case "window" -> {
        if (section.window.isPresent()) {
          throw line.fault("the window was said already");
        }
        section.window = Optional.of(span(line));
      }
      case "target" -> target(line);
      case "event" -> event(line);
      case "covered" -> section.covered.add(span(line));
      case "saw" -> saw(line);
      default ->
          throw line.unknown(
              "unknown key "
                  + Wording.quote(key)
                  + "; expected on, "
                  + String.join(", ", KEYS)
                  + Wording.nearest(key, KEYS)
                      .map(near -> "; did you mean " + Wording.quote(near) + "?")
                      .orElse(""));
    }
    section.any = true;
  }

  private void fixture(int number, LineCursor line) throws LineCursor.Fault {
    String name = line.rest();
    if (name.isEmpty()) {
      throw line.fault("the name is missing; expected the fixture's name");
    }
    end();
    section = new Section(number, Optional.of(name));
  }

  private static Window span(LineCursor line) throws LineCursor.Fault {
    double from = line.number();
    line.expect("to");
    double to = line.number();
    line.word("s");
    line.end();
    if (!(to > from)) {
      throw line.fault("must end after it starts");
    }
    return new Window(from, to);
  }

  private void target(LineCursor line) throws LineCursor.Fault {
    boolean none = line.word("none");
    boolean all = !none && line.word("all");
    if (none ? !section.targets.isEmpty() : section.nobody) {
      throw line.fault("none cannot stand beside other targets");
    }
    if (none || all) {
      line.end();
      section.nobody = none;
      if (all) {
        section.targets.add(TargetSpan.always());
      }
      return;
    }
    Window span = span(line);
    section.targets.add(new TargetSpan(span.fromSeconds(), span.toSeconds()));
  }

  private void event(LineCursor line) throws LineCursor.Fault {
    List<String> words = new ArrayList<>();
    for (Event.Kind kind : Event.Kind.values()) {
      words.add(kind.word());
    }
    String word = line.token();
    Optional<Event.Kind> kind = Event.Kind.of(word);
    if (kind.isEmpty()) {
      throw line.unknown(
          Wording.quote(word) + " is no event; expected " + String.join(", ", words));
    }
    line.expect("at");
    double at = line.number();
    line.word("s");
    line.end();
    section.events.add(new Event(kind.get(), at));
  }

  private void saw(LineCursor line) throws LineCursor.Fault {
    if (section.said.isPresent() || !section.blinks.isEmpty()) {
      throw line.fault("a part has blinks or one saw, not both");
    }
    int column = line.column();
    String words = line.rest();
    try {
      section.said =
          Optional.of(
              words.equals(Description.NOTHING) ? words : Phrase.print(Phrase.parse(words)));
    } catch (PhraseException e) {
      String suggestion = e.suggestion().map(s -> "; try " + Wording.quote(s)).orElse("");
      throw new LineCursor.Fault(column + e.column() - 1, e.reason() + suggestion);
    }
  }

  private void blink(LineCursor line) throws LineCursor.Fault {
    int column = line.column();
    double on = line.number();
    double off = Double.NaN;
    if (line.word("off")) {
      off = line.number();
      if (!(off > on)) {
        throw line.fault("off must come after on");
      }
    }
    line.end();
    if (section.said.isPresent()) {
      throw new LineCursor.Fault(column, "a part has blinks or one saw, not both");
    }
    int last = section.blinks.size() - 1;
    if (last >= 0 && on < section.blinks.get(last).onSeconds()) {
      throw new LineCursor.Fault(column, "the times step back; expected blinks in order");
    }
    if (section.window.isPresent() && !section.window.get().contains(on)) {
      throw new LineCursor.Fault(column, "the blink lies outside the window");
    }
    section.blinks.add(new Blink(on, off));
    section.any = true;
  }

  /** Ends a part; one of which nothing was said is none, unless it names a fixture. */
  private void end() {
    Origin origin = new Origin(source.name(), section.fixture, source.notes());
    if (section.said.isPresent()) {
      recordings.add(new Description(origin, section.marks(), section.said.get()));
    } else if (section.any || section.fixture.isPresent()) {
      recordings.add(new BlinkLog(origin, section.marks(), section.blinks));
    }
  }
}

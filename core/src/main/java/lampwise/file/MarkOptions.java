package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;

/** Turns the user's options about a recording into its marks. */
final class MarkOptions {
  private final ReadOptions options;
  private final RecordingClock clock;
  private final Marks said;

  private MarkOptions(ReadOptions options, RecordingClock clock, Marks said) {
    this.options = options;
    this.clock = clock;
    this.said = said;
  }

  /**
   * Makes the marks.
   *
   * @param options what the user said
   * @param clock the recording's times
   * @param unsaid what is known of targets when no option says it
   * @throws OptionException if an option cannot be understood
   */
  static Marks marks(ReadOptions options, RecordingClock clock, Targets unsaid)
      throws OptionException {
    return marks(options, clock, Marks.nothing().withTargets(unsaid));
  }

  /**
   * Makes the marks of a recording that says some itself: each option replaces what it says of the
   * same thing, one end of the window too.
   *
   * @param options what the user said
   * @param clock the recording's times
   * @param said what the recording says
   * @throws OptionException if an option cannot be understood
   */
  static Marks marks(ReadOptions options, RecordingClock clock, Marks said) throws OptionException {
    MarkOptions reader =
        new MarkOptions(options, clock.isEmpty() ? start(options, clock) : clock, said);
    List<Event> events = reader.events();
    List<Window> covered = reader.coveredStretches();
    return new Marks(
        reader.window(),
        reader.targets(said.targets()),
        events.isEmpty() ? said.events() : events,
        covered.isEmpty() ? said.covered() : covered);
  }

  /** In an empty recording the start of the window, where it is a clock time, is 0. */
  private static RecordingClock start(ReadOptions options, RecordingClock clock) {
    try {
      if (options.from().isPresent()) {
        TimeText from = TimeText.parse(options.from().get().trim());
        return from.isClock() ? RecordingClock.emptyFrom(from) : clock;
      }
    } catch (TimeText.Fault e) {
      return clock; // the window is read again and says what is wrong with it
    }
    return clock;
  }

  private Optional<Window> window() throws OptionException {
    if (options.from().isEmpty() && options.to().isEmpty()) {
      return said.window();
    }
    double from =
        options.from().isPresent()
            ? clock.seconds("--from", options.from().get())
            : said.window().map(Window::fromSeconds).orElse(0.0);
    if (options.to().isEmpty() && !(clock.lastSeconds() >= from)) {
      throw new OptionException(
          clock.isEmpty()
              ? "--from needs --to, since the recording has no blink"
              : "--from "
                  + Numbers.text(from)
                  + " s lies after the end of the recording at "
                  + Numbers.text(clock.lastSeconds())
                  + " s; add --to");
    }
    double to =
        options.to().isPresent() ? clock.seconds("--to", options.to().get()) : clock.lastSeconds();
    if (!(to >= from)) {
      throw new OptionException(
          "--to "
              + Numbers.text(to)
              + " s lies before the start of the window at "
              + Numbers.text(from)
              + " s");
    }
    return Optional.of(new Window(from, to));
  }

  private Targets targets(Targets unsaid) throws OptionException {
    List<String> given = options.targets();
    if (given.isEmpty()) {
      return unsaid;
    }
    if (given.contains("none") || given.contains("all")) {
      if (given.stream().distinct().count() > 1) {
        throw new OptionException("--target: none and all cannot stand beside other targets");
      }
      return given.contains("none") ? Targets.none() : Targets.during(List.of(TargetSpan.always()));
    }
    List<TargetSpan> spans = new ArrayList<>();
    for (String span : given) {
      Window window = range("--target", span, "none, all or A..B");
      spans.add(new TargetSpan(window.fromSeconds(), window.toSeconds()));
    }
    return Targets.during(spans);
  }

  private List<Event> events() throws OptionException {
    List<Event> events = new ArrayList<>();
    for (String event : options.events()) {
      int at = event.indexOf('@');
      if (at < 0) {
        throw new OptionException(
            "--event: " + Numbers.quote(event) + " is no event; expected NAME@T");
      }
      String word = event.substring(0, at).trim();
      Optional<Event.Kind> kind = Event.Kind.of(word);
      if (kind.isEmpty()) {
        throw new OptionException(
            "--event: " + Numbers.quote(word) + " is no event; known are " + knownEvents());
      }
      events.add(new Event(kind.get(), clock.seconds("--event", event.substring(at + 1))));
    }
    return events;
  }

  private static String knownEvents() {
    List<String> words = new ArrayList<>();
    for (Event.Kind kind : Event.Kind.values()) {
      words.add(kind.word());
    }
    return String.join(", ", words);
  }

  private List<Window> coveredStretches() throws OptionException {
    List<Window> covered = new ArrayList<>();
    for (String stretch : options.covered()) {
      covered.add(range("--covered", stretch, "A..B"));
    }
    return covered;
  }

  private Window range(String option, String text, String expected) throws OptionException {
    int dots = text.indexOf("..");
    if (dots < 0) {
      throw new OptionException(
          option + ": " + Numbers.quote(text) + " cannot be read; expected " + expected);
    }
    double from = clock.seconds(option, text.substring(0, dots));
    double to = clock.seconds(option, text.substring(dots + 2));
    if (!(to > from)) {
      throw new OptionException(option + ": " + Numbers.quote(text) + " must end after it starts");
    }
    return new Window(from, to);
  }
}

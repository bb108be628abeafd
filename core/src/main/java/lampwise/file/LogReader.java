package lampwise.file;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;

/** Reads a Lampwise log, all of its faults in one go. */
final class LogReader {
  private static final List<String> KEYS =
      List.of("fixture", "window", "target", "event", "covered", "saw");
  private static final String RANGE = "a stretch such as 0 to 60 s";
  private static final String TARGET = "none, all, likely or a stretch such as 20 to 28 s";
  private static final String LINE =
      "a key such as window:, or a blink such as \"on 3.10 off 3.22\"";

  private final SourceText source;
  private final FaultList faults;
  private final List<LogPartBuilder> parts = new ArrayList<>();

  LogReader(SourceText source) {
    this.source = source;
    this.faults = new FaultList(source.name());
  }

  /**
   * Reads it.
   *
   * @return one part or more
   * @throws FileException with every fault
   */
  List<LogPart> read() throws FileException {
    Lines lines = Lines.all(source.text());
    boolean headed = false;
    while (lines.next()) {
      String line = lines.get();
      LogWords words = new LogWords(line, 0);
      boolean comment = !words.isAtEnd() && line.charAt(words.column() - 1) == '#';
      if (words.isAtEnd() || (comment && lines.line() > 1)) {
        continue;
      }
      try {
        if (headed) {
          readLine(line, lines.line(), words);
        } else {
          readHead(line, lines.line(), words);
          headed = true;
        }
      } catch (LogWords.Fault e) {
        faults.add(lines.line(), e.column(), e.reason());
        if (!headed) {
          faults.throwIfAny(); // of another version nothing more can be said
        }
      }
    }
    if (parts.isEmpty()) {
      parts.add(new LogPartBuilder(Optional.empty(), 1, faults));
    }
    List<LogPart> built = build();
    faults.throwIfAny();
    return built;
  }

  private List<LogPart> build() {
    Map<String, Integer> seen = new HashMap<>();
    Map<String, Integer> total = new HashMap<>();
    parts.forEach(part -> total.merge(part.fixture().orElse(""), 1, Integer::sum));
    List<LogPart> built = new ArrayList<>();
    for (LogPartBuilder part : parts) {
      String fixture = part.fixture().orElse("");
      int number = seen.merge(fixture, 1, Integer::sum);
      List<String> notes = new ArrayList<>(source.notes());
      if (total.getOrDefault(fixture, 0) > 1) {
        notes.add(
            "recording "
                + number
                + " of "
                + total.get(fixture)
                + (fixture.isEmpty() ? " without a fixture" : " of " + fixture)
                + ", from line "
                + part.line());
      }
      built.add(part.build(source.name(), notes));
    }
    return built;
  }

  private static void readHead(String line, int number, LogWords words) throws LogWords.Fault {
    int column = words.column();
    String expected = "\"" + LampwiseLog.KEY + ": " + LampwiseLog.VERSION + "\" in the first line";
    if (number > 1) {
      throw new LogWords.Fault(column, "expected " + expected + ", not below it");
    }
    int colon = line.indexOf(':');
    if (colon < 0 || !line.substring(column - 1, colon).equals(LampwiseLog.KEY)) {
      throw words.fault(expected);
    }
    LogWords value = new LogWords(line, colon + 1);
    int at = value.column();
    String version = value.word("the version " + LampwiseLog.VERSION).text();
    if (!version.equals(String.valueOf(LampwiseLog.VERSION))) {
      throw new LogWords.Fault(
          at,
          "the version "
              + Wording.quote(version)
              + " of the format is not known; this program reads "
              + LampwiseLog.VERSION);
    }
    value.end();
  }

  private void readLine(String line, int number, LogWords words) throws LogWords.Fault {
    if (words.isNext("on")) {
      readBlink(number, words);
      return;
    }
    int column = words.column();
    int end = column - 1;
    while (end < line.length() && line.charAt(end) != ':' && !Lines.isBlank(line.charAt(end))) {
      end++;
    }
    String key = line.substring(column - 1, end);
    if (end == line.length() || line.charAt(end) != ':') {
      throw words.fault(KEYS.contains(key) ? "a colon after " + key : LINE);
    }
    readKey(key, column, line, end + 1, number);
  }

  private void readKey(String key, int column, String line, int from, int number)
      throws LogWords.Fault {
    LogWords value = new LogWords(line, from);
    int at = value.column();
    switch (key) {
      case "fixture" -> startPart(line, from, number);
      case "window" -> part(number).window(range(value), number, column);
      case "target" -> readTarget(value, number, column);
      case "event" -> part(number).event(event(value));
      case "covered" -> part(number).covered(range(value));
      case "saw" -> part(number).saw(said(line.substring(at - 1), number, at), number, column);
      default -> throw unknown(key, column);
    }
  }

  private static LogWords.Fault unknown(String key, int column) {
    if (key.equals(LampwiseLog.KEY)) {
      return new LogWords.Fault(
          column, "a second log starts here; only one may stand in a file, of several fixtures");
    }
    String hint =
        key.length() > 40
            ? ""
            : Wording.nearest(key, KEYS)
                .map(nearest -> "; did you mean \"" + nearest + "\"?")
                .orElse("; known are " + Wording.list(KEYS));
    return new LogWords.Fault(column, "unknown key " + Wording.quote(key) + hint);
  }

  /** The part that a line belongs to. */
  private LogPartBuilder part(int number) {
    if (parts.isEmpty()) {
      parts.add(new LogPartBuilder(Optional.empty(), number, faults));
    }
    return parts.get(parts.size() - 1);
  }

  private void startPart(String line, int from, int number) {
    String fixture = trim(line.substring(from));
    parts.add(
        new LogPartBuilder(
            fixture.isEmpty() ? Optional.empty() : Optional.of(fixture), number, faults));
    Wording.unprintable(fixture)
        .ifPresent(
            c ->
                faults.add(
                    number,
                    from + 1,
                    "the fixture's name holds the character " + c + ", which is not text"));
  }

  /** A text without the blanks around it. */
  static String trim(String text) {
    int start = 0;
    int end = text.length();
    while (start < end && Lines.isBlank(text.charAt(start))) {
      start++;
    }
    while (end > start && Lines.isBlank(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(start, end);
  }

  private void readBlink(int number, LogWords words) throws LogWords.Fault {
    words.expect("on", LINE);
    int onColumn = words.column();
    double on = words.seconds("a time in seconds such as 3.10");
    int offColumn = 0;
    double off = Double.NaN;
    if (!words.isAtEnd()) {
      words.expect("off", "off or the end of the line");
      offColumn = words.column();
      off = words.seconds("a time in seconds such as 3.22");
      words.end();
      if (!(off > on)) {
        throw new LogWords.Fault(
            offColumn,
            "a blink must end after it starts: on "
                + Numbers.text(on)
                + ", off "
                + Numbers.text(off));
      }
    }
    part(number).blink(new Blink(on, off), number, onColumn);
  }

  private void readTarget(LogWords value, int number, int column) throws LogWords.Fault {
    for (String word : LogPartBuilder.WHOLE_TARGETS) {
      if (value.take(word)) {
        value.end();
        part(number).targets(word, number, column);
        return;
      }
    }
    int at = value.column();
    double from = value.take("start") ? Double.NEGATIVE_INFINITY : value.seconds(TARGET);
    value.expect("to", "\"to\", as in 20 to 28 s");
    boolean stays = value.take("end");
    double to = stays ? Double.POSITIVE_INFINITY : value.seconds("a time in seconds, or end");
    if (!stays) {
      value.expect("s", "the unit s");
    }
    value.end();
    if (!(to > from)) {
      throw new LogWords.Fault(at, "a target must leave after it comes; expected " + TARGET);
    }
    part(number).target(new TargetSpan(from, to), number, column);
  }

  /** A stretch with finite borders. */
  private static Window range(LogWords value) throws LogWords.Fault {
    int at = value.column();
    double from = value.seconds(RANGE);
    value.expect("to", "\"to\", as in 0 to 60 s");
    double to = value.seconds("a time in seconds");
    value.expect("s", "the unit s");
    value.end();
    if (!(to >= from)) {
      throw new LogWords.Fault(at, "a stretch must not end before it starts; expected " + RANGE);
    }
    return new Window(from, to);
  }

  private static Event event(LogWords value) throws LogWords.Fault {
    List<String> kinds = new ArrayList<>();
    for (Event.Kind kind : Event.Kind.values()) {
      kinds.add(kind.word());
    }
    int at = value.column();
    String expected = "an event (" + Wording.list(kinds) + ") such as power-up at 0 s";
    String word = value.word(expected).text();
    Optional<Event.Kind> kind = Event.Kind.of(word);
    if (kind.isEmpty()) {
      throw new LogWords.Fault(at, "expected " + expected + "; found " + Numbers.quote(word));
    }
    value.expect("at", "\"at\", as in " + word + " at 0 s");
    double seconds = value.seconds("a time in seconds");
    value.expect("s", "the unit s");
    value.end();
    return new Event(kind.get(), seconds);
  }

  private Optional<String> said(String words, int number, int column) {
    String text = trim(words);
    if (text.equals(Description.NOTHING)) {
      return Optional.of(Description.NOTHING);
    }
    if (text.isEmpty()) {
      faults.add(number, column, "expected a rhythm such as 3 blinks every 8 s, or nothing");
      return Optional.empty();
    }
    try {
      return Optional.of(Phrase.print(Phrase.parse(text)));
    } catch (PhraseException e) {
      faults.add(
          number,
          column + e.column() - 1,
          "saw: "
              + e.reason()
              + e.suggestion().map(s -> "; try \"" + Wording.printable(s) + '"').orElse(""));
      return Optional.empty();
    }
  }
}

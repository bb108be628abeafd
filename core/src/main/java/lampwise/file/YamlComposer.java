package lampwise.file;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/**
 * Builds nodes from the library's events. The library's own composer is not used: it nests as deep
 * as the file does, follows aliases and drops anchors and tags unseen.
 */
final class YamlComposer {
  /** How deep lists and tables may stand in each other. */
  static final int MOST_LEVELS = 16;

  /** The fault is told; nothing after it can be read. */
  private static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;
  }

  private final FaultList faults;
  private int line = 1;
  private int column = 1;

  YamlComposer(FaultList faults) {
    this.faults = faults;
  }

  /** The root of the only document; empty after a fault that hides the rest of the file. */
  Optional<YamlNode> read(String text, String expected) {
    LoadSettings settings = LoadSettings.builder().setCodePointLimit(StrictYaml.MOST_BYTES).build();
    try {
      Iterator<Event> events = new Parse(settings).parseString(text).iterator();
      next(events);
      Event start = next(events);
      if (start.getEventId() == Event.ID.StreamEnd) {
        faults.add(0, 0, "the file is empty; expected " + expected);
        return Optional.empty();
      }
      if (start instanceof DocumentStartEvent document && !document.getTags().isEmpty()) {
        faults.add(line, column, "tags are not allowed; leave the %TAG line out");
      }
      YamlNode root = node(next(events), events, 1);
      next(events);
      if (next(events).getEventId() != Event.ID.StreamEnd) {
        faults.add(line, column, "a second document starts; only one may stand in a file");
      }
      return Optional.of(root);
    } catch (Unreadable e) {
      return Optional.empty();
    }
  }

  private Event next(Iterator<Event> events) throws Unreadable {
    try {
      Event event = events.next();
      event.getStartMark().ifPresent(this::moveTo);
      return event;
    } catch (MarkedYamlEngineException e) {
      addSyntaxFault(e);
    } catch (RuntimeException e) {
      // The library lets a few bare ones through, such as for "\UFFFFFFFF" or %YAML 3.0.
      faults.add(line, column, "the YAML after this place cannot be read");
    }
    throw new Unreadable();
  }

  private void moveTo(Mark mark) {
    line = mark.getLine() + 1;
    column = mark.getColumn() + 1;
  }

  private void addSyntaxFault(MarkedYamlEngineException e) {
    String problem = e.getProblem();
    boolean unclosed = problem.contains("unexpected end of stream");
    (unclosed ? e.getContextMark() : Optional.<Mark>empty())
        .or(e::getProblemMark)
        .or(e::getContextMark)
        .ifPresent(this::moveTo);
    String context = Optional.ofNullable(e.getContext()).map(c -> c + ": ").orElse("");
    String hint =
        problem.startsWith("mapping values are not allowed")
            ? "; a text with a colon and a blank in it needs quotation marks"
            : "";
    faults.add(
        line,
        column,
        Wording.printable(Wording.onOneLine("broken YAML: " + context + problem + hint)));
  }

  private YamlNode node(Event event, Iterator<Event> events, int level) throws Unreadable {
    int startLine = line;
    int startColumn = column;
    if (event instanceof AliasEvent) {
      faults.add(startLine, startColumn, "aliases (*) are not allowed; write the value out");
      return new YamlNode.Faulty(startLine, startColumn);
    }
    if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      faults.add(startLine, startColumn, "anchors (&) are not allowed; write the value out");
    }
    if (event instanceof ScalarEvent scalar) {
      refuseTag(scalar.getTag());
      return text(scalar);
    }
    if (level > MOST_LEVELS) {
      faults.add(startLine, startColumn, "nested deeper than " + MOST_LEVELS + " levels");
      throw new Unreadable();
    }
    refuseTag(((CollectionStartEvent) event).getTag());
    return event instanceof MappingStartEvent
        ? table(startLine, startColumn, events, level)
        : items(startLine, startColumn, events, level);
  }

  private void refuseTag(Optional<String> tag) {
    if (tag.isPresent()) {
      faults.add(line, column, "tags (!) are not allowed; write the value alone");
    }
  }

  private YamlNode items(int startLine, int startColumn, Iterator<Event> events, int level)
      throws Unreadable {
    List<YamlNode> items = new ArrayList<>();
    Event event = next(events);
    while (event.getEventId() != Event.ID.SequenceEnd) {
      items.add(node(event, events, level + 1));
      event = next(events);
    }
    return new YamlNode.Items(startLine, startColumn, items);
  }

  private YamlNode table(int startLine, int startColumn, Iterator<Event> events, int level)
      throws Unreadable {
    List<YamlNode.Entry> entries = new ArrayList<>();
    Event event = next(events);
    while (event.getEventId() != Event.ID.MappingEnd) {
      YamlNode key = node(event, events, level + 1);
      YamlNode value = node(next(events), events, level + 1);
      if (key instanceof YamlNode.Text text) {
        entries.add(new YamlNode.Entry(text, value));
      } else if (!(key instanceof YamlNode.Faulty)) {
        faults.add(key, "a key must be a text; found " + key.what());
      }
      event = next(events);
    }
    return new YamlNode.Table(startLine, startColumn, entries);
  }

  private YamlNode text(ScalarEvent scalar) {
    String value = scalar.getValue();
    int marks = scalar.getScalarStyle() == ScalarStyle.PLAIN ? 0 : 1;
    boolean verbatim =
        scalar.getAnchor().isEmpty()
            && scalar.getTag().isEmpty()
            && width(scalar) == value.codePointCount(0, value.length()) + 2 * marks;
    return new YamlNode.Text(line, column, value, verbatim ? column + marks : 0);
  }

  /** How many characters the scalar takes in the file; -1 if it does not stand on one line. */
  private static int width(ScalarEvent scalar) {
    Optional<Mark> start = scalar.getStartMark();
    Optional<Mark> end = scalar.getEndMark();
    return start.isPresent() && end.isPresent() && start.get().getLine() == end.get().getLine()
        ? end.get().getColumn() - start.get().getColumn()
        : -1;
  }
}

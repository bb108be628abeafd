package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;

/** Gathers one part of a log and holds its lines against each other. */
final class LogPartBuilder {
  /** The words that say of targets all there is to say, beside no other. */
  static final List<String> WHOLE_TARGETS = List.of("none", "all", "likely");

  /** A line that may stand once. */
  private record Once(int line, int column) {}

  private final Optional<String> fixture;
  private final int line;
  private final FaultList faults;
  private final List<Blink> blinks = new ArrayList<>();
  private final List<Once> starts = new ArrayList<>();
  private final List<TargetSpan> spans = new ArrayList<>();
  private final List<Event> events = new ArrayList<>();
  private final List<Window> covered = new ArrayList<>();
  private Optional<Window> window = Optional.empty();
  private Optional<Once> windowAt = Optional.empty();
  private Optional<String> said = Optional.empty();
  private Optional<Once> saidAt = Optional.empty();
  private Optional<String> targetWord = Optional.empty();
  private Optional<Once> targetAt = Optional.empty();

  LogPartBuilder(Optional<String> fixture, int line, FaultList faults) {
    this.fixture = fixture;
    this.line = line;
    this.faults = faults;
  }

  Optional<String> fixture() {
    return fixture;
  }

  int line() {
    return line;
  }

  void window(Window value, int atLine, int column) {
    if (windowAt.isPresent()) {
      faults.add(atLine, column, twice("window", windowAt.get().line()));
      return;
    }
    windowAt = Optional.of(new Once(atLine, column));
    window = Optional.of(value);
  }

  /** Words that say all of the targets. */
  void targets(String word, int atLine, int column) {
    if (targetAt.isPresent()) {
      faults.add(atLine, column, word + besideTargets());
      return;
    }
    targetAt = Optional.of(new Once(atLine, column));
    targetWord = Optional.of(word);
  }

  void target(TargetSpan span, int atLine, int column) {
    if (targetWord.isPresent()) {
      faults.add(atLine, column, "a span" + besideTargets());
      return;
    }
    targetAt = targetAt.or(() -> Optional.of(new Once(atLine, column)));
    spans.add(span);
  }

  private String besideTargets() {
    return " cannot stand beside the target of line "
        + targetAt.map(Once::line).orElse(0)
        + "; expected either spans, or one of "
        + Wording.list(WHOLE_TARGETS)
        + " alone";
  }

  void event(Event event) {
    events.add(event);
  }

  void covered(Window stretch) {
    covered.add(stretch);
  }

  /** Words; empty if they cannot be understood, which has been said. */
  void saw(Optional<String> words, int atLine, int column) {
    if (saidAt.isPresent()) {
      faults.add(atLine, column, twice("saw", saidAt.get().line()));
      return;
    }
    refuseBoth(atLine, column, !starts.isEmpty());
    saidAt = Optional.of(new Once(atLine, column));
    said = words;
  }

  void blink(Blink blink, int atLine, int onColumn) {
    refuseBoth(atLine, 1, saidAt.isPresent() && starts.isEmpty());
    if (!blinks.isEmpty()) {
      Blink before = blinks.get(blinks.size() - 1);
      double earliest = before.hasOff() ? before.offSeconds() : before.onSeconds();
      if (!(blink.onSeconds() >= earliest)) {
        faults.add(
            atLine,
            onColumn,
            "the times step back from "
                + Numbers.text(earliest)
                + " to "
                + Numbers.text(blink.onSeconds())
                + "; expected blinks in order, each after the one before has ended");
        return;
      }
    }
    blinks.add(blink);
    starts.add(new Once(atLine, onColumn));
  }

  private void refuseBoth(int atLine, int column, boolean both) {
    if (both) {
      faults.add(
          atLine,
          column,
          "a part holds either blinks or saw, not both; start another part with fixture:");
    }
  }

  private static String twice(String key, int before) {
    return "the key \"" + key + "\" stands twice; it stood in line " + before + " already";
  }

  /** The part, once all of its lines were read; faults that show only now are added. */
  LogPart build(String name, List<String> notes) {
    window.ifPresent(this::refuseOutside);
    Targets targets =
        targetWord
            .map(LogPartBuilder::targetsOf)
            .orElse(spans.isEmpty() ? Targets.unknown() : Targets.during(spans));
    Marks marks = new Marks(window, targets, events, covered);
    return new LogPart(new Origin(name, fixture, notes), marks, List.copyOf(blinks), said);
  }

  private static Targets targetsOf(String word) {
    return switch (word) {
      case "none" -> Targets.none();
      case "all" -> Targets.during(List.of(TargetSpan.always()));
      default -> Targets.likely();
    };
  }

  private void refuseOutside(Window watched) {
    for (int i = 0; i < blinks.size(); i++) {
      if (!watched.contains(blinks.get(i).onSeconds())) {
        faults.add(
            starts.get(i).line(),
            starts.get(i).column(),
            "the blink at "
                + Numbers.text(blinks.get(i).onSeconds())
                + " s starts outside the window, "
                + Numbers.text(watched.fromSeconds())
                + " to "
                + Numbers.text(watched.toSeconds())
                + " s");
      }
    }
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.OptionException;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Rhythms;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.Scene;
import lampwise.sim.Scenes;
import lampwise.sim.SimulationException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** What happens before the lamp in each recording, as the options say. */
final class SceneOptions {
  private static final String ALL = "all";
  private static final double USUAL_SECONDS = 60;
  private static final double MOST_SECONDS = 7 * 86_400;

  private final CodeSheet sheet;
  private final double seconds;
  private final List<LampState> states;
  private final List<Rhythm> unlisted;
  private final boolean drawn;
  private final List<Act> later;
  private final Optional<Marks> marks;
  private final boolean unmarked;
  private final Scene.Clock clock;

  private SceneOptions(ParseResult parsed, CodeSheet sheet) throws UsageException {
    this.sheet = sheet;
    Optional<String> state = ReadingFlags.text(parsed, "--state");
    Optional<String> phrase = ReadingFlags.text(parsed, "--phrase");
    List<String> mixed = parsed.matchedOptionValue("--unlisted", List.<String>of());
    if ((state.isPresent() ? 1 : 0) + (phrase.isPresent() ? 1 : 0) + (mixed.isEmpty() ? 0 : 1)
        > 1) {
      throw new UsageException("--state, --phrase and --unlisted do not go together");
    }
    drawn = state.isEmpty() && phrase.isEmpty();
    seconds = seconds(ReadingFlags.text(parsed, "--seconds"));
    states = state.isPresent() ? states(state.get(), sheet) : List.of();
    unlisted =
        phrase.isPresent()
            ? List.of(rhythm("--phrase", phrase.get(), sheet))
            : rhythms("--unlisted", mixed, sheet);
    later = later(parsed.matchedOptionValue("--then", List.<String>of()), seconds, sheet);
    marks = marks(parsed);
    unmarked = parsed.hasMatchedOption("--unmarked");
    clock = clock(ReadingFlags.text(parsed, "--wander"), sheet);
  }

  /** Adds the options to a command. */
  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec,
        "--state",
        "NAME|all",
        "the state of the lamp; all for each in turn; drawn by the sheet's weights if not given");
    ReadingFlags.one(spec, "--phrase", "PHRASE", "instead: a rhythm that the sheet does not list");
    ReadingFlags.many(
        spec,
        "--unlisted",
        "PHRASE",
        "with neither: a rhythm that is shown instead in 5 % of the recordings; repeatable");
    ReadingFlags.many(spec, "--then", "STATE@T", "the lamp changes to a state at T; repeatable");
    ReadingFlags.one(spec, "--seconds", "SECONDS", "how long it is watched; 60 if not given");
    ReadingFlags.one(
        spec,
        "--wander",
        "FRACTION",
        "how far the unit's clock wanders in an hour, standard deviation; 0 if not given");
    ReadingFlags.many(
        spec, "--target", "none|all|A..B", "when somebody is before the sensor; repeatable");
    ReadingFlags.many(
        spec, "--event", "NAME@T", "power-up, button, flush or door, and when; repeatable");
    ReadingFlags.flag(spec, "--unmarked", "the recording does not say targets and events");
  }

  /**
   * Reads the options.
   *
   * @throws UsageException if they ask for something that cannot be
   */
  static SceneOptions read(ParseResult parsed, CodeSheet sheet) throws UsageException {
    return new SceneOptions(parsed, sheet);
  }

  /** How many kinds of recordings there are: one for each state if all are asked for. */
  int kinds() {
    return Math.max(1, states.size());
  }

  /** The states in a few words. */
  String said() {
    if (states.size() == 1) {
      return states.get(0).name();
    }
    return drawn
        ? "states drawn by weight"
        : states.isEmpty() ? "an unlisted rhythm" : "all " + states.size() + " states";
  }

  /**
   * What happens in a recording.
   *
   * @param number its number, from 1
   * @param chance where numbers come from
   * @throws SimulationException if the parts do not go together
   */
  Scene scene(int number, Chance chance) {
    Scene scene = first(number, later.isEmpty() ? seconds : later.get(0).fromSeconds(), chance);
    if (!later.isEmpty()) {
      scene = changing(scene, chance);
    }
    scene = scene.withClock(clock);
    if (marks.isPresent()) {
      scene = scene.with(marks.get().targets().spans(), marks.get().events(), true);
    }
    return unmarked ? scene.with(scene.targets(), scene.events(), false) : scene;
  }

  /** The state that the lamp begins with, for as long as it is watched in it. */
  private Scene first(int number, double length, Chance chance) {
    if (drawn) {
      return Scenes.drawn(sheet, unlisted, length, chance);
    }
    if (states.isEmpty()) {
      return Scene.of(sheet, Act.unlisted(unlisted.get(0)), length);
    }
    return Scenes.showing(sheet, states.get((number - 1) % states.size()), length, chance);
  }

  /** A scene of the first state with those that come later, each with what it shows with. */
  private Scene changing(Scene first, Chance chance) {
    List<Act> acts = new ArrayList<>(first.acts());
    List<TargetSpan> targets = new ArrayList<>();
    double change = later.get(0).fromSeconds();
    add(targets, first.targets(), 0, Double.NEGATIVE_INFINITY, change);
    List<Event> events = new ArrayList<>(first.events());
    boolean marked = first.marked();
    for (int i = 0; i < later.size(); i++) {
      Act act = later.get(i);
      double from = act.fromSeconds();
      boolean last = i + 1 == later.size();
      double to = last ? seconds : later.get(i + 1).fromSeconds();
      LampState state = sheet.state(act.state()).orElseThrow();
      Scene part = Scenes.showing(sheet, state, to - from, chance.branch(i));
      acts.add(act);
      part.events().forEach(event -> events.add(new Event(event.kind(), from + event.atSeconds())));
      add(targets, part.targets(), from, from, last ? Double.POSITIVE_INFINITY : to);
      marked |= part.marked();
    }
    return new Scene(
        new Window(0, seconds), acts, targets, events, marked, first.clock(), first.blinkSeconds());
  }

  /** Adds spans, moved later and cut to a stretch. */
  private static void add(
      List<TargetSpan> all, List<TargetSpan> more, double later, double from, double to) {
    for (TargetSpan span : more) {
      double start = Math.max(from, later + span.fromSeconds());
      double end = Math.min(to, later + span.toSeconds());
      if (end > start) {
        all.add(new TargetSpan(start, end));
      }
    }
  }

  private static List<LampState> states(String name, CodeSheet sheet) throws UsageException {
    return name.equals(ALL) && sheet.state(ALL).isEmpty()
        ? sheet.states()
        : List.of(state("--state", name, sheet));
  }

  private static LampState state(String option, String name, CodeSheet sheet)
      throws UsageException {
    Optional<LampState> state = sheet.state(name);
    if (state.isEmpty()) {
      throw new UsageException(
          option
              + ": the sheet has no state "
              + (name.isEmpty() ? "\"\"" : Layout.clean(name))
              + "; "
              + Near.said(name, sheet.states().stream().map(LampState::name).toList()));
    }
    return state.get();
  }

  private static double seconds(Optional<String> given) throws UsageException {
    if (given.isEmpty()) {
      return USUAL_SECONDS;
    }
    double seconds = NumberOption.of("--seconds", given.get());
    if (!(seconds > 0 && seconds <= MOST_SECONDS)) {
      throw new UsageException(
          "--seconds takes a number over 0 and at most 604800 (a week), not "
              + Layout.clean(given.get()));
    }
    return seconds;
  }

  private static Scene.Clock clock(Optional<String> wander, CodeSheet sheet) throws UsageException {
    double fraction = wander.isPresent() ? NumberOption.of("--wander", wander.get()) : 0;
    try {
      return new Scene.Clock(sheet.clockTolerance(), fraction);
    } catch (SimulationException e) {
      throw new UsageException("--wander: " + Main.oneLine(String.valueOf(e.getMessage())));
    }
  }

  private static List<Rhythm> rhythms(String option, List<String> phrases, CodeSheet sheet)
      throws UsageException {
    List<Rhythm> rhythms = new ArrayList<>();
    for (String phrase : phrases) {
      rhythms.add(rhythm(option, phrase, sheet));
    }
    return rhythms;
  }

  /** A rhythm that the sheet does not list. */
  private static Rhythm rhythm(String option, String phrase, CodeSheet sheet)
      throws UsageException {
    String said = option + ": " + Layout.clean(phrase) + ": ";
    try {
      Rhythm rhythm = Phrase.parse(phrase.strip());
      for (LampState state : sheet.states()) {
        if (Rhythms.sameLamp(rhythm, state.rhythm())) {
          throw new UsageException(
              said + "the sheet lists this rhythm; take --state " + state.name());
        }
      }
      return rhythm;
    } catch (PhraseException e) {
      throw new UsageException(said + Main.oneLine(String.valueOf(e.getMessage())));
    }
  }

  private static List<Act> later(List<String> given, double seconds, CodeSheet sheet)
      throws UsageException {
    List<Act> later = new ArrayList<>();
    double before = 0;
    for (String change : given) {
      int at = change.lastIndexOf('@');
      if (at < 0) {
        throw new UsageException("--then takes STATE@T, not " + Layout.clean(change));
      }
      LampState state = state("--then", change.substring(0, at).strip(), sheet);
      double from = NumberOption.of("--then " + state.name(), change.substring(at + 1));
      if (!(from > before && from < seconds)) {
        throw new UsageException(
            "--then: "
                + Layout.clean(change)
                + " must come after "
                + Fixed.of(before, 3, 0)
                + " s and before the end at "
                + Fixed.of(seconds, 3, 0)
                + " s");
      }
      later.add(Act.of(state).from(from));
      before = from;
    }
    return later;
  }

  /** The targets and events that were asked for; empty if neither was. */
  private static Optional<Marks> marks(ParseResult parsed) throws UsageException {
    ReadOptions none = ReadOptions.none();
    ReadOptions options =
        new ReadOptions(
            none.shape(),
            none.column(),
            none.time(),
            none.unit(),
            LightCurve.Lit.BRIGHTER,
            none.from(),
            none.to(),
            parsed.matchedOptionValue("--target", List.<String>of()),
            parsed.matchedOptionValue("--event", List.<String>of()),
            none.covered());
    if (options.targets().isEmpty() && options.events().isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(RecordingReader.described("nothing", options).marks());
    } catch (OptionException e) {
      throw new UsageException(Layout.clean(String.valueOf(e.getMessage())));
    }
  }
}

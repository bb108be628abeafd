package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.DrawnRhythm.Pulse;

/**
 * How long one has to watch a unit, and what one has to do to it, before its state can be told.
 *
 * @param restSeconds how long to watch before anything is done; zero where that tells nothing
 * @param tells what has to be done besides, any of these; empty if nothing has to be, or nothing
 *     helps
 * @param afterSeconds how long to watch after it
 * @param alike the states that cannot be told from it even so
 * @param why in words
 */
record DrillNeed(
    double restSeconds,
    List<DrillAct.Kind> tells,
    double afterSeconds,
    List<String> alike,
    String why) {
  /** What is not told by then is not told by watching, seconds (chosen). */
  static final double HORIZON_SECONDS = 240;

  private static final int ROUNDS = 2;
  private static final double LEAST_SECONDS = 5;
  private static final double CHECK_SECONDS = 5;
  private static final double STILL_SECONDS = 1;

  DrillNeed {
    tells = List.copyOf(tells);
    alike = List.copyOf(alike);
  }

  /** The whole time, seconds. */
  double seconds() {
    return restSeconds + afterSeconds;
  }

  /** What a unit needs. */
  static DrillNeed of(CodeSheet sheet, DrillUnit unit) {
    DrillLight asked = unit.asked();
    if (asked.isDark()) {
      return dark(sheet, unit);
    }
    return atRest(asked.state()) ? running(sheet, unit) : begun(sheet, asked);
  }

  /** The acts that a time at which a lamp is seen follows. */
  static List<DrillAct.Kind> kinds(Seen seen) {
    return switch (seen) {
      case ALWAYS, IDLE ->
          List.of(
              DrillAct.Kind.HAND_IN,
              DrillAct.Kind.HAND_OUT,
              DrillAct.Kind.POWER_ON,
              DrillAct.Kind.BUTTON);
      case TARGET -> List.of(DrillAct.Kind.HAND_IN);
      case AFTER_TARGET -> List.of(DrillAct.Kind.HAND_OUT);
      case AFTER_POWER_UP -> List.of(DrillAct.Kind.POWER_ON);
      case AFTER_FLUSH, WHILE_RUNNING, AFTER_BUTTON, SET_UP -> List.of(DrillAct.Kind.BUTTON);
    };
  }

  /** Whether a state's lamp does what it does without anything done to the unit. */
  static boolean atRest(LampState state) {
    boolean once =
        state.rhythm() instanceof Rhythm.Blinking blinking
            && blinking.cycle() instanceof Cycle.Parts parts
            && parts.ending() instanceof Ending.Once;
    return !once && (state.seen() == Seen.ALWAYS || state.seen() == Seen.IDLE);
  }

  private static DrillNeed running(CodeSheet sheet, DrillUnit unit) {
    DrillLight asked = unit.asked();
    DrillApart apart = new DrillApart(sheet, HORIZON_SECONDS);
    List<Blink> shown = unit.blinks(List.of(), 0, HORIZON_SECONDS);
    double rounds = rounds(asked, shown);
    double longest = rounds;
    Optional<LampState> last = Optional.empty();
    List<String> alike = new ArrayList<>();
    for (LampState other : sheet.states()) {
      if (!other.equals(asked.state()) && atRest(other)) {
        double told = apart.seconds(shown, asked.rhythm().cycleSeconds(), other, false);
        if (Double.isInfinite(told)) {
          alike.add(other.name());
        } else if (told > longest) {
          longest = told;
          last = Optional.of(other);
        }
      }
    }
    String why =
        asked.rhythm().cycleSeconds() < Double.POSITIVE_INFINITY
            ? "Two whole rounds of " + Words.duration(asked.rhythm().cycleSeconds()) + " tell it"
            : "It stays lit for longer than it would in any other state";
    why +=
        last.map(other -> ", then what tells it from " + named(other) + ".").orElse(".")
            + alikeText(alike);
    return new DrillNeed(longest, List.of(), 0, alike, why);
  }

  /**
   * How long a lamp that runs on by itself can be watched, in whole seconds, with another state of
   * the sheet still as good; zero if it is plain within the first second.
   */
  static double openSeconds(CodeSheet sheet, DrillUnit unit) {
    DrillApart apart = new DrillApart(sheet, HORIZON_SECONDS);
    List<Blink> shown = unit.blinks(List.of(), 0, HORIZON_SECONDS);
    double cycle = unit.asked().rhythm().cycleSeconds();
    double open = 0;
    for (LampState other : sheet.states()) {
      if (!other.equals(unit.asked().state()) && atRest(other)) {
        double told = apart.seconds(shown, cycle, other, false);
        open = Math.max(open, Math.ceil(told) - 1);
      }
    }
    return open;
  }

  /** Until two rounds are over, the first blink of which is seen from its start. */
  private static double rounds(DrillLight asked, List<Blink> shown) {
    double cycle = asked.rhythm().cycleSeconds();
    if (Double.isInfinite(cycle)) {
      return LEAST_SECONDS;
    }
    double first = 0;
    for (int i = shown.size() - 1; i >= 0; i--) {
      first = shown.get(i).onSeconds() > 0 ? shown.get(i).onSeconds() : first;
    }
    double lit = asked.rhythm().cycle().stream().mapToDouble(Pulse::lengthSeconds).min().orElse(0);
    return Math.max(LEAST_SECONDS, first + ROUNDS * cycle + Math.min(lit, cycle));
  }

  private static DrillNeed begun(CodeSheet sheet, DrillLight asked) {
    DrillApart apart = new DrillApart(sheet, HORIZON_SECONDS);
    List<DrillAct.Kind> kinds = kinds(asked.state().seen());
    List<Blink> shown = asked.started(asked.delaySeconds(), 0, HORIZON_SECONDS);
    double after;
    if (!asked.goesOn()) {
      after = asked.delaySeconds() + asked.onceSeconds() + STILL_SECONDS;
    } else if (Double.isInfinite(asked.rhythm().cycleSeconds())) {
      after = asked.delaySeconds() + asked.rhythm().preludeSeconds() + LEAST_SECONDS;
    } else {
      double rounds = ROUNDS * asked.rhythm().cycleSeconds();
      after =
          asked.delaySeconds() + asked.rhythm().preludeSeconds() + Math.max(LEAST_SECONDS, rounds);
    }
    List<String> alike = new ArrayList<>();
    for (LampState other : sheet.states()) {
      boolean sameTime = !atRest(other) && kinds(other.seen()).equals(kinds);
      if (!other.equals(asked.state()) && sameTime) {
        double told = apart.seconds(shown, asked.rhythm().cycleSeconds(), other, true);
        if (Double.isInfinite(told)) {
          alike.add(other.name());
        } else {
          after = Math.max(after, told);
        }
      }
    }
    String why = upper(whatToDo(kinds)) + "; it shows only then." + alikeText(alike);
    return new DrillNeed(0, kinds, after, alike, why);
  }

  private static DrillNeed dark(CodeSheet sheet, DrillUnit unit) {
    LampState asked = unit.asked().state();
    DrillApart apart = new DrillApart(sheet, HORIZON_SECONDS);
    double rest = LEAST_SECONDS;
    Optional<LampState> last = Optional.empty();
    List<String> alike = new ArrayList<>();
    // A unit in order shows something after this; one that is not stays dark.
    List<DrillAct.Kind> tells = new ArrayList<>();
    for (LampState other : sheet.states()) {
      if (!other.equals(asked) && atRest(other)) {
        double told = apart.seconds(List.of(), Double.POSITIVE_INFINITY, other, false);
        if (told > rest && told < Double.POSITIVE_INFINITY) {
          rest = told;
          last = Optional.of(other);
        } else if (Double.isInfinite(told) && other.seen() == asked.seen()) {
          alike.add(other.name());
        }
      }
    }
    for (LampState other : DrillUnit.shownBy(sheet, inOrder(sheet, asked))) {
      if (!atRest(other) && other.seen() != Seen.SET_UP && isLit(other)) {
        kinds(other.seen()).stream().filter(kind -> !tells.contains(kind)).forEach(tells::add);
      }
    }
    String longest = Words.duration(rest - DrillApart.NOTICED_SECONDS);
    String waits =
        last.map(
                other ->
                    "The longest dark of a lamp that blinks is " + longest + ", of " + named(other))
            .orElse("Nothing on the sheet blinks with a long dark");
    String check =
        tells.isEmpty()
            ? ". Nothing tells the dark states apart."
            : ". After that " + whatToDo(tells) + ": a unit in order then shows a light.";
    List<String> left = new ArrayList<>(alike);
    if (tells.isEmpty()) {
      sheet.states().stream()
          .filter(other -> !other.equals(asked) && !left.contains(other.name()) && !isLit(other))
          .forEach(other -> left.add(other.name()));
    }
    return new DrillNeed(
        rest, tells, tells.isEmpty() ? 0 : CHECK_SECONDS, left, waits + check + alikeText(left));
  }

  /** The state itself if its unit is in order, else one in which a unit is. */
  private static LampState inOrder(CodeSheet sheet, LampState asked) {
    return asked.seen() != Seen.ALWAYS
        ? asked
        : sheet.states().stream()
            .filter(state -> state.seen() != Seen.ALWAYS && state.seen() != Seen.SET_UP)
            .findFirst()
            .orElse(asked);
  }

  static boolean isLit(LampState state) {
    return !(state.rhythm() instanceof Rhythm.Dark);
  }

  private static String whatToDo(List<DrillAct.Kind> kinds) {
    List<String> words = new ArrayList<>();
    for (DrillAct.Kind kind : kinds) {
      switch (kind) {
        case HAND_IN -> words.add("put a hand in");
        case HAND_OUT -> words.add(kinds.contains(DrillAct.Kind.HAND_IN) ? "out" : "take it out");
        case POWER_ON -> words.add("switch the power off and on");
        case BUTTON -> words.add("press the button");
        case POWER_OFF -> {}
      }
    }
    return String.join(" or ", words).replace("put a hand in or out", "put a hand in and out");
  }

  private static String named(LampState state) {
    return state.name() + " (" + Phrase.print(state.rhythm()) + ")";
  }

  private static String alikeText(List<String> alike) {
    return alike.isEmpty()
        ? ""
        : " Nothing that can be done here tells it from " + String.join(", ", alike) + ".";
  }

  private static String upper(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}

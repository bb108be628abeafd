package lampwise.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a label says beside the light: when it is seen, what ends it, what it means.
 *
 * @param light the words about the light that are left
 * @param seen when it is seen
 * @param brief whether it then shows for a moment, not as long as something lasts
 * @param means what the words say of the unit
 * @param clearedBy what ends it
 * @param notes what a sheet cannot hold
 */
record LabelContext(
    String light,
    Optional<Seen> seen,
    boolean brief,
    Optional<String> means,
    Optional<String> clearedBy,
    List<String> notes) {
  /** Words that begin such a clause. */
  private static final List<String> STARTS =
      List.of(
          "as long as",
          "as soon as",
          "for the first",
          "for each user",
          "for every user",
          "when",
          "whenever",
          "while",
          "after",
          "until",
          "till",
          "if",
          "during",
          "upon");

  /** Whole turns of speech without such a word. */
  private static final List<String> TURNS =
      List.of("at power-up", "on power-up", "in standby", "at rest", "at start", "in set-up");

  /** Splits the words of one state. */
  static LabelContext of(String words) {
    LabelContext context =
        new LabelContext(
            words, Optional.empty(), false, Optional.empty(), Optional.empty(), List.of());
    for (String turn : TURNS) {
      int at = LabelText.find(context.light, turn, 0);
      if (at >= 0) {
        context = context.with(at, at + turn.length(), turn);
      }
    }
    int at = start(context.light);
    while (at >= 0) {
      context = context.with(at, end(context.light, at), context.light.substring(at));
      at = start(context.light);
    }
    return context;
  }

  /** Where the first clause begins that speaks of something else than the light; -1 for none. */
  private static int start(String text) {
    int first = -1;
    for (String start : STARTS) {
      int at = LabelText.find(text, start, 0);
      while (at >= 0 && !start.startsWith("for") && isTimed(text, at + start.length())) {
        at = LabelText.find(text, start, at + 1);
      }
      first = at >= 0 && (first < 0 || at < first) ? at : first;
    }
    return first;
  }

  /** {@code After 3 s} and {@code after each} speak of the light. */
  private static boolean isTimed(String text, int end) {
    String rest = text.substring(end).strip();
    return rest.isEmpty()
        || (rest.charAt(0) >= '0' && rest.charAt(0) <= '9')
        || rest.startsWith("each flash")
        || rest.startsWith("every flash")
        || rest.startsWith("that");
  }

  private static int end(String text, int start) {
    int end = text.length();
    for (int i = start; i < text.length(); i++) {
      char c = text.charAt(i);
      if ((c == ',' || c == ';' || c == '.')
          && (i + 1 == text.length() || text.charAt(i + 1) == ' ')) {
        end = i;
        break;
      }
    }
    for (String next : STARTS) {
      int at = LabelText.find(text, next, start + 1);
      boolean nested = text.substring(start, end).startsWith("for the first");
      if (at > start && at < end && !nested && !isTimed(text, at + next.length())) {
        end = at;
      }
    }
    return end;
  }

  /** Takes one clause out. */
  private LabelContext with(int start, int end, String from) {
    String clause = LabelText.trimmed(light.substring(start, end));
    String joined =
        LabelText.trimmed(
            LabelText.trimmed(light.substring(0, start)) + " " + light.substring(end).strip());
    if (from.startsWith("for the first")) {
      List<String> more = new ArrayList<>(notes);
      more.add("a sheet does not hold that it is so only " + clause);
      int dark = LabelText.find(joined, "then dark", 0);
      String kept = dark > 0 ? LabelText.trimmed(joined.substring(0, dark)) : joined;
      Optional<Seen> when = seen.or(() -> Optional.of(Seen.TARGET).filter(s -> hasUser(kept)));
      Optional<Seen> start2 = when.or(() -> Optional.of(Seen.AFTER_POWER_UP));
      return new LabelContext(
          kept, start2, true, means.or(() -> Optional.of(words(clause))), clearedBy, more);
    }
    Optional<Seen> when = seen(clause);
    boolean lasting = LabelText.hasAny(clause, "while", "as long as", "during", "until", "till");
    if (LabelText.hasAny(clause, "until", "till") && when.isEmpty()) {
      Optional<String> by = Optional.of(afterWord(clause)).filter(s -> !s.isEmpty());
      return new LabelContext(joined, seen, brief, means, clearedBy.or(() -> by), notes);
    }
    if (when.isEmpty()) {
      Optional<String> said = Optional.of(afterWord(clause)).filter(s -> !s.isEmpty());
      return new LabelContext(joined, seen, brief, means.or(() -> said), clearedBy, notes);
    }
    boolean moment = !lasting && when.get() != Seen.IDLE;
    return new LabelContext(joined, seen.or(() -> when), brief || moment, means, clearedBy, notes);
  }

  private static boolean hasUser(String text) {
    return LabelText.hasAny(
        text, "user*", "hand*", "person", "people", "you", "somebody", "someone");
  }

  private static String words(String clause) {
    return "only " + clause;
  }

  private static String afterWord(String clause) {
    for (String start : STARTS) {
      if (clause.startsWith(start + " ")) {
        return LabelText.trimmed(clause.substring(start.length()));
      }
    }
    return "";
  }

  /** When a lamp is seen, from a clause such as {@code while water runs}. */
  static Optional<Seen> seen(String clause) {
    boolean target =
        hasUser(clause)
            || LabelText.hasAny(
                clause, "target*", "object*", "body", "he", "she", "card", "sensor sees");
    if (LabelText.hasAny(clause, "nobody", "no one", "no user", "no hand", "no target", "idle")
        || LabelText.hasAny(clause, "standby", "stand-by", "at rest", "nothing is there")) {
      return Optional.of(Seen.IDLE);
    }
    if (LabelText.hasAny(clause, "set-up", "setup", "set up", "setting*", "learn*", "being set")) {
      return Optional.of(Seen.SET_UP);
    }
    if (LabelText.hasAny(clause, "button*", "override", "pressed", "key")) {
      return Optional.of(Seen.AFTER_BUTTON);
    }
    boolean change = LabelText.hasAny(clause, "are pulled", "is pulled", "low", "dead", "empty");
    if (!change
        && (LabelText.hasAny(clause, "power*", "start", "supply", "plugged")
            || LabelText.hasAny(clause, "cells", "cell", "batter*"))) {
      return Optional.of(Seen.AFTER_POWER_UP);
    }
    if (LabelText.hasAny(
            clause, "walks away", "walked away", "leave*", "left", "goes", "gone", "away")
        && target) {
      return Optional.of(Seen.AFTER_TARGET);
    }
    if (LabelText.hasAny(clause, "water", "running", "runs", "valve is open", "flowing")) {
      return Optional.of(Seen.WHILE_RUNNING);
    }
    if (LabelText.hasAny(clause, "flush*")) {
      return Optional.of(
          LabelText.hasAny(clause, "while", "during", "as long as")
              ? Seen.WHILE_RUNNING
              : Seen.AFTER_FLUSH);
    }
    return target ? Optional.of(Seen.TARGET) : Optional.empty();
  }

  /** The condition that some words about the unit speak of; empty if none. */
  static Optional<Condition> condition(String words) {
    boolean power = LabelText.hasAny(words, "cell*", "batter*", "power", "supply");
    if (power && LabelText.hasAny(words, "dead", "empty", "missing", "no power", "none", "flat")) {
      return Optional.of(Condition.POWER_MISSING);
    }
    if (power && !LabelText.hasAny(words, "power-up", "power up")) {
      return Optional.of(Condition.POWER_LOW);
    }
    if (LabelText.hasAny(words, "store", "storage", "cleaning", "held", "switched off", "locked")) {
      return Optional.of(Condition.HELD_OFF);
    }
    if (LabelText.hasAny(words, "hygiene", "by the clock", "timed flush")) {
      return Optional.of(Condition.HYGIENE_FLUSH);
    }
    if (LabelText.hasAny(words, "range step", "set-up", "setting*", "learn*", "tests itself")) {
      return Optional.of(Condition.SETTING_UP);
    }
    if (LabelText.hasAny(words, "too far", "range long")) {
      return Optional.of(Condition.RANGE_LONG);
    }
    if (LabelText.hasAny(words, "too near", "too short", "range short")) {
      return Optional.of(Condition.RANGE_SHORT);
    }
    if (LabelText.hasAny(words, "sensor", "window", "lens")) {
      return Optional.of(Condition.SENSOR_BLOCKED);
    }
    if (LabelText.hasAny(words, "coil", "solenoid", "valve", "wiring")) {
      return Optional.of(Condition.VALVE_CIRCUIT);
    }
    if (LabelText.hasAny(words, "ready", "normal", "standby", "resting", "good", "idle")) {
      return Optional.of(Condition.READY);
    }
    if (LabelText.hasAny(words, "water", "runs", "running", "flush*")) {
      return Optional.of(Condition.RUNNING);
    }
    return hasUser(words) || LabelText.hasAny(words, "target*", "accepted")
        ? Optional.of(Condition.TARGET_SEEN)
        : Optional.empty();
  }

  /** The condition that goes with a time at which a lamp is seen; empty for most. */
  static Optional<Condition> condition(Seen seen) {
    return switch (seen) {
      case TARGET -> Optional.of(Condition.TARGET_SEEN);
      case WHILE_RUNNING -> Optional.of(Condition.RUNNING);
      case AFTER_POWER_UP, SET_UP -> Optional.of(Condition.SETTING_UP);
      case IDLE -> Optional.of(Condition.READY);
      case ALWAYS, AFTER_TARGET, AFTER_FLUSH, AFTER_BUTTON -> Optional.empty();
    };
  }
}

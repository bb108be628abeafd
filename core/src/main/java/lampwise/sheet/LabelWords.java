package lampwise.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmException;
import lampwise.rhythm.Sayings;

/** Reads what a label says of a lamp into states of a sheet, to be offered, never taken unseen. */
public final class LabelWords {
  private static final List<String> COLOURS =
      List.of("red", "green", "amber", "blue", "white", "yellow", "orange", "purple", "violet");

  private static final String TWO_COLOURS =
      "a rhythm is one lamp, one colour, on or off: two colours alternating or at once cannot be"
          + " said";

  /** What a label counts in. */
  private static final String[] NUMBERS = {
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"
  };

  private LabelWords() {}

  /**
   * Reads a label's words.
   *
   * @param said the words as they stand on the label; a rhythm phrase will do
   * @return an entry for each state that they speak of, in their order, one or more
   * @throws LabelException if they cannot be understood, or no rhythm can say them
   */
  public static List<LabelEntry> read(String said) throws LabelException {
    String text = LabelText.trimmed(LabelText.plain(said));
    if (text.length() > 400) {
      throw new LabelException("a label's words have at most 400 characters", "");
    }
    List<LabelEntry> entries = new ArrayList<>();
    for (String state : states(text)) {
      entries.add(entry(state, entries));
    }
    if (entries.size() == 1) {
      entries.set(0, entries.get(0).saying(LabelText.onOneLine(said)));
    }
    return List.copyOf(entries);
  }

  /** The words of each state. */
  private static List<String> states(String text) throws LabelException {
    List<String> counted = countedStates(text);
    if (!counted.isEmpty()) {
      return counted;
    }
    List<String> coloured = colouredStates(text);
    if (!coloured.isEmpty()) {
      return coloured;
    }
    List<String> clauses = LabelText.clauses(text);
    List<String> states = new ArrayList<>();
    int meanings = 0;
    for (String clause : clauses) {
      meanings += meaningAt(clause) > 0 ? 1 : 0;
    }
    for (String clause : clauses) {
      boolean other = LabelText.hasAny(clause, "instead", "but also", "or also");
      boolean another = meanings > 1 && meaningAt(clause) > 0;
      if (!states.isEmpty() && !other && !another) {
        String before = states.remove(states.size() - 1);
        states.add(before.isEmpty() ? clause : before + ", " + clause);
      } else {
        states.add(clause);
      }
    }
    return states;
  }

  /** {@code Number of flashes is the range step, 1 to 5} is a state for each number. */
  private static List<String> countedStates(String text) {
    boolean counted = text.startsWith("number of ") || text.startsWith("the number of ");
    List<String> clauses = LabelText.clauses(text);
    if (!counted || clauses.size() < 2) {
      return List.of();
    }
    String saying = clauses.get(clauses.size() - 2);
    String range = clauses.get(clauses.size() - 1);
    int is = LabelText.find(saying, "is", 0);
    int to = LabelText.find(range, "to", 0);
    if (is < 0 || to < 0) {
      return List.of();
    }
    int least = number(range.substring(0, to).strip());
    int most = number(range.substring(to + 2).strip());
    List<String> states = new ArrayList<>();
    String what = LabelText.trimmed(saying.substring(is + 2));
    for (int i = least; i >= 1 && i <= most && most <= NUMBERS.length; i++) {
      states.add(NUMBERS[i - 1] + (i == 1 ? " flash: " : " flashes: ") + what + " " + i);
    }
    return states;
  }

  private static int number(String text) {
    for (int i = 0; i < NUMBERS.length; i++) {
      if (text.equals(NUMBERS[i]) || text.equals(Integer.toString(i + 1))) {
        return i + 1;
      }
    }
    return 0;
  }

  /** States that are told apart by the colour of the lamp; empty if no two are. */
  private static List<String> colouredStates(String text) throws LabelException {
    TreeSet<Integer> starts = new TreeSet<>();
    Set<String> colours = new TreeSet<>();
    for (String colour : COLOURS) {
      for (int at = LabelText.find(text, colour, 0);
          at >= 0;
          at = LabelText.find(text, colour, at + 1)) {
        starts.add(at);
        colours.add(colour);
      }
    }
    if (colours.size() < 2) {
      return List.of();
    }
    List<String> states = new ArrayList<>();
    for (int start : starts) {
      Integer next = starts.higher(start);
      boolean fresh = start == starts.first() || ",;".indexOf(before(text, start)) >= 0;
      String state = text.substring(start, next == null ? text.length() : next);
      if (!fresh
          || state.strip().indexOf(' ') < 0
          || LabelText.hasAny(
              text, "alternat*", "together", "at once", "in turn", "then", "both")) {
        throw new LabelException(TWO_COLOURS, "");
      }
      states.add(LabelText.trimmed(state));
    }
    return states;
  }

  /** The last character before an index that is no blank. */
  private static char before(String text, int index) {
    String before = text.substring(0, index).strip();
    return before.isEmpty() ? ' ' : before.charAt(before.length() - 1);
  }

  /**
   * Where the words about the meaning begin in {@code three flashes: replace cells}; 0 for none.
   */
  private static int meaningAt(String text) {
    int colon = text.indexOf(": ");
    int first = colon > 0 ? colon : Integer.MAX_VALUE;
    for (String verb : List.of("means", "mean", "indicates", "=")) {
      int at = verb.equals("=") ? text.indexOf('=') : LabelText.find(text, verb, 0);
      first = at > 0 && at < first ? at : first;
    }
    int dash = text.indexOf(" - ");
    if (dash > 0 && dash < first && !isOfLight(text.substring(dash))) {
      first = dash;
    }
    return first == Integer.MAX_VALUE ? 0 : first;
  }

  /** Whether some words may be about the light. */
  private static boolean isOfLight(String text) {
    return LabelText.hasAny(text, "flash*", "blink*", "wink*", "every", "each", "pause*", "then")
        || LabelText.hasAny(text, "lit", "dark", "off", "on", "seconds", "minutes", "code");
  }

  private static LabelEntry entry(String words, List<LabelEntry> before) throws LabelException {
    String text = words;
    Optional<String> lamp = Optional.empty();
    for (String colour : COLOURS) {
      int at = LabelText.find(text, colour, 0);
      if (at >= 0) {
        lamp = Optional.of(colour);
        text = LabelText.plain(text.substring(0, at) + text.substring(at + colour.length()));
      }
    }
    Optional<String> means = Optional.empty();
    int meaning = meaningAt(text);
    if (meaning > 0) {
      String after = text.substring(meaning);
      int blank = after.indexOf(' ');
      means = Optional.of(LabelText.trimmed(blank < 0 ? "" : after.substring(blank)));
      text = text.substring(0, meaning);
    }
    boolean also = LabelText.hasAny(text, "but also", "or also");
    if (also && !before.isEmpty()) {
      return alsoMeans(words, before.get(before.size() - 1));
    }
    boolean instead = LabelText.hasAny(text, "instead");
    LabelContext context = LabelContext.of(LabelText.plain(text.replace("instead", " ")));
    List<String> notes = new ArrayList<>(context.notes());
    String light = answering(context.light(), notes);
    boolean answers = !light.equals(context.light());
    Optional<Seen> seen = context.seen();
    if (answers && seen.isEmpty()) {
      seen = LabelContext.seen(context.light()).or(() -> Optional.of(Seen.TARGET));
    }
    boolean brief = context.brief() || answers;
    if (instead && seen.isEmpty() && !before.isEmpty()) {
      seen = before.get(before.size() - 1).seen();
      brief = true;
    }
    List<Rhythm> rhythms = new ArrayList<>(rhythms(light));
    Optional<String> tail = Optional.empty();
    if (rhythms.isEmpty()) {
      int end = lightEnd(light);
      tail = Optional.of(LabelText.trimmed(light.substring(end)));
      rhythms.addAll(rhythms(light.substring(0, end)));
    }
    if (brief && !LabelText.hasAny(light, "repeat*", "again")) {
      rhythms.replaceAll(LabelWords::once);
    }
    Optional<String> meant = means.or(context::means);
    if (meant.isEmpty()) {
      meant = tail;
    }
    Optional<Condition> condition = meant.flatMap(LabelContext::condition);
    if (condition.isEmpty()) {
      condition = seen.flatMap(LabelContext::condition);
    }
    return new LabelEntry(words, rhythms, seen, meant, condition, context.clearedBy(), lamp, notes);
  }

  /** {@code No light: cells dead, but also normal when idle}: the same light once more. */
  private static LabelEntry alsoMeans(String words, LabelEntry first) {
    LabelContext context = LabelContext.of(words);
    String means =
        LabelText.trimmed(context.light().replace("but also", "").replace("or also", ""));
    return new LabelEntry(
        words,
        first.rhythms(),
        context.seen(),
        Optional.of(means),
        LabelContext.condition(means),
        context.clearedBy(),
        first.lamp(),
        context.notes());
  }

  /** {@code Answers each user} tells that there is a light, not which. */
  private static String answering(String light, List<String> notes) {
    for (String start : List.of("answers", "lamp answers", "acknowledges")) {
      if (light.startsWith(start + " ")) {
        notes.add("how the lamp answers is not said; one blink was taken");
        return "one flash";
      }
    }
    return light;
  }

  /** The rhythms of the words about the light; none if only its beginning is understood. */
  private static List<Rhythm> rhythms(String light) throws LabelException {
    try {
      return Sayings.read(light);
    } catch (PhraseException e) {
      boolean misspelt = e.suggestion().isPresent() || e.reason().contains("did you mean");
      if (!misspelt && Sayings.unsayable(light).isEmpty() && lightEnd(light) > 0) {
        return List.of();
      }
      throw new LabelException(e.reason(), e.suggestion().orElse(""));
    }
  }

  /**
   * Where words about the unit begin that nothing separates from those about the light, as in
   * {@code red flash fault}; 0 if the rest could still be about the light.
   */
  private static int lightEnd(String light) {
    int end = 0;
    try {
      Sayings.read(light);
      return light.length();
    } catch (PhraseException e) {
      end = e.column() - 1;
    }
    boolean wordy = end > 0 && end < light.length() && light.charAt(end - 1) == ' ';
    for (int i = end; i < light.length(); i++) {
      char c = light.charAt(i);
      wordy &= Character.isLetter(c) || c == ' ' || c == '-';
    }
    String rest = light.substring(Math.min(end, light.length()));
    if (!wordy || isOfLight(rest)) {
      return 0;
    }
    try {
      Sayings.read(light.substring(0, end));
      return end;
    } catch (PhraseException e) {
      return 0;
    }
  }

  /** A cycle whose end is not said, as it shows when something happens. */
  private static Rhythm once(Rhythm rhythm) {
    if (!(rhythm instanceof Rhythm.Blinking blinking)
        || !(blinking.cycle() instanceof Cycle.Parts cycle)
        || !(cycle.ending() instanceof Ending.Repeating)) {
      return rhythm;
    }
    List<Part> parts = cycle.parts();
    if (parts.get(parts.size() - 1) instanceof Part.Unlit || !blinking.prelude().isEmpty()) {
      return rhythm;
    }
    try {
      return new Rhythm.Blinking(List.of(), new Cycle.Parts(parts, new Ending.Once()));
    } catch (RhythmException e) {
      return rhythm;
    }
  }
}

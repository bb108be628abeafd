package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Sayings;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LabelEntry;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** The questions about one state of a new sheet. */
final class NewState {
  private static final int QUESTIONS = 5;

  private final Questions questions;
  private final List<LampState> before;
  private boolean conditionsListed;
  private boolean seenListed;

  /** What was answered so far about the state that is asked for. */
  private static final class Draft {
    private final LabelEntry entry;
    private Rhythm rhythm;
    private String name = "";
    private String means = "";
    private Optional<Condition> condition;
    private Seen seen;

    Draft(LabelEntry entry) {
      this.entry = entry;
      this.rhythm = entry.rhythms().get(0);
      this.condition = entry.condition();
      this.seen = entry.seen().orElse(Seen.ALWAYS);
      this.means = entry.means().orElse("");
    }
  }

  /**
   * What became of a state.
   *
   * @param state the state; empty if it was left out
   * @param back whether the label's words are to be asked again
   */
  record Answer(Optional<LampState> state, boolean back) {}

  NewState(Questions questions, List<LampState> before) {
    this.questions = questions;
    this.before = before;
  }

  /** Asks about one state, with what its words offer. */
  Answer ask(LabelEntry entry) throws Questions.Ended {
    Draft draft = new Draft(entry);
    questions.say(entry.words());
    entry.notes().forEach(note -> questions.say("  note: " + note));
    int at = 0;
    while (at < QUESTIONS) {
      String answer = question(draft, at);
      if (answer.equals("skip")) {
        questions.say("  left out");
        return new Answer(Optional.empty(), false);
      }
      if (answer.equals("back")) {
        if (at == 0) {
          return new Answer(Optional.empty(), true);
        }
        at--;
      } else if (takes(draft, at, answer)) {
        at++;
      }
    }
    return new Answer(Optional.of(state(draft)), false);
  }

  private LampState state(Draft draft) {
    String phrase = Phrase.print(draft.rhythm);
    Optional<String> says = Optional.of(draft.entry.words()).filter(words -> !words.equals(phrase));
    return new LampState(
        draft.name,
        draft.rhythm,
        draft.means,
        draft.condition.orElse(Condition.OTHER),
        draft.seen,
        1,
        says,
        draft.entry.clearedBy(),
        draft.entry.lamp());
  }

  private String question(Draft draft, int at) throws Questions.Ended {
    return switch (at) {
      case 0 -> {
        others(draft);
        yield questions.ask("  phrase", Phrase.print(draft.rhythm));
      }
      case 1 -> questions.ask("  name", draft.name.isEmpty() ? offeredName(draft) : draft.name);
      case 2 -> questions.ask("  means", draft.means.isEmpty() ? draft.entry.words() : draft.means);
      case 3 -> {
        if (!conditionsListed) {
          listConditions();
        }
        yield questions.ask("  condition", draft.condition.orElse(Condition.OTHER).word());
      }
      default -> {
        if (!seenListed) {
          listSeen();
        }
        yield questions.ask("  seen", draft.seen.word());
      }
    };
  }

  private void others(Draft draft) {
    List<Rhythm> rhythms = draft.entry.rhythms();
    for (int i = 0; i < rhythms.size() && rhythms.size() > 1; i++) {
      questions.say("  " + (i + 1) + " " + Phrase.print(rhythms.get(i)));
    }
  }

  private void listConditions() {
    conditionsListed = true;
    list("conditions", Stream.of(Condition.values()).map(Condition::word).toList());
  }

  private void listSeen() {
    seenListed = true;
    list("seen", Stream.of(Seen.values()).map(Seen::word).toList());
  }

  private void list(String what, List<String> words) {
    List<String> numbered = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      numbered.add((i + 1) + " " + words.get(i));
    }
    questions.say("  " + what + ", by number or word: " + String.join(", ", numbered));
  }

  private boolean takes(Draft draft, int at, String answer) {
    return switch (at) {
      case 0 -> takesPhrase(draft, answer);
      case 1 -> takesName(draft, answer);
      case 2 -> {
        draft.means = answer;
        yield true;
      }
      case 3 -> {
        Optional<Condition> said = chosen(answer, Condition.values(), Condition::of);
        if (said.isEmpty()) {
          listConditions();
        } else {
          draft.condition = said;
        }
        yield said.isPresent();
      }
      default -> {
        Optional<Seen> said = chosen(answer, Seen.values(), Seen::of);
        if (said.isEmpty()) {
          listSeen();
        } else {
          draft.seen = said.get();
        }
        yield said.isPresent();
      }
    };
  }

  /** A phrase is taken at once; other words that have one are answered by asking with it. */
  private boolean takesPhrase(Draft draft, String answer) {
    List<Rhythm> rhythms = draft.entry.rhythms();
    Optional<Integer> number = number(answer, rhythms.size());
    if (number.isPresent() && rhythms.size() > 1) {
      draft.rhythm = rhythms.get(number.get() - 1);
      return true;
    }
    try {
      draft.rhythm = Phrase.parse(answer);
      return true;
    } catch (PhraseException strict) {
      return takesSaying(draft, answer);
    }
  }

  private boolean takesSaying(Draft draft, String answer) {
    try {
      draft.rhythm = Sayings.read(answer).get(0);
    } catch (PhraseException e) {
      String better = e.suggestion().map(phrase -> "; perhaps: " + phrase).orElse("");
      questions.say("  cannot be taken: " + e.reason() + better);
    }
    return false;
  }

  private boolean takesName(Draft draft, String answer) {
    String name = answer.toLowerCase(Locale.ROOT);
    String fault =
        !LampState.isName(name)
            ? "a name is lower-case letters, digits and hyphens and starts with a letter"
            : CodeSheet.isReserved(name)
                ? "the name " + name + " is reserved"
                : isTaken(name) ? "the name " + name + " is another state's" : "";
    if (!fault.isEmpty()) {
      questions.say("  " + fault);
      return false;
    }
    draft.name = name;
    return true;
  }

  private boolean isTaken(String name) {
    return before.stream().anyMatch(state -> state.name().equals(name));
  }

  /**
   * The condition's word, else the first words of what is meant or said, with a number if taken.
   */
  private String offeredName(Draft draft) {
    String stem =
        draft
            .condition
            .filter(condition -> condition != Condition.OTHER)
            .map(Condition::word)
            .orElseGet(() -> slug(draft.entry.means().orElse(draft.entry.words()), 3));
    String name = stem;
    for (int i = 2; isTaken(name) || CodeSheet.isReserved(name); i++) {
      name = stem + "-" + i;
    }
    return name;
  }

  /** The first words of a text as a name; {@code state} if it has no letter to start with. */
  static String slug(String text, int most) {
    StringBuilder slug = new StringBuilder();
    int words = 1;
    for (char c : text.toLowerCase(Locale.ROOT).toCharArray()) {
      boolean letter = c >= 'a' && c <= 'z';
      boolean digit = c >= '0' && c <= '9';
      boolean open = slug.length() > 0 && slug.charAt(slug.length() - 1) != '-';
      if (letter || (digit && slug.length() > 0)) {
        slug.append(c);
      } else if (open) {
        if (words == most) {
          break;
        }
        words++;
        slug.append('-');
      }
    }
    while (slug.length() > 0 && slug.charAt(slug.length() - 1) == '-') {
      slug.setLength(slug.length() - 1);
    }
    return slug.length() == 0 ? "state" : slug.toString();
  }

  private static <T> Optional<T> chosen(
      String answer, T[] values, Function<String, Optional<T>> of) {
    Optional<T> word = of.apply(answer.toLowerCase(Locale.ROOT));
    return word.isPresent()
        ? word
        : number(answer, values.length).map(number -> values[number - 1]);
  }

  private static Optional<Integer> number(String answer, int most) {
    for (int i = 1; i <= most; i++) {
      if (answer.equals(Integer.toString(i))) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }
}

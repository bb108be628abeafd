package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** Code sheets for tests, made of names and phrases. */
final class Sheets {
  /** When the blinks of each of the bench's blinking states begin, from the first of its cycle. */
  static final double[][] BENCH_STARTS = {
    {0},
    {0},
    {0},
    {0},
    {0},
    {0, 0.3},
    {0, 0.6, 1.2},
    {0, 0.6, 1.2, 1.8},
    {0, 0.45, 1.84, 2.29, 2.74},
    {0, 0.45, 0.9, 2.29, 2.74},
    {0, 0.7, 1.4, 2.1, 3.19, 3.39}
  };

  /** How long a cycle of each of them is, seconds. */
  static final double[] BENCH_CYCLES = {3.4, 4.5, 6.8, 20.4, 0.5, 8, 8, 8, 11, 11, 13};

  private Sheets() {}

  /** A sheet of names and phrases in turn; no length of a blink. */
  static CodeSheet of(double clock, String... namesAndPhrases) {
    return of(clock, OptionalDouble.empty(), namesAndPhrases);
  }

  /** A sheet of names and phrases in turn. */
  static CodeSheet of(double clock, OptionalDouble blinkSeconds, String... namesAndPhrases) {
    List<LampState> states = new ArrayList<>();
    for (int i = 0; i < namesAndPhrases.length; i += 2) {
      states.add(state(namesAndPhrases[i], namesAndPhrases[i + 1], Seen.ALWAYS));
    }
    return of(clock, blinkSeconds, states);
  }

  static CodeSheet of(double clock, OptionalDouble blinkSeconds, List<LampState> states) {
    return new CodeSheet(
        "Test unit",
        Basis.INVENTED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        blinkSeconds,
        states);
  }

  static LampState state(String name, String phrase, Seen seen) {
    return new LampState(
        name,
        rhythm(phrase),
        "meaning of " + name,
        Condition.OTHER,
        seen,
        1,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** A phrase that is known to be right. */
  static Rhythm rhythm(String phrase) {
    try {
      return Phrase.parse(phrase);
    } catch (PhraseException e) {
      throw new AssertionError(phrase + ": " + e.getMessage(), e);
    }
  }

  /**
   * The unit to which the project's figures refer: single blinks with periods in ratios 1 : 1.3 : 2
   * : 6, equal cycles with two, three and four blinks, codes that are each other's turn.
   */
  static CodeSheet bench() {
    return bench(0.09);
  }

  /** The same for lamps with blinks of another length. */
  static CodeSheet bench(double blinkSeconds) {
    return of(
        0.05,
        OptionalDouble.of(blinkSeconds),
        "tick",
        "1 blink every 3.4 s",
        "tock",
        "1 blink every 4.5 s",
        "half",
        "1 blink every 6.8 s",
        "seldom",
        "1 blink every 20.4 s",
        "rapid",
        "1.5 to 2.5 blinks per second",
        "pair",
        "2 blinks 0.3 s apart every 8 s",
        "three",
        "3 blinks 0.6 s apart every 8 s",
        "four",
        "4 blinks 0.6 s apart every 8 s",
        "code-23",
        "2 blinks 0.45 s apart then dark 1.3 s then 3 blinks 0.45 s apart every 11 s",
        "code-32",
        "3 blinks 0.45 s apart then dark 1.3 s then 2 blinks 0.45 s apart every 11 s",
        "tail",
        "4 blinks 0.7 s apart then dark 1 s then 2 blinks 0.2 s apart every 13 s",
        "dark",
        "dark");
  }
}

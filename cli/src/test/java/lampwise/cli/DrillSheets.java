package lampwise.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** Small sheets to drill with. */
final class DrillSheets {
  private DrillSheets() {}

  static LampState state(String name, String phrase, Seen seen) {
    try {
      return new LampState(
          name,
          Phrase.parse(phrase),
          "It is " + name,
          Condition.OTHER,
          seen,
          1,
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    } catch (PhraseException e) {
      throw new AssertionError(phrase, e);
    }
  }

  /** A sheet with a clock tolerance of 5 % and blinks of 0.1 s. */
  static CodeSheet of(LampState... states) {
    return new CodeSheet(
        "A sheet",
        Basis.INVENTED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        0.05,
        OptionalDouble.of(0.1),
        List.of(states));
  }
}

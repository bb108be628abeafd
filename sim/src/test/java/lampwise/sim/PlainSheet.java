package lampwise.sim;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** Sheets and states that say no more than their rhythms, for tests. */
public final class PlainSheet {
  private PlainSheet() {}

  /** A state with nothing optional said. */
  public static LampState state(String name, String phrase, Seen seen, double weight) {
    return new LampState(
        name,
        Phrases.rhythm(phrase),
        "a state",
        Condition.OTHER,
        seen,
        weight,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** A sheet with nothing optional said but the length of a blink. */
  public static CodeSheet of(double clock, OptionalDouble blink, List<LampState> states) {
    return new CodeSheet(
        "Unit",
        Basis.INVENTED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        blink,
        states);
  }
}

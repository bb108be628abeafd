package lampwise.rhythm;

import java.util.Optional;

/** Turns the fault of a phrase into a suggestion. */
final class Repair {
  /** How many faults one suggestion puts right. */
  private static final int ROUNDS = 40;

  /** Longer phrases get only the right words for the place of the fault. */
  private static final int LONGEST = 400;

  private Repair() {}

  /** A whole phrase that parses if the faults lead to one, else the right words for the place. */
  static Optional<String> suggestion(Fault fault) {
    Optional<String> whole = whole(fault);
    return whole.isPresent() ? whole : fault.words();
  }

  /** The whole phrase that putting right one fault after another leads to; empty for none. */
  static Optional<String> whole(Fault first) {
    Fault fault = first;
    for (int round = 0; round < ROUNDS; round++) {
      Optional<String> better = fault.better();
      if (better.isEmpty() || better.get().length() > LONGEST) {
        return Optional.empty();
      }
      try {
        return Optional.of(PhrasePrinter.rhythm(PhraseParser.parse(better.get())));
      } catch (Fault next) {
        fault = next;
      }
    }
    return Optional.empty();
  }
}

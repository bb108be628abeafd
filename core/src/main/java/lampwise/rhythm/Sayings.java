package lampwise.rhythm;

import java.util.List;
import java.util.Optional;

/**
 * Reads what labels and people say of a lamp: {@code four flashes 0.4 s apart, 3 s off}. A phrase
 * is a saying too. This is for offering a phrase to somebody who looks at it; where nobody does,
 * {@link Phrase#parse} is the strict way.
 */
public final class Sayings {
  /** How many misspelt words are put right. */
  private static final int MISSPELT_MOST = 8;

  private Sayings() {}

  /**
   * Reads a saying, in time linear in its length.
   *
   * <p>{@code flash}, {@code wink}, {@code blip} and {@code pulse} are blinks; {@code quick} beside
   * a number is short, without one fast; {@code every}, {@code each}, {@code a} and {@code per} go
   * with times; a {@code pause} without a time opens a new group or closes the cycle. A light for a
   * time after which nothing is said, or only that it ends, is shown once. A light of a known time
   * before a blink that has its own {@code every}, and whatever {@code first} begins, comes once
   * before what repeats.
   *
   * @param said the words, at most 400 characters
   * @return the rhythms that it can mean, the likeliest first, one or more
   * @throws PhraseException if it cannot be understood or cannot be a rhythm; the suggestion is a
   *     whole phrase or empty
   */
  public static List<Rhythm> read(String said) throws PhraseException {
    if (said.length() > SaidWord.LONGEST) {
      throw new PhraseException(
          1,
          "a saying has at most " + SaidWord.LONGEST + " characters, not " + said.length(),
          Optional.empty());
    }
    Fault strict;
    try {
      return List.of(PhraseParser.parse(said));
    } catch (Fault fault) {
      strict = fault;
    }
    Optional<String> never = unsayable(said);
    if (never.isPresent()) {
      throw new PhraseException(1, never.get(), Optional.empty());
    }
    try {
      return SayingParser.read(said);
    } catch (Fault fault) {
      Optional<String> whole = putRight(fault).or(() -> Repair.whole(strict));
      // A fault of the rhythm as a whole may lie in words that were only understood, not said.
      int column = Math.min(fault.column(), said.length() + 1);
      throw new PhraseException(column, fault.reason(), whole);
    }
  }

  /**
   * The phrase of the saying with its misspelt words put right; empty if they are not all of it.
   */
  private static Optional<String> putRight(Fault first) {
    Fault fault = first;
    for (int round = 0; round < MISSPELT_MOST; round++) {
      Optional<String> better = fault.better();
      if (better.isEmpty()) {
        return Optional.empty();
      }
      try {
        return Optional.of(PhrasePrinter.rhythm(SayingParser.read(better.get()).get(0)));
      } catch (Fault next) {
        fault = next;
      }
    }
    return Optional.empty();
  }

  /**
   * Why no rhythm can say what these words say.
   *
   * @param said the words
   * @return the reason; empty unless they speak of two colours, fading or dim light, flicker
   *     without a pattern or a changing speed
   */
  public static Optional<String> unsayable(String said) {
    try {
      Words.refuseUnsayable(said, Token.split(spaced(said)));
      return Optional.empty();
    } catch (Fault fault) {
      return fault.better().isPresent() ? Optional.empty() : Optional.of(fault.reason());
    }
  }

  /** Letters and blanks only, so that nothing else of it can be at fault. */
  private static String spaced(String said) {
    StringBuilder spaced = new StringBuilder(said.length());
    for (int i = 0; i < said.length(); i++) {
      spaced.append(Character.isLetter(said.charAt(i)) ? said.charAt(i) : ' ');
    }
    return spaced.toString();
  }
}

package lampwise.rhythm;

/** Reads and prints rhythm phrases. */
public final class Phrase {
  private Phrase() {}

  /**
   * Reads a phrase.
   *
   * @param text the phrase
   * @return its rhythm
   * @throws PhraseException if it cannot be read or means nothing
   */
  public static Rhythm parse(String text) throws PhraseException {
    throw new PhraseException(1, "not built", java.util.Optional.empty());
  }

  /**
   * Prints a rhythm: the one phrase for it.
   *
   * @param rhythm the rhythm
   * @return its phrase
   */
  public static String print(Rhythm rhythm) {
    return rhythm.toString();
  }
}

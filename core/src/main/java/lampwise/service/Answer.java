package lampwise.service;

/**
 * One answer of a check.
 *
 * @param word the word for it: lower-case letters, digits and hyphens, starting with a letter
 * @param means what it means, in a few words
 */
public record Answer(String word, String means) {
  /**
   * Checks the word.
   *
   * @throws GuideException if it is no such word
   */
  public Answer {
    Rules.id("an answer", word);
  }
}

package lampwise.rhythm;

import java.util.Optional;

/** What is wrong with a phrase, and how it may be put right. */
final class Fault extends Exception {
  private static final long serialVersionUID = 1L;

  private final int column;
  private final String words;
  private final String better;

  /**
   * Makes one.
   *
   * @param column where, from 1
   * @param reason why, one line
   * @param words the right words for the place; empty for none
   * @param better the whole phrase put right here (it may still be wrong elsewhere); empty for none
   */
  Fault(int column, String reason, String words, String better) {
    super(reason, null, false, false);
    this.column = column;
    this.words = words;
    this.better = better;
  }

  /** The same fault, seen at another token. */
  Fault at(Token token) {
    return new Fault(token.column(), reason(), words, better);
  }

  int column() {
    return column;
  }

  String reason() {
    return String.valueOf(getMessage());
  }

  Optional<String> words() {
    return words.isEmpty() ? Optional.empty() : Optional.of(words);
  }

  Optional<String> better() {
    return better.isBlank() ? Optional.empty() : Optional.of(better);
  }
}

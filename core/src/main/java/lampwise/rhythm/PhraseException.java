package lampwise.rhythm;

import java.util.Optional;

/** Says where a phrase cannot be read, why, and what the nearest right spelling is. */
public final class PhraseException extends Exception {
  private static final long serialVersionUID = 1L;

  private final int column;
  private final String reason;
  private final String suggestion;

  /**
   * Makes one.
   *
   * @param column where the fault starts, counted in characters from 1
   * @param reason one line, without the column
   * @param suggestion the nearest right spelling; empty if there is none
   */
  public PhraseException(int column, String reason, Optional<String> suggestion) {
    super(
        "column " + column + ": " + reason + suggestion.map(s -> "; try \"" + s + "\"").orElse(""));
    this.column = column;
    this.reason = reason;
    this.suggestion = suggestion.orElse("");
  }

  /**
   * Where the fault starts.
   *
   * @return the character's number, from 1
   */
  public int column() {
    return column;
  }

  /**
   * Why it cannot be read.
   *
   * @return one line
   */
  public String reason() {
    return reason;
  }

  /**
   * The nearest right spelling: a whole phrase in canonical form if putting right one fault after
   * another leads to one, else the right words for the place of the fault.
   *
   * @return a phrase or a part of one; empty if there is none
   */
  public Optional<String> suggestion() {
    return suggestion.isEmpty() ? Optional.empty() : Optional.of(suggestion);
  }
}

package lampwise.service;

/**
 * Something about a guide that is dangerous, useless or a dead end, although the guide can be read.
 *
 * @param part the id of the cause, check, remedy or rule
 * @param message what is wrong with it and what was expected, one line that does not repeat the id
 */
public record GuideWarning(String part, String message) {
  /**
   * The warning in one line.
   *
   * @return {@code part: message}
   */
  @Override
  public String toString() {
    return part + ": " + message;
  }
}

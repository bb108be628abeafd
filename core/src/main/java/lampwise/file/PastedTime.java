package lampwise.file;

/**
 * One time of a pasted list and where it stands.
 *
 * @param role whether it starts or ends a blink
 * @param time the time
 * @param line its line, from 1
 * @param column its column, from 1
 * @param word how it is written
 */
record PastedTime(Role role, TimeText time, int line, int column, String word) {
  /** What a time is the time of. */
  enum Role {
    /** No word says it. */
    UNSAID,
    /** The lamp came on. */
    ON,
    /** The lamp went off. */
    OFF
  }

  PastedTime as(Role newRole) {
    return new PastedTime(newRole, time, line, column, word);
  }

  PastedTime asGap() {
    return new PastedTime(
        role, new TimeText(time.writing(), time.value(), true), line, column, word);
  }
}

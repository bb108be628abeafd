package lampwise.file;

import java.util.List;
import java.util.Optional;

/**
 * The lines of pasted text that belong to one fixture.
 *
 * @param fixture the fixture that a heading names; empty if none does
 * @param heading the line of that heading, from 1; 0 if there is none
 * @param lines the lines below it, and what stands beside it
 */
record PastedSection(Optional<String> fixture, int heading, List<PastedLine> lines) {
  /**
   * A line.
   *
   * @param number its number, from 1
   * @param text the whole line
   * @param from where its times may start
   */
  record PastedLine(int number, String text, int from) {
    /** What may hold times. */
    String rest() {
      return text.substring(from);
    }
  }
}

package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import lampwise.service.Guide;

/** A small guide in order, and what is told of it after a change. */
final class GuideText {
  static final String SMALL =
      """
      lampwise-guide: 1
      title: A small one
      basis: made up
      hand-over-minutes: 90
      second-trip-minutes: 30
      usual-lamp: {ready: 90 %, other: 10 %}
      cautions:
        look: {say: Look first}
      causes:
        blocked:
          name: Blocked
          looks-like: Full
          area: drain
          share: {dead: 2}
        empty:
          name: Cells empty
          looks-like: Dark
          area: power
          power: [cells]
          share: {dead: 3, lamp-only: 9}
          lately: {cells: 0.5}
          lamp: {power-low: 60 %}
        other:
          name: Something else
          looks-like: Anything
          area: other
          share: {dead: 1, lamp-only: 1}
      checks:
        bowl:
          ask: Is it clear?
          minutes: 0.5
          bowl-look: yes
          answers: {clear: Clear, full: Full}
          usual: {clear: 95 %, full: 5 %}
          given:
            blocked: {clear: 10 %, full: 90 %}
        cells:
          ask: Are the cells good?
          minutes: 4
          power: [cells]
          opens: [unit]
          cautions: [look]
          answers: {good: Good, low: Low}
          usual: {good: 90 %, low: 10 %}
          given:
            empty, other: {good: 5 %, low: 95 %}
      remedies:
        unblock:
          name: Unblock it
          fixes: {blocked: 80 %}
          cautions: [look]
          steps: [Do it]
          minutes: 20
          verify: {bowl: [clear]}
        renew:
          name: New cells
          fixes: {empty: 95 %}
          power: [cells]
          cautions: [look]
          steps: [Old ones out, New ones in]
          parts: [cell set]
          minutes: 8
          who: anyone
          opens: [unit]
          flushes: yes
          before: {bowl: [clear]}
          verify: {cells: [good]}
      make-safe:
        full:
          sign: It runs over
          found: {bowl: [full]}
          cautions: [look]
          steps: [Close the stop]
      closing:
        - say: Written down
      """;

  private GuideText() {}

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  static Guide read(String text) throws FileException {
    return GuideReader.read("small", bytes(text));
  }

  /** The small guide with one text put in place of another that must stand in it once. */
  static String changed(String from, String to) {
    assertTrue(SMALL.contains(from), from);
    assertEquals(SMALL.indexOf(from), SMALL.lastIndexOf(from), from);
    return SMALL.replace(from, to);
  }

  /** What is told about a text, one fault a line, without the file's name. */
  static String faults(String text) {
    FileException e = assertThrows(FileException.class, () -> read(text));
    return e.faults().stream()
        .map(fault -> fault.line() + ":" + fault.column() + ": " + fault.message())
        .collect(Collectors.joining("\n"));
  }
}

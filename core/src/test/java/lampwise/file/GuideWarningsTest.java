package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import lampwise.service.GuideCheck;
import lampwise.service.GuideWarning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The checker of guides: nothing on a guide in order, one warning for each planted fault. */
class GuideWarningsTest {
  @Test
  void aGuideInOrderHasNone() throws FileException {
    assertEquals(List.of(), GuideCheck.warnings(GuideText.read(GuideText.SMALL)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          blocked: {clear: 10 %, full: 90 %}  | blocked: {clear: 86 %, full: 14 %} | blocked: no check can reach it at: dead, water-closet, cells
          ask: Is it clear?                   | complaint: [dead]\\n    ask: Is it clear? | renew: it waits for a check that is not asked at: lamp-only, water-closet, cells
          share: {dead: 2}                    | share: {weak: 2}\\n    kind: [urinal] | !
          share: {dead: 3, lamp-only: 9}      | share: {dead: 3, temperature: 9}   | !
          fixes: {blocked: 80 %}              | kind: [faucet]\\n    fixes: {blocked: 80 %} | blocked: no remedy fixes it at: dead, water-closet, cells
          fixes: {empty: 95 %}                | fixes: {blocked: 95 %}             | empty: no remedy fixes it at: dead, water-closet, cells
          area: drain                         | area: drain\\n    kind: [faucet]   | !
          answers: {good: Good, low: Low}     | answers: {good: Good, low: Low, odd: Odd} | cells: no cause brings about the answer odd
          bowl-look: yes                      | bowl-look: yes\\n    flushes: yes\\n    cautions: [look] | bowl: it looks into the bowl and must not flush
          bowl-look: yes                      | bowl-look: yes\\n    first: yes\\n    opens: [unit]\\n    cautions: [look] | bowl: it is asked before everything else and must neither flush nor open anything
          bowl-look: yes                      | bowl-look: no                      | renew: it flushes before anybody has looked whether the water can run off
          before: {bowl: [clear]}             | before: {bowl: [clear, full]}      | renew: it flushes before anybody has looked whether the water can run off
          before: {bowl: [clear]}             | watch: yes                         | renew: it flushes before anybody has looked whether the water can run off
          opens: [unit]\\n    cautions: [look]\\n    answers | opens: [unit]\\n    answers | cells: it opens unit and needs a caution
          opens: [unit]\\n    cautions: [look]\\n    answers | flushes: yes\\n    answers | cells: it makes water flow and needs a caution
          power: [cells]\\n    cautions: [look]\\n    steps | power: [cells]\\n    steps | renew: it opens unit and needs a caution
          minutes: 20\\n    verify: {bowl: [clear]} | minutes: 20\\n    verify: {} | unblock: nothing verifies it
          cautions: [look]\\n    steps: [Close the stop] | steps: [Close the stop]    | full: it needs a caution
          fixes: {blocked: 80 %}              | fixes: {blocked: 80 %, empty: 5 %}\\n    power: [mains] | unblock: it cannot meet the cause empty at any kind and power
          power: [cells]\\n    opens          | power: [mains]\\n    opens         | renew: no check can verify it at: dead, water-closet, cells
          ask: Are the cells good?            | kind: [faucet]\\n    ask: Are the cells good? | empty: no check can reach it at: dead, water-closet, cells
          """)
  void tellsWhatWasPlanted(String from, String to, String expected) throws FileException {
    String told = warnings(GuideText.changed(lines(from), lines(to)));
    if (expected.equals("!")) {
      assertEquals("", told);
    } else {
      assertTrue(told.lines().toList().contains(expected), told);
    }
  }

  @Test
  void wantsAFlushThatVerifiesToBeSaid() throws FileException {
    String text =
        GuideText.changed(
                "  cells:\n    ask",
                "  tried:\n    ask: Does it?\n    minutes: 1\n    flushes: yes\n"
                    + "    before: {bowl: [clear]}\n    cautions: [look]\n"
                    + "    answers: {good: Good, bad: Bad}\n"
                    + "    usual: {good: 50 %, bad: 50 %}\n  cells:\n    ask")
            .replace(
                "minutes: 20\n    verify: {bowl: [clear]}",
                "minutes: 20\n    verify: {tried: [good]}");
    assertEquals("unblock: it is verified by a flush and must say that it flushes", warnings(text));
  }

  private static String lines(String text) {
    return text.replace("\\n", "\n");
  }

  private static String warnings(String text) throws FileException {
    return GuideCheck.warnings(GuideText.read(text)).stream()
        .map(GuideWarning::toString)
        .collect(Collectors.joining("\n"));
  }
}

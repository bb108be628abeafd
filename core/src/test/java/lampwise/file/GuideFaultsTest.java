package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables, lists and texts of a guide in each other's place, and sums that do not close. */
class GuideFaultsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          answers: {clear: Clear, full: Full} | answers: {clear: Clear} | 33:14: answers must be a table of at least two words and what they mean; found a table of keys
          answers: {clear: Clear, full: Full} | answers: [clear, full] | 33:14: answers must be a table of at least two words and what they mean; found a list
          answers: {clear: Clear, full: Full} | answers: {clear: Clear, clear: Full} | 33:29: the answer "clear" stands twice; it stood in line 33 already
          closing:\\n  - say: Written down | closing: x | 74:10: closing must be a list of tables such as - say: ...; found "x"
          steps: [Do it] | steps: Do it | 52:12: steps must be a list such as [first, second]; found "Do it"
          steps: [Do it] | steps: {a: b} | 52:12: steps must be a list such as [first, second]; found a table of keys
          steps: [Do it] | steps: [[Do it]] | 52:13: an item of steps must be a text; found a list
          steps: [Do it] | steps: [] | 52:12: steps must hold at least one text
          title: A small one | title: [a] | 2:8: title must be a text; found a list
          title: A small one | title: {a: b} | 2:8: title must be a text; found a table of keys
          title: A small one | title: | 2:7: title must be a text; found nothing
          share: {dead: 2} | share: 2 | 14:12: share must be a table such as {dead: ...}; found "2"
          share: {dead: 2} | share: {} | 10:3: share must name at least one complaint
          lamp: {power-low: 60 %} | lamp: {power-low: 60 %, ready: 60 %} | 15:3: the chances under lamp must sum to at most 100 %; they sum to 120 %
          usual-lamp: {ready: 90 %, other: 10 %} | usual-lamp: {ready: 90 %} | 6:13: the chances of usual-lamp must sum to 100 %; they sum to 90 %
          usual: {clear: 95 %, full: 5 %} | usual: {clear: 95 %} | 34:12: the chances of the answers must sum to 100 %; they sum to 95 %
          usual: {clear: 95 %, full: 5 %} | usual: {clear: 95 %, full: 6 %} | 34:12: the chances of the answers must sum to 100 %; they sum to 101 %
          empty, other: {good: 5 %, low: 95 %} | empty, empty: {good: 5 %, low: 95 %} | 46:14: the cause empty has a row already
          empty, other: {good: 5 %, low: 95 %} | empty,: {good: 5 %, low: 95 %} | 46:13: unknown cause ""
          verify: {cells: [good]} | verify: {cells: []} | 67:21: cells must hold at least one of its answers
          found: {bowl: [full]} | found: {} | 69:3: one of the keys complaint and found must say what calls for it
          hand-over-minutes: 90 | hand-over-minutes: 0 | 4:20: hand-over-minutes must be a number over 0 such as 2.5; found "0"
          fixes: {empty: 95 %} | fixes: {empty: 101 %} | 57:20: empty must be a percentage over 0 % and at most 100 %; found "101 %"
          fixes: {empty: 95 %} | fixes: {} | 55:3: fixes must name at least one cause
          """)
  void tellsWhatStandsInTheWrongPlace(String from, String to, String fault) {
    String text = GuideText.changed(from.replace("\\n", "\n"), to);
    assertEquals(fault, GuideText.faults(text).lines().findFirst().orElse(""));
  }

  @Test
  void aSectionIsATable() {
    String faults =
        GuideText.faults(
            GuideText.changed("cautions:\n  look: {say: Look first}", "cautions: [look]"));
    assertEquals(
        List.of(
            "7:11: cautions must be a table with one caution a key; found a list",
            "41:16: an item of cautions must be one of none; found \"look\""),
        faults.lines().limit(2).toList());
  }

  @Test
  void bordersOfChancesAndMinutesAreInside() throws FileException {
    String all =
        GuideText.changed("lamp: {power-low: 60 %}", "lamp: {power-low: 100 %}")
            .replace("fixes: {empty: 95 %}", "fixes: {empty: 100 %}")
            .replace("second-trip-minutes: 30", "second-trip-minutes: 0.5");
    assertEquals(0.5, GuideText.read(all).secondTripMinutes());
    assertEquals(1.0, GuideText.read(all).remedy("renew").orElseThrow().fixes().get("empty"));
  }
}

package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LayoutTest {
  @Test
  void wrapsAtBlanksAndBreaksLongWords() {
    assertEquals(List.of("one two", "three"), Layout.wrap("one two three", 7, 7));
    assertEquals(List.of("one", "two three"), Layout.wrap("one two three", 5, 9));
    assertEquals(List.of("abcd", "ef g"), Layout.wrap("abcdef g", 4, 4));
    assertEquals(List.of("every", "3.1 s, x"), Layout.wrap("every 3.1 s, x", 10, 10));
    assertEquals(List.of("3.1", "s"), Layout.wrap("3.1 s", 3, 3));
    assertEquals(List.of("rooms 1", "street"), Layout.wrap("rooms 1 street", 9, 9));
    assertEquals(List.of(""), Layout.wrap("", 4, 4));
  }

  @Test
  void cleanLeavesNoControlCharacter() {
    assertEquals("a [31m b c", Layout.clean(" a\u001b[31m\r\n\tb \u0007 c\u0085"));
  }

  @Property
  void wrappedLinesFitAndLoseNothing(
      @ForAll String text,
      @ForAll @IntRange(min = 2, max = 30) int first,
      @ForAll @IntRange(min = 2, max = 30) int rest) {
    List<String> lines = Layout.wrap(text, first, rest);
    for (int i = 0; i < lines.size(); i++) {
      assertTrue(lines.get(i).length() <= (i == 0 ? first : rest));
    }
    String kept = String.join("", lines).replace(" ", "");
    assertEquals(Layout.clean(text).replace(" ", ""), kept);
  }

  @ParameterizedTest
  @CsvSource({
    "0.997, 99.7 %",
    "0.9999, over 99.9 %",
    "1, over 99.9 %",
    "0.999, 99.9 %",
    "0.9899, 99 %",
    "0.97, 97 %",
    "0.5, 50 %",
    "0.01, 1 %",
    "0.0034, 0.3 %",
    "0.0009, under 0.1 %",
    "0, under 0.1 %",
    "NaN, how sure is not known"
  })
  void percent(double probability, String expected) {
    assertEquals(expected, Words.percent(probability));
  }

  @Property
  void neverSaysCertain(@ForAll @DoubleRange(min = 0, max = 1) double probability) {
    String said = Words.percent(probability);
    assertFalse(said.startsWith("100") || said.startsWith("0 "), said);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 s",
    "0.0625, 0.06 s",
    "3.1, 3.1 s",
    "90, 90 s",
    "599.94, 599.9 s",
    "600, 10 min",
    "5430, 90.5 min",
    "86400, 24 h"
  })
  void duration(double seconds, String expected) {
    assertEquals(expected, Words.duration(seconds));
  }

  @Test
  void spansAndCounts() {
    assertEquals("-0.5 to 61.5 s", Words.span(-0.5, 61.46));
    assertEquals("no blink", Words.count(0, "blink"));
    assertEquals("1 blink", Words.count(1, "blink"));
    assertEquals("28 blinks", Words.count(28, "blink"));
  }

  @Test
  void aBlockCountsTheRowsItHasNoPlaceFor() {
    Block block = new Block("the answer", "[invented sheet]");
    for (int i = 0; i < 20; i++) {
      block.row("note", "number " + i);
    }
    List<String> lines = block.lines("go on");
    assertEquals(Block.MOST_LINES, lines.size());
    assertEquals("the answer  [invented sheet]", lines.get(0));
    assertEquals("  note        number 10", lines.get(11));
    assertEquals("  more        9 further lines; --json shows all", lines.get(12));
    assertEquals("next: go on", lines.get(13));
  }

  @Test
  void aLongAnswerLeavesPlaceForItsTag() {
    Block block = new Block("word ".repeat(60), "[invented sheet]");
    List<String> lines = block.lines("step ".repeat(30));
    assertTrue(lines.get(0).endsWith("word  [invented sheet]"), lines.get(0));
    assertTrue(lines.get(2).endsWith("word ..."), lines.get(2));
    for (String line : lines) {
      assertTrue(line.length() <= Layout.WIDTH, line);
    }
    assertTrue(lines.get(3).startsWith("next: step"), lines.get(3));
  }
}

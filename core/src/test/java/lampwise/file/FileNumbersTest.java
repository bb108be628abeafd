package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The small tools of the readers: numbers, units, cells, lines, bytes and the order of pairs. */
class FileNumbersTest {
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 7, 8, 9, 100})
  void pairsAreSortedAndEqualOnesStayInOrder(int size) {
    double[] times = new double[size];
    double[] levels = new double[size];
    Integer[] order = new Integer[size];
    for (int i = 0; i < size; i++) {
      times[i] = 31 * i % 7;
      levels[i] = i;
      order[i] = i;
    }
    double[] before = times.clone();
    Arrays.sort(order, (a, b) -> Double.compare(before[a], before[b]));
    Pairs.sort(times, levels);
    assertArrayEquals(Arrays.stream(order).mapToDouble(i -> before[i]).toArray(), times);
    assertArrayEquals(Arrays.stream(order).mapToDouble(i -> i).toArray(), levels);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12 lx | 12 | 12",
        "12lux | 12 | 12",
        "3.5 (mV) | 3.5 | NaN",
        "1,234.5 | 1234.5 | NaN",
        "1.234,5 | NaN | 1234.5",
        "1 234 | 1234 | 1234",
        "1 234.5 | 1234.5 | NaN",
        "1'234'567 | 1234567 | 1234567",
        "1,23,456 | NaN | NaN",
        "1,2345 | NaN | 1.2345",
        "1234,567 | NaN | 1234.567",
        "12,34 | NaN | 12.34",
        "5 apples | NaN | NaN",
        "lx | NaN | NaN",
        "-7 % | -7 | -7",
      })
  void aDressedNumberIsRead(String cell, double point, double comma) {
    assertEquals(point, LooseNumber.parse(cell, DecimalMark.POINT));
    assertEquals(comma, LooseNumber.parse(cell, DecimalMark.COMMA));
  }

  @ParameterizedTest
  @CsvSource({"5 ms,ms", "5ms,ms", "5 MS,ms", "ms,''", "5 lx,''", "5,''", "'',''"})
  void aTimeMayCarryItsUnit(String cell, String unit) {
    assertEquals(unit, LooseNumber.timeUnit(cell));
  }

  @Test
  void unitsAreKnownWithAndWithoutBrackets() {
    for (String unit : List.of("lx", "LUX", "(ms)", "[s]", "( lx )", "%")) {
      assertTrue(LooseNumber.isUnit(unit), unit);
    }
    for (String other : List.of("", "x", "(lx", "lx)", "()", "(x)")) {
      assertFalse(LooseNumber.isUnit(other), other);
    }
    assertTrue(LooseNumber.hasLightUnit("-5 lx"));
    assertTrue(LooseNumber.hasLightUnit("+.5lx"));
    assertFalse(LooseNumber.hasLightUnit("lx"));
    assertFalse(LooseNumber.hasLightUnit("5 s"));
    assertFalse(LooseNumber.hasLightUnit(""));
    assertEquals(60, ("0".repeat(57) + " lx").length());
    assertEquals(0, LooseNumber.parse("0".repeat(57) + " lx", DecimalMark.POINT));
    assertEquals(Double.NaN, LooseNumber.parse("0".repeat(58) + " lx", DecimalMark.POINT));
  }

  @ParameterizedTest
  @CsvSource({
    "1e3,1000",
    "-1.5,-1.5",
    "+2,2",
    ".5,0.5",
    "5.,5",
    "1E-2,0.01",
    "e,NaN",
    "-,NaN",
    "1-2,NaN",
    "0x1,NaN",
    "1f,NaN",
    "'',NaN"
  })
  void aNumberIsPlain(String word, double value) {
    assertEquals(value, Numbers.parse(word));
    assertEquals(9, Numbers.parse("0".repeat(399) + "9"));
    assertEquals(Double.NaN, Numbers.parse("0".repeat(400) + "9"));
  }

  @Test
  void whatIsMissingHasManyWords() {
    for (String word : List.of("", "NaN", "null", "None", "NA", "n/a", "-", "--", "inf", "-INF")) {
      assertTrue(Numbers.isMissing(word), word);
    }
    assertFalse(Numbers.isMissing("0"));
    assertFalse(Numbers.isMissing("---"));
    assertTrue(Numbers.isInfinite("+Infinity"));
    assertFalse(Numbers.isInfinite("nan"));
  }

  @Test
  void messagesShowNumbersAndWordsShort() {
    assertEquals("0.1", Numbers.text(0.1));
    assertEquals("0", Numbers.text(-0.0000001));
    assertEquals("1500", Numbers.text(1500));
    assertEquals("123456.123457", Numbers.text(123456.1234567));
    assertEquals("999999999999999", Numbers.text(999999999999999.0));
    assertEquals("1.0E15", Numbers.text(1e15));
    assertEquals("NaN", Numbers.text(Double.NaN));
    assertEquals('"' + "a".repeat(40) + '"', Numbers.quote("a".repeat(40)));
    assertEquals('"' + "a".repeat(40) + "...\"", Numbers.quote("a".repeat(41)));
    assertEquals("\"a?b\"", Numbers.quote("a\tb"));
    assertEquals(0.3, Numbers.tidy(0.1 + 0.2));
    assertEquals(3999999.1, Numbers.tidy(3999999.1000000001));
    assertEquals(4000000.1000000002, Numbers.tidy(4000000.1000000002));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a,b | a/b",
        "a, \"b,c\" ,d | a/b,c/d",
        "\"a\"\"b\",c | a\"b/c",
        "\" a \",\"\" | a/",
        "\",b | \",b",
        " a , b | a/b",
        "a,,b | a//b",
      })
  void aLineIsParted(String line, String cells) {
    assertEquals(cells, String.join("/", Delimiter.COMMA.split(line)));
  }

  @ParameterizedTest
  @CsvSource({
    "'#1 0.3',true",
    "'#12) 5',true",
    "'#1: -5',true",
    "'#1 .5',true",
    "'#1 x',false",
    "'# 1 2',false",
    "'#1',false",
    "'#1 ',false",
    "'#15',false",
    "'#x 1',false"
  })
  void anItemIsNoComment(String line, boolean numbered) {
    assertEquals(numbered, Lines.isNumbered(line, 0, line.length()));
  }

  @Test
  void partsLieBetweenSigns() {
    assertEquals(List.of("a", "b", "", "c"), Lines.split("a,b;,c", ",;"));
    assertEquals(List.of(""), Lines.split("", ","));
    assertEquals(List.of("", ""), Lines.split(",", ","));
  }

  private static String table(String text, Delimiter delimiter, int buffer) {
    StringBuilder read = new StringBuilder();
    char[] chars = new char[buffer];
    try (TableText table = new TableText(text, delimiter)) {
      for (int count = table.read(chars, 0, buffer);
          count >= 0;
          count = table.read(chars, 0, buffer)) {
        read.append(chars, 0, count);
      }
      assertEquals(-1, table.read(chars, 0, buffer));
    }
    return read.toString();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 100})
  void aTableWithBlanksHasOneBlankBetweenCells(int buffer) {
    String text = "  a \t b\n# a comment\n\nc   d  \r\n e\n";
    assertEquals("a b\nc d\ne\n", table(text, Delimiter.BLANKS, buffer));
    assertEquals("  a , b\nc,d  \n", table("  a , b\n\nc,d  \n", Delimiter.COMMA, buffer));
  }

  @Test
  void bytesAreCounted(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("b");
    Files.write(file, new byte[] {'a', 0, 1, 31, ' ', '\t', '\n', '\r', '\f', 0x7f, '"', '~'});
    assertEquals(new ByteScan(12, 1, 3, false, 10), ByteScan.of(file));
    Files.write(file, new byte[] {(byte) 0x80, 'a'});
    assertEquals(new ByteScan(2, 0, 0, true, -1), ByteScan.of(file));
    byte[] many = new byte[70_000];
    Arrays.fill(many, (byte) 'x');
    many[69_000] = '"';
    Files.write(file, many);
    assertEquals(new ByteScan(70_000, 0, 0, false, 69_000), ByteScan.of(file));
    Files.write(file, new byte[0]);
    assertEquals(new ByteScan(0, 0, 0, false, -1), ByteScan.of(file));
  }
}

package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lampwise.light.Recording;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LongTextTest {
  private static final int ROWS = 400_000;

  @Property(tries = 300)
  void thePartsAreTheTextAndEndWhereLinesDo(
      @ForAll("texts") String text, @ForAll @IntRange(min = 1, max = 9) int size) throws Exception {
    Path file = Files.createTempFile("lampwise", ".txt");
    try {
      Files.writeString(file, text);
      List<String> parts = new ArrayList<>();
      new LongText(file, UTF_8, false).forEachPart("long", size, parts::add);
      assertEquals(text, String.join("", parts));
      for (String part : parts.subList(0, parts.size() - 1)) {
        assertTrue(part.endsWith("\n") || part.endsWith("\r"), () -> "part " + part);
      }
      for (int i = 1; i < parts.size(); i++) {
        boolean split = parts.get(i - 1).endsWith("\r") && parts.get(i).startsWith("\n");
        assertTrue(!split, "a line end is not cut in two");
      }
    } finally {
      Files.delete(file);
    }
  }

  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.strings().withChars("a1,;\n\r\"\u00E9").ofMaxLength(60);
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16LE", "ISO-8859-1"})
  void aLongFileIsReadAsItsBytesAre(String code, @TempDir Path folder) throws Exception {
    Charset charset = Charset.forName(code);
    Path file = write(folder, text("t\u00E9mps,time_s,lux\n", ",", "\n"), charset);
    assertSame(file);
  }

  @Test
  void lineEndsAndQuotesMakeNoDifference(@TempDir Path folder) throws Exception {
    assertSame(write(folder, text("a,time_s,lux\r", ",", "\r"), UTF_8));
    assertSame(write(folder, text("a,time_s,lux\r\n", ",", "\r\n"), UTF_8));
    assertSame(write(folder, text("\"a\",\"time_s\",\"lux\"\n", ",", "\n", "\"x\""), UTF_8));
  }

  @ParameterizedTest
  @ValueSource(strings = {"7,abc,3\n1,2,3\n", "7,90000.5,abc\n"})
  void aFaultFarDownIsNamedWithItsLine(String end, @TempDir Path folder) throws Exception {
    Path file = write(folder, text("# a\n\na,time_s,lux\n", ",", "\n") + end, UTF_8);
    FileException whole =
        assertThrows(
            FileException.class,
            () -> RecordingReader.read("long", Files.readAllBytes(file), ReadOptions.none()));
    FileException parts =
        assertThrows(
            FileException.class, () -> RecordingReader.read("long", file, ReadOptions.none()));
    assertEquals(whole.faults(), parts.faults());
    assertEquals(ROWS + 4, parts.faults().get(0).line());
  }

  @Test
  void aLongTextThatIsNoTableOfLevelsIsReadAsAWhole(@TempDir Path folder) throws Exception {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < ROWS; i++) {
      text.append(i).append(".25000000\n");
    }
    assertSame(write(folder, text.toString(), UTF_8));
  }

  @Test
  void whatIsNoTextIsRefused(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("long.bin");
    byte[] bytes = text("a,time_s,lux\n", ",", "\n").getBytes(UTF_8);
    bytes[bytes.length / 2] = 0;
    Files.write(file, bytes);
    FileException refused =
        assertThrows(
            FileException.class, () -> RecordingReader.read("long", file, ReadOptions.none()));
    assertTrue(String.valueOf(refused.getMessage()).contains("binary"));
  }

  private static String text(String head, String sign, String end, String... first) {
    StringBuilder text = new StringBuilder(head);
    for (int i = 0; i < ROWS; i++) {
      text.append(first.length > 0 ? first[0] : "0").append(sign);
      text.append(JsonNumber.of(i * 0.02, 3, 3)).append(sign);
      text.append(i % 155 < 5 ? 40 : 12 + i % 3).append(end);
    }
    return text.toString();
  }

  private static Path write(Path folder, String text, Charset charset) {
    try {
      Path file = folder.resolve("long.csv");
      String mark = charset.equals(UTF_16LE) ? "\uFEFF" : "";
      Files.write(file, (mark + text).getBytes(charset));
      assertTrue(Files.size(file) >= RecordingReader.LONG_BYTES, "long enough");
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void assertSame(Path file) throws Exception {
    List<Recording> whole =
        RecordingReader.read("long", Files.readAllBytes(file), ReadOptions.none());
    List<Recording> parts = RecordingReader.read("long", file, ReadOptions.none());
    assertEquals(whole, parts);
  }
}

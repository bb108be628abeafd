package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import lampwise.Testdata;
import lampwise.sheet.CodeSheet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Any bytes whatever give a sheet or a typed refusal. */
class SheetReaderTotalTest {
  private static final String DEMO = "demo";

  private static final List<String> PIECES =
      List.of(
          "a",
          "1",
          "kind",
          "states",
          "rhythm",
          ": ",
          ":",
          "- ",
          "-",
          "\n",
          "\n  ",
          "[",
          "]",
          "{",
          "}",
          ",",
          "\"",
          "'",
          "&a ",
          "*a",
          "!t ",
          "? ",
          "|\n",
          ">\n",
          "# ",
          "%YAML 1.2\n",
          "---\n",
          "...\n",
          "\\",
          "\\U",
          "\t",
          "\r",
          "\uFEFF",
          "\uD83D\uDE00",
          "\u2028",
          "\0",
          "<<",
          "~",
          "@",
          "dark",
          "5 %",
          "blinks every 9 s",
          "lampwise-sheet: 1\n",
          "\"\\ud83d\"");

  private static void readsOrRefuses(byte[] content) {
    try {
      CodeSheet sheet = SheetReader.read("f", content);
      assertFalse(sheet.states().isEmpty());
    } catch (FileException e) {
      List<FileFault> sorted = new ArrayList<>(e.faults());
      sorted.sort(Comparator.comparingInt(FileFault::line).thenComparingInt(FileFault::column));
      assertFalse(sorted.isEmpty());
      assertEquals(sorted, e.faults());
      for (FileFault fault : sorted) {
        assertTrue(fault.line() >= 0 && fault.column() >= 0, fault.toString());
        assertTrue(fault.line() == 0 || fault.column() > 0, fault.toString());
        assertTrue(
            fault.message().codePoints().noneMatch(Character::isISOControl), fault.toString());
      }
    }
  }

  @Property
  void anyBytes(@ForAll byte[] content) {
    readsOrRefuses(content);
  }

  @Property(tries = 2000)
  void anyPiecesOfYaml(@ForAll("yaml") String text) {
    readsOrRefuses(text.getBytes(StandardCharsets.UTF_8));
  }

  @Provide
  Arbitrary<String> yaml() {
    return Arbitraries.of(PIECES).list().ofMaxSize(60).map(pieces -> String.join("", pieces));
  }

  @Property(tries = 3000)
  void changedSheets(@ForAll("sheets") byte[] sheet, @ForAll long seed) {
    Random random = new Random(seed);
    String text = new String(sheet, StandardCharsets.UTF_8);
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      int from = random.nextInt(text.length() + 1);
      int to = Math.min(text.length(), from + random.nextInt(12));
      text =
          switch (random.nextInt(4)) {
            case 0 -> text.substring(0, from) + text.substring(to);
            case 1 -> text.substring(0, to) + text.substring(from);
            case 2 -> text.substring(0, from);
            default ->
                text.substring(0, from)
                    + PIECES.get(random.nextInt(PIECES.size()))
                    + text.substring(random.nextBoolean() ? to : from);
          };
    }
    readsOrRefuses(text.getBytes(StandardCharsets.UTF_8));
  }

  @Property
  void changedBytes(@ForAll("sheets") byte[] sheet, @ForAll long seed) {
    Random random = new Random(seed);
    byte[] content = sheet.clone();
    for (int i = 0; i < 3; i++) {
      content[random.nextInt(content.length)] = (byte) random.nextInt(256);
    }
    readsOrRefuses(content);
  }

  @Provide
  Arbitrary<byte[]> sheets() {
    return Arbitraries.of("minimal", "two-lamps", "wrong-key", "doubled-state", "many-faults", DEMO)
        .map(SheetReaderTotalTest::bytes);
  }

  private static byte[] bytes(String name) {
    if (!name.equals(DEMO)) {
      return Testdata.bytes("sheets", name + ".sheet.yaml");
    }
    try (InputStream in = SheetReader.class.getResourceAsStream("demo.sheet.yaml")) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

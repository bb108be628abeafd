package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import lampwise.Testdata;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Compares what is told about the bad sheets in testdata with the table beside them. */
class SheetFaultsTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "wrong-key.sheet.yaml",
        "doubled-state.sheet.yaml",
        "impossible-phrase.sheet.yaml",
        "many-faults.sheet.yaml"
      })
  void tellsEveryFaultOfTheFile(String file) {
    List<String> expected =
        new String(Testdata.bytes("sheets", "faults.txt"), StandardCharsets.UTF_8)
            .lines()
            .filter(line -> line.startsWith(file + ":"))
            .toList();
    FileException e =
        assertThrows(
            FileException.class, () -> SheetReader.read(file, Testdata.bytes("sheets", file)));
    assertFalse(expected.isEmpty(), "no row for " + file);
    assertEquals(
        String.join("\n", expected),
        e.faults().stream().map(FileFault::toString).collect(Collectors.joining("\n")));
  }
}

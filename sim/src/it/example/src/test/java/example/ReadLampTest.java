package example;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.file.Files;
import java.nio.file.Path;
import lampwise.decode.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadLampTest {
  private static final String SHEET =
      """
      lampwise-sheet: 1
      title: An invented unit
      basis: invented
      states:
        awake:
          rhythm: 1 blink every 4.4 s
          means: The unit works
          condition: ready
        cells-low:
          rhythm: 2 blinks 0.4 s apart every 4.4 s
          means: The cells run down
          condition: power-low
      """;

  @Test
  void twoBlinksAreLowCells(@TempDir Path folder) throws Exception {
    Path sheet = Files.writeString(folder.resolve("unit.sheet.yaml"), SHEET);
    Path taps = Files.writeString(folder.resolve("taps.txt"), "1.0 1.4 5.4 5.8 9.8 10.2 14.2 14.6");
    Verdict.Decoded decoded =
        assertInstanceOf(Verdict.Decoded.class, ReadLamp.read(sheet, taps).verdict());
    assertEquals("cells-low", decoded.state());
  }
}

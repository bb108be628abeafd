package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a fuzzer kept because it reached something new in a reader: no reader fails on it. */
class FuzzCorpusTest {
  @ParameterizedTest
  @EnumSource
  void noReaderFailsOnWhatTheFuzzerKept(FuzzCorpus corpus) {
    Map<String, byte[]> inputs = corpus.inputs();
    assertTrue(inputs.size() > 20, () -> "only " + inputs.size() + " inputs");
    assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () ->
            inputs.forEach(
                (name, content) -> assertDoesNotThrow(() -> corpus.feed(content), () -> name)));
  }

  @Test
  void whatIsNotTypedIsAFinding() {
    byte[] any = "1 blink every 7 s".getBytes(StandardCharsets.UTF_8);
    FuzzTargets.Phrases.fuzzerTestOneInput(any);
    assertThrows(AssertionError.class, () -> FuzzTargets.assertSaid(new PlantedReader().message()));
  }

  /** A reader whose reason has two lines. */
  private static final class PlantedReader {
    String message() {
      return "expected a number\nand a unit";
    }
  }
}

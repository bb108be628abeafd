package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import lampwise.decode.LampDecoder;
import lampwise.sim.Labelled;
import org.junit.jupiter.api.Test;

/**
 * Lampwise beside what SciPy 1.10.1 makes of the same logs by templates ({@code templates.py}): the
 * first 20 recordings of each of people's cells. The whole table is in sim/docs/score.md.
 */
class TemplatesTest {
  private static final int COUNT = 20;

  /** With this share the script is right most often on the whole bench. */
  private static final double SHARE = 0.95;

  /** Lampwise may be wrong where the script is lucky, so often in a cell's 20. */
  private static final int LUCK = 1;

  private static List<String> stored() throws IOException {
    try (InputStream in = TemplatesTest.class.getResourceAsStream("templates.txt")) {
      byte[] bytes = Objects.requireNonNull(in, "templates.txt").readAllBytes();
      return new String(bytes, StandardCharsets.UTF_8).lines().toList();
    }
  }

  @Test
  void lampwiseIsRightMoreOften() throws IOException {
    List<String> stored = stored();
    assertTrue(stored.get(0).startsWith("# SciPy 1.10.1"), stored.get(0));
    List<Labelled> recordings = TemplateStudy.first(COUNT);
    LampDecoder decoder = new LampDecoder();
    int allOwn = 0;
    int allScript = 0;
    for (int from = 0; from < recordings.size(); from += COUNT) {
      int own = 0;
      int script = 0;
      for (int i = from; i < from + COUNT; i++) {
        Labelled labelled = recordings.get(i);
        String truth = labelled.truth().state();
        Outcome outcome =
            Outcome.of(truth, decoder.decode(Bench.sheet(), List.of(labelled.recording())));
        own += outcome.isRight() ? 1 : 0;
        script += TemplateStudy.Answer.of(stored.get(i + 1)).state(SHARE).equals(truth) ? 1 : 0;
      }
      assertTrue(own >= script - LUCK, "cell from " + from + ": " + own + " and " + script);
      allOwn += own;
      allScript += script;
    }
    assertTrue(allOwn > 1.03 * allScript, allOwn + " and " + allScript);
    assertTrue(allScript > 0.7 * recordings.size(), "the script is no straw man: " + allScript);
  }
}

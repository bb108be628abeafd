package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A few kills of the study at every build. */
class VisitLogCrashTest {
  @Test
  void nothingAcknowledgedIsLostWhenAWriterIsKilled() throws Exception {
    VisitLogCrashStudy.Result result = VisitLogCrashStudy.run(4, 20261125);
    assertEquals(4, result.kills());
    assertEquals(0, result.lost(), result.toString());
    assertTrue(result.acknowledged() > 4, result.toString());
    assertTrue(result.extra() >= 0, result.toString());
  }
}

package lampwise.sim.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Samples that break a law shrink to short recordings. */
class ShrinkingTest {
  private static ContractRun run;

  @BeforeAll
  static void breakTheLaws() {
    run = ContractRun.of(AlwaysFailing.class);
  }

  @Test
  void aLogKeepsTheBlinksThatMatter() {
    assertEquals("log:   no window   on 1, 2, 3", shrunk("noLogHasThreeBlinks"));
  }

  @Test
  void aLightCurveKeepsARunOfSamples() {
    String sample = shrunk("noCurveIsLit");
    assertTrue(sample.startsWith("curve:   no window   light: 2 samples 0 to 0.1 s"), sample);
  }

  @Test
  void aSimulatedRecordingKeepsTwoStatesAndFewSeconds() {
    String sample = shrunk("noSimulatedRecordingIsMade");
    assertTrue(sample.contains("5 s by") && sample.contains("seed 0"), sample);
    assertTrue(sample.contains("s2: dark") && !sample.contains("s3"), sample);
  }

  private static String shrunk(String law) {
    String report = run.report(law);
    String sample = report.substring(report.indexOf("Shrunk Sample"));
    sample = sample.substring(sample.indexOf("--\n") + 3, sample.indexOf("Original Sample"));
    return sample.strip();
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import lampwise.file.SheetReader;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;

/** Lamps hardly brighter than the noise, and light that is no lamp. */
class LightFoldTest {
  private static final double HZ = 50;
  private static final double SECONDS = 60;

  private static CodeSheet sheet() throws Exception {
    String text =
        """
        lampwise-sheet: 1
        title: Two ticks
        basis: invented
        clock: 5 %
        blink: 90 ms
        states:
          tick:
            rhythm: 1 blink every 3.4 s
            means: tick
            condition: other
          pair:
            rhythm: 2 blinks 0.3 s apart every 8 s
            means: pair
            condition: other
          dark:
            rhythm: dark
            means: nothing
            condition: other
        """;
    return SheetReader.read("ticks", text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  /** A lamp of a brightness in deviations of the noise, every 3.4 s; 0 for none. */
  private static double[] levels(long seed, double lamp) {
    return levels(seed, lamp, SECONDS);
  }

  private static double[] levels(long seed, double lamp, double lasting) {
    Random random = new Random(seed);
    double[] levels = new double[(int) (HZ * lasting)];
    double phase = 3.4 * random.nextDouble();
    for (int i = 0; i < levels.length; i++) {
      boolean lit = (i / HZ + phase) % 3.4 < 0.09;
      levels[i] = 150 + random.nextGaussian() + (lit ? lamp : 0);
    }
    return levels;
  }

  private static LightCurve curve(double[] levels, double from) {
    double[] seconds = new double[levels.length];
    for (int i = 0; i < levels.length; i++) {
      seconds[i] = from + i / HZ;
    }
    return LightCurve.of(
        Origin.named("light"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  private static Reading read(double[] levels, double from) throws Exception {
    return new LampDecoder().decode(sheet(), List.of(curve(levels, from)));
  }

  @Test
  void readsALampTwoDeviationsBright() throws Exception {
    for (long seed = 0; seed < 5; seed++) {
      Verdict verdict = read(levels(seed, 2), 0).verdict();
      assertEquals("tick", assertInstanceOf(Verdict.Decoded.class, verdict).state());
    }
  }

  @Test
  void readsAFaintLampThatWasRecordedForOverFiveMinutes() throws Exception {
    Reading reading = read(levels(3, 2, 320), 0);
    assertEquals("tick", assertInstanceOf(Verdict.Decoded.class, reading.verdict()).state());
    assertTrue(reading.observations().get(0).blinks().size() > 80);
  }

  @Test
  void aStateThatChangesInALongRecordingIsNotFoldedAsOne() throws Exception {
    double[] levels = levels(3, 4, 320);
    System.arraycopy(levels(4, 0, 320), 0, levels, 0, levels.length / 2);
    LightCurve curve = curve(levels, 0);
    Evidence found = Sight.of(curve).evidence().orElseThrow();
    assertTrue(LightLikelihoods.of(sheet(), curve, found).isEmpty());
  }

  private static boolean blinks(Reading reading) {
    return reading.verdict() instanceof Verdict.Decoded decoded && !decoded.state().equals("dark");
  }

  @Test
  void takesNoiseForNoStateThatBlinks() throws Exception {
    for (long seed = 0; seed < 10; seed++) {
      Reading reading = read(levels(seed, 0), 0);
      assertFalse(blinks(reading), "seed " + seed);
    }
  }

  @Test
  void neitherUnitNorOffsetNorStartMatters() throws Exception {
    double[] levels = levels(7, 2);
    double[] other = new double[levels.length];
    for (int i = 0; i < levels.length; i++) {
      other[i] = 8 * levels[i] + 1024;
    }
    double expected = read(levels, 0).candidates().get(0).probability();
    assertEquals(expected, read(other, 0).candidates().get(0).probability(), 1e-6);
    assertEquals(expected, read(levels, 32).candidates().get(0).probability(), 1e-3);
  }

  @Test
  void exponentialsComeFromATable() {
    for (double x = -14; x <= 14; x += 0.001) {
      assertEquals(1, Folded.exp(x) / Math.exp(x), 1e-7);
    }
  }

  /** The mean over phases and stretches by hand: one pulse in a cycle of four places. */
  @Test
  void foldingTakesTheMeanOverAllPhases() {
    float[] logs = {1, 2, 0, 3};
    Train train = new Train(new double[] {0}, new double[] {0.1}, 0, 4, 1, 1, 0);
    Folded fold = Folded.of(train, logs, 1, 0, 4);
    double mean = (Math.exp(1) + Math.exp(2) + Math.exp(3) + 1) / 4;
    assertEquals(Math.log(mean), fold.logMean(), 1e-6);
    assertEquals(3, fold.best());
    assertEquals(3, fold.startSeconds());
  }

  /** Theory of detection: the evidence of N pulses in white noise grows as N. */
  @Test
  void theEvidenceOfFoldedBlinksAddsUp() {
    float[] logs = new float[1000];
    for (int g = 50; g < logs.length; g += 100) {
      logs[g] = 2;
    }
    Train train = new Train(new double[] {0}, new double[] {0.1}, 0, 100, 0.9999, 1.0001, 0);
    assertEquals(20, Folded.of(train, logs, 1, 0, 1000).best(), 1e-4);
    assertEquals(10, Folded.of(train, logs, 1, 0, 500).best(), 1e-4);
    assertEquals(50, Folded.of(train, logs, 1, 0, 1000).startSeconds(), 0);
  }

  @Test
  void aRoomThatIsSwitchedIsNoBlink() throws Exception {
    for (long seed = 0; seed < 6; seed++) {
      double[] levels = levels(seed, 0);
      for (int i = levels.length / 3; i < levels.length; i++) {
        levels[i] -= 60;
      }
      assertFalse(blinks(read(levels, 0)), "seed " + seed);
    }
    assertTrue(read(levels(1, 3), 0).observations().get(0).blinks().size() > 10);
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import lampwise.file.SheetReader;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;

/** People who pass before a slow phone: shadows far deeper than the lamp is bright. */
class LightShadowTest {
  private static final double HZ = 5;
  private static final double AVERAGING = 0.15;
  private static final double BLINK = 0.15;
  private static final double SECONDS = 90;

  /** When each shadow falls, and how long it stays. */
  private static final double[][] SHADOWS = {
    {6.5, 3.8}, {21.8, 0.9}, {36.4, 2.5}, {41.7, 1}, {60, 3.1}, {68, 2}, {79, 2.3}
  };

  private static CodeSheet sheet() throws Exception {
    String text =
        """
        lampwise-sheet: 1
        title: Slow and pair
        basis: invented
        clock: 2 %
        blink: 150 ms
        states:
          slow:
            rhythm: 1 blink every 5.1 s
            means: slow
            condition: other
          pair:
            rhythm: 2 blinks 0.6 s apart every 8 s
            means: pair
            condition: other
          dark:
            rhythm: dark
            means: nothing
            condition: other
        """;
    return SheetReader.read("shadows", text.getBytes(StandardCharsets.UTF_8));
  }

  /** Whole lux of a room of 300 under shadows of a third. */
  private static Reading read(long seed, double lamp, double[][] shadows) throws Exception {
    Random random = new Random(seed);
    int size = (int) (HZ * SECONDS);
    double[] seconds = new double[size];
    double[] levels = new double[size];
    double phase = 5.1 * random.nextDouble();
    for (int i = 0; i < size; i++) {
      seconds[i] = (i + 0.1 * random.nextDouble()) / HZ;
      double level = 0;
      for (int part = 0; part < 15; part++) {
        double t = seconds[i] - AVERAGING * part / 15;
        level += 300 + ((t + phase) % 5.1 < BLINK ? lamp : 0);
        for (double[] shadow : shadows) {
          level -= t >= shadow[0] && t < shadow[0] + shadow[1] ? 100 : 0;
        }
      }
      levels[i] = Math.rint(level / 15 + 3 * random.nextGaussian());
    }
    LightCurve curve =
        LightCurve.of(
            Origin.named("light"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
    return new LampDecoder().decode(sheet(), List.of(curve));
  }

  @Test
  void readsALampBelowManyShadows() throws Exception {
    for (long seed = 0; seed < 5; seed++) {
      Verdict verdict = read(seed, 40, SHADOWS).verdict();
      assertEquals("slow", assertInstanceOf(Verdict.Decoded.class, verdict, "" + seed).state());
    }
  }

  /** Bright before the first shadow and between two that are near to each other. */
  @Test
  void takesTheRoomBetweenShadowsForNoBlink() throws Exception {
    double[][] shadows = {{0.8, 2.4}, {20, 3}, {23.8, 2}, {87, 2.4}};
    for (long seed = 0; seed < 10; seed++) {
      for (Candidate candidate : read(seed, 0, shadows).candidates()) {
        boolean dark = candidate.state().equals("dark");
        assertTrue(dark || candidate.probability() < 0.9, seed + ": " + candidate);
      }
    }
  }
}

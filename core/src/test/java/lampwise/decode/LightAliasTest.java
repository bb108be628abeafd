package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import lampwise.file.SheetReader;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import org.junit.jupiter.api.Test;

/** Fast blinks before a slow sensor must not be read as the slow state that they imitate. */
class LightAliasTest {
  private static final String SHEET =
      """
      lampwise-sheet: 1
      title: Fast and slow
      basis: invented
      clock: 5 %
      blink: 60 ms
      states:
        rapid:
          rhythm: 1 blink every 0.385 s
          means: rapid
          condition: other
        five:
          rhythm: 1 blink every 5 s
          means: five
          condition: other
        second:
          rhythm: 1 blink every 1 s
          means: second
          condition: other
        dark:
          rhythm: dark
          means: nothing
          condition: other
      """;

  private static String decoded(double hz, double seconds, long seed, DoubleUnaryOperator light)
      throws Exception {
    Random random = new Random(seed);
    int count = (int) (hz * seconds);
    double[] times = new double[count];
    double[] levels = new double[count];
    for (int i = 0; i < count; i++) {
      times[i] = i / hz;
      levels[i] = light.applyAsDouble(times[i]) + random.nextGaussian();
    }
    LightCurve curve =
        LightCurve.of(
            Origin.named("light"), Marks.nothing(), LightCurve.Lit.BRIGHTER, times, levels);
    Verdict verdict =
        new LampDecoder()
            .decode(
                SheetReader.read("alias", SHEET.getBytes(StandardCharsets.UTF_8)), List.of(curve))
            .verdict();
    return verdict instanceof Verdict.Decoded state ? state.state() : "";
  }

  /** A lamp lit 60 ms a period, as a sensor sees it that looks at one moment. */
  private static double lamp(double time, double period) {
    return time % period < 0.06 ? 140 : 100;
  }

  @Test
  void aFastBlinkIsNotTheSlowOneThatItsSamplesShow() throws Exception {
    // At 5 samples a second 5.2 Hz shows as 0.2 Hz, which the sheet has, and 2.6 Hz as 2.4 Hz.
    for (double period : new double[] {1 / 5.2, 1 / 2.6}) {
      for (long seed = 0; seed < 2; seed++) {
        String state = decoded(5, 60, seed, time -> lamp(time, period));
        assertFalse(state.equals("five") || state.equals("second"), state + " " + period);
      }
    }
  }

  @Test
  void aBeatOfThePeriodOfAStateIsNotThatState() throws Exception {
    for (long seed = 0; seed < 5; seed++) {
      String beat = decoded(20, 40, seed, time -> 100 + 4 * Math.sin(2 * Math.PI * time));
      assertTrue(beat.isEmpty() || beat.equals("dark"), "seed " + seed + ": " + beat);
    }
  }

  @Test
  void aSunsetIsNoStateThatBlinks() throws Exception {
    for (long seed = 0; seed < 3; seed++) {
      String sunset = decoded(20, 40, seed, time -> 300 * Math.exp(-time / 20));
      assertTrue(sunset.isEmpty() || sunset.equals("dark"), "seed " + seed + ": " + sunset);
    }
  }
}

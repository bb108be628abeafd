package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** The room's light below the lamp's. */
class LightSamplesTest {
  private static final double SECONDS = 60;
  private static final double NOISE = 1.5;

  private static LightSamples samples(double hertz, DoubleUnaryOperator room) {
    Random random = new Random(1129);
    double[] seconds = new double[(int) (SECONDS * hertz)];
    double[] levels = new double[seconds.length];
    for (int i = 0; i < levels.length; i++) {
      seconds[i] = i / hertz;
      levels[i] = room.applyAsDouble(seconds[i]) + NOISE * random.nextGaussian();
    }
    LightCurve curve =
        LightCurve.of(
            new Origin("room", Optional.empty(), List.of()),
            Marks.watched(0, SECONDS),
            LightCurve.Lit.BRIGHTER,
            seconds,
            levels);
    return LightSamples.of(curve, new Window(0, SECONDS), false);
  }

  private static double spread(LightSamples samples) {
    double squares = 0;
    for (double value : samples.above()) {
      squares += value * value;
    }
    return Math.sqrt(squares / samples.above().length);
  }

  @Test
  void lightThatSinksIsNoNoise() {
    for (double perSecond : new double[] {0, -4, -10, 10}) {
      LightSamples samples = samples(5, t -> 700 + perSecond * t);
      assertEquals(NOISE, samples.noise(), 0.15 * NOISE, perSecond + " a second");
      assertEquals(NOISE, spread(samples), 0.2 * NOISE, perSecond + " a second");
    }
  }

  @Test
  void aShadowBesideTheBorderHidesWhatSharesItsBaseline() {
    double[] above = samples(20, t -> t > 0.6 && t < 1.8 ? 100 : 200).above();
    for (int i = 0; i < 12; i++) {
      assertTrue(Double.isNaN(above[i]), "sample " + i + ": " + above[i]);
    }
    double[] last = samples(20, t -> t > 58.2 && t < 59.4 ? 100 : 200).above();
    for (int i = last.length - 12; i < last.length; i++) {
      assertTrue(Double.isNaN(last[i]), "sample " + i + ": " + last[i]);
    }
  }
}

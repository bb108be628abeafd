package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** What noise explains of a light curve, and what a second blink does. */
class LightNoiseTest {
  private static LightSamples samples(double loud, double everyOther) {
    Random random = new Random(1129);
    double[] seconds = new double[1000];
    double[] above = new double[seconds.length];
    for (int i = 0; i < above.length; i++) {
      seconds[i] = i / 10.0;
      above[i] = loud * random.nextGaussian() + (i % 50 == 25 ? everyOther : 0);
    }
    return new LightSamples(seconds, above, 1, 0.1);
  }

  @Test
  void whatFallsFarBelowTheDarkLevelMayRiseAsFar() {
    double usual = Disturbed.of(samples(1, 0)).logDensity(8);
    assertEquals(usual, Disturbed.of(samples(1, 30)).logDensity(8), 0, "a lamp is no disturbance");
    assertTrue(Disturbed.of(samples(1, -30)).logDensity(8) > usual + 1);
  }

  @Test
  void louderNoiseExplainsWhatALampSeemedTo() {
    Disturbed disturbed = Disturbed.of(samples(1, 0));
    double quiet = Louder.of(samples(1, 0), disturbed).given(10, 20);
    double loud = Louder.of(samples(1.15, 0), disturbed).given(10, 20);
    assertTrue(quiet > 9 && quiet < 10, "as measured: " + quiet);
    assertTrue(loud < 7, "louder: " + loud);
    assertEquals(0, Louder.of(samples(1.15, 0), disturbed).given(0, 0), 1e-9);
  }

  @Test
  void aSecondBlinkOfEveryCycleIsProposed() {
    float[] logs = new float[1000];
    for (int g = 50; g < logs.length; g += 100) {
      logs[g] = 8;
    }
    Train train = new Train(new double[] {0}, new double[] {0.09}, 0, 4, 0.95, 1.05, 0);
    Folded fold = new Folded(60, 80, 50, 1);
    assertTrue(SecondBlink.of(logs, 0.04, train, fold, 0.2).isEmpty());
    for (int g = 80; g < logs.length; g += 100) {
      logs[g] = 2;
    }
    Train both = SecondBlink.of(logs, 0.04, train, fold, 0.2).orElseThrow().train();
    assertEquals(1.2, both.on(1) - both.on(0), 1e-9);
    assertEquals(4, both.cycleSeconds(), 1e-9);
    assertTrue(SecondBlink.of(logs, 0.04, train, fold, 1.3).isEmpty(), "they share samples");
  }
}

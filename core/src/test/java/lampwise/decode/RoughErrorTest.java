package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A rough look at timing errors. */
class RoughErrorTest {
  private static final List<Noise> SETTINGS = Noise.ofPeople(0.01, false);

  /** Three blinks 0.6 s apart every 8 s. */
  private static final Train TRAIN =
      new Train(new double[] {0, 0.6, 1.2}, new double[] {0.1, 0.1, 0.1}, 0, 8, 0.95, 1.05, 0);

  private static final Train OTHER =
      new Train(new double[] {0}, new double[] {0.1}, 0, 3.3, 0.95, 1.05, 0);

  private static Evidence evidence(int pulses, double error) {
    Random random = new Random(1125);
    List<Evidence.Note> notes = new ArrayList<>();
    for (int pulse = 0; pulse < pulses; pulse++) {
      double on = 1 + TRAIN.on(pulse) + error * random.nextGaussian();
      notes.add(new Evidence.Note(on, Double.NaN, false, false, 1));
    }
    return new Evidence(new Window(0, 90), notes, List.of(), SETTINGS, 0.01, true, false);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.012, 0.04, 0.08})
  void theSettingsOfTheErrorThatWasMadeComeFirst(double error) {
    Evidence evidence = evidence(30, error);
    List<Noise> settings = RoughError.likeFirst(List.of(OTHER, TRAIN), evidence);
    assertEquals(error, settings.get(0).sd(), 0.1 * error);
    assertEquals(Set.copyOf(SETTINGS), Set.copyOf(settings));
    assertEquals(SETTINGS.size(), settings.size());
    assertEquals(error, RoughError.of(TRAIN, evidence.starts()), 0.35 * error);
  }

  @Test
  void ofTooFewBlinksNothingIsKnown() {
    Evidence evidence = evidence(2, 0.04);
    assertTrue(Double.isInfinite(RoughError.of(TRAIN, evidence.starts())));
    assertEquals(SETTINGS.size(), RoughError.likeFirst(List.of(TRAIN), evidence).size());
    assertEquals(SETTINGS.size(), RoughError.likeFirst(List.of(), evidence).size());
  }
}

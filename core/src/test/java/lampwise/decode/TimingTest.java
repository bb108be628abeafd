package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** Settings of the noise that are folded at once. */
class TimingTest {
  private static final List<Noise> SETTINGS = Noise.ofPeople(0.01, false);

  /** Two blinks 0.8 s apart every 4 s. */
  private static final Train TRAIN =
      new Train(new double[] {0, 0.8}, new double[] {0.2, 0.2}, 0, 4, 0.95, 1.05, 0);

  /** One blink every 3.1 s. */
  private static final Train OTHER =
      new Train(new double[] {0}, new double[] {0.2}, 0, 3.1, 0.95, 1.05, 0);

  /** The train, each blink noted a little early or late, one of them missed and one made up. */
  private static Evidence recording() {
    List<Evidence.Note> notes = new ArrayList<>();
    for (int pulse = 0; pulse < 20; pulse++) {
      double error = 0.05 * Math.sin(7 * pulse);
      if (pulse != 9) {
        notes.add(note(1.3 + TRAIN.on(pulse) + error));
      }
      if (pulse == 13) {
        notes.add(note(1.3 + TRAIN.on(pulse) + 1.9));
      }
    }
    return new Evidence(new Window(0, 42), notes, List.of(), SETTINGS, 0.01, true, false);
  }

  private static Evidence.Note note(double on) {
    return new Evidence.Note(on, Double.NaN, false, false, 1);
  }

  @Test
  void settingsWithTheSameErrorsAreOneTiming() {
    List<Timing> timings = Timing.of(SETTINGS);
    assertEquals(List.of(2, 3, 3), timings.stream().map(Timing::size).toList());
    double weights = 0;
    for (Timing timing : timings) {
      for (int s = 0; s < timing.size(); s++) {
        assertEquals(timing.any().sd(), timing.setting(s).sd());
        weights += timing.setting(s).weight();
      }
    }
    assertEquals(SETTINGS.stream().mapToDouble(Noise::weight).sum(), weights);
    assertEquals(6, Timing.of(Noise.ofPeople(0.01, true)).size(), "ends noted late or in time");
  }

  @Test
  void settingsFoldedAtOnceAreAsLikelyAsOneByOne() {
    Evidence evidence = recording();
    double best =
        SETTINGS.stream()
            .mapToDouble(n -> Fit.logLikelihood(TRAIN, evidence, n, false, Floor.none()))
            .max()
            .orElseThrow();
    int matter = 0;
    for (Timing timing : Timing.of(SETTINGS)) {
      double[] logs = Fit.logLikelihoods(TRAIN, evidence, timing, false, Floor.none());
      for (int s = 0; s < logs.length; s++) {
        Noise noise = timing.setting(s);
        double alone = Fit.logLikelihood(TRAIN, evidence, noise, false, Floor.none());
        if (alone > best - Sums.HOPELESS) {
          assertEquals(alone, logs[s], 0.01, "under " + noise);
          matter++;
        }
      }
    }
    assertTrue(matter >= 4, "settings that matter: " + matter);
  }

  @Test
  void whatFallsFarBehindOnTheWayIsGivenUp() {
    Evidence evidence = recording();
    Timing timing = Timing.of(SETTINGS.get(SETTINGS.size() - 1));
    double[] free = Fit.logLikelihoods(OTHER, evidence, timing, false, Floor.none());
    double[] right = Fit.logLikelihoods(TRAIN, evidence, timing, false, Floor.none());
    Floor floor = Floor.none();
    assertEquals(right[0], Fit.logLikelihoods(TRAIN, evidence, timing, false, floor)[0]);
    assertTrue(floor.front().at(evidence.notes().size() - 1) > Double.NEGATIVE_INFINITY);
    assertEquals(right[0], Fit.logLikelihoods(TRAIN, evidence, timing, false, floor)[0], 1e-9);
    assertTrue(right[0] > free[0] + Sums.BEHIND, "the other train does not fit");
    assertTrue(Fit.logLikelihoods(OTHER, evidence, timing, false, floor)[0] < free[0] - 1);
  }
}

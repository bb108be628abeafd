package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * People note the first blink of a burst late, and the first that they see of a burst that was
 * under way when they began to watch. Checked against what is expected of such people.
 */
class LateFirstTest {
  private static final double LATE = 0.13;
  private static final Noise PERSON = Noise.ofPerson(0.015, 0.01, 1e-4, 1e-6, 0, LATE);

  /** Four blinks of 0.1 s, 0.4 s apart, every 9 s. */
  private static final Train FOUR =
      new Train(
          new double[] {0, 0.4, 0.8, 1.2},
          new double[] {0.1, 0.1, 0.1, 0.1},
          0,
          9,
          0.999,
          1.001,
          0);

  private static Evidence watched(boolean stated, double... starts) {
    List<Evidence.Note> notes =
        Arrays.stream(starts)
            .mapToObj(on -> new Evidence.Note(on, Double.NaN, false, false, 1))
            .toList();
    return new Evidence(new Window(0, 8.2), notes, List.of(), List.of(PERSON), 0.01, stated, false);
  }

  private static double log(boolean stated, double... starts) {
    return Fit.logLikelihood(FOUR, watched(stated, starts), PERSON, false, Floor.none());
  }

  /** A blink on its line rather than so late costs this much. */
  private static final double MUCH = 7;

  @Test
  void theFirstThatIsSeenOfABurstIsLate() {
    assertTrue(log(true, 0.2 + LATE, 0.6) > log(true, 0.2, 0.6) + MUCH);
  }

  @Test
  void theOthersAreNot() {
    assertTrue(log(true, 0.2 + LATE, 0.6, 1) > log(true, 0.2 + LATE, 0.6 + LATE, 1) + MUCH);
  }

  /** The second blink at 0.15 s was watched and not noted: the third is in time. */
  @Test
  void whoMissedTheFirstIsInTimeForTheSecond() {
    assertTrue(log(true, 0.55, 0.95) > log(true, 0.55 + LATE, 0.95) + MUCH);
  }

  /** A blink from -0.03 to 0.07 s was under way when the window began. */
  @Test
  void aBlinkThatWasUnderWayWasSeen() {
    assertTrue(log(true, 0.37, 0.77) > log(true, 0.37 + LATE, 0.77) + MUCH);
  }

  @Test
  void aWindowThatNobodySaidTellsNothing() {
    assertTrue(log(false, 0.2, 0.6) > log(false, 0.2 + LATE, 0.6) + MUCH);
  }

  @Test
  void rehearsedPeopleAreAsLate() {
    Watching watching = Watching.byHand(0, 0, 0, LATE);
    Rehearsal rehearsal = new Rehearsal(watching, false);
    int cut = 0;
    for (int number = 0; number < 200; number++) {
      double[] starts = rehearsal.of(List.of(FOUR), number, 5).starts();
      if (starts.length >= 2 && starts.length < 4 && starts[starts.length - 1] < 1.3) {
        boolean late = Math.abs(starts[1] - starts[0] - 0.4 + LATE) < 0.002;
        cut += late ? 1 : 0;
        assertTrue(late || (starts[0] >= 0.3 && starts[0] < 0.4), "one was under way before");
      }
    }
    assertTrue(cut > 10, cut + " cut by the beginning");
  }

  /** Two blinks 0.3 s apart every 4.5 s, noted 0.15 s apart by who is late, and one by mistake. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 5.4, 8})
  void aMistakeDoesNotHideAShortRecordingsCycle(double mistake) {
    double[] starts = {3.03, 3.18, mistake, 7.53, 7.68};
    Arrays.sort(starts);
    boolean proposed =
        FreeRhythms.propose(watched(true, starts)).stream()
            .anyMatch(
                free ->
                    free.train().size() == 2
                        && free.durations() == 1
                        && Math.abs(free.train().cycleSeconds() - 4.5) < 0.01
                        && Math.abs(free.train(PERSON).on(1) - 0.28) < 0.01);
    assertTrue(proposed);
  }

  /** A lamp that blinks twice in 0.12 s at the least is not seen as one that does in 0.01 s. */
  @Test
  void spacingsThatNoLampMakesAreNoRhythm() {
    Noise exact = Noise.ofPerson(0.015, 0.01, 0.01, 0.01, 0, 0);
    double near = group(0.02).logWeight(exact);
    double far = group(0.2).logWeight(exact);
    assertTrue(near < far - 8, near + " and " + far);
    Noise rough = Noise.ofPerson(0.1, 0.01, 0.01, 0.01, 0, 0);
    assertTrue(group(0.02).logWeight(rough) > group(0.2).logWeight(rough) - 2);
    Noise late = Noise.ofPerson(0.015, 0.01, 0.01, 0.01, 0, 0.18);
    assertTrue(group(0.02).logWeight(late) > near + 8, "0.2 s apart, the first noted late");
  }

  private static FreeRhythms group(double spacing) {
    Train train = new Train(new double[] {0, spacing}, new double[2], 0, 5, 0.92, 1.08, 0);
    return new FreeRhythms(train, 0, 1, 1);
  }
}

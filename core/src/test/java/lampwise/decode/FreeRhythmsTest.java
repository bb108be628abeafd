package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;

/** Rhythms that a recording proposes. */
class FreeRhythmsTest {
  /** Blinks after these gaps, over and over. */
  private static List<FreeRhythms> proposed(int cycles, double... gaps) {
    double[] starts = new double[cycles * gaps.length];
    double on = 1;
    for (int i = 0; i < starts.length; i++) {
      starts[i] = on;
      on += gaps[i % gaps.length];
    }
    return FreeRhythms.propose(evidence(on + 1, starts));
  }

  /** The groups that are proposed for the cycle of these gaps. */
  private static List<FreeRhythms> groups(int cycles, double... gaps) {
    double cycle = Arrays.stream(gaps).sum();
    return proposed(cycles, gaps).stream()
        .filter(free -> free.train().size() == gaps.length)
        .filter(free -> Math.abs(free.train().cycleSeconds() - cycle) < 0.1)
        .toList();
  }

  @Test
  void aPauseThatIsNoneMakesNoGroupOnceItIsKnown() {
    assertEquals(List.of(), groups(20, 0.6, 0.66));
    assertFalse(groups(20, 0.5, 0.75).isEmpty(), "the shortest pause");
  }

  @Test
  void twoGroupsWantAPauseBetweenThem() {
    assertEquals(List.of(1), durations(groups(20, 0.5, 0.58, 0.5, 4)));
    assertEquals(List.of(1, 2, 3), durations(groups(20, 0.5, 0.9, 0.5, 4)));
    assertEquals(List.of(1, 2, 3), durations(groups(5, 0.5, 0.58, 0.5, 4)), "not seen often");
  }

  @Test
  void twoGroupsOfWhichOneIsASingleBlinkAreProposedOnce() {
    assertEquals(List.of(1, 2), durations(groups(12, 0.4, 1.5, 5)));
    assertEquals(List.of(1, 2, 3), durations(groups(12, 0.4, 1.5, 0.7, 5)));
  }

  /** How many durations each has, of those that are not on a beat. */
  private static List<Integer> durations(List<FreeRhythms> groups) {
    return groups.stream().map(FreeRhythms::durations).filter(some -> some > 0).toList();
  }

  private static Evidence evidence(double seconds, double... starts) {
    List<Evidence.Note> notes =
        Arrays.stream(starts)
            .mapToObj(on -> new Evidence.Note(on, Double.NaN, false, false, 1))
            .toList();
    List<Noise> settings = Noise.ofPeople(0.01, false);
    return new Evidence(new Window(0, seconds), notes, List.of(), settings, 0.01, true, false);
  }

  /** The cycles of so many blinks that a recording shows if it is cut into bursts. */
  private static List<Double> cycles(int blinks, Evidence evidence) {
    return SeenBursts.of(evidence, FreeShares.MOST_BLINKS).stream()
        .filter(seen -> seen.gaps().length == blinks)
        .map(seen -> Math.rint(100 * seen.seconds()) / 100)
        .toList();
  }

  /** The cycles of so many blinks that a recording proposes as an even group. */
  private static List<Double> even(int blinks, Evidence evidence) {
    return FreeRhythms.propose(evidence).stream()
        .filter(free -> free.train().size() == blinks && free.durations() == 1)
        .map(free -> Math.rint(100 * free.train().cycleSeconds()) / 100)
        .toList();
  }

  @Test
  void groupsThatTheWindowCutsAreProposedInEveryNumber() {
    Evidence cut = evidence(10, 0.3, 1.6, 7, 8.3, 9.6);
    assertTrue(even(3, cut).contains(8.0));
    assertTrue(even(4, cut).contains(9.3));
    assertTrue(even(10, cut).contains(17.1));
    assertEquals(List.of(8.0), cycles(3, cut));
    assertEquals(List.of(9.3), cycles(4, cut));
    assertEquals(List.of(17.1), cycles(10, cut));
    Evidence whole = evidence(10, 2, 3.3, 8.7, 10);
    assertEquals(List.of(), cycles(3, whole), "there was time for a third blink");
    assertEquals(List.of(), even(3, whole));
  }

  @Test
  void aBlinkByMistakeDoesNotHidePairs() {
    Evidence pairs = evidence(20, 1, 1.2, 5.5, 5.7, 10, 10.2, 12, 14.5, 14.7);
    assertTrue(cycles(2, pairs).contains(4.5), () -> cycles(2, pairs).toString());
    assertTrue(even(2, pairs).contains(4.5));
  }

  @Test
  void twoProposalsOnOnePeakCountOnce() {
    FreeRhythms one = group(4.5, 0.2);
    assertTrue(one.isBeside(group(4.6, 0.25), 0.02));
    assertFalse(one.isBeside(group(4.6, 0.25), 0.01), "exact people would tell them apart");
    assertFalse(one.isBeside(group(5.5, 0.2), 0.02));
    FreeRhythms rate = new FreeRhythms(one.train(), 0, 0, 1);
    assertFalse(rate.isBeside(rate, 0.02), "cells of a prior are no peaks");
  }

  private static FreeRhythms group(double cycle, double spacing) {
    double[] on = {0, spacing};
    return new FreeRhythms(new Train(on, new double[2], 0, cycle, 0.92, 1.08, 0), 0, 1, 1);
  }

  @Test
  void whatASheetListsIsCutOutOfACell() {
    CodeSheet sheet = Sheets.of(0.05, "single", "1 blink every 9 s");
    Evidence evidence = evidence(20, 0.27, 10.5);
    Listed listed = new Listed(sheet, evidence, Marks.watched(0, 20));
    Train wide = new Train(new double[1], new double[1], 0, 9.2, 0.77, 1.31, -2);
    List<Train> left =
        listed.without(List.of(new FreeRhythms(wide, 0, 0, 1))).stream()
            .map(FreeRhythms::train)
            .toList();
    assertEquals(2, left.size());
    assertEquals(0.95 * 9, left.get(0).high() * 9.2, 1e-9);
    assertEquals(1.05 * 9, left.get(1).low() * 9.2, 1e-9);
    assertEquals(1.31, left.get(1).high());
    double kept = Math.exp(left.get(0).logWeight()) + Math.exp(left.get(1).logWeight());
    assertEquals(Math.exp(-2) * (1 - 0.1 * 9 / 9.2 / 0.54), kept, 1e-9);
    Train inside = new Train(new double[1], new double[1], 0, 9, 0.96, 1.04, -2);
    assertEquals(List.of(), listed.without(List.of(new FreeRhythms(inside, 0, 0, 1))));
  }

  /** Twice a second, by somebody who is off by 0.07 s at the most: too much for the exact. */
  @Test
  void whatFitsUnderOneOfTheTimingsIsKept() {
    double[] starts = new double[40];
    for (int i = 0; i < starts.length; i++) {
      starts[i] = 0.3 + 0.5 * i + 0.07 * Math.sin(7 * i);
    }
    Evidence evidence = evidence(21, starts);
    List<FreeRhythms> all = FreeRhythms.propose(evidence);
    List<Timing> timings = Timing.of(evidence.settings());
    double random = Likelihoods.noRhythm(evidence);
    Floor floor = new Floor(random, 0, new Front());
    Timing exact = timings.get(0);
    Timing rough = timings.get(timings.size() - 1);
    assertEquals(0.012, exact.any().sd(), 0.001);
    Unlisted one = Unlisted.of(all, evidence, List.of(exact), floor);
    assertTrue(best(one.logs(evidence, rough, floor)) < random, "nothing was kept");
    Unlisted both = Unlisted.of(all, evidence, List.of(exact, rough), floor);
    assertTrue(best(both.logs(evidence, rough, floor)) > random + 10);
  }

  private static double best(double[] logs) {
    return Arrays.stream(logs).max().orElseThrow();
  }
}

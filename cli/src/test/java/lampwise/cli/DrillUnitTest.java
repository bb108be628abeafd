package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lampwise.file.SheetReader;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.Lamp;
import lampwise.sim.Scene;
import lampwise.sim.Shown;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrillUnitTest {
  private static final double CLOSE = 1e-6;
  private static final CodeSheet DEMO = SheetReader.demo();

  private static LampState state(String name) {
    return DEMO.state(name).orElseThrow();
  }

  private static DrillUnit unit(String name) {
    return DrillUnit.drawn(DEMO, state(name), 0, Chance.of(5));
  }

  private static DrillAct act(DrillAct.Kind kind, double at) {
    return new DrillAct(kind, at);
  }

  /** The light of the simulator's lamp in the same circumstances, with an exact clock. */
  private static List<Blink> simulated(LampState state, double hand, double event) {
    return simulated(DEMO, state, hand, event);
  }

  private static List<Blink> simulated(
      CodeSheet sheet, LampState state, double hand, double event) {
    Scene scene = Scene.of(sheet, Act.of(state), 60).withClock(new Scene.Clock(0, 0));
    List<Event> events =
        event < 0
            ? List.of()
            : List.of(
                new Event(
                    state.seen() == Seen.AFTER_POWER_UP
                        ? Event.Kind.POWER_UP
                        : state.seen() == Seen.SET_UP ? Event.Kind.BUTTON : Event.Kind.FLUSH,
                    event));
    List<TargetSpan> hands = hand < 0 ? List.of() : List.of(new TargetSpan(hand, 40));
    Shown shown = Lamp.shine(scene.with(hands, events, true), Chance.of(11));
    return shown.blinks();
  }

  /** Lengths, and times since the first; without what the window cuts at its ends. */
  private static List<Double> shape(List<Blink> blinks, int most) {
    List<Blink> whole =
        blinks.stream().filter(blink -> blink.onSeconds() > 0 && blink.offSeconds() < 60).toList();
    List<Double> shape = new ArrayList<>();
    for (Blink blink : whole.subList(0, Math.min(most, whole.size()))) {
      shape.add(blink.onSeconds() - whole.get(0).onSeconds());
      shape.add(blink.offSeconds() - blink.onSeconds());
    }
    return shape;
  }

  private static void assertSame(List<Double> expected, List<Double> found) {
    assertEquals(expected.size(), found.size(), expected + " " + found);
    assertFalse(expected.isEmpty());
    for (int i = 0; i < expected.size(); i++) {
      assertEquals(expected.get(i), found.get(i), CLOSE, expected + " " + found);
    }
  }

  /** Outside check: the simulator's lamp, for single blinks that need no turning of the cycle. */
  @ParameterizedTest
  @ValueSource(strings = {"cells-low", "sees-too-far", "sees-too-near", "held-off"})
  void runsOnAsTheSimulatorsLampDoes(String name) {
    assertSame(
        shape(simulated(state(name), -1, -1), 6), shape(unit(name).blinks(List.of(), 0, 60), 6));
  }

  @ParameterizedTest
  @CsvSource({"target-seen, HAND_IN, 10, -1", "flushing, BUTTON, -1, 10"})
  void beginsAsTheSimulatorsLampDoes(String name, DrillAct.Kind kind, double hand, double event) {
    List<Blink> shown = unit(name).blinks(List.of(act(kind, 10)), 0, 60);
    assertSame(shape(simulated(state(name), hand, event), 5), shape(shown, 5));
    double delay = shown.get(0).onSeconds() - 10;
    assertTrue(delay >= 0.1 && delay <= 1.5, "delay " + delay);
  }

  @Test
  void aPreludeComesFirst() {
    LampState starting =
        DrillSheets.state(
            "starting",
            "first steady 4 s then dark 1 s afterwards 1 blink every 2 s",
            Seen.AFTER_POWER_UP);
    CodeSheet sheet = DrillSheets.of(starting);
    DrillUnit unit = DrillUnit.drawn(sheet, starting, 0, Chance.of(5));
    List<Blink> shown = unit.blinks(List.of(act(DrillAct.Kind.POWER_ON, 10)), 0, 60);
    assertSame(shape(simulated(sheet, starting, -1, 10), 5), shape(shown, 5));
    assertEquals(4, shown.get(0).offSeconds() - shown.get(0).onSeconds(), CLOSE);
  }

  @Test
  void withoutPowerItIsDarkAndRunsOn() {
    DrillUnit unit = unit("held-off");
    List<DrillAct> acts =
        List.of(act(DrillAct.Kind.POWER_OFF, 10), act(DrillAct.Kind.POWER_ON, 13));
    List<Blink> before = unit.blinks(List.of(), 0, 60);
    List<Blink> after = unit.blinks(acts, 0, 60);
    assertTrue(
        after.stream().noneMatch(blink -> blink.offSeconds() > 10 && blink.onSeconds() < 13));
    // It ran on unseen.
    assertEquals(before.get(before.size() - 1), after.get(after.size() - 1));
  }

  @Test
  void aUnitInOrderShowsWhatTheSheetHas() {
    DrillUnit unit = unit("resting");
    List<DrillAct> acts =
        List.of(
            act(DrillAct.Kind.HAND_IN, 5),
            act(DrillAct.Kind.HAND_OUT, 12),
            act(DrillAct.Kind.BUTTON, 20),
            act(DrillAct.Kind.POWER_OFF, 30),
            act(DrillAct.Kind.POWER_ON, 33));
    assertEquals(List.of(), unit.blinks(List.of(), 0, 60));
    assertEquals(2, unit.blinks(acts, 0, 12).size(), "the hand");
    assertEquals(List.of(), unit.blinks(acts, 12, 20));
    List<Blink> flush = unit.blinks(acts, 20, 30);
    assertEquals(1, flush.size());
    assertEquals(1, flush.get(0).offSeconds() - flush.get(0).onSeconds(), CLOSE);
    assertTrue(unit.blinks(acts, 33, 60).size() > 5, "starting");
    assertEquals(List.of(), unit("no-power").blinks(acts, 0, 60));
  }

  @Test
  void aLaterActEndsWhatAnEarlierOneBegan() {
    DrillUnit unit = unit("starting");
    List<DrillAct> acts = List.of(act(DrillAct.Kind.POWER_ON, 3), act(DrillAct.Kind.HAND_IN, 30));
    List<Blink> blinks = unit.blinks(acts, 30, 60);
    assertEquals(2, blinks.size(), blinks.toString());
    // What was still to come of a light that is shown once is gone too.
    List<DrillAct> twice =
        List.of(act(DrillAct.Kind.HAND_IN, 5), act(DrillAct.Kind.HAND_OUT, 5.05));
    assertEquals(List.of(), unit("target-seen").blinks(twice, 0, 60));
  }

  @Test
  void aClockThatRunsSlowStretchesAllTimes() {
    DrillUnit slow = null;
    for (int seed = 0; slow == null; seed++) {
      DrillUnit drawn = DrillUnit.drawn(DEMO, state("cells-low"), 0.05, Chance.of(seed));
      slow = drawn.clock() > 1.04 ? drawn : null;
    }
    List<Double> shape = shape(slow.blinks(List.of(), 0, 60), 2);
    assertEquals(3.1 * slow.clock(), shape.get(2), CLOSE);
    assertEquals(0.11 * slow.clock(), shape.get(1), CLOSE);
  }

  @Test
  void moreThanThreeFlashesInAsecondAreFast() {
    assertFalse(light("3 blinks per second").isFast());
    assertTrue(light("3.1 blinks per second").isFast());
    assertTrue(light("4 blinks 0.3 s apart every 9 s").isFast());
    assertFalse(light("3 blinks 0.2 s apart every 9 s").isFast());
    assertFalse(light("steady").isFast());
    assertTrue(light("first 5 blinks per second for 3 s afterwards dark").isFast());
  }

  static DrillLight light(String phrase) {
    LampState state = DrillSheets.state("a", phrase, Seen.ALWAYS);
    return DrillUnit.drawn(DrillSheets.of(state), state, 0, Chance.of(1)).asked();
  }
}

package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;
import org.junit.jupiter.api.Test;

/** How long one has to watch, against times worked out by hand. */
class DrillNeedTest {
  private static final double CLOSE = 1e-6;

  private static LampState always(String name, String phrase) {
    return DrillSheets.state(name, phrase, Seen.ALWAYS);
  }

  /** What the first state of a sheet needs, with an exact clock and the given phase. */
  private static DrillNeed need(double phase, LampState... states) {
    CodeSheet sheet = DrillSheets.of(states);
    DrawnRhythm rhythm = DrawnRhythm.of(states[0].rhythm(), sheet.blinkSeconds(), Chance.of(1));
    List<DrillLight> lights =
        DrillUnit.shownBy(sheet, states[0]).stream()
            .map(
                state ->
                    state.equals(states[0])
                        ? new DrillLight(state, rhythm, phase, 1)
                        : DrillUnit.drawn(sheet, state, 0, Chance.of(2)).asked())
            .toList();
    return DrillNeed.of(sheet, new DrillUnit(lights, 1));
  }

  @Test
  void twoRoundsFromTheFirstBlink() {
    DrillNeed need = need(1, always("a", "1 blink every 6 s"));
    assertEquals(5 + 12 + 0.1, need.restSeconds(), CLOSE);
    assertEquals(List.of(), need.tells());
    assertEquals(List.of(), need.alike());
    assertEquals("Two whole rounds of 6 s tell it.", need.why());
    // A blink that was on at the start was not seen to begin.
    assertEquals(
        5.95 + 12 + 0.1, need(0.05, always("a", "1 blink every 6 s")).restSeconds(), CLOSE);
    assertEquals(5, need(0, always("a", "2 blinks per second")).restSeconds(), CLOSE);
  }

  @Test
  void lookAlikesNeedLonger() {
    LampState asked = always("a", "1 blink every 3 s");
    // 3.12 s at 5 % fast can be 3 s: for ever the same.
    DrillNeed never = need(1, asked, always("b", "1 blink every 3.12 s"));
    assertEquals(List.of("b"), never.alike());
    assertTrue(never.why().endsWith("Nothing that can be done here tells it from b."), never.why());
    // 3.2 s at 5 % fast is 3.04 s: 0.2 s apart after more than five rounds, at the sixth blink
    // after the first; it shows at 2 + 6 x 3 s.
    DrillNeed longer = need(1, asked, always("b", "1 blink every 3.2 s"));
    assertEquals(2 + 6 * 3 + 0.2, longer.restSeconds(), CLOSE);
    assertTrue(longer.why().contains("then what tells it from b (1 blink every 3.2 s)"));
    // The other blinks twice as often at least.
    assertEquals(
        2 + 6 + 0.1, need(1, asked, always("b", "1 blink every 1.4 s")).restSeconds(), CLOSE);
  }

  @Test
  void theFirstOfManyTellsNothing() {
    // Two groups in another order, equal cycles: told by the pause after the first group.
    DrillNeed need =
        need(
            0,
            always("a", "3 blinks 0.5 s apart then dark 1.5 s then 2 blinks 0.5 s apart every 9 s"),
            always("b", "3 blinks 0.5 s apart then dark 3 s then 2 blinks 0.5 s apart every 9 s"));
    assertEquals(List.of(), need.alike());
    assertTrue(need.restSeconds() >= 18 && need.restSeconds() < 28, need.toString());
  }

  @Test
  void turnsOfOneCycleAreAlike() {
    DrillNeed need =
        need(
            0,
            always("a", "3 blinks 0.5 s apart then dark 1.5 s then 2 blinks 0.5 s apart every 9 s"),
            always(
                "b", "2 blinks 0.5 s apart then dark 5.8 s then 3 blinks 0.5 s apart every 9 s"));
    assertEquals(List.of("b"), need.alike());
  }

  @Test
  void lengthTellsToo() {
    DrillNeed need =
        need(1, always("a", "1 blink of 1 s every 6 s"), always("b", "1 blink every 6 s"));
    assertEquals(List.of(), need.alike());
    DrillNeed close =
        need(1, always("a", "1 blink of 0.2 s every 6 s"), always("b", "1 blink every 6 s"));
    assertEquals(List.of("b"), close.alike());
  }

  @Test
  void darkNeedsTheLongestDarkAndAcheck() {
    LampState off = always("off", "dark");
    LampState hand = DrillSheets.state("hand", "2 blinks 0.3 s apart once", Seen.TARGET);
    LampState rest = DrillSheets.state("rest", "dark", Seen.IDLE);
    DrillNeed need = need(0, off, always("slow", "1 blink every 20 s"), hand, rest);
    // 19.9 s at 5 % slow.
    assertEquals(19.9 * 1.05 + 0.2, need.restSeconds(), 0.01);
    assertEquals(List.of(DrillAct.Kind.HAND_IN), need.tells());
    assertEquals(5, need.afterSeconds());
    assertEquals(List.of(), need.alike());
    DrillNeed resting = need(0, rest, off, hand);
    assertEquals(List.of(DrillAct.Kind.HAND_IN), resting.tells());
    DrillNeed hopeless = need(0, off, rest);
    assertEquals(List.of(), hopeless.tells());
    assertEquals(List.of("rest"), hopeless.alike());
  }

  @Test
  void whatIsShownOnceIsSeenAfterItsCause() {
    LampState hand = DrillSheets.state("hand", "2 blinks 0.3 s apart once", Seen.TARGET);
    DrillNeed need = need(0, hand);
    assertEquals(0, need.restSeconds());
    // Delay 1 s, 0.4 s of light, 1 s to see that it is over.
    assertEquals(2.4, need.afterSeconds(), CLOSE);
    assertEquals(List.of(DrillAct.Kind.HAND_IN), need.tells());
    LampState again = DrillSheets.state("again", "1 blink every 6 s", Seen.AFTER_POWER_UP);
    assertEquals(13, need(0, again).afterSeconds(), CLOSE);
  }

  @Test
  void everyStateOfTheDemonstrationSheetCanBeTold() {
    CodeSheet demo = SheetReader.demo();
    for (LampState state : demo.states()) {
      for (int seed = 0; seed < 20; seed++) {
        DrillUnit unit = DrillUnit.drawn(demo, state, demo.clockTolerance(), Chance.of(seed));
        DrillNeed need = DrillNeed.of(demo, unit);
        assertEquals(List.of(), need.alike(), state.name());
        assertTrue(need.seconds() > 0 && need.seconds() < 60, state.name() + " " + need);
        assertFalse(need.why().isBlank());
      }
    }
  }

  /** A single blink every 3 s may be one every 3.7 s until the second is due or comes. */
  @Test
  void whatIsCutShortCannotBeTold() {
    CodeSheet sheet =
        DrillSheets.of(always("a", "1 blink every 3 s"), always("b", "1 blink every 3.7 s"));
    DrawnRhythm rhythm =
        DrawnRhythm.of(sheet.states().get(0).rhythm(), sheet.blinkSeconds(), Chance.of(1));
    DrillUnit unit =
        new DrillUnit(List.of(new DrillLight(sheet.states().get(0), rhythm, 1.5, 1)), 1);
    // The first comes at 1.5 s and the second at 4.5 s, 0.5 s before the other's could.
    assertEquals(4, DrillNeed.openSeconds(sheet, unit));
    CodeSheet alone = DrillSheets.of(sheet.states().get(0));
    assertEquals(0, DrillNeed.openSeconds(alone, unit));
  }
}

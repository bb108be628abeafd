package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.sheet.Seen;
import org.apache.commons.statistics.distribution.UniformContinuousDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** When a lamp is on: what it is seen with, what makes it show, and where light is cut. */
class LampTest {
  private static final double EVER = Double.POSITIVE_INFINITY;
  private static final int SEEDS = 200;

  private static List<Blink> shine(Scene scene, long seed) {
    return Lamp.shine(scene, Chance.of(seed)).blinks();
  }

  private static Scene watched(String phrase, Seen seen) {
    return LampScenes.unlit(60, LampScenes.act(phrase, seen));
  }

  private static void assertBlink(double on, double off, Blink blink) {
    assertEquals(on, blink.onSeconds(), 1e-9);
    assertEquals(off, blink.offSeconds(), 1e-9);
  }

  private static void assertDelay(double delay) {
    assertTrue(delay >= 0.1 && delay <= 1.5, () -> "delay " + delay);
  }

  @Test
  void blinksComeInStep() {
    List<Blink> blinks = shine(watched("1 blink of 0.2 s every 7 s", Seen.ALWAYS), 1);
    assertTrue(blinks.size() == 8 || blinks.size() == 9, blinks::toString);
    for (int i = 0; i < blinks.size(); i++) {
      double on = blinks.get(0).onSeconds() + 7 * i;
      assertBlink(on, on + 0.2, blinks.get(i));
    }
  }

  @Test
  void aSteadyLampIsOneBlinkThatReachesBeyondTheWindow() {
    List<Blink> blinks = shine(watched("steady", Seen.ALWAYS), 1);
    assertEquals(List.of(new Blink(-1, 61)), blinks);
    assertEquals(List.of(), shine(watched("dark", Seen.ALWAYS), 1));
  }

  @Test
  void aBlinkUnderTheBorderOfTheWindowKeepsItsTimes() {
    boolean before = false;
    boolean after = false;
    for (int seed = 0; seed < SEEDS; seed++) {
      List<Blink> blinks = shine(watched("1 blink of 2 s every 7 s", Seen.ALWAYS), seed);
      Blink last = blinks.get(blinks.size() - 1);
      before |= blinks.get(0).onSeconds() < 0;
      after |= last.offSeconds() > 60;
      for (Blink blink : blinks) {
        assertTrue(blink.offSeconds() > 0 && blink.onSeconds() < 60, blink::toString);
        assertEquals(2, blink.offSeconds() - blink.onSeconds(), 1e-9);
      }
    }
    assertTrue(before && after, "none under a border");
  }

  @Test
  void idleIsDarkWhileATargetIsThere() {
    Scene idle = LampScenes.during(watched("steady 0.9 s then dark 0.1 s", Seen.IDLE), 20, 30);
    List<Blink> blinks = shine(idle, 3);
    assertTrue(blinks.stream().noneMatch(b -> b.offSeconds() > 20 && b.onSeconds() < 30));
    List<Blink> free =
        shine(watched("steady 0.9 s then dark 0.1 s", Seen.IDLE), 3).stream()
            .filter(b -> b.onSeconds() > 30)
            .toList();
    List<Blink> after = blinks.stream().filter(b -> b.onSeconds() > 30).toList();
    assertEquals(free, after, "it runs on unseen");
    assertTrue(
        blinks.stream().anyMatch(b -> b.offSeconds() == 20 || b.onSeconds() == 30),
        "a light is cut at the border");
  }

  @Test
  void aTargetStartsTheRhythmAnewAfterOneDelay() {
    Scene scene =
        LampScenes.during(watched("2 blinks 0.5 s apart every 4 s", Seen.TARGET), 5, 25, 40, EVER);
    for (int seed = 0; seed < SEEDS; seed++) {
      List<Blink> blinks = shine(scene, seed);
      List<Blink> second = blinks.stream().filter(b -> b.onSeconds() > 40).toList();
      double delay = blinks.get(0).onSeconds() - 5;
      assertDelay(delay);
      assertEquals(40 + delay, second.get(0).onSeconds(), 1e-9);
      assertEquals(5 + delay + 0.5, blinks.get(1).onSeconds(), 1e-9);
      assertEquals(5 + delay + 4, blinks.get(2).onSeconds(), 1e-9);
      assertTrue(blinks.stream().noneMatch(b -> b.offSeconds() > 25 && b.onSeconds() < 40));
    }
  }

  @Test
  void withoutItsTargetTheLampIsDark() {
    for (Seen seen : Seen.values()) {
      if (Stretch.isTriggered(seen)) {
        assertEquals(List.of(), shine(watched("1 blink every 3 s", seen), 1));
        assertEquals(List.of(), shine(watched("2 blinks once", seen), 1));
      }
    }
  }

  @Test
  void aTargetThatAlwaysWasThereFindsTheLampAnywhere() {
    Scene scene =
        LampScenes.during(
            watched("first steady 30 s afterwards 1 blink every 5 s", Seen.TARGET),
            Double.NEGATIVE_INFINITY,
            EVER);
    double least = 5;
    double most = 0;
    for (int seed = 0; seed < SEEDS; seed++) {
      List<Blink> blinks = shine(scene, seed);
      assertTrue(blinks.size() >= 12, "the prelude is over");
      double first = blinks.get(0).offSeconds();
      least = Math.min(least, first);
      most = Math.max(most, first);
    }
    assertTrue(least < 0.3 && most > 4.7, least + " to " + most);
  }

  @Test
  void aTargetBeforeTheWindowLeavesThePhaseThatThenIs() {
    Scene scene = LampScenes.during(watched("1 blink every 5 s", Seen.TARGET), -22, EVER);
    for (int seed = 0; seed < SEEDS; seed++) {
      double first = shine(scene, seed).get(0).onSeconds();
      assertDelay((first + 22) - 5 * Math.floor((first + 22) / 5));
    }
  }

  @Test
  void afterATargetUntilTheNextComes() {
    Scene scene =
        LampScenes.during(watched("1 blink every 2 s", Seen.AFTER_TARGET), -10, 5, 20, 30);
    List<Blink> blinks = shine(scene, 1);
    assertDelay(blinks.get(0).onSeconds() - 5);
    assertTrue(blinks.stream().noneMatch(b -> b.onSeconds() >= 20 && b.onSeconds() < 30.1));
    assertTrue(blinks.get(blinks.size() - 1).onSeconds() > 55, "it goes on to the end");
  }

  @ParameterizedTest
  @CsvSource({
    "AFTER_FLUSH, FLUSH",
    "WHILE_RUNNING, FLUSH",
    "AFTER_POWER_UP, POWER_UP",
    "AFTER_BUTTON, BUTTON",
    "SET_UP, BUTTON"
  })
  void afterAnEvent(Seen seen, Event.Kind kind) {
    Scene scene = watched("first steady 3 s afterwards 1 blink every 2 s", seen);
    for (Event.Kind other : Event.Kind.values()) {
      scene = other == kind ? scene : LampScenes.after(scene, other, 20);
    }
    assertEquals(List.of(), shine(scene, 1), "another event");
    List<Blink> blinks = shine(LampScenes.after(scene, kind, 10, 40), 1);
    double delay = blinks.get(0).onSeconds() - 10;
    assertDelay(delay);
    assertBlink(10 + delay, 13 + delay, blinks.get(0));
    List<Blink> again = blinks.stream().filter(b -> b.onSeconds() >= 40).toList();
    assertBlink(40 + delay, 43 + delay, again.get(0));
  }

  /** No cycle comes before the prelude is over, nor before the light that follows a trigger. */
  @Test
  void theFirstCycleIsTheFirstLight() {
    String led = "first steady 3 s then dark 5 s afterwards 1 blink every 2 s";
    Scene scene = LampScenes.after(watched(led, Seen.AFTER_BUTTON), Event.Kind.BUTTON, 10);
    List<Blink> blinks = shine(scene, 1);
    assertEquals(blinks.get(0).onSeconds() + 8, blinks.get(1).onSeconds(), 1e-9);
    Scene fast = LampScenes.during(watched("1 blink of 20 ms every 50 ms", Seen.TARGET), 10, EVER);
    for (int seed = 0; seed < SEEDS; seed++) {
      assertDelay(shine(fast, seed).get(0).onSeconds() - 10);
    }
  }

  @Test
  void onceFollowsEachOfItsTriggers() {
    Scene scene =
        LampScenes.during(
            watched("3 blinks of 0.1 s 0.47 s apart once", Seen.TARGET), 5, 25, 40, 41);
    for (int seed = 0; seed < SEEDS; seed++) {
      List<Blink> blinks = shine(scene, seed);
      double delay = blinks.get(0).onSeconds() - 5;
      assertDelay(delay);
      assertBlink(5 + delay + 0.94, 5 + delay + 1.04, blinks.get(2));
      List<Blink> second = blinks.subList(3, blinks.size());
      assertTrue(second.stream().allMatch(b -> b.onSeconds() >= 40 && b.offSeconds() <= 41));
      assertTrue(blinks.size() <= 6, blinks::toString);
    }
  }

  @Test
  void onceSeenAlwaysFollowsTargetsAndEvents() {
    Scene scene = watched("1 blink of 0.1 s once", Seen.ALWAYS);
    scene = LampScenes.during(LampScenes.after(scene, Event.Kind.DOOR, 50), 5, 25);
    List<Blink> blinks = shine(scene, 8);
    double delay = blinks.get(0).onSeconds() - 5;
    assertDelay(delay);
    assertEquals(3, blinks.size());
    assertBlink(25 + delay, 25.1 + delay, blinks.get(1));
    assertBlink(50 + delay, 50.1 + delay, blinks.get(2));
  }

  @Test
  void aNewTriggerBeginsItAgain() {
    Scene scene = watched("3 blinks of 0.1 s 2 s apart once", Seen.AFTER_BUTTON);
    List<Blink> blinks = shine(LampScenes.after(scene, Event.Kind.BUTTON, 10, 13), 1);
    double first = blinks.get(0).onSeconds();
    double[] starts = {first, first + 2, first + 3, first + 5, first + 7};
    assertEquals(starts.length, blinks.size(), blinks::toString);
    for (int i = 0; i < starts.length; i++) {
      assertEquals(starts[i], blinks.get(i).onSeconds(), 1e-9);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Seen.class,
      names = {"ALWAYS", "IDLE", "TARGET"})
  void onceWithoutATriggerShowsAtAMomentOfItsOwn(Seen seen) {
    Scene scene = watched("3 blinks of 0.1 s 0.5 s apart once", seen);
    Scene there =
        seen == Seen.TARGET ? LampScenes.during(scene, Double.NEGATIVE_INFINITY, EVER) : scene;
    double[] starts = new double[1000];
    for (int seed = 0; seed < starts.length; seed++) {
      List<Blink> blinks = shine(there, seed);
      assertEquals(3, blinks.size());
      assertTrue(blinks.get(0).onSeconds() >= 0 && blinks.get(2).offSeconds() <= 60);
      starts[seed] = blinks.get(0).onSeconds();
    }
    Samples.assertFrom(UniformContinuousDistribution.of(0, 58.9), starts);
  }

  @Test
  void aStateEndsWhereTheNextBegins() {
    Act first = LampScenes.act("steady", Seen.ALWAYS);
    Act second = LampScenes.act("first steady 4 s afterwards dark", Seen.ALWAYS).from(20);
    Act third = LampScenes.act("steady 3 s once", Seen.ALWAYS).from(50);
    List<Blink> blinks = shine(LampScenes.unlit(60, first, second, third), 1);
    assertBlink(-1, 24, blinks.get(0));
    assertEquals(2, blinks.size());
    assertTrue(blinks.get(1).onSeconds() >= 50 && blinks.get(1).offSeconds() <= 60);
    List<Blink> cut =
        shine(LampScenes.unlit(60, first, LampScenes.act("dark", Seen.ALWAYS).from(20)), 1);
    assertEquals(List.of(new Blink(-1, 20)), cut);
  }

  @Test
  void aStateThatBeginsIsAnywhereInItsCycleUnlessItHasAPrelude() {
    Act dark = LampScenes.act("dark", Seen.ALWAYS);
    Act state = LampScenes.act("1 blink every 8 s", Seen.ALWAYS).from(20);
    double[] starts = new double[1000];
    for (int seed = 0; seed < starts.length; seed++) {
      starts[seed] = shine(LampScenes.unlit(60, dark, state), seed).get(0).offSeconds();
    }
    Samples.assertFrom(UniformContinuousDistribution.of(20, 28), starts);
    Act led = LampScenes.act("first 2 blinks 0.5 s apart afterwards dark", Seen.ALWAYS).from(20);
    List<Blink> blinks = shine(LampScenes.unlit(60, dark, led), 1);
    assertBlink(20, 20.1, blinks.get(0));
    assertBlink(20.5, 20.6, blinks.get(1));
  }

  @Test
  void theSameStateAgainShowsTheSameValues() {
    Act state = LampScenes.act("1 blink of 0.1 s every 2 to 9 s", Seen.ALWAYS);
    Act dark = new Act(100, "dark", LampScenes.act("dark", Seen.ALWAYS).show(), Seen.ALWAYS);
    Scene scene = LampScenes.unlit(400, state, dark, state.from(200));
    for (int seed = 0; seed < 20; seed++) {
      List<Blink> blinks = shine(scene, seed);
      List<Blink> later = blinks.stream().filter(b -> b.onSeconds() > 200.2).toList();
      double before = blinks.get(2).onSeconds() - blinks.get(1).onSeconds();
      assertEquals(before, later.get(1).onSeconds() - later.get(0).onSeconds(), 1e-9);
    }
  }

  @Test
  void theSameSeedGivesTheSame() {
    Scene scene = LampScenes.during(watched("3 blinks then 2 blinks", Seen.IDLE), 10, 20);
    assertEquals(Lamp.shine(scene, Chance.of(5)), Lamp.shine(scene, Chance.of(5)));
    assertNotEquals(shine(scene, 5), shine(scene, 6));
  }

  @Test
  void tooManyBlinksAreRefusedInOneLine() {
    Act fast = LampScenes.act("1000 blinks per second", Seen.ALWAYS);
    Scene scene = LampScenes.unlit(86_400, fast);
    SimulationException refused =
        assertThrows(SimulationException.class, () -> Lamp.shine(scene, Chance.of(1)));
    assertEquals(
        "the lamp would blink more than 20000000 times in the window", refused.getMessage());
  }

  /** An event long ago neither takes long nor stops the lamp. */
  @Test
  void anEventLongAgoIsNoWork() {
    Scene scene =
        LampScenes.after(
            watched("1 blink every 5 s", Seen.AFTER_POWER_UP), Event.Kind.POWER_UP, -1e12);
    assertTrue(shine(scene, 1).size() >= 11);
  }

  @Test
  void theClockStretchesEverything() {
    Act act = LampScenes.act("2 blinks of 0.2 s 1 s apart every 4 s", Seen.ALWAYS);
    Scene scene = LampScenes.unlit(60, act).withClock(new Scene.Clock(0.2, 0));
    for (int seed = 0; seed < SEEDS; seed++) {
      Shown shown = Lamp.shine(scene, Chance.of(seed));
      double ratio = shown.clock().get(0).ratio();
      assertTrue(ratio >= 0.8 && ratio <= 1.2);
      for (int i = 2; i < shown.blinks().size(); i++) {
        Blink blink = shown.blinks().get(i);
        assertEquals(0.2 * ratio, blink.offSeconds() - blink.onSeconds(), 1e-9);
        assertEquals(4 * ratio, blink.onSeconds() - shown.blinks().get(i - 2).onSeconds(), 1e-9);
      }
    }
  }

  @Test
  void lengthsOfBlinksInNoOrderAreTheScenesOrATenth() {
    Scene scene = LampScenes.unlit(600, Act.random(0.5));
    Scene longer =
        new Scene(
            scene.window(),
            scene.acts(),
            List.of(),
            List.of(),
            false,
            LampScenes.EXACT,
            OptionalDouble.of(0.3));
    for (Blink blink : shine(longer, 1)) {
      assertEquals(0.3, blink.offSeconds() - blink.onSeconds(), 1e-9);
    }
  }
}

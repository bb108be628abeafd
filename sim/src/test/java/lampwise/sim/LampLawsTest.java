package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Seen;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What holds for every lamp in every scene. */
class LampLawsTest {
  /** A scene of any kind: acts, targets and events before, in and after the window. */
  private static Scene scene(long seed, boolean odd) {
    Chance chance = Chance.of(seed);
    double from = chance.uniform(-100, 1000);
    double length = chance.logUniform(1, 300);
    List<Act> acts = new ArrayList<>();
    double begin = chance.happens(0.7) ? Double.NEGATIVE_INFINITY : from - chance.uniform(0, 100);
    do {
      acts.add(act(begin, odd, chance));
      begin = Math.max(begin, from) + chance.uniform(0.001, length);
    } while (begin < from + length && acts.size() < 4);
    List<TargetSpan> targets = new ArrayList<>();
    double comes = chance.happens(0.2) ? Double.NEGATIVE_INFINITY : from - 50;
    while (comes < from + length && targets.size() < 5) {
      double at = Math.max(comes, from - 50);
      double leaves = at + chance.logUniform(0.1, length);
      targets.add(new TargetSpan(comes, chance.happens(0.1) ? Double.POSITIVE_INFINITY : leaves));
      comes = targets.get(targets.size() - 1).toSeconds() + chance.uniform(0, length);
    }
    List<Event> events = new ArrayList<>();
    for (int i = chance.below(5); i > 0; i--) {
      Event.Kind kind = Event.Kind.values()[chance.below(4)];
      events.add(new Event(kind, from + chance.uniform(-30, length)));
    }
    Scene.Clock clock =
        new Scene.Clock(chance.uniform(0, 0.3), chance.happens(0.5) ? 0 : chance.uniform(0, 0.1));
    OptionalDouble blink =
        chance.happens(0.5) ? OptionalDouble.empty() : OptionalDouble.of(chance.uniform(0.01, 1));
    boolean empty = chance.happens(0.3);
    return new Scene(
        new Window(from, from + length),
        acts,
        empty ? List.of() : targets,
        empty ? List.of() : events,
        true,
        clock,
        blink);
  }

  private static Act act(double from, boolean odd, Chance chance) {
    Seen seen = Seen.values()[chance.below(Seen.values().length)];
    if (chance.happens(0.1)) {
      return new Act(from, "no-rhythm", new Show.Random(chance.logUniform(0.1, 10)), seen);
    }
    Rhythm rhythm =
        odd
            ? AnyRhythm.of(chance.bits())
            : Phrases.rhythm(Phrases.SOUND.get(chance.below(Phrases.SOUND.size())));
    return new Act(from, Phrase.print(rhythm), new Show.Rhythmic(rhythm), seen);
  }

  @Property(tries = 3000)
  void blinksAreInOrderAndInTheWindow(@ForAll long seed) {
    Scene scene = scene(seed, false);
    Shown shown = Lamp.shine(scene, Chance.of(seed));
    assertSound(shown);
    assertEquals(shown, Lamp.shine(scene, Chance.of(seed)), "the same seed");
  }

  /** Even a rhythm of odd numbers is shown, or refused because it would blink too often. */
  @Property(tries = 3000)
  void oddRhythmsAreShownOrRefused(@ForAll long seed) {
    Scene scene = scene(seed, true);
    Shown shown;
    try {
      shown = Lamp.shine(scene, Chance.of(seed));
    } catch (SimulationException e) {
      assertTrue(e.getMessage().startsWith("the lamp would blink more than "), e::getMessage);
      return;
    }
    assertSound(shown);
  }

  private static void assertSound(Shown shown) {
    Window window = shown.scene().window();
    double end = Double.NEGATIVE_INFINITY;
    for (Blink blink : shown.blinks()) {
      assertTrue(blink.onSeconds() > end, () -> blink + " too early");
      assertTrue(blink.hasOff() && blink.offSeconds() > blink.onSeconds(), blink::toString);
      assertTrue(blink.offSeconds() > window.fromSeconds(), blink::toString);
      assertTrue(blink.onSeconds() < window.toSeconds(), blink::toString);
      end = blink.offSeconds();
    }
    double before = Double.NEGATIVE_INFINITY;
    double tolerance = shown.scene().clock().tolerance();
    assertEquals(window.fromSeconds(), shown.clock().get(0).fromSeconds());
    for (Shown.ClockRate rate : shown.clock()) {
      assertTrue(rate.fromSeconds() > before, rate::toString);
      assertTrue(Math.abs(rate.ratio() - 1) <= tolerance + 1e-12, rate::toString);
      before = rate.fromSeconds();
    }
  }

  /** Outside the times in which its state is seen the lamp is dark. */
  @Property(tries = 2000)
  void theLampIsDarkWhereItsStateIsNotSeen(@ForAll long seed) {
    Scene scene = scene(seed, false);
    Act one = scene.acts().get(0);
    Shown shown = Lamp.shine(scene.withActs(List.of(one)), Chance.of(seed));
    List<TargetSpan> targets = scene.targets();
    for (Blink blink : shown.blinks()) {
      boolean meets =
          targets.stream()
              .anyMatch(
                  t -> blink.offSeconds() > t.fromSeconds() && blink.onSeconds() < t.toSeconds());
      boolean inside =
          targets.stream()
              .anyMatch(
                  t -> blink.onSeconds() >= t.fromSeconds() && blink.offSeconds() <= t.toSeconds());
      switch (one.seen()) {
        case ALWAYS -> {}
        case IDLE -> assertTrue(!meets, () -> blink + " with a target");
        case TARGET -> assertTrue(inside, () -> blink + " without a target");
        case AFTER_TARGET -> assertTrue(!meets && left(targets, blink), blink::toString);
        case AFTER_FLUSH, WHILE_RUNNING -> assertAfter(scene, Event.Kind.FLUSH, blink);
        case AFTER_POWER_UP -> assertAfter(scene, Event.Kind.POWER_UP, blink);
        case AFTER_BUTTON, SET_UP -> assertAfter(scene, Event.Kind.BUTTON, blink);
      }
    }
  }

  private static boolean left(List<TargetSpan> targets, Blink blink) {
    return targets.stream().anyMatch(t -> t.toSeconds() <= blink.onSeconds());
  }

  private static void assertAfter(Scene scene, Event.Kind kind, Blink blink) {
    boolean after =
        scene.events().stream()
            .anyMatch(e -> e.kind() == kind && e.atSeconds() <= blink.onSeconds());
    assertTrue(after, () -> blink + " without " + kind);
  }
}

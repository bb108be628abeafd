package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.sheet.Seen;

/** Scenes for tests: no clock error unless said, blinks of 0.1 s where nothing is said. */
final class LampScenes {
  static final double BLINK = 0.1;
  static final Scene.Clock EXACT = new Scene.Clock(0, 0);

  private LampScenes() {}

  /** A state that the unit has been in for long. */
  static Act act(String phrase, Seen seen) {
    return new Act(
        Double.NEGATIVE_INFINITY, "state", new Show.Rhythmic(Phrases.rhythm(phrase)), seen);
  }

  /** Nobody is there, nothing happens. */
  static Scene unlit(double seconds, Act... acts) {
    return new Scene(
        new Window(0, seconds),
        List.of(acts),
        List.of(),
        List.of(),
        false,
        EXACT,
        OptionalDouble.of(BLINK));
  }

  static Scene during(Scene scene, double... fromAndTo) {
    List<TargetSpan> spans = new ArrayList<>();
    for (int i = 0; i < fromAndTo.length; i += 2) {
      spans.add(new TargetSpan(fromAndTo[i], fromAndTo[i + 1]));
    }
    return scene.with(spans, scene.events(), true);
  }

  static Scene after(Scene scene, Event.Kind kind, double... seconds) {
    List<Event> events = new ArrayList<>(scene.events());
    for (double at : seconds) {
      events.add(new Event(kind, at));
    }
    return scene.with(scene.targets(), events, true);
  }
}

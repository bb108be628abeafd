package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;

/** What people noted of lamps that a test made. */
final class Notebook {
  private Notebook() {}

  /** Blinks of 0.1 s, the first at {@code first}, one every {@code every}. */
  static Shown beat(int count, double first, double every) {
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      blinks.add(new Blink(first + i * every, first + i * every + 0.1));
    }
    return Watched.lamp(first + count * every, blinks);
  }

  /** A person who makes no error and does not round. */
  static Person faultless() {
    return Person.plain().with("rounding-s", 0);
  }

  static List<Blink> blinks(Labelled labelled) {
    return ((BlinkLog) labelled.recording()).blinks();
  }

  static double[] starts(Labelled labelled) {
    return blinks(labelled).stream().mapToDouble(Blink::onSeconds).toArray();
  }

  static double[] starts(Person person, Shown shown, long seed) {
    return starts(person.observe(shown, Chance.of(seed)));
  }

  static String told(Person person, Shown shown, long seed) {
    Labelled labelled = person.withNotes(Person.Notes.WORDS).observe(shown, Chance.of(seed));
    return ((Description) labelled.recording()).said();
  }
}

package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Window;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;

/** The same seed gives the same bits on every machine and Java version. */
class RepeatableTest {
  @Test
  void theBitsOfManyLampsAreAsTheyWere() {
    long hash = 0;
    for (int i = 0; i < Phrases.SOUND.size(); i++) {
      Act act = LampScenes.act(Phrases.SOUND.get(i), Seen.ALWAYS);
      Scene scene =
          new Scene(
              new Window(0, 120),
              List.of(act),
              List.of(),
              List.of(),
              false,
              new Scene.Clock(0.05, 0.01),
              OptionalDouble.empty());
      for (Blink blink : Lamp.shine(scene, Chance.of(i)).blinks()) {
        hash = 31 * hash + Double.doubleToLongBits(blink.onSeconds());
        hash = 31 * hash + Double.doubleToLongBits(blink.offSeconds());
      }
    }
    Act random = Act.random(1);
    for (Blink blink : Lamp.shine(LampScenes.unlit(1000, random), Chance.of(1)).blinks()) {
      hash = 31 * hash + Double.doubleToLongBits(blink.onSeconds());
    }
    assertEquals("e3156504f6e524ce", Long.toHexString(hash));
  }
}

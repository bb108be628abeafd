package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** How much rarer a state is the shorter it lasts beside another. */
class LastingTest {
  private static final Window WINDOW = new Window(0, 60);

  private static Way every(int candidate, double cycleSeconds) {
    double[] on = {0};
    double[] length = {Double.NaN};
    return Way.of(candidate, new Train(on, length, 0, cycleSeconds, 0.95, 1.05, 0), 0);
  }

  private static final Way SLOW = every(0, 8);
  private static final Way FAST = every(1, 0.5);
  private static final Way ONCE = every(2, 0);
  private static final Way DARK = Way.dark(3, 0);

  private final Lasting lasting =
      new Lasting(
          List.of(SLOW, FAST, ONCE, DARK),
          Places.of(
              new Evidence(
                  WINDOW, List.of(), List.of(), Noise.ofPeople(0.01, false), 0.01, true, false)),
          WINDOW);

  @Test
  void fromTwoCyclesOnAllTimesAreAsLikely() {
    assertEquals(0, lasting.log(SLOW, 16));
    assertEquals(0, lasting.log(SLOW, 1e6));
    assertEquals(0, lasting.log(FAST, 1));
  }

  @Test
  void ofShorterTimesTheChanceFallsWithTheTime() {
    assertEquals(Math.log(0.5), lasting.log(SLOW, 8), 1e-12);
    assertEquals(Math.log(0.25), lasting.log(SLOW, 4), 1e-12);
    assertEquals(Math.log(0.5), lasting.log(FAST, 0.5), 1e-12);
  }

  @Test
  void aDarkLampCountsAsTheLongestCycle() {
    assertEquals(Math.log(0.25), lasting.log(DARK, 4), 1e-12);
    assertEquals(0, lasting.log(DARK, 16));
  }

  @Test
  void whatDoesNotRepeatMayBeAsShortAsItLikes() {
    assertEquals(0, lasting.log(ONCE, 0.01));
  }
}

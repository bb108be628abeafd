package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** What a fold must reach to matter. */
class FloorTest {
  private static Front frontAt(double log) {
    Front front = new Front();
    front.offer(new double[] {log}, 0);
    return front;
  }

  @Test
  void whoFallsFarBehindTheBestFoldIsGivenUp() {
    Floor floor = new Floor(-100, 0, frontAt(30));
    assertEquals(30 - Sums.BEHIND, floor.at(0), 1e-12);
    assertEquals(30 - Sums.BEHIND, floor.of(-5).at(0), 1e-12, "a weight alone is not behind");
    assertEquals(Double.NEGATIVE_INFINITY, floor.at(1), "no fold went so far");
  }

  @Test
  void aWeightThatCountsLeavesLessToFallBehind() {
    Floor floor = new Floor(-100, 0, frontAt(30));
    assertEquals(30 - (Sums.BEHIND - 5), floor.of(-5).weighed().at(0), 1e-12);
    assertEquals(30 - 8, floor.of(-40).weighed().at(0), 1e-12, "whoever begins unlikely");
    assertEquals(-95, floor.of(-5).weighed().log(), 1e-12);
  }

  @Test
  void thatAllAreStraysIsLeftOutWhereItCannotMatter() {
    Train train = new Train(new double[] {0}, new double[] {0.1}, 0, 8, 0.95, 1.05, 0);
    List<Evidence.Note> notes =
        List.of(
            new Evidence.Note(3, Double.NaN, false, false, 1),
            new Evidence.Note(11, Double.NaN, false, false, 1));
    Evidence evidence =
        new Evidence(new Window(0, 20), notes, List.of(), List.of(), 0.01, true, false);
    Timing timing = Timing.of(Noise.ofPeople(0.01, false)).get(1);
    Chain chain = new Chain(train, evidence, timing, -Math.log(8), Double.NaN, Double.NaN);
    double[] none = timing.all(Double.NEGATIVE_INFINITY);
    double[] strays = timing.strays(evidence);
    double likeliest = Arrays.stream(strays).max().orElseThrow();
    assertArrayEquals(chain.logNothing(), chain.logNothing(Floor.none(), none));
    Floor below = new Floor(likeliest - 0.1, 0, new Front());
    assertArrayEquals(chain.logNothing(), chain.logNothing(below, none));
    Floor above = new Floor(likeliest + 0.1, 0, new Front());
    assertArrayEquals(none, chain.logNothing(above, none));
    assertArrayEquals(none, chain.logNothing(Floor.none(), timing.all(30)));
    double[] mixed = timing.all(30);
    mixed[1] = 5;
    assertArrayEquals(chain.logNothing(), chain.logNothing(Floor.none(), mixed));
  }
}

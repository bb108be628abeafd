package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import lampwise.decode.LampDecoder;
import lampwise.decode.Observation;
import lampwise.decode.SeenBlink;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import org.junit.jupiter.api.Test;

/** The row of the blinks. */
class ChartBlinksTest {
  @Test
  void aDoubtfulBlinkAndOneWithoutEndHaveShapesOfTheirOwn() {
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 40), 1);
    List<SeenBlink> blinks =
        List.of(
            new SeenBlink(new Blink(1, 2), 0.9),
            new SeenBlink(new Blink(10, 11), 0.2),
            new SeenBlink(Blink.startingAt(20), 0.9),
            new SeenBlink(Blink.startingAt(30), 0.2));
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(log, blinks)), 1000);
    List<String> drawn = picture.paths("rgb(138,90,0)");
    assertEquals(4, drawn.size(), drawn::toString);
    assertEquals(2, drawn.stream().filter(path -> path.endsWith("Z")).count(), drawn::toString);
    assertTrue(
        picture
            .texts()
            .contains("bracket: only the start of the blink is known; hollow: a doubtful blink"));
  }

  @Test
  void manyBlinksAreCountedNotPassedForASteadyLight() {
    List<SeenBlink> blinks = new ArrayList<>();
    for (int i = 0; i < 900; i++) {
      blinks.add(new SeenBlink(new Blink(i, i + 0.1), 0.9));
    }
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 900), 1);
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(log, blinks)), 1000);
    assertTrue(
        picture.texts().contains("900 blinks, too close to be told apart here"),
        picture.texts()::toString);
  }

  /** Groups of three, 0.27 s apart, in 90 s. */
  private static ChartSubject groups() {
    double[] starts = new double[27];
    for (int i = 0; i < starts.length; i++) {
      starts[i] = 2 + i / 3 * 10.3 + i % 3 * 0.27;
    }
    return ChartSubject.of(
        new LampDecoder().observe(BlinkLog.ofStarts(Marks.watched(0, 90), starts)));
  }

  @Test
  void aGroupThatRunsIntoOneSaysHowManyItHolds() {
    Pictures narrow = Pictures.of(groups(), 360);
    assertEquals(9, narrow.texts().stream().filter("3\u00d7"::equals).count());
    assertTrue(
        String.join(" ", narrow.texts()).contains("3\u00d7: so many blinks, too close"),
        narrow.texts()::toString);
    assertFalse(String.join(" ", Pictures.of(groups(), 4000).texts()).contains("3\u00d7"));
  }

  @Test
  void aRowWithoutBlinksSaysSo() {
    Observation none = Readings.observed(BlinkLog.ofStarts(Marks.watched(0, 60)), List.of());
    assertTrue(Pictures.of(ChartSubject.of(none), 1000).texts().contains("none seen"));
  }

  @Test
  void aLogThatCannotBeReadIsDrawnAsItWasNoted() {
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing(), 3.3);
    Pictures picture = Pictures.of(ChartSubject.of(new LampDecoder().observe(log)), 1000);
    assertEquals(1, picture.paths("rgb(138,90,0)").size());
  }
}

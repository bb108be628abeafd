package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a recording shows without a sheet. */
class ObserveTest {
  private static String observed(Recording recording) {
    return new LampDecoder().observe(recording).observed().map(Phrase::print).orElse("nothing");
  }

  /** A lamp and the phrase that its clean recordings are seen as. */
  record Lamp(String starts, String startsAndEnds, CleanRecordings train) {
    @Override
    public String toString() {
      return starts;
    }
  }

  static List<Lamp> lamps() {
    return List.of(
        new Lamp(
            "1 blink every 3.4 s",
            "1 blink of 90 ms every 3.4 s",
            CleanRecordings.blinks(0.09, 3.4, 0)),
        new Lamp(
            "3 blinks 0.6 s apart every 8 s",
            "3 blinks of 0.12 s 0.6 s apart every 8 s",
            CleanRecordings.blinks(0.12, 8, 0, 0.6, 1.2)),
        new Lamp(
            "2 blinks 0.3 s apart every 4.5 s",
            "2 blinks of 0.1 s 0.3 s apart every 4.5 s",
            CleanRecordings.blinks(0.1, 4.5, 0, 0.3)),
        new Lamp(
            "2 blinks 0.45 s apart then dark 1.3 s then 3 blinks 0.45 s apart every 11 s",
            "2 blinks of 0.1 s 0.45 s apart then dark 1.3 s then 3 blinks of 0.1 s 0.45 s apart"
                + " every 11 s",
            CleanRecordings.blinks(0.1, 11, 0, 0.45, 1.85, 2.3, 2.75)),
        new Lamp(
            "2 blinks per second",
            "1 blink of 0.1 s every 0.5 s",
            CleanRecordings.blinks(0.1, 0.5, 0)));
  }

  @ParameterizedTest
  @MethodSource("lamps")
  void aCleanTrainIsSaidAsItIs(Lamp lamp) {
    for (int seed = 0; seed < 6; seed++) {
      CleanRecordings drawn =
          lamp.train().phase(new SplittableRandom(seed).nextDouble()).window(60);
      assertEquals(lamp.starts(), observed(drawn.starts()), "seed " + seed);
      assertEquals(lamp.startsAndEnds(), observed(drawn.onAndOff()), "seed " + seed);
    }
  }

  /** Notes of a lamp with a blink every 3.1 s, noted by hand to a tenth. */
  @Test
  void notesWithoutAWindow() {
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing(), 0.3, 3.5, 6.5, 9.7, 12.8, 15.8, 19.0, 22.0);
    Observation observation = new LampDecoder().observe(log);
    assertEquals("1 blink every 3.1 s", observed(log));
    assertEquals(Optional.of(new Window(0.3, 22.0)), observation.window());
    assertEquals(8, observation.blinks().size());
    for (SeenBlink blink : observation.blinks()) {
      assertTrue(blink.probability() > 0.9 && blink.probability() <= 1, blink.toString());
    }
  }

  @Test
  void aStrayBlinkIsLessProbable() {
    BlinkLog log =
        BlinkLog.ofStarts(Marks.watched(0, 40), 1, 5, 9, 13, 17, 18.6, 21, 25, 29, 33, 37);
    List<SeenBlink> blinks = new LampDecoder().observe(log).blinks();
    assertEquals("1 blink every 4 s", observed(log));
    assertEquals(11, blinks.size());
    for (SeenBlink blink : blinks) {
      boolean stray = blink.blink().onSeconds() == 18.6;
      assertEquals(!stray, blink.probability() > 0.5, blink.toString());
    }
  }

  @Test
  void aMissedBlinkChangesNothing() {
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 40), 1, 5, 9, 13, 21, 25, 29, 33, 37);
    assertEquals("1 blink every 4 s", observed(log));
  }

  @Test
  void watchedDarknessIsDark() {
    assertEquals("dark", observed(BlinkLog.ofStarts(Marks.watched(0, 60))));
  }

  @Test
  void lightAllTheTimeIsSteady() {
    CleanRecordings lamp = CleanRecordings.of(200, 0, 199).phase(0.2).window(60);
    assertEquals("steady", observed(lamp.onAndOff()));
  }

  @Test
  void blinksAtRandomHaveNoRhythm() {
    for (long seed = 0; seed < 10; seed++) {
      assertEquals("nothing", observed(CleanRecordings.atRandom(0.3, 60, seed)), "seed " + seed);
    }
  }

  @Test
  void nothingToSeeIsSaid() {
    Observation observation = new LampDecoder().observe(BlinkLog.ofStarts(Marks.nothing()));
    assertTrue(observation.unreadable().isPresent());
    assertTrue(observation.observed().isEmpty() && observation.blinks().isEmpty());
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;

/** Times counted from the start of the window, and the way back. */
class OwnZeroTest {
  private static BlinkLog log(Marks marks, Blink... blinks) {
    return new BlinkLog(Origin.named("log"), marks, List.of(blinks));
  }

  @Test
  void timesAreCountedFromTheWindowInMicroseconds() {
    Marks marks =
        Marks.watched(307_779.973, 307_789.973)
            .withTargets(Targets.during(List.of(new TargetSpan(307_780.473, 307_781.473))))
            .withEvents(List.of(new Event(Event.Kind.FLUSH, 307_779.473)));
    BlinkLog log = log(marks, new Blink(307_780.083, 307_780.1830004));
    BlinkLog own = (BlinkLog) OwnZero.of(log).recording();
    assertEquals(List.of(new Blink(0.11, 0.21)), own.blinks());
    assertEquals(new Window(0, 10), own.marks().window().orElseThrow());
    assertEquals(List.of(new TargetSpan(0.5, 1.5)), own.marks().targets().spans());
    assertEquals(-0.5, own.marks().events().get(0).atSeconds());
  }

  @Test
  void halvesOfMicrosecondsFallOnOneSide() {
    for (int zero : new int[] {0, 1, 7, 59, 1023, 307_779}) {
      BlinkLog log = log(Marks.watched(zero, zero + 2.0), Blink.startingAt(zero + 0.0000625));
      BlinkLog own = (BlinkLog) OwnZero.of(log).recording();
      assertEquals(0.000062, own.blinks().get(0).onSeconds());
    }
  }

  @Test
  void theGivenTimesComeBackToTheLastBit() {
    BlinkLog log =
        log(
            Marks.watched(12.3456789012, 30.1),
            new Blink(12.34567891, 12.34567892),
            new Blink(14.1234567891, 14.2),
            Blink.startingAt(29.99999999));
    Reading reading = Answers.decode(Sheets.bench(), log);
    Observation shown = reading.observations().get(0);
    assertSame(log, shown.recording());
    assertEquals(log.window(), shown.window());
    assertEquals(new Window(12.3456789012, 30.1), reading.segments().get(0).stretch());
    assertEquals(log.blinks().get(1), shown.blinks().get(1).blink());
    assertEquals(log.blinks().get(2), shown.blinks().get(2).blink());
    // Within a microsecond of the window's start: no earlier than that, and still a blink.
    Blink first = shown.blinks().get(0).blink();
    assertEquals(12.34567891, first.onSeconds(), 1e-6);
    assertTrue(first.onSeconds() >= 12.3456789012 && first.hasOff(), first::toString);
  }

  /** Wherever there are no microseconds left, or no times, a recording stays as it is. */
  @Test
  void farTimesAndWordsStay() {
    BlinkLog far = log(Marks.watched(1e12, 1e12 + 10), Blink.startingAt(1e12 + 3));
    assertSame(far, OwnZero.of(far).recording());
    Description said = new Description(Origin.named("said"), Marks.watched(5, 20), "fast blinks");
    assertSame(said, OwnZero.of(said).recording());
    BlinkLog empty = log(Marks.nothing());
    assertSame(empty, OwnZero.of(empty).recording());
  }

  /** Its blinks come back on its own time. */
  @Test
  void aLightCurveComesBackOnItsOwnTime() {
    CleanRecordings lamp = CleanRecordings.blinks(0.2, 3.4, 0.5).window(20);
    Recorded first = new Recorded(lamp, 0);
    Recorded second = new Recorded(lamp, 1000);
    assertEquals(first.blinks.size(), second.blinks.size());
    for (int i = 0; i < first.blinks.size(); i++) {
      assertEquals(first.blinks.get(i).onSeconds() + 1000, second.blinks.get(i).onSeconds(), 2e-6);
    }
    assertEquals(first.top, second.top, 1e-5);
  }

  /** A curve that begins at a time, and what is read of it. */
  private static final class Recorded {
    final List<Blink> blinks;
    final double top;

    Recorded(CleanRecordings lamp, double from) {
      LightCurve curve = lamp.curve(50, 100, 20, 1, 3);
      double[] seconds = new double[curve.size()];
      double[] levels = new double[curve.size()];
      for (int i = 0; i < seconds.length; i++) {
        seconds[i] = curve.seconds(i) + from;
        levels[i] = curve.level(i);
      }
      Reading reading =
          Answers.decode(
              Sheets.bench(),
              LightCurve.of(curve.origin(), curve.marks(), curve.lit(), seconds, levels));
      blinks = reading.observations().get(0).blinks().stream().map(SeenBlink::blink).toList();
      top = reading.candidates().get(0).probability();
      assertEquals(from, reading.segments().get(0).stretch().fromSeconds(), 1e-9);
    }
  }

  /** Words without a window, with a target marked at whatever time. */
  @Test
  void wordsWithoutAWindowHaveNoZero() {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            OptionalDouble.empty(),
            List.of(
                Sheets.state("resting", "dark", Seen.ALWAYS),
                Sheets.state("gone", "1 blink every 3 s", Seen.AFTER_TARGET)));
    double before = Double.NaN;
    for (double at : new double[] {0, 59.5, 1000}) {
      Marks marks =
          Marks.nothing().withTargets(Targets.during(List.of(new TargetSpan(at, at + 0.5))));
      Reading reading =
          Answers.decode(sheet, new Description(Origin.named("said"), marks, "1 blink every 3 s"));
      double now = Answers.probability(reading, "gone");
      assertTrue(Double.isNaN(before) || Math.abs(now - before) < 1e-9, before + " and " + now);
      before = now;
    }
  }
}

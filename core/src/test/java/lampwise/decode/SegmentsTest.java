package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;

/** Recordings in which the lamp changes from one state to another. */
class SegmentsTest {
  /** A change is found to within the longer of the two cycles. */
  private static final double CHANGE_TOLERANCE_SECONDS = 8;

  /** Starts of one lamp until {@code change}, then of the other until {@code end}. */
  private static double[] joined(
      CleanRecordings first, CleanRecordings then, double change, double end) {
    List<Double> starts = new ArrayList<>();
    for (Blink blink : first.window(change).lit()) {
      starts.add(blink.onSeconds());
    }
    for (Blink blink : then.window(end - change).lit()) {
      starts.add(change + blink.onSeconds());
    }
    return starts.stream().mapToDouble(d -> d).filter(t -> t >= 0).toArray();
  }

  private static List<String> states(Reading reading) {
    return reading.segments().stream()
        .map(
            segment ->
                segment.verdict() instanceof Verdict.Decoded decoded
                    ? decoded.state()
                    : segment.verdict().word())
        .toList();
  }

  private static final CleanRecordings TICK = CleanRecordings.blinks(0.09, 3.4, 0);
  private static final CleanRecordings PAIR = CleanRecordings.blinks(0.09, 8, 0, 0.3);
  private static final CleanRecordings FOUR = CleanRecordings.blinks(0.09, 8, 0, 0.6, 1.2, 1.8);

  @Test
  void aChangeInTheMiddleGivesTwoSegments() {
    for (double phase : new double[] {0.1, 0.45, 0.8}) {
      double[] starts = joined(TICK.phase(phase), PAIR.phase(0.7), 120, 240);
      Reading reading =
          Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(0, 240), starts));
      assertEquals(List.of("tick", "pair"), states(reading), () -> Answers.shown(reading));
      Window first = reading.segments().get(0).stretch();
      assertEquals(0, first.fromSeconds());
      assertEquals(120, first.toSeconds(), CHANGE_TOLERANCE_SECONDS);
      assertEquals(first.toSeconds(), reading.segments().get(1).stretch().fromSeconds());
      assertEquals(240, reading.segments().get(1).stretch().toSeconds());
    }
  }

  @Test
  void threeCyclesOfEachAreEnough() {
    double[] starts = joined(PAIR.phase(0.3), TICK.phase(0.4), 24, 34.2);
    Reading reading =
        Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(0, 34.2), starts));
    assertEquals(List.of("pair", "tick"), states(reading), () -> Answers.shown(reading));
    assertEquals(24, reading.segments().get(0).stretch().toSeconds(), CHANGE_TOLERANCE_SECONDS);
  }

  @Test
  void aFewFastBlinksAtTheEndAreARateAndNotTheBeginningOfACode() {
    assertEndsRapid("half", 20.4, 2.25, 9.27, 16.36, 20.54, 20.98, 21.67, 22.10);
    assertEndsRapid("pair", 24, 5.93, 6.25, 13.94, 14.29, 22.12, 22.36, 24.11, 24.79, 25.38, 25.98);
    assertEndsRapid("seldom", 61.2, 17.82, 37.72, 57.57, 61.46, 61.91, 62.66, 63.05);
  }

  /** Two seconds of fast blinks end the recording. */
  private static void assertEndsRapid(String before, double change, double... starts) {
    Reading reading =
        Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(0, change + 2), starts));
    assertEquals(List.of(before, "rapid"), tops(reading), () -> Answers.shown(reading));
    assertEquals(change, reading.segments().get(0).stretch().toSeconds(), 1);
  }

  private static List<String> tops(Reading reading) {
    return reading.segments().stream().map(s -> s.candidates().get(0).state()).toList();
  }

  @Test
  void aStateThatComesBackGivesThreeSegments() {
    List<Double> starts = new ArrayList<>();
    for (double start : joined(TICK.phase(0.2), FOUR.phase(0.6), 40, 80)) {
      starts.add(start);
    }
    for (Blink blink : TICK.phase(0.7).window(40).lit()) {
      starts.add(80 + blink.onSeconds());
    }
    Reading reading =
        Answers.decode(
            Sheets.bench(),
            BlinkLog.ofStarts(
                Marks.watched(0, 120), starts.stream().mapToDouble(d -> d).toArray()));
    assertEquals(List.of("tick", "four", "tick"), states(reading), () -> Answers.shown(reading));
    assertEquals(40, reading.segments().get(0).stretch().toSeconds(), CHANGE_TOLERANCE_SECONDS);
    assertEquals(80, reading.segments().get(1).stretch().toSeconds(), CHANGE_TOLERANCE_SECONDS);
  }

  @Test
  void aLampThatGoesDarkAndComesBackIsCut() {
    double[] lit =
        FOUR.phase(0.3).window(40).lit().stream().mapToDouble(Blink::onSeconds).toArray();
    Reading ends = Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(0, 120), lit));
    assertEquals(List.of("four", "dark"), states(ends), () -> Answers.shown(ends));
    assertEquals(40, ends.segments().get(0).stretch().toSeconds(), CHANGE_TOLERANCE_SECONDS);
    double[] later = java.util.Arrays.stream(lit).map(t -> 80 + t).toArray();
    Reading begins =
        Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(0, 120), later));
    assertEquals(List.of("dark", "four"), states(begins), () -> Answers.shown(begins));
    assertEquals(80, begins.segments().get(0).stretch().toSeconds(), CHANGE_TOLERANCE_SECONDS);
  }

  @Test
  void theReadingIsThatOfTheLongerSegment() {
    double[] starts = joined(FOUR.phase(0.3), TICK.phase(0.2), 60, 240);
    Reading reading =
        Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(0, 240), starts));
    assertEquals(List.of("four", "tick"), states(reading), () -> Answers.shown(reading));
    Answers.assertDecoded("tick", reading);
  }

  @Test
  void aLampThatKeepsItsStateGivesOneSegment() {
    for (double phase : new double[] {0, 0.5}) {
      Reading reading = Answers.decode(Sheets.bench(), FOUR.phase(phase).window(240).starts());
      assertEquals(List.of("four"), states(reading), () -> Answers.shown(reading));
      assertEquals(new Window(0, 240), reading.segments().get(0).stretch());
    }
  }

  private static final CodeSheet UNIT =
      Sheets.of(
          0.05,
          OptionalDouble.of(0.1),
          List.of(
              Sheets.state("ready", "1 blink every 6 s", Seen.IDLE),
              Sheets.state("seen", "2 blinks per second", Seen.TARGET),
              Sheets.state("low", "3 blinks 0.5 s apart every 7 s", Seen.ALWAYS)));

  @Test
  void knownTargetsCutSegments() {
    List<Double> starts = new ArrayList<>();
    for (double t = 2; t < 40; t += 6) {
      starts.add(t);
    }
    for (double t = 40.2; t < 52; t += 0.5) {
      starts.add(t);
    }
    for (double t = 54; t < 100; t += 6) {
      starts.add(t);
    }
    Marks marks =
        Marks.watched(0, 100).withTargets(Targets.during(List.of(new TargetSpan(40, 52))));
    Reading reading =
        Answers.decode(
            UNIT, BlinkLog.ofStarts(marks, starts.stream().mapToDouble(d -> d).toArray()));
    assertEquals(List.of("ready", "seen", "ready"), states(reading), () -> Answers.shown(reading));
    assertEquals(new Window(40, 52), reading.segments().get(1).stretch());
    Answers.assertDecoded("ready", reading);
  }

  @Test
  void aTargetThatChangesNothingCutsNothing() {
    Marks marks =
        Marks.watched(0, 100).withTargets(Targets.during(List.of(new TargetSpan(40, 52))));
    CleanRecordings low = CleanRecordings.blinks(0.1, 7, 0, 0.5, 1).phase(0.3).window(100);
    Reading reading = Answers.decode(UNIT, low.starts(marks));
    assertEquals(List.of("low"), states(reading), () -> Answers.shown(reading));
  }

  @Test
  void recordingsOfOneLampAreReadTogether() {
    CodeSheet sheet =
        Sheets.of(
            0.05,
            OptionalDouble.of(0.1),
            List.of(
                Sheets.state("resting", "dark", Seen.ALWAYS),
                Sheets.state("hand", "2 blinks per second", Seen.TARGET),
                Sheets.state("far", "1 blink every 2 s", Seen.TARGET)));
    BlinkLog idle = BlinkLog.ofStarts(Marks.watched(0, 60).withTargets(Targets.none()));
    Marks with = Marks.watched(0, 20).withTargets(Targets.during(List.of(TargetSpan.always())));
    BlinkLog hand = CleanRecordings.blinks(0.1, 0.5, 0).window(20).starts(with);
    Reading alone = Answers.decode(sheet, idle);
    assertEquals("undecided", alone.verdict().word(), () -> Answers.shown(alone));
    Reading together = Answers.decode(sheet, idle, hand);
    Answers.assertDecoded("hand", together);
    assertEquals(List.of(0, 1), together.segments().stream().map(Segment::recording).toList());
    assertTrue(Answers.probability(together, "hand") > Answers.probability(alone, "hand"));
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What recordings without a blink, or with one, decide and leave open. */
class SilenceTest {
  private static final CodeSheet UNIT =
      Sheets.of(
          0.1,
          OptionalDouble.of(0.1),
          List.of(
              Sheets.state("ready", "1 blink every 6 s", Seen.ALWAYS),
              Sheets.state("resting", "dark", Seen.ALWAYS),
              Sheets.state("no-power", "dark", Seen.ALWAYS),
              Sheets.state("hand", "2 blinks per second", Seen.TARGET),
              Sheets.state("too-far", "1 blink every 2 s", Seen.TARGET),
              Sheets.state("start", "1 blink every 1.5 s", Seen.AFTER_POWER_UP)));

  private static BlinkLog silence(double seconds) {
    return BlinkLog.ofStarts(Marks.watched(0, seconds));
  }

  @Test
  void noRecordingIsUnreadable() {
    Reading reading = new LampDecoder().decode(Sheets.bench(), List.of());
    assertEquals("unreadable", reading.verdict().word());
    assertTrue(reading.candidates().isEmpty() && reading.segments().isEmpty());
  }

  @Test
  void noBlinkAndNoWindowIsUnreadable() {
    Reading reading = Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.nothing()));
    assertEquals("unreadable", reading.verdict().word());
    assertTrue(reading.observations().get(0).unreadable().isPresent());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 3.2, -40})
  void oneBlinkWithoutAWindowIsUnreadable(double at) {
    Reading starts = Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.nothing(), at));
    assertEquals("unreadable", starts.verdict().word());
    BlinkLog whole =
        new BlinkLog(Origin.named("log"), Marks.nothing(), List.of(new Blink(at, at + 0.1)));
    assertEquals("unreadable", Answers.decode(Sheets.bench(), whole).verdict().word());
  }

  @Test
  void aWindowWithoutLengthIsUnreadable() {
    Reading reading = Answers.decode(Sheets.bench(), BlinkLog.ofStarts(Marks.watched(4, 4)));
    assertEquals("unreadable", reading.verdict().word());
  }

  @Test
  void fiveSecondsOfDarknessDecideNothing() {
    Reading reading = Answers.decode(Sheets.bench(), silence(5));
    assertTrue(
        Set.of("undecided", "unreadable").contains(reading.verdict().word()),
        () -> Answers.shown(reading));
  }

  @Test
  void twoMinutesOfDarknessAreDarkOnTheBench() {
    Answers.assertDecoded("dark", Answers.decode(Sheets.bench(), silence(120)));
  }

  @Test
  void darknessNamesEveryStateThatIsDarkWithoutATarget() {
    Reading reading = Answers.decode(UNIT, silence(120));
    Answers.assertUndecidedAmong(
        Set.of("resting", "no-power", "hand", "too-far", "start"), reading, "nobody marked");
  }

  @Test
  void darknessWithNobodyThereLeavesTheStatesOfATargetOpen() {
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 120).withTargets(Targets.none()));
    Reading reading = Answers.decode(UNIT, log);
    Answers.assertUndecidedAmong(
        Set.of("resting", "no-power", "hand", "too-far", "start"), reading, "nobody there");
  }

  @Test
  void aTargetWithoutAnswerRulesItsStatesOut() {
    Targets targets = Targets.during(List.of(new TargetSpan(30, 60)));
    Reading reading =
        Answers.decode(UNIT, BlinkLog.ofStarts(Marks.watched(0, 120).withTargets(targets)));
    Answers.assertUndecidedAmong(
        Set.of("resting", "no-power", "start"), reading, "a target from 30 to 60 s");
    assertTrue(Answers.probability(reading, "hand") < 0.001, () -> Answers.shown(reading));
    assertTrue(Answers.probability(reading, "too-far") < 0.001, () -> Answers.shown(reading));
  }

  @Test
  void undecidedDarknessSaysWhatToDo() {
    Verdict.Undecided undecided =
        assertInstanceOf(Verdict.Undecided.class, Answers.decode(UNIT, silence(120)).verdict());
    assertFalse(undecided.reason().isBlank());
    Next.Check check = assertInstanceOf(Next.Check.class, undecided.next());
    assertTrue(check.ask().contains("hand"), check.ask());
    assertTrue(check.minutes() > 0);
  }

  @Test
  void longerDarknessSpeaksMoreForADarkLamp() {
    double before = Double.POSITIVE_INFINITY;
    for (double seconds : new double[] {5, 10, 15, 20, 30, 45}) {
      Reading reading = Answers.decode(Sheets.bench(), silence(seconds));
      double odds = Answers.probability(reading, "seldom") / Answers.probability(reading, "dark");
      assertTrue(odds < before, () -> Answers.shown(reading));
      before = odds;
    }
    assertTrue(before < 0.01);
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rehearsals of two rhythms, and the length of recording that is named by them. */
class BoutTest {
  private static final Watching CAREFUL = Watching.byHand(0.04, 0.03, 0.3 / 60, 0);
  private static final double CLOCK = 0.05;
  private static final OptionalDouble BLINK = OptionalDouble.of(0.09);

  private static LampState state(String name, String phrase) {
    return Sheets.state(name, phrase, Seen.ALWAYS);
  }

  private static List<Train> trains(LampState state) {
    return state.rhythm() instanceof Rhythm.Blinking blinking
        ? Templates.of(blinking, BLINK, CLOCK)
        : List.of();
  }

  private static Bout bout(LampState one, LampState two, List<Noise> supposed) {
    return new Bout(trains(one), trains(two), CAREFUL, false, supposed);
  }

  @ParameterizedTest
  @CsvSource({
    "1 blink every 3.4 s, 1 blink every 6.8 s",
    "1 blink every 3.4 s, dark",
    "3 blinks 0.6 s apart every 8 s, 4 blinks 0.6 s apart every 8 s",
    "1.5 to 2.5 blinks per second, 2 blinks 0.45 s apart every 8 s"
  })
  void theLengthThatIsNamedTellsAndSevenTenthsOfItDoNot(String one, String two) {
    LampState first = state("first", one);
    LampState second = state("second", two);
    RecordingPlan plan =
        new RecordingPlan(Sheets.of(CLOCK, BLINK, List.of(first, second)), CAREFUL);
    double named = plan.between(first, second).seconds().orElseThrow();
    Bout bout = bout(first, second, CAREFUL.supposed());
    assertTrue(bout.isTold(named), named + " s");
    assertFalse(bout.isTold(0.7 * named), 0.7 * named + " s");
    assertFalse(bout.isAmple(0.9 * named), 0.9 * named + " s");
    assertTrue(bout.isAmple(1.1 * named), 1.1 * named + " s");
  }

  /** In 2.25 s of fast blinks it is not learned that hardly any are missed. */
  @Test
  void whoIsNotToldTheNoiseWatchesLonger() {
    LampState rapid = state("rapid", "1.5 to 2.5 blinks per second");
    LampState code =
        state(
            "code", "2 blinks 0.45 s apart then dark 1.3 s then 3 blinks 0.45 s apart every 11 s");
    double enough = 2.25;
    assertTrue(bout(rapid, code, List.of(CAREFUL.noise())).isTold(enough));
    assertFalse(bout(rapid, code, CAREFUL.supposed()).isTold(enough));
  }

  @Test
  void aQuarterOfWhatIsSupposedIsTrue() {
    for (Watching watching : List.of(CAREFUL, CAREFUL.withEnds(), Watching.bySensor(20))) {
      double all = watching.supposed().stream().mapToDouble(Noise::weight).sum();
      double own =
          watching.supposed().stream()
              .filter(noise -> noise.sd() == watching.noise().sd())
              .filter(noise -> noise.weight() >= all / 4)
              .mapToDouble(Noise::weight)
              .sum();
      assertEquals(0.25, own / all, 1e-12);
    }
  }
}

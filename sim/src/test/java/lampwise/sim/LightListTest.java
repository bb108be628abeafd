package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lampwise.decode.Candidate;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * 106 rhythms of the US NGA List of Lights, Pub. 114 (seen; testdata/rhythms), as one code sheet,
 * noted with starts and ends by a careful person. Figures of twenty recordings a light are in
 * docs/light-list.md; {@code -Dlampwise.recordings=20} counts them again.
 */
class LightListTest {
  private static final List<LightList.Light> LIGHTS = LightList.lights();
  private static final CodeSheet SHEET = LightList.sheet(LIGHTS);
  private static final int RECORDINGS = Integer.getInteger("lampwise.recordings", 2);
  private static final long SEED = 1125;

  /** What came of the recordings of all lights. */
  private static final class Counts {
    int all;
    int right;
    int same;
    int alone;
    int aloneRight;
    int whole;
    int wholeRight;
    int decoded;
    int misread;
    final List<String> wrong = new ArrayList<>();

    static double share(int part, int all) {
      return (double) part / all;
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%d recordings, %.4f right, %.4f the light itself; %d of lights without twin, %.4f right; %d with nothing missed"
              + " or stray, %.4f right; decoded %.4f, misread %d%n%s%n",
          all,
          share(right, all),
          share(same, all),
          alone,
          share(aloneRight, alone),
          whole,
          share(wholeRight, whole),
          share(decoded, all),
          misread,
          String.join(System.lineSeparator(), wrong));
    }
  }

  private static Labelled recorded(int number, int recording, double leastSeconds) {
    LightList.Light light = LIGHTS.get(number);
    LampState state = SHEET.state(light.state()).orElseThrow();
    double cycles = LightList.CYCLES * light.cycleSeconds() * (1 + LightList.CLOCK);
    Scene scene = Scene.of(SHEET, Act.of(state), Math.max(leastSeconds, cycles));
    return Simulator.record(
        scene,
        Person.careful().withNotes(Person.Notes.HOLDS),
        SEED * 1_000_003 + number * 1000L + recording);
  }

  private static Reading decoded(Labelled labelled) {
    return new LampDecoder().decode(SHEET, List.of(labelled.recording()));
  }

  private static boolean nothingLost(Labelled labelled) {
    return labelled.truth().missed().isEmpty() && labelled.truth().added().isEmpty();
  }

  private static Counts counts(double leastSeconds) {
    Counts counts = new Counts();
    for (int number = 0; number < LIGHTS.size(); number++) {
      LightList.Light light = LIGHTS.get(number);
      Set<String> twins = LightList.twins(light, LIGHTS);
      for (int i = 0; i < RECORDINGS; i++) {
        Labelled labelled = recorded(number, i, leastSeconds);
        Reading reading = decoded(labelled);
        String top = reading.candidates().isEmpty() ? "" : reading.candidates().get(0).state();
        int right = twins.contains(top) ? 1 : 0;
        counts.all++;
        counts.right += right;
        counts.same += top.equals(light.state()) ? 1 : 0;
        if (twins.size() == 1) {
          counts.alone++;
          counts.aloneRight += right;
        }
        if (nothingLost(labelled)) {
          counts.whole++;
          counts.wholeRight += right;
        }
        if (reading.verdict() instanceof Verdict.Decoded verdict) {
          counts.decoded++;
          counts.misread += verdict.state().equals(light.state()) ? 0 : 1;
        }
        if (right == 0) {
          counts.wrong.add(light + " taken for " + top + ", " + reading.verdict().word());
        }
      }
    }
    return counts;
  }

  @Test
  void theTableIsWhole() {
    assertEquals(106, LIGHTS.size());
    assertEquals(106, SHEET.states().stream().map(LampState::name).distinct().count());
    long alone = LIGHTS.stream().filter(l -> LightList.twins(l, LIGHTS).size() == 1).count();
    assertEquals(88, alone);
  }

  /**
   * The light or a twin of it. Three cycles of a single flash are three flashes; with the middle
   * one missed they look like half the rate, so that more than 99 % are out of reach.
   */
  @ParameterizedTest
  @CsvSource({"0, 0.985, 0.985", "20, 0.99, 0.995"})
  void threeCyclesTellTheLight(double leastSeconds, double leastRight, double leastAlone) {
    Counts counts = counts(leastSeconds);
    System.out.print(counts);
    assertTrue(Counts.share(counts.right, counts.all) >= leastRight, counts::toString);
    assertTrue(Counts.share(counts.same, counts.all) >= 0.94, counts::toString);
    assertTrue(Counts.share(counts.aloneRight, counts.alone) >= leastAlone, counts::toString);
    assertTrue(Counts.share(counts.wholeRight, counts.whole) >= 0.995, counts::toString);
    assertTrue(Counts.share(counts.decoded, counts.all) >= 0.75, counts::toString);
    assertEquals(0, counts.misread, counts::toString);
  }

  /**
   * The same starts, and ends 0.1 s earlier: whoever notes ends 0.1 s late sees the one as the
   * other, and nobody knows who does.
   */
  @ParameterizedTest
  @CsvSource({
    "Fl2-10-400, fl2-10-300",
    "Fl3-10-500, fl3-10-400",
    "Fl4-15-500, fl4-15-400",
    "Fl4-20-200, fl4-20-100"
  })
  void nearTwinsComeOutTogether(String id, String twin) {
    int number = LIGHTS.stream().map(LightList.Light::id).toList().indexOf(id);
    LightList.Light light = LIGHTS.get(number);
    assertTrue(LightList.twins(light, LIGHTS).contains(twin), id);
    for (int i = 0; i < 4 * RECORDINGS; i++) {
      Reading reading = decoded(recorded(number, i, 0));
      Verdict.Undecided undecided =
          assertInstanceOf(Verdict.Undecided.class, reading.verdict(), reading::toString);
      Set<String> open =
          undecided.candidates().stream()
              .map(Candidate::state)
              .collect(Collectors.toCollection(TreeSet::new));
      assertTrue(open.containsAll(Set.of(light.state(), twin)), open::toString);
    }
  }
}

package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.apache.commons.statistics.inference.BinomialTest;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;

/**
 * What each setting of a person does. Seeds are fixed, so that no test fails by chance; each test
 * of a distribution rejects at 0.1 %.
 */
class PersonTest {
  private static final double SIZE = 0.001;

  /** Blinks of 0.1 s every so often, each at the same place of its second. */
  private static Shown blinks(int count, double every) {
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      blinks.add(new Blink(5 + i * every, 5 + i * every + 0.1));
    }
    return shown(blinks, 10 + count * every);
  }

  private static Shown shown(List<Blink> blinks, double seconds) {
    Scene scene =
        new Scene(
            new Window(0, seconds),
            List.of(Act.unlisted(new Rhythm.Steady())),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(0, 0),
            OptionalDouble.empty());
    return new Shown(scene, blinks, List.of(new Shown.ClockRate(0, 1)));
  }

  private static double[] starts(Labelled labelled) {
    return ((BlinkLog) labelled.recording())
        .blinks().stream().mapToDouble(Blink::onSeconds).toArray();
  }

  /** With 4000 errors a standard deviation wrong by 5 % is found with a power over 0.9. */
  @Test
  void timingErrorsAreNormal() {
    Person person = Person.plain().with("timing-sd-s", 0.08).with("rounding-s", 0);
    double[] starts = starts(person.observe(blinks(4000, 3), Chance.of(1)));
    double[] errors = new double[starts.length];
    for (int i = 0; i < starts.length; i++) {
      errors[i] = starts[i] - (5 + 3.0 * i);
    }
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(errors, NormalDistribution.of(0, 0.08)::cumulativeProbability)
            .getPValue();
    assertTrue(p > SIZE, "p " + p);
  }

  /** With 4000 blinks a share of 0.12 instead of 0.1 is found with a power over 0.9. */
  @Test
  void blinksAreMissed() {
    Labelled labelled = Person.plain().with("missed", 0.1).observe(blinks(4000, 3), Chance.of(2));
    int missed = labelled.truth().missed().size();
    assertEquals(4000, missed + starts(labelled).length);
    double p = BinomialTest.withDefaults().test(4000, missed, 0.1).getPValue();
    assertTrue(p > SIZE, missed + " missed, p " + p);
  }

  @Test
  void straysArePoisson() {
    Person person = Person.plain().with("strays-per-minute", 3).with("taps-apart-s", 0);
    long[] counts = new long[9];
    List<Double> gaps = new ArrayList<>();
    for (int i = 0; i < 2000; i++) {
      List<Double> added = person.observe(shown(List.of(), 60), Chance.of(i)).truth().added();
      counts[Math.min(added.size(), counts.length - 1)]++;
      if (!added.isEmpty()) {
        gaps.add(added.get(0));
      }
    }
    PoissonDistribution expected = PoissonDistribution.of(3);
    double[] probabilities = new double[counts.length];
    for (int i = 0; i < counts.length - 1; i++) {
      probabilities[i] = expected.probability(i);
    }
    probabilities[counts.length - 1] = expected.survivalProbability(counts.length - 2);
    double p = ChiSquareTest.withDefaults().test(probabilities, counts).getPValue();
    assertTrue(p > SIZE, "counts, p " + p);
    double whole = 1 - Math.exp(-3);
    double toFirst =
        KolmogorovSmirnovTest.withDefaults()
            .test(
                gaps.stream().mapToDouble(Double::doubleValue).toArray(),
                t -> (1 - Math.exp(-t / 20)) / whole)
            .getPValue();
    assertTrue(toFirst > SIZE, "time to the first, p " + toFirst);
  }

  @Test
  void onlyTheFirstOfABurstIsLate() {
    Person person = Person.plain().with("first-late-s", 0.15);
    List<Blink> blinks = new ArrayList<>();
    for (double on : new double[] {5, 5.6, 6.2, 12, 12.6}) {
      blinks.add(new Blink(on, on + 0.1));
    }
    double[] starts = starts(person.observe(shown(blinks, 20), Chance.of(3)));
    assertEquals(List.of(5.15, 5.6, 6.2, 12.15, 12.6), boxed(starts));
  }

  private static List<Double> boxed(double[] values) {
    List<Double> list = new ArrayList<>();
    for (double value : values) {
      list.add(Math.rint(value * 1000) / 1000);
    }
    return list;
  }

  /**
   * Rounding to whole seconds gives an interval an error with a standard deviation of 1/sqrt(6) =
   * 0.41 s: the difference of two even errors of a second's width each (computed).
   */
  @Test
  void wholeSecondsSpoilIntervals() {
    Chance chance = Chance.of(4);
    List<Blink> blinks = new ArrayList<>();
    for (double on = 5; blinks.size() < 4000; on += chance.uniform(3, 7)) {
      blinks.add(new Blink(on, on + 0.1));
    }
    double[] starts =
        starts(Person.plain().with("rounding-s", 1).observe(shown(blinks, 40000), chance));
    double sum = 0;
    for (int i = 1; i < starts.length; i++) {
      double interval = blinks.get(i).onSeconds() - blinks.get(i - 1).onSeconds();
      double off = starts[i] - starts[i - 1] - interval;
      sum += off * off;
    }
    assertEquals(1 / Math.sqrt(6), Math.sqrt(sum / (starts.length - 1)), 0.02);
  }

  @Test
  void presetsAreThoseOfTheBench() {
    assertPreset(Person.exact(), 0.01, 0, 0, 0, 0.001);
    assertPreset(Person.careful(), 0.04, 0, 0.03, 0.3, 0.01);
    assertPreset(Person.hurried(), 0.08, 0.1, 0.1, 1, 0.01);
    assertPreset(Person.careless(), 0.08, 0.15, 0.2, 3, 0.01);
  }

  private static void assertPreset(
      Person person, double sd, double late, double missed, double strays, double rounding) {
    assertEquals(sd, person.timingSd());
    assertEquals(late, person.firstLateSeconds());
    assertEquals(missed, person.missed());
    assertEquals(strays, person.straysPerMinute());
    assertEquals(rounding, person.roundingSeconds());
    List<String> own =
        List.of(
            "timing-sd-s",
            "first-late-s",
            "slowest-burst-gap-s",
            "missed",
            "strays-per-minute",
            "rounding-s");
    person
        .settings()
        .forEach(
            (name, value) -> {
              if (!own.contains(name)) {
                assertEquals(0, value, name);
              }
            });
  }

  @Test
  void aFastLampCannotBeFollowed() {
    Person person = Person.plain().with("fastest-taps-per-s", 3);
    Labelled labelled = person.observe(blinks(100, 0.2), Chance.of(5));
    assertEquals(50, starts(labelled).length);
    assertEquals(50, labelled.truth().missed().size());
  }

  @Test
  void everyTapIsDoubled() {
    Labelled labelled = Person.plain().with("double-tap", 1).observe(blinks(40, 2), Chance.of(6));
    assertEquals(80, starts(labelled).length);
    assertEquals(40, labelled.truth().added().size());
  }

  @Test
  void aLapseIsHalfASecondLateOrMore() {
    double[] starts =
        starts(Person.plain().with("lapse", 1).observe(blinks(400, 20), Chance.of(7)));
    double sum = 0;
    for (int i = 0; i < starts.length; i++) {
      assertTrue(starts[i] - (5 + 20.0 * i) >= 0.5 - 1e-9);
      sum += starts[i] - (5 + 20.0 * i);
    }
    assertEquals(0.8, sum / starts.length, 0.05);
  }

  @Test
  void marksThatWouldBeTooNearAreNotMade() {
    Shown shown = blinks(100, 0.2);
    Person person = Person.plain().with("timing-sd-s", 0.1).with("taps-apart-s", 0.3);
    double[] starts = starts(person.observe(shown, Chance.of(8)));
    for (int i = 1; i < starts.length; i++) {
      assertTrue(starts[i] - starts[i - 1] > 0.298, "apart");
    }
  }

  @Test
  void holdsHaveEnds() {
    Person person = Person.plain().withNotes(Person.Notes.HOLDS).with("release-late-s", 0.2);
    BlinkLog log = (BlinkLog) person.observe(blinks(3, 4), Chance.of(9)).recording();
    assertEquals(5.3, log.blinks().get(0).offSeconds(), 1e-9);
    Shown already = shown(List.of(new Blink(-3, 7)), 20);
    BlinkLog held = (BlinkLog) person.observe(already, Chance.of(9)).recording();
    assertEquals(0, held.blinks().get(0).onSeconds());
    assertTrue(
        ((BlinkLog) Person.plain().observe(already, Chance.of(9)).recording()).blinks().isEmpty());
  }

  @Test
  void wordsArePhrases() throws Exception {
    Person person = Person.careful().withNotes(Person.Notes.WORDS).with("seconds-error", 0.1);
    Description few = (Description) person.observe(blinks(10, 3), Chance.of(10)).recording();
    assertTrue(few.said().startsWith("1 blink every "), few.said());
    Description fast = (Description) person.observe(blinks(60, 0.2), Chance.of(10)).recording();
    assertEquals("fast blinks", fast.said());
    Phrase.parse(few.said());
    Description none = (Description) person.observe(shown(List.of(), 2), Chance.of(1)).recording();
    assertEquals(Description.NOTHING, none.said());
  }

  @Test
  void targetsAreNotedWhereTheSceneSaysSo() {
    Shown plain = blinks(3, 4);
    Scene marked = plain.scene().with(List.of(new TargetSpan(2, 6)), List.of(), true);
    Marks marks =
        Person.plain()
            .observe(new Shown(marked, plain.blinks(), plain.clock()), Chance.of(1))
            .recording()
            .marks();
    assertEquals(Targets.during(List.of(new TargetSpan(2, 6))), marks.targets());
    assertEquals(
        Targets.unknown(),
        Person.plain().observe(plain, Chance.of(1)).recording().marks().targets());
  }

  @Test
  void settingsThatCannotBeAreRefused() {
    assertRefused("missed", 1.5, "missed must be 0 to 1, not 1.5");
    assertRefused("timing-sd-s", -1, "timing-sd-s must be 0 to 5, not -1");
    assertRefused("missed", Double.NaN, "missed must be 0 to 1, not NaN");
    SimulationException unknown =
        assertThrows(SimulationException.class, () -> Person.plain().with("mised", 0.1));
    assertTrue(unknown.getMessage().contains("missed"), unknown.getMessage());
  }

  private static void assertRefused(String setting, double value, String message) {
    assertEquals(
        message,
        assertThrows(SimulationException.class, () -> Person.plain().with(setting, value))
            .getMessage());
  }

  @Test
  void presetsHaveNames() {
    assertEquals(
        List.of(
            "exact", "careful", "hurried", "careless", "fast", "camera", "meter", "slow", "faint"),
        Presets.names());
    assertEquals(Person.hurried(), Presets.named("hurried"));
    String message =
        assertThrows(SimulationException.class, () -> Presets.named("carefull")).getMessage();
    assertTrue(message.contains("careful") && message.contains("meter"), message);
  }

  @Test
  void theSameSeedGivesTheSameMarks() {
    Shown shown = blinks(50, 3);
    Person person =
        Person.careless().with("lapse", 0.1).with("double-tap", 0.1).withNotes(Person.Notes.HOLDS);
    Labelled once = person.observe(shown, Chance.of(11));
    assertEquals(once, person.observe(shown, Chance.of(11)));
    assertTrue(!once.equals(person.observe(shown, Chance.of(12))));
    long hash = 0;
    for (Blink blink : ((BlinkLog) once.recording()).blinks()) {
      hash = 31 * hash + Double.doubleToLongBits(blink.onSeconds());
      hash = 31 * hash + Double.doubleToLongBits(blink.offSeconds());
    }
    // Other machines and Java versions must agree.
    assertEquals(PINNED, hash);
  }

  private static final long PINNED = -835047420884869368L;
}

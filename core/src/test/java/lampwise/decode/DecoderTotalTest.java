package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Any recording is answered in bounded time: probabilities that sum to 1, or none. */
class DecoderTotalTest {
  /** Far more than any recording here needs, far less than for ever. */
  private static final Duration BOUNDED = Duration.ofSeconds(20);

  private static final CodeSheet EVERYTHING =
      Sheets.of(
          0.1,
          OptionalDouble.empty(),
          List.of(
              Sheets.state("ready", "1 blink every 25 to 30 s", Seen.IDLE),
              Sheets.state("hand", "3 blinks 0.47 s apart once", Seen.TARGET),
              Sheets.state("gone", "steady 3 s then 2 blinks once", Seen.AFTER_TARGET),
              Sheets.state("flushed", "2 blinks repeating", Seen.AFTER_FLUSH),
              Sheets.state("water", "fast blinks", Seen.WHILE_RUNNING),
              Sheets.state("start", "first steady 5 s afterwards slow blinks", Seen.AFTER_POWER_UP),
              Sheets.state("button", "5 blinks per second for 3 s then dark 2 s", Seen.SET_UP),
              Sheets.state("winks", "steady then dark 0.3 s every 8 s", Seen.ALWAYS),
              Sheets.state("words", "1 long blink then 2 short blinks", Seen.ALWAYS),
              Sheets.state("wide", "5 to 50 blinks per minute", Seen.ALWAYS),
              Sheets.state("on", "steady", Seen.ALWAYS),
              Sheets.state("off", "dark", Seen.ALWAYS)));

  private static void answers(Recording... recordings) {
    for (CodeSheet sheet : List.of(Sheets.bench(), EVERYTHING)) {
      Reading reading = assertTimeoutPreemptively(BOUNDED, () -> Answers.decode(sheet, recordings));
      Answers.assertSound(sheet, reading);
      assertEquals(recordings.length, reading.observations().size());
      for (Segment segment : reading.segments()) {
        Window whole = recordings[segment.recording()].window().orElseThrow();
        assertEquals(
            true,
            whole.contains(segment.stretch().fromSeconds())
                && whole.contains(segment.stretch().toSeconds()),
            segment::toString);
      }
    }
    for (Recording recording : recordings) {
      Observation observation =
          assertTimeoutPreemptively(BOUNDED, () -> new LampDecoder().observe(recording));
      assertNotNull(observation.observed());
      for (SeenBlink blink : observation.blinks()) {
        assertEquals(true, blink.probability() >= 0 && blink.probability() <= 1, blink::toString);
      }
    }
  }

  private static BlinkLog log(Marks marks, List<Blink> blinks) {
    return new BlinkLog(Origin.named("log"), marks, blinks);
  }

  @Provide
  Arbitrary<Double> times() {
    return Arbitraries.frequencyOf(
        Tuple.of(6, Arbitraries.doubles().between(-5, 120)),
        Tuple.of(2, Arbitraries.integers().between(0, 60).map(i -> i / 2.0)),
        Tuple.of(1, Arbitraries.of(1e9, -1e9, 1e15, 1e-9, 0.0)));
  }

  @Provide
  Arbitrary<Marks> marks() {
    Arbitrary<Window> windows =
        Combinators.combine(times(), times())
            .as((a, b) -> new Window(Math.min(a, b), Math.max(a, b)));
    Arbitrary<Targets> spans =
        windows
            .filter(w -> w.lengthSeconds() > 0)
            .map(w -> new TargetSpan(w.fromSeconds(), w.toSeconds()))
            .list()
            .ofMaxSize(2)
            .map(Targets::during);
    Arbitrary<Targets> targets =
        Arbitraries.oneOf(spans, Arbitraries.of(Targets.unknown(), Targets.likely()));
    Arbitrary<List<Event>> events =
        Combinators.combine(Arbitraries.of(Event.Kind.values()), times())
            .as(Event::new)
            .list()
            .ofMaxSize(2);
    return Combinators.combine(windows.optional(0.7), targets, events, windows.list().ofMaxSize(2))
        .as(Marks::new);
  }

  @Provide
  Arbitrary<BlinkLog> logs() {
    Arbitrary<Blink> blinks =
        Combinators.combine(times(), Arbitraries.doubles().between(0.01, 20).injectNull(0.5))
            .as((on, length) -> blink(on, length == null ? Double.NaN : on + length));
    return Combinators.combine(marks(), blinks.list().ofMaxSize(25)).as(DecoderTotalTest::log);
  }

  /** At 1e15 s a short blink has no length: only its start is kept. */
  private static Blink blink(double on, double off) {
    return off > on ? new Blink(on, off) : Blink.startingAt(on);
  }

  @Provide
  Arbitrary<LightCurve> curves() {
    Arbitrary<Double> steps =
        Arbitraries.frequencyOf(
            Tuple.of(9, Arbitraries.doubles().between(0.01, 0.2)),
            Tuple.of(1, Arbitraries.of(1e-6, 30.0, 1e6)));
    Arbitrary<Double> levels =
        Arbitraries.frequencyOf(
            Tuple.of(8, Arbitraries.of(100.0, 120.0)),
            Tuple.of(3, Arbitraries.doubles().between(90, 130)),
            Tuple.of(1, Arbitraries.of(Double.NaN, 1e300, -1e300, Double.MAX_VALUE, 0.0)));
    return Combinators.combine(
            marks(),
            Arbitraries.of(LightCurve.Lit.values()),
            Combinators.combine(steps, levels)
                .as((s, l) -> new double[] {s, l})
                .list()
                .ofMaxSize(80))
        .as(
            (marks, lit, samples) -> {
              double[] seconds = new double[samples.size()];
              double[] values = new double[samples.size()];
              double time = 0;
              for (int i = 0; i < seconds.length; i++) {
                time += samples.get(i)[0];
                seconds[i] = time;
                values[i] = samples.get(i)[1];
              }
              return LightCurve.of(Origin.named("curve"), marks, lit, seconds, values);
            });
  }

  @Property(seed = "41", tries = 60)
  void anyLog(@ForAll("logs") BlinkLog log) {
    answers(log);
  }

  @Property(seed = "42", tries = 60)
  void anyCurve(@ForAll("curves") LightCurve curve) {
    answers(curve);
  }

  @Property(seed = "43", tries = 15)
  void anyTwoTogether(@ForAll("logs") BlinkLog log, @ForAll("curves") LightCurve curve) {
    answers(log, curve);
  }

  private static List<Blink> starts(double... on) {
    List<Blink> blinks = new ArrayList<>();
    for (double time : on) {
      blinks.add(Blink.startingAt(time));
    }
    return blinks;
  }

  @Example
  void nothingAndNearlyNothing() {
    answers();
    answers(log(Marks.nothing(), List.of()));
    answers(log(Marks.watched(0, 60), List.of()));
    answers(log(Marks.watched(0, 0), List.of()));
    answers(log(Marks.watched(0, 60), starts(30)));
    answers(log(Marks.nothing(), starts(30)));
    answers(log(Marks.watched(0, 60), starts(0)));
    answers(log(Marks.watched(0, 60), starts(60)));
    answers(log(Marks.watched(0, 60), starts(-5, 70)));
  }

  @Example
  void equalTimes() {
    double[] same = new double[30];
    answers(log(Marks.nothing(), starts(same)));
    answers(log(Marks.watched(-1, 1), starts(same)));
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      blinks.add(new Blink(5, 5.1));
    }
    answers(log(Marks.watched(0, 60), blinks));
  }

  @Example
  void hugeTimes() {
    answers(log(Marks.nothing(), starts(-1e300, 0, 1e300)));
    answers(log(Marks.nothing(), starts(0, Double.MAX_VALUE / 4)));
    answers(log(Marks.watched(0, 1e12), starts(1, 2, 3, 4)));
    answers(log(Marks.watched(-1e12, 1e12), List.of()));
    answers(log(Marks.nothing(), List.of(new Blink(0, 1e12))));
  }

  @Example
  void tinyTimes() {
    answers(log(Marks.nothing(), starts(0, 1e-9, 2e-9, 3e-9)));
    answers(log(Marks.watched(0, 1e-9), starts(0, 5e-10)));
    answers(log(Marks.nothing(), List.of(new Blink(0, Double.MIN_VALUE), new Blink(1, 1.1))));
  }

  @Example
  void thousandsOfBlinks() {
    answers(CleanRecordings.blinks(0.05, 0.4, 0).window(1200).starts());
    answers(CleanRecordings.atRandom(1, 3000, 5));
  }

  @Example
  void overlappingBlinks() {
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      blinks.add(new Blink(i, i + 7));
    }
    answers(log(Marks.watched(0, 60), blinks));
    answers(log(Marks.nothing(), blinks));
  }

  @Example
  void coveredAltogether() {
    Marks marks =
        new Marks(
            Optional.of(new Window(0, 60)),
            Targets.unknown(),
            List.of(),
            List.of(new Window(-10, 100)));
    answers(log(marks, starts(3, 6, 9)));
    answers(CleanRecordings.blinks(0.2, 3.4, 0).window(60).curve(marks, 20, 100, 20, 1, 1));
  }

  @Example
  void curvesOfFewSamples() {
    for (int count = 0; count < 6; count++) {
      double[] seconds = new double[count];
      double[] levels = new double[count];
      for (int i = 0; i < count; i++) {
        seconds[i] = 0.1 * i;
        levels[i] = i % 2 == 0 ? 100 : 120;
      }
      answers(curve(seconds, levels));
      answers(curve(seconds, new double[count]));
      Arrays.fill(levels, Double.NaN);
      answers(curve(seconds, levels));
    }
  }

  private static LightCurve curve(double[] seconds, double[] levels) {
    return LightCurve.of(
        Origin.named("curve"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  @Example
  void curvesOfExtremeLevels() {
    int count = 600;
    double[] seconds = new double[count];
    double[] spikes = new double[count];
    double[] noise = new double[count];
    double[] huge = new double[count];
    double[] holes = new double[count];
    SplittableRandom random = new SplittableRandom(9);
    for (int i = 0; i < count; i++) {
      seconds[i] = 0.1 * i;
      spikes[i] = i % 97 == 5 ? 1e9 : 100;
      noise[i] = random.nextDouble();
      huge[i] = i % 34 < 2 ? Double.MAX_VALUE : -Double.MAX_VALUE;
      holes[i] = i % 3 == 0 ? Double.NaN : i % 34 < 2 ? 120 : 100;
    }
    answers(curve(seconds, spikes));
    answers(curve(seconds, noise));
    answers(curve(seconds, huge));
    answers(curve(seconds, holes));
  }

  /** A range whose borders are far apart, with a unit's clock on top of it. */
  @Example
  void wideRatesTakeBoundedTime() {
    CodeSheet sheet =
        Sheets.of(
            0.1,
            "flashing",
            "5 to 50 blinks per minute",
            "any",
            "blinks",
            "half",
            "2 blinks every 10 to 55 s");
    BlinkLog log = CleanRecordings.blinks(0.25, 0.5, 0).window(30).starts();
    Reading reading = assertTimeoutPreemptively(BOUNDED, () -> Answers.decode(sheet, log));
    Answers.assertSound(sheet, reading);
    assertEquals("any", Answers.top(reading), () -> Answers.shown(reading));
  }
}

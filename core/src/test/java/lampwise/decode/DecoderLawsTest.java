package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** What must not change a reading, and what must not make it worse. */
class DecoderLawsTest {
  /** Sums in another order differ by no more than this in a probability. */
  private static final double ORDER_TOLERANCE = 1e-9;

  /** Times that were shifted keep fewer digits: probabilities differ by no more than this. */
  private static final double SHIFT_TOLERANCE = 1e-5;

  private static final double SHIFT_TOLERANCE_SECONDS = 1e-6;

  /** A longer look may lower a truth that is all but certain by this much. */
  private static final double LONGER_TOLERANCE = 0.01;

  private static final CodeSheet BENCH = Sheets.bench();

  /** A clean lamp of the bench and its state. */
  record Lamp(String state, CleanRecordings recordings) {}

  @Provide
  Arbitrary<Lamp> lamps() {
    return Combinators.combine(
            Arbitraries.integers().between(0, Sheets.BENCH_CYCLES.length - 1),
            Arbitraries.doubles().between(0.96, 1.04),
            Arbitraries.doubles().between(0.01, 0.99),
            Arbitraries.doubles().between(12, 50))
        .as(
            (i, clock, phase, seconds) ->
                new Lamp(
                    BENCH.states().get(i).name(),
                    CleanRecordings.blinks(0.09, Sheets.BENCH_CYCLES[i], Sheets.BENCH_STARTS[i])
                        .clock(clock)
                        .phase(phase)
                        .window(seconds)));
  }

  /** Two thirds clean lamps, one third blinks at random; starts, both, or light levels. */
  @Provide
  Arbitrary<Recording> recordings() {
    Arbitrary<Recording> clean =
        Combinators.combine(lamps(), Arbitraries.integers().between(0, 2))
            .as(
                (lamp, kind) ->
                    kind == 0
                        ? lamp.recordings().starts()
                        : kind == 1
                            ? lamp.recordings().onAndOff()
                            : lamp.recordings().curve(40, 100, 10, 1, 3));
    Arbitrary<Recording> random =
        Arbitraries.longs().between(0, 999).map(seed -> CleanRecordings.atRandom(0.4, 40, seed));
    return Arbitraries.oneOf(clean, clean, random);
  }

  private static Map<String, Double> probabilities(Reading reading) {
    Map<String, Double> map = new TreeMap<>();
    reading.candidates().forEach(c -> map.put(c.state(), c.probability()));
    return map;
  }

  private static void assertAlike(
      Map<String, Double> expected, Map<String, Double> found, double tolerance) {
    assertEquals(expected.keySet(), found.keySet());
    expected.forEach(
        (name, p) -> assertEquals(p, found.get(name), tolerance, () -> name + " in " + found));
  }

  private static Marks shifted(Marks marks, double by) {
    return new Marks(
        marks.window().map(w -> shifted(w, by)),
        new Targets(
            marks.targets().knowledge(),
            marks.targets().spans().stream()
                .map(s -> new TargetSpan(s.fromSeconds() + by, s.toSeconds() + by))
                .toList()),
        marks.events().stream().map(e -> new Event(e.kind(), e.atSeconds() + by)).toList(),
        marks.covered().stream().map(w -> shifted(w, by)).toList());
  }

  private static Window shifted(Window window, double by) {
    return new Window(window.fromSeconds() + by, window.toSeconds() + by);
  }

  private static Recording shifted(Recording recording, Marks marks, double by) {
    if (recording instanceof BlinkLog log) {
      return new BlinkLog(
          log.origin(),
          shifted(marks, by),
          log.blinks().stream()
              .map(b -> new Blink(b.onSeconds() + by, b.offSeconds() + by))
              .toList());
    }
    LightCurve curve = (LightCurve) recording;
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = curve.seconds(i) + by;
      levels[i] = curve.level(i);
    }
    return LightCurve.of(curve.origin(), shifted(marks, by), curve.lit(), seconds, levels);
  }

  @Property(seed = "51", tries = 25)
  void anotherZeroChangesOnlyTheTimes(
      @ForAll("recordings") Recording recording,
      @ForAll @DoubleRange(min = -5000, max = 5000) double by,
      @ForAll boolean marked) {
    Marks marks =
        marked
            ? new Marks(
                Optional.of(recording.window().orElseThrow()),
                Targets.during(List.of(new TargetSpan(5, 9))),
                List.of(new Event(Event.Kind.FLUSH, 3.3)),
                List.of(new Window(10, 11)))
            : recording.marks();
    Reading here = Answers.decode(BENCH, shifted(recording, marks, 0));
    Reading there = Answers.decode(BENCH, shifted(recording, marks, by));
    assertAlike(probabilities(here), probabilities(there), SHIFT_TOLERANCE);
    assertEquals(here.verdict().word(), there.verdict().word());
    assertEquals(here.observed(), there.observed());
    assertEquals(here.segments().size(), there.segments().size());
    for (int i = 0; i < here.segments().size(); i++) {
      Window a = here.segments().get(i).stretch();
      Window b = there.segments().get(i).stretch();
      assertEquals(a.fromSeconds() + by, b.fromSeconds(), SHIFT_TOLERANCE_SECONDS);
      assertEquals(a.toSeconds() + by, b.toSeconds(), SHIFT_TOLERANCE_SECONDS);
    }
    List<SeenBlink> blinks = here.observations().get(0).blinks();
    List<SeenBlink> others = there.observations().get(0).blinks();
    assertEquals(blinks.size(), others.size());
    for (int i = 0; i < blinks.size(); i++) {
      assertEquals(
          blinks.get(i).blink().onSeconds() + by,
          others.get(i).blink().onSeconds(),
          SHIFT_TOLERANCE_SECONDS);
    }
  }

  @Property(seed = "52", tries = 25)
  void orderOfStatesChangesNothing(
      @ForAll("recordings") Recording recording, @ForAll Random random) {
    List<LampState> mixed = new ArrayList<>(BENCH.states());
    Collections.shuffle(mixed, random);
    CodeSheet sheet = Sheets.of(0.05, BENCH.blinkSeconds(), mixed);
    Reading first = Answers.decode(BENCH, recording);
    Reading second = Answers.decode(sheet, recording);
    assertAlike(probabilities(first), probabilities(second), ORDER_TOLERANCE);
    assertEquals(first.verdict().word(), second.verdict().word());
  }

  @Property(seed = "53", tries = 25)
  void namesOfStatesChangeOnlyTheNames(@ForAll("recordings") Recording recording) {
    List<LampState> renamed = new ArrayList<>();
    for (LampState state : BENCH.states()) {
      renamed.add(
          LampState.of(
              "z" + state.name() + "-2", state.rhythm(), "another meaning", state.condition()));
    }
    CodeSheet sheet = Sheets.of(0.05, BENCH.blinkSeconds(), renamed);
    Reading first = Answers.decode(BENCH, recording);
    Reading second = Answers.decode(sheet, recording);
    assertEquals(first.verdict().word(), second.verdict().word());
    assertEquals(first.observed(), second.observed());
    assertEquals(first.observations(), second.observations());
    assertEquals(first.candidates().size(), second.candidates().size());
    for (int i = 0; i < first.candidates().size(); i++) {
      Candidate a = first.candidates().get(i);
      Candidate b = second.candidates().get(i);
      String name = BENCH.state(a.state()).isPresent() ? "z" + a.state() + "-2" : a.state();
      assertEquals(new Candidate(name, a.prior(), a.logLikelihood(), a.probability()), b);
    }
  }

  @Property(seed = "54", tries = 40)
  void aLongerCleanLookDoesNotLowerTheTruth(@ForAll("lamps") Lamp lamp, @ForAll boolean ends) {
    CleanRecordings once = lamp.recordings();
    CleanRecordings twice = once.window(2 * once.windowSeconds());
    Reading brief = Answers.decode(BENCH, ends ? once.onAndOff() : once.starts());
    Reading longer = Answers.decode(BENCH, ends ? twice.onAndOff() : twice.starts());
    double before = Answers.probability(brief, lamp.state());
    double after = Answers.probability(longer, lamp.state());
    assertTrue(
        after >= before - LONGER_TOLERANCE,
        () -> lamp + ": " + Answers.shown(brief) + " then " + Answers.shown(longer));
  }

  @Property(seed = "55", tries = 20)
  void theSameCallGivesTheSameReading(@ForAll("recordings") Recording recording) {
    LampDecoder decoder = new LampDecoder();
    Reading first = decoder.decode(BENCH, List.of(recording));
    decoder.decode(BENCH, List.of(CleanRecordings.atRandom(1, 20, 4)));
    assertEquals(first, decoder.decode(BENCH, List.of(recording)));
  }
}

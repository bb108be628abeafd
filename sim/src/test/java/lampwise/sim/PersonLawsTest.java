package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What holds for any settings, any lamp and any seed. */
class PersonLawsTest {
  @Property
  void everyLogIsWhole(
      @ForAll("people") Person person, @ForAll("lamps") Shown shown, @ForAll long seed) {
    Labelled labelled = person.observe(shown, Chance.of(seed));
    Window window = shown.scene().window();
    Truth truth = labelled.truth();
    assertEquals(shown, truth.shown());
    assertEquals(window, labelled.recording().window().orElseThrow());
    assertEquals(labelled, person.observe(shown, Chance.of(seed)));
    List<Blink> inside =
        shown.blinks().stream().filter(blink -> window.contains(blink.onSeconds())).toList();
    assertTrue(inside.containsAll(truth.missed()));
    assertTrue(truth.added().stream().allMatch(window::contains));
    if (!(labelled.recording() instanceof BlinkLog log)) {
      return;
    }
    List<Blink> noted = log.blinks();
    boolean already = person.notes() == Person.Notes.HOLDS && inside.size() < shown.blinks().size();
    assertEquals(
        inside.size() + truth.added().size() + (already ? 1 : 0),
        noted.size() + truth.missed().size());
    for (int i = 0; i < noted.size(); i++) {
      Blink blink = noted.get(i);
      assertTrue(window.contains(blink.onSeconds()), "outside: " + blink);
      assertTrue(blink.onSeconds() != 0 || 1 / blink.onSeconds() > 0, "a negative zero");
      if (person.notes() == Person.Notes.TAPS) {
        assertTrue(!blink.hasOff());
      }
      if (blink.hasOff()) {
        assertTrue(window.contains(blink.offSeconds()), "ends outside: " + blink);
      }
      if (i > 0) {
        Blink before = noted.get(i - 1);
        assertTrue(before.onSeconds() < blink.onSeconds());
        assertTrue(!before.hasOff() || before.offSeconds() <= blink.onSeconds());
      }
    }
  }

  @Property
  void whatIsToldIsAPhrase(
      @ForAll("people") Person person, @ForAll("lamps") Shown shown, @ForAll long seed) {
    String said = Notebook.told(person, shown, seed);
    if (!said.equals(Description.NOTHING)) {
      assertDoesNotThrow(() -> Phrase.parse(said), said);
    }
  }

  /** The lamp of any rhythm, told by anybody. */
  @Property
  void whatIsToldOfAnyTrainIsAPhrase(
      @ForAll("trains") Shown shown, @ForAll("people") Person person, @ForAll long seed) {
    String said = Notebook.told(person, shown, seed);
    if (!said.equals(Description.NOTHING)) {
      assertDoesNotThrow(() -> Phrase.parse(said), said);
    }
  }

  @Property
  void settingsComeBack(@ForAll("people") Person person) {
    Person copy = new Person(person.notes(), Map.of());
    for (Map.Entry<String, Double> setting : person.settings().entrySet()) {
      copy = copy.with(setting.getKey(), setting.getValue());
    }
    assertEquals(person, copy);
  }

  /**
   * A later scene is noted later and no otherwise. All times are multiples of 1/1024 s, which the
   * shift leaves exact.
   */
  @Property
  void anotherTimeOfDayChangesNothing(@ForAll("lamps") Shown any, @ForAll long seed) {
    Person person = Person.hurried().with("rounding-s", 0).with("double-tap", 0.1);
    double[] starts = Notebook.starts(person, later(any, 0), seed);
    double[] shifted = Notebook.starts(person, later(any, 1024), seed);
    assertEquals(starts.length, shifted.length);
    for (int i = 0; i < starts.length; i++) {
      assertEquals(starts[i] + 1024, shifted[i], 1e-9);
    }
  }

  private static Shown later(Shown shown, double shift) {
    Window window = shown.scene().window();
    double from = grid(window.fromSeconds()) + shift;
    List<Blink> moved = new ArrayList<>();
    for (Blink blink : shown.blinks()) {
      double on = grid(blink.onSeconds()) + shift;
      moved.add(new Blink(on, Math.max(on + 1.0 / 1024, grid(blink.offSeconds()) + shift)));
    }
    double to = grid(window.toSeconds()) + 1 + shift;
    return new Shown(within(from, to), moved, shown.clock());
  }

  private static double grid(double seconds) {
    return Math.rint(seconds * 1024) / 1024;
  }

  /** A scene with this window. */
  private static Scene within(double from, double to) {
    Scene scene = Watched.scene(1);
    return new Scene(
        new Window(from, to),
        scene.acts(),
        scene.targets(),
        scene.events(),
        scene.marked(),
        scene.clock(),
        scene.blinkSeconds());
  }

  @Provide
  Arbitrary<Person> people() {
    Arbitrary<Person> taps =
        Combinators.combine(
                value(0, 2), value(0, 1), value(0, 5), value(0, 1), value(0, 200), rounding())
            .as(
                (timing, late, gap, missed, strays, rounding) ->
                    Person.plain()
                        .with("timing-sd-s", timing)
                        .with("first-late-s", late)
                        .with("slowest-burst-gap-s", gap)
                        .with("missed", missed)
                        .with("strays-per-minute", strays)
                        .with("rounding-s", rounding));
    Arbitrary<Person> lapsing =
        Combinators.combine(taps, value(0, 1), value(0, 1), value(0, 20))
            .as(
                (person, lapse, twice, fastest) ->
                    person
                        .with("lapse", lapse)
                        .with("double-tap", twice)
                        .with("fastest-taps-per-s", fastest));
    return Combinators.combine(
            lapsing,
            Arbitraries.of(Person.Notes.class),
            value(0, 2),
            value(0, 2),
            value(0, 1),
            value(0, 1))
        .as(
            (person, way, late, deviation, count, seconds) ->
                person
                    .withNotes(way)
                    .with("release-late-s", late)
                    .with("release-sd-s", deviation)
                    .with("count-error", count)
                    .with("seconds-error", seconds));
  }

  /** Off in every other case, so that effects are seen alone too. */
  private static Arbitrary<Double> value(double least, double most) {
    return Arbitraries.oneOf(
        Arbitraries.just(0.0), Arbitraries.doubles().between(least, most).ofScale(3));
  }

  private static Arbitrary<Double> rounding() {
    return Arbitraries.of(0.0, 0.001, 0.01, 0.07, 0.5, 1.0, 3.0, 60.0);
  }

  /** Darks and lights of any length; the window may begin and end anywhere in them. */
  @Provide
  Arbitrary<Shown> lamps() {
    Arbitrary<Double> length =
        Arbitraries.oneOf(
            Arbitraries.doubles().between(0.001, 1).ofScale(3),
            Arbitraries.doubles().between(0.1, 20).ofScale(3));
    Arbitrary<List<Double>> lengths = length.list().ofMaxSize(60);
    return Combinators.combine(lengths, Arbitraries.doubles().between(0, 15).ofScale(2), length)
        .as((all, before, after) -> lamp(all, before, after));
  }

  /** Cycles that come again and again, with a dark that closes them. */
  @Provide
  Arbitrary<Shown> trains() {
    Arbitrary<Double> length = Arbitraries.doubles().between(0.03, 3).ofScale(2);
    return Combinators.combine(
            length.list().ofMinSize(1).ofMaxSize(10),
            Arbitraries.doubles().between(0.1, 15).ofScale(1),
            Arbitraries.doubles().between(0, 5).ofScale(1),
            Arbitraries.integers().between(1, 15))
        .as(
            (cycle, pause, before, times) -> {
              List<Double> all = new ArrayList<>();
              for (int i = 0; i < times; i++) {
                all.addAll(cycle);
                if (cycle.size() % 2 == 1) {
                  all.add(pause);
                }
              }
              return lamp(all, before, 1);
            });
  }

  /** Lights and darks in turn, the first a light from 0 s on; the window cuts into them. */
  private static Shown lamp(List<Double> lengths, double before, double after) {
    double at = 0;
    double end = before + after + lengths.stream().mapToDouble(Double::doubleValue).sum() / 2;
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < lengths.size(); i++) {
      double off = at + lengths.get(i);
      if (i % 2 == 0 && off > before && at < end) {
        blinks.add(new Blink(at, off));
      }
      at = off;
    }
    return new Shown(within(before, end), blinks, List.of(new Shown.ClockRate(before, 1)));
  }
}

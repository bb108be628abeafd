package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What people note, by examples that leave nothing to chance. */
class PersonTest {
  private static final Shown LAMP = Watched.lamp(20, -1, 0.5, 3.1234, 3.3, 9, 9.25, 19.5, 22);

  private static Labelled observe(Person person, Shown shown) {
    return person.observe(shown, Chance.of(1));
  }

  private static List<Blink> holds(Person person, Shown shown) {
    return Notebook.blinks(observe(person.withNotes(Person.Notes.HOLDS), shown));
  }

  @Test
  void tapsAreTheStartsInTheWindow() {
    Labelled labelled = observe(Person.plain(), LAMP);
    assertEquals(
        List.of(Blink.startingAt(3.123), Blink.startingAt(9), Blink.startingAt(19.5)),
        Notebook.blinks(labelled));
    assertEquals(new Truth(LAMP, List.of(), List.of()), labelled.truth());
    assertEquals("log", labelled.recording().origin().name());
    assertEquals(Optional.of(new Window(0, 20)), labelled.recording().window());
  }

  @Test
  void holdsHaveEndsAndWhatTheWindowCutsIsLitToItsBorder() {
    assertEquals(
        List.of(new Blink(0, 0.5), new Blink(3.123, 3.3), new Blink(9, 9.25), new Blink(19.5, 20)),
        holds(Person.plain(), LAMP));
    assertEquals(List.of(new Blink(0, 20)), holds(Person.plain(), Watched.lamp(20, -5, 50)));
    assertEquals(List.of(), holds(Person.plain(), Watched.lamp(20)));
  }

  @Test
  void aSteadyLampCannotBeTapped() {
    Labelled labelled = observe(Person.plain(), Watched.lamp(20, -5, 50));
    assertEquals(List.of(), Notebook.blinks(labelled));
    assertEquals(List.of(), labelled.truth().missed());
  }

  @Test
  void releasesAreLate() {
    Person late = Person.plain().with("release-late-s", 0.2);
    assertEquals(
        List.of(new Blink(0, 0.7), new Blink(3.123, 3.5), new Blink(9, 9.45), new Blink(19.5, 20)),
        holds(late, LAMP));
    // The next press ends the one before.
    Shown close = Watched.lamp(10, 2, 2.1, 2.25, 2.35);
    assertEquals(List.of(new Blink(2, 2.25), new Blink(2.25, 2.55)), holds(late, close));
  }

  @Test
  void aPressHasALength() {
    Shown flash = Watched.lamp(10, 2, 2.004, 5, 5.002);
    assertEquals(List.of(new Blink(2, 2.05), new Blink(5, 5.05)), holds(Person.plain(), flash));
    Person coarse = Person.plain().with("rounding-s", 1);
    assertEquals(List.of(new Blink(2, 3), new Blink(5, 6)), holds(coarse, flash));
  }

  @Test
  void theFirstOfABurstIsLate() {
    Person late = Person.plain().with("first-late-s", 0.1);
    Shown bursts = Watched.lamp(30, 2, 2.1, 2.5, 2.6, 3.0, 3.1, 8, 8.1, 8.5, 8.6, 9.7, 9.8);
    assertArrayEquals(
        new double[] {2.1, 2.5, 3.0, 8.1, 8.5, 9.8}, Notebook.starts(late, bursts, 1));
    // A dark of 1.1 s no longer begins a burst where bursts may be slower.
    assertArrayEquals(
        new double[] {2.1, 2.5, 3.0, 8.1, 8.5, 9.7},
        Notebook.starts(late.with("slowest-burst-gap-s", 1.2), bursts, 1));
    // The dark counts, not the time from start to start.
    Shown longBlinks = Watched.lamp(30, 2, 3.5, 4, 5.5);
    assertArrayEquals(new double[] {2.1, 4}, Notebook.starts(late, longBlinks, 1));
  }

  @ParameterizedTest
  @CsvSource({
    "0.01, 2.34, 7.12",
    "0.1, 2.3, 7.1",
    "1, 2, 7",
    "0.5, 2.5, 7",
    "0.3, 2.4, 7.2",
    "5, 0, 5"
  })
  void momentsAreRounded(double rounding, double first, double second) {
    Person person = Person.plain().with("rounding-s", rounding);
    double[] starts = Notebook.starts(person, Watched.lamp(20, 2.3401, 2.5, 7.12, 7.3), 1);
    assertArrayEquals(new double[] {first, second}, starts);
  }

  @Test
  void halvesAreRoundedToEven() {
    Person person = Person.plain().with("rounding-s", 0.5);
    double[] starts = Notebook.starts(person, Watched.lamp(20, 2.25, 2.3, 2.75, 2.8, 5.25, 6), 1);
    assertArrayEquals(new double[] {2, 3, 5}, starts);
  }

  @Test
  void oneMomentIsNotedOnce() {
    Shown shown = Watched.lamp(20, 2.1, 2.2, 2.3, 2.4, 3.1, 3.2);
    Labelled labelled = observe(Person.plain().with("rounding-s", 1), shown);
    assertArrayEquals(new double[] {2, 3}, Notebook.starts(labelled));
    assertEquals(List.of(new Blink(2.3, 2.4)), labelled.truth().missed());
    Shown fast = Watched.lamp(20, 2, 2.01, 2.03, 2.04, 2.06, 2.07);
    labelled = observe(Person.plain(), fast);
    assertArrayEquals(new double[] {2, 2.06}, Notebook.starts(labelled));
    assertEquals(List.of(new Blink(2.03, 2.04)), labelled.truth().missed());
  }

  @Test
  void whatFallsOutOfTheWindowIsMissed() {
    Shown shown = Watched.lamp(10, 4, 4.1, 9.95, 9.99);
    Labelled labelled = observe(Person.plain().with("first-late-s", 0.2), shown);
    assertArrayEquals(new double[] {4.2}, Notebook.starts(labelled));
    assertEquals(List.of(new Blink(9.95, 9.99)), labelled.truth().missed());
    // Rounding takes none beyond the window either.
    labelled = observe(Person.plain().with("rounding-s", 4), Watched.lamp(10.5, 10.2, 10.3));
    assertArrayEquals(new double[] {}, Notebook.starts(labelled));
  }

  @ParameterizedTest
  @CsvSource({"2, 5", "4, 10", "20, 10", "0, 10"})
  void nobodyFollowsFaster(double most, int expected) {
    // Ten blinks, 0.3 s apart.
    Person person = Person.plain().with("fastest-taps-per-s", most);
    Labelled labelled = observe(person, Notebook.beat(10, 1, 0.3));
    assertEquals(expected, Notebook.blinks(labelled).size());
    assertEquals(10 - expected, labelled.truth().missed().size());
  }

  @Test
  void allAndNothingCanBeMissed() {
    Labelled labelled = observe(Person.plain().with("missed", 1), LAMP);
    assertEquals(List.of(), Notebook.blinks(labelled));
    assertEquals(LAMP.blinks().subList(1, 4), labelled.truth().missed());
  }

  @Test
  void targetsAndEventsAreNotedOnlyIfMarked() {
    List<TargetSpan> targets = List.of(new TargetSpan(3, 5));
    List<Event> events = List.of(new Event(Event.Kind.FLUSH, 6));
    Scene scene = LAMP.scene().with(targets, events, true);
    Shown shown = new Shown(scene, LAMP.blinks(), LAMP.clock());
    for (Person.Notes way : Person.Notes.values()) {
      Marks marks = observe(Person.careful().withNotes(way), shown).recording().marks();
      assertEquals(Targets.during(targets), marks.targets());
      assertEquals(events, marks.events());
      Shown unmarked = new Shown(scene.with(targets, events, false), LAMP.blinks(), LAMP.clock());
      marks = observe(Person.careful().withNotes(way), unmarked).recording().marks();
      assertEquals(Marks.watched(0, 20), marks);
    }
  }

  @Test
  void aPersonStandsAside() {
    assertEquals(LAMP.scene(), Person.careless().joining(LAMP.scene(), Chance.of(1)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "timing-sd-s | -0.1 | timing-sd-s must be 0 to 5, not -0.1",
        "missed | 1.5 | missed must be 0 to 1, not 1.5",
        "missed | NaN | missed must be 0 to 1, not NaN",
        "rounding-s | Infinity | rounding-s must be 0 to 60, not Infinity",
        "strays-per-minute | 1000000 | strays-per-minute must be 0 to 600, not 1000000",
      })
  void whatCannotBeIsRefused(String setting, double value, String message) {
    SimulationException thrown =
        assertThrows(SimulationException.class, () -> Person.exact().with(setting, value));
    assertEquals(message, thrown.getMessage());
  }

  @ParameterizedTest
  @ValueSource(strings = {"mised", "timing", "noise-lux", ""})
  void anUnknownSettingListsTheNearOnes(String name) {
    String near =
        switch (name) {
          case "mised" -> "mised; near: missed; known: ";
          case "timing" -> "timing; near: timing-sd-s; known: ";
          case "" -> "\"\"; known: ";
          default -> name + "; known: ";
        };
    SimulationException thrown =
        assertThrows(SimulationException.class, () -> Person.exact().with(name, 1));
    assertEquals(
        "there is no setting of a person named "
            + near
            + String.join(", ", Person.exact().settings().keySet()),
        thrown.getMessage());
  }

  @Test
  void settingsAreCompleteAndInOrder() {
    Person person = new Person(Person.Notes.TAPS, Map.of("missed", -0.0));
    assertEquals(Person.plain(), person);
    assertTrue(1 / person.settings().get("missed") > 0);
    assertEquals(
        List.of(
            "timing-sd-s",
            "first-late-s",
            "slowest-burst-gap-s",
            "missed",
            "strays-per-minute",
            "rounding-s",
            "lapse",
            "double-tap",
            "fastest-taps-per-s",
            "release-late-s",
            "release-sd-s",
            "taps-apart-s",
            "count-error",
            "seconds-error"),
        List.copyOf(person.settings().keySet()));
  }

  @Test
  void marksThatWouldBeTooNearAreNotMade() {
    Shown shown = Watched.lamp(20, 3, 3.02, 3.04, 3.06, 9, 9.1);
    Labelled all = observe(Person.plain().with("taps-apart-s", 0), shown);
    assertEquals(3, Notebook.blinks(all).size());
    Labelled apart = observe(Person.plain(), shown);
    assertEquals(List.of(Blink.startingAt(3), Blink.startingAt(9)), Notebook.blinks(apart));
    assertEquals(List.of(shown.blinks().get(1)), apart.truth().missed());
  }
}

package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever a lamp shows, a person's recording of it is one, and its truth adds up. */
class PersonLawsTest {
  @Property(tries = 500)
  void marksLieInTheWindowAndAddUp(
      @ForAll("shown") Shown shown, @ForAll("people") Person person, @ForAll long seed) {
    Labelled labelled = person.observe(shown, Chance.of(seed));
    Window window = shown.scene().window();
    if (labelled.recording() instanceof Description description) {
      assertTrue(isSaid(description.said()), description.said());
      return;
    }
    List<Blink> noted = ((BlinkLog) labelled.recording()).blinks();
    double last = Double.NEGATIVE_INFINITY;
    for (Blink blink : noted) {
      assertTrue(window.contains(blink.onSeconds()), "inside");
      assertTrue(blink.onSeconds() >= last, "in order");
      last = blink.hasOff() ? blink.offSeconds() : blink.onSeconds();
    }
    long begun = shown.blinks().stream().filter(b -> window.contains(b.onSeconds())).count();
    boolean already =
        person.notes() == Person.Notes.HOLDS
            && !shown.blinks().isEmpty()
            && shown.blinks().get(0).onSeconds() < window.fromSeconds();
    long mine = noted.size() - labelled.truth().added().size();
    assertEquals(begun, mine + labelled.truth().missed().size() - (already ? 1 : 0));
  }

  private static boolean isSaid(String words) {
    try {
      return words.equals(Description.NOTHING) || Phrase.parse(words) instanceof Rhythm;
    } catch (PhraseException e) {
      return false;
    }
  }

  @Provide
  Arbitrary<Person> people() {
    Arbitrary<Double> part = Arbitraries.doubles().between(0, 0.5).ofScale(2);
    return Combinators.combine(Arbitraries.of(Person.Notes.class), part, part, part, part, part)
        .as(
            (notes, sd, missed, strays, twice, rounding) ->
                new Person(
                    notes,
                    Map.of(
                        "timing-sd-s", sd,
                        "missed", missed,
                        "strays-per-minute", 40 * strays,
                        "double-tap", twice,
                        "rounding-s", rounding,
                        "count-error", missed,
                        "seconds-error", sd)));
  }

  @Provide
  Arbitrary<Shown> shown() {
    Arbitrary<Double> length = Arbitraries.doubles().between(0.03, 3).ofScale(2);
    return Combinators.combine(
            length.list().ofMaxSize(60), Arbitraries.doubles().between(-2, 4).ofScale(1))
        .as(PersonLawsTest::shown);
  }

  private static Shown shown(List<Double> lengths, double start) {
    List<Blink> blinks = new ArrayList<>();
    double at = start;
    for (int i = 0; i + 1 < lengths.size(); i += 2) {
      if (at + lengths.get(i) > 0) {
        blinks.add(new Blink(at, at + lengths.get(i)));
      }
      at += lengths.get(i) + lengths.get(i + 1);
    }
    Scene scene =
        new Scene(
            new Window(0, Math.max(1, at)),
            List.of(Act.unlisted(new Rhythm.Steady())),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(0, 0),
            OptionalDouble.empty());
    return new Shown(scene, blinks, List.of(new Shown.ClockRate(0, 1)));
  }
}

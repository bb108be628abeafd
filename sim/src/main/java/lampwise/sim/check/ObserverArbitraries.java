package lampwise.sim.check;

import java.util.Map;
import java.util.TreeMap;
import lampwise.sim.LightSensor;
import lampwise.sim.Observer;
import lampwise.sim.Person;
import lampwise.sim.Presets;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Observers, that is noise, for laws. They shrink to fewer errors. */
public final class ObserverArbitraries {
  private ObserverArbitraries() {}

  /**
   * The observers of the bench, and people and sensors with settings beyond them.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Observer> any() {
    Arbitrary<Observer> presets = Arbitraries.of(Presets.names()).map(Presets::named);
    return Arbitraries.oneOf(presets, people().map(p -> p), sensors().map(s -> s));
  }

  /**
   * People who tap, hold or tell: errors of timing up to 0.3 s, a third of the blinks missed at the
   * most, six strays a minute at the most, times rounded to nothing, hundredths or whole seconds.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Person> people() {
    return Combinators.combine(
            Arbitraries.of(Person.Notes.values()),
            Arbitraries.integers().between(0, 300),
            Arbitraries.integers().between(0, 33),
            Arbitraries.integers().between(0, 6),
            Arbitraries.of(0.001, 0.01, 1.0))
        .as(
            (notes, millis, missed, strays, rounding) ->
                Person.plain()
                    .withNotes(notes)
                    .with("timing-sd-s", millis / 1000.0)
                    .with("missed", missed / 100.0)
                    .with("strays-per-minute", strays)
                    .with("rounding-s", rounding));
  }

  /**
   * Light sensors of 5 to 50 rows a second, the lamp 1 to 50 lux over a room of 150, noise of up to
   * 3 lux, steps of 0.1 or 1 lux, up to three shadows.
   *
   * @return the arbitrary
   */
  public static Arbitrary<LightSensor> sensors() {
    return Combinators.combine(
            Arbitraries.of(10, 50, 30, 5),
            Arbitraries.integers().between(1, 50),
            Arbitraries.integers().between(0, 30),
            Arbitraries.of(0.1, 1.0),
            Arbitraries.integers().between(0, 3),
            Arbitraries.of(0, 1))
        .as(
            (rate, lamp, noise, step, shadows, onChange) ->
                LightSensor.fast()
                    .with("rate-hz", rate)
                    .with("lamp-lux", lamp)
                    .with("noise-lux", noise / 10.0)
                    .with("step-lux", step)
                    .with("shadows", shadows)
                    .with("on-change", onChange));
  }

  /** The kind of observer with the settings that are not zero. */
  static String text(Observer observer) {
    Map<String, Double> set = new TreeMap<>(observer.settings());
    set.values().removeIf(value -> value == 0);
    String kind =
        observer instanceof Person person
            ? "a person, " + person.notes()
            : observer.getClass().getSimpleName();
    return kind + " " + set;
  }
}

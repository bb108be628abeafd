package lampwise.sim;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Targets;
import lampwise.light.Window;

/**
 * Somebody who watches a lamp and notes what it shows. Every effect draws its numbers from a source
 * of its own: changing one leaves the others as they were.
 *
 * <p>Settings, each with its range; what is left out has the value in brackets.
 *
 * <ul>
 *   <li>{@code timing-sd-s} 0 to 5 [0]: standard deviation of the Gaussian error of each noted
 *       moment.
 *   <li>{@code first-late-s} 0 to 5 [0]: how much later the first blink of a burst is noted: a
 *       person reacts to the first and anticipates the rest. A blink is the first of a burst if the
 *       lamp was dark for longer than {@code slowest-burst-gap-s} (0 to 60 [1]) before it, or if it
 *       is the first that is watched. Single blinks are each a burst; the constant delay does them
 *       no harm.
 *   <li>{@code missed} 0 to 1 [0]: the chance that a blink is not noted.
 *   <li>{@code strays-per-minute} 0 to 600 [0]: marks without a blink, a Poisson process.
 *   <li>{@code rounding-s} 0 to 60 [0.001]: moments are noted as the nearest multiple of it, half
 *       to even; 0 leaves them as they are. It does nothing to words.
 *   <li>{@code lapse} 0 to 1 [0]: the chance that a blink is noted 0.5 s too late and later still
 *       by an exponential time of mean 0.3 s.
 *   <li>{@code double-tap} 0 to 1 [0]: the chance that a mark is followed by a second one, 0.06 to
 *       0.2 s after it.
 *   <li>{@code fastest-taps-per-s} 0 to 20 [0, no limit]: a blink that would have to be noted
 *       sooner after the one noted before is missed.
 *   <li>{@code release-late-s} and {@code release-sd-s} 0 to 5 [0]: how much later the end of a
 *       blink is noted than its start would be, and the further standard deviation of that.
 *   <li>{@code taps-apart-s} 0 to 1 [0.05]: of two marks that would be nearer, the later is not
 *       made. The people of the bench have none of it.
 *   <li>{@code count-error} 0 to 1 [0]: the chance that a count of two or more is told as one more
 *       or one less; {@code seconds-error} 0 to 1 [0]: standard deviation of judged seconds, as a
 *       fraction of them. These two matter to words alone.
 * </ul>
 *
 * <p>Of two marks noted at the same moment the later is not made. A mark outside the window is not
 * made either. Blinks lost so are missed like any other.
 *
 * @param notes how the person notes
 * @param settings the settings by their names, in the order of the list above where they are read;
 *     what is left out has the value in brackets
 */
public record Person(Notes notes, Map<String, Double> settings) implements Observer {
  /** How a person notes what a lamp shows. */
  public enum Notes {
    /** The start of each blink. Of a lamp that is on already, nothing can be noted. */
    TAPS,
    /**
     * Start and end of each blink. A light that was on before the window is noted from its start, a
     * light that is on after it to its end.
     */
    HOLDS,
    /** What was seen, told as a rhythm phrase. */
    WORDS
  }

  /**
   * Checks the settings and adds those left out.
   *
   * @throws SimulationException if there is no such setting, or a value is out of its range
   */
  public Person {
    settings = PersonSetting.complete(settings);
  }

  /**
   * A person who taps without any effect but rounding to 1 ms.
   *
   * @return the person
   */
  public static Person plain() {
    return new Person(Notes.TAPS, Map.of());
  }

  /**
   * A person who makes hardly an error.
   *
   * @return a person of the project's bench
   */
  public static Person exact() {
    return plain().with("timing-sd-s", 0.01).with("taps-apart-s", 0);
  }

  /**
   * A person who takes care.
   *
   * @return a person of the project's bench
   */
  public static Person careful() {
    return exact()
        .with("timing-sd-s", 0.04)
        .with("missed", 0.03)
        .with("strays-per-minute", 0.3)
        .with("rounding-s", 0.01);
  }

  /**
   * A person in a hurry.
   *
   * @return a person of the project's bench
   */
  public static Person hurried() {
    return exact()
        .with("timing-sd-s", 0.08)
        .with("first-late-s", 0.1)
        .with("missed", 0.1)
        .with("strays-per-minute", 1)
        .with("rounding-s", 0.01);
  }

  /**
   * A person whose mind is elsewhere.
   *
   * @return a person of the project's bench
   */
  public static Person careless() {
    return hurried().with("first-late-s", 0.15).with("missed", 0.2).with("strays-per-minute", 3);
  }

  @Override
  public Person with(String setting, double value) {
    Map<String, Double> changed = new HashMap<>(settings);
    changed.put(setting, value);
    return new Person(notes, changed);
  }

  /**
   * The same person, noting in another way.
   *
   * @param way how
   * @return a new person
   */
  public Person withNotes(Notes way) {
    return new Person(way, settings);
  }

  /**
   * Standard deviation of the error of each noted moment.
   *
   * @return seconds, {@code timing-sd-s}
   */
  public double timingSd() {
    return PersonSetting.TIMING_SD_S.in(settings);
  }

  /**
   * How much later the first blink of a burst is noted.
   *
   * @return seconds, {@code first-late-s}
   */
  public double firstLateSeconds() {
    return PersonSetting.FIRST_LATE_S.in(settings);
  }

  /**
   * After how long a dark a blink is the first of a burst.
   *
   * @return seconds, {@code slowest-burst-gap-s}
   */
  public double burstGapSeconds() {
    return PersonSetting.SLOWEST_BURST_GAP_S.in(settings);
  }

  /**
   * The chance that a blink is not noted.
   *
   * @return 0 to 1, {@code missed}
   */
  public double missed() {
    return PersonSetting.MISSED.in(settings);
  }

  /**
   * How many marks are made without a blink.
   *
   * @return a minute, {@code strays-per-minute}
   */
  public double straysPerMinute() {
    return PersonSetting.STRAYS_PER_MINUTE.in(settings);
  }

  /**
   * What moments are rounded to.
   *
   * @return seconds, {@code rounding-s}; 0 if they are not
   */
  public double roundingSeconds() {
    return PersonSetting.ROUNDING_S.in(settings);
  }

  /** The scene as it is: a person stands aside, and hands held out are the scene's. */
  @Override
  public Scene joining(Scene scene, Chance chance) {
    return scene;
  }

  @Override
  public Labelled observe(Shown shown, Chance chance) {
    Scene scene = shown.scene();
    Map<String, Double> used = notes == Notes.WORDS ? with("rounding-s", 0).settings() : settings;
    Noted noted = new Noting(used, shown, chance).note(notes != Notes.TAPS);
    Truth truth = new Truth(shown, noted.missed(), noted.added());
    Marks marks = marks(scene);
    Origin origin = Origin.named("log");
    if (notes == Notes.WORDS) {
      return new Labelled(new Description(origin, marks, told(noted, scene, chance)), truth);
    }
    return new Labelled(new BlinkLog(origin, marks, noted.blinks()), truth);
  }

  private String told(Noted noted, Scene scene, Chance chance) {
    Window window = scene.window();
    List<Blink> lights = noted.blinks();
    return new Telling(settings, window, lights, chance.branch("words")).told();
  }

  private static Marks marks(Scene scene) {
    Marks marks = Marks.nothing().withWindow(scene.window());
    return scene.marked()
        ? marks.withTargets(Targets.during(scene.targets())).withEvents(scene.events())
        : marks;
  }
}

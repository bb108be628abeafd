package lampwise.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwise.sim.Observer;
import lampwise.sim.Person;
import lampwise.sim.Presets;
import lampwise.sim.SimulationException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/**
 * Who watches the lamp: the options {@code --observer}, {@code --notes} and {@code --set}.
 *
 * @param name the name of the preset
 * @param observer the observer with its settings
 */
record ObserverOption(String name, Observer observer) {
  /** The preset that is taken where none is named. */
  static final String USUAL = "careful";

  /** Adds the options to a command. */
  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec,
        "--observer",
        "NAME",
        "who watches; " + USUAL + " if not given. Known are " + String.join(", ", Presets.names()));
    ReadingFlags.one(
        spec,
        "--notes",
        "WAY",
        "how a person notes what is seen: " + words(", ") + "; taps if not given");
    ReadingFlags.many(
        spec,
        "--set",
        "NAME=VALUE",
        "another setting of the observer; repeatable; see simulate --list");
  }

  /**
   * Reads the options.
   *
   * @throws UsageException if there is no such observer, way or setting, or a value cannot be
   */
  static ObserverOption read(ParseResult parsed) throws UsageException {
    String name = ReadingFlags.text(parsed, "--observer").orElse(USUAL);
    Observer observer = preset(name);
    Optional<String> notes = ReadingFlags.text(parsed, "--notes");
    if (notes.isPresent()) {
      if (!(observer instanceof Person person)) {
        throw new UsageException("--notes goes with a person; " + name + " is a light sensor");
      }
      observer = person.withNotes(way(notes.get()));
    }
    return new ObserverOption(name, withSettings(observer, parsed));
  }

  /**
   * An observer with what {@code --set} changes.
   *
   * @throws UsageException if there is no such setting, or a value cannot be
   */
  static Observer withSettings(Observer observer, ParseResult parsed) throws UsageException {
    Observer changed = observer;
    for (String setting : parsed.matchedOptionValue("--set", List.<String>of())) {
      changed = set(changed, setting);
    }
    return changed;
  }

  /** How a person notes; empty for a sensor. */
  Optional<String> notedAs() {
    return observer instanceof Person person ? Optional.of(word(person.notes())) : Optional.empty();
  }

  private static Observer preset(String name) throws UsageException {
    try {
      return Presets.named(name);
    } catch (SimulationException e) {
      throw new UsageException("--observer: " + Main.oneLine(String.valueOf(e.getMessage())));
    }
  }

  private static Person.Notes way(String word) throws UsageException {
    for (Person.Notes way : Person.Notes.values()) {
      if (word(way).equals(word.toLowerCase(Locale.ROOT))) {
        return way;
      }
    }
    throw new UsageException("--notes takes " + words(", ") + ", not " + Layout.clean(word));
  }

  private static Observer set(Observer observer, String setting) throws UsageException {
    int equals = setting.indexOf('=');
    if (equals < 0) {
      throw new UsageException("--set takes NAME=VALUE, not " + Layout.clean(setting));
    }
    String name = setting.substring(0, equals).strip();
    if (!observer.settings().containsKey(name)) {
      throw new UsageException(
          "--set: there is no setting "
              + Layout.clean(name)
              + "; "
              + Near.said(name, observer.settings().keySet()));
    }
    double value = NumberOption.of("--set " + name, setting.substring(equals + 1));
    try {
      return observer.with(name, value);
    } catch (SimulationException e) {
      throw new UsageException("--set: " + Main.oneLine(String.valueOf(e.getMessage())));
    }
  }

  private static String words(String between) {
    StringBuilder words = new StringBuilder();
    for (Person.Notes way : Person.Notes.values()) {
      words.append(words.isEmpty() ? "" : between).append(word(way));
    }
    return words.toString();
  }

  private static String word(Person.Notes way) {
    return way.name().toLowerCase(Locale.ROOT);
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Scene;
import lampwise.sim.Show;
import lampwise.sim.Shown;
import lampwise.sim.Truth;

/**
 * What is true of a made-up recording, as one line of JSON. The keys always stand in the same order
 * and none is left out. Times and ratios have at most six decimals, settings nine; a border or
 * beginning that lies for ever back or ahead is {@code null}.
 */
final class TruthJson {
  /** The value of {@code lampwise-truth}. */
  static final int VERSION = 1;

  private static final int DECIMALS = 6;
  private static final int SETTING_DECIMALS = 9;

  private TruthJson() {}

  /**
   * Where a recording comes from.
   *
   * @param file the recording's file
   * @param seed the seed of all recordings of the run
   * @param number the recording's number in the run, from 1
   * @param sheet the sheet
   * @param observer the name of the observer's preset
   * @param notedAs how a person noted what was seen; empty for a sensor
   * @param settings the observer's settings
   */
  record Source(
      String file,
      long seed,
      int number,
      CodeSheet sheet,
      String observer,
      Optional<String> notedAs,
      Map<String, Double> settings) {}

  /** The line, without a line end. */
  static String line(Source source, Truth truth) {
    Shown shown = truth.shown();
    Scene scene = shown.scene();
    String state = truth.state();
    Optional<LampState> listed = source.sheet().state(state);
    Optional<Show> show =
        scene.acts().stream().filter(act -> act.state().equals(state)).map(Act::show).findFirst();
    StringBuilder json = new StringBuilder("{\"lampwise-truth\":" + VERSION);
    put(json, "recording", text(source.file()));
    put(json, "seed", Long.toString(source.seed()));
    put(json, "number", Integer.toString(source.number()));
    put(json, "sheet", text(source.sheet().title()));
    put(json, "basis", text(source.sheet().basis().word()));
    put(json, "state", text(state));
    put(json, "condition", text(listed.map(entry -> entry.condition().word())));
    put(json, "rhythm", text(show.flatMap(TruthJson::phrase)));
    put(json, "observer", text(source.observer()));
    put(json, "noted_as", text(source.notedAs()));
    put(json, "settings", settings(source.settings()));
    put(
        json,
        "window_s",
        list(List.of(number(scene.window().fromSeconds()), number(scene.window().toSeconds()))));
    put(json, "marked", Boolean.toString(scene.marked()));
    put(json, "targets_s", list(scene.targets().stream().map(TruthJson::target).toList()));
    put(json, "events", list(scene.events().stream().map(TruthJson::event).toList()));
    put(json, "acts", list(scene.acts().stream().map(TruthJson::act).toList()));
    put(json, "clock", list(shown.clock().stream().map(TruthJson::clock).toList()));
    put(json, "blinks", list(shown.blinks().stream().map(TruthJson::blink).toList()));
    put(
        json,
        "missed_s",
        list(truth.missed().stream().map(blink -> number(blink.onSeconds())).toList()));
    put(json, "added_s", list(truth.added().stream().map(TruthJson::number).toList()));
    return json.append('}').toString();
  }

  private static String settings(Map<String, Double> settings) {
    List<String> pairs = new ArrayList<>();
    settings.forEach(
        (name, value) -> pairs.add(text(name) + ":" + number(value, SETTING_DECIMALS, 0)));
    return "{" + String.join(",", pairs) + "}";
  }

  private static String target(TargetSpan span) {
    return list(List.of(number(span.fromSeconds()), number(span.toSeconds())));
  }

  private static String event(Event event) {
    return "{\"event\":"
        + text(event.kind().word())
        + ",\"at_s\":"
        + number(event.atSeconds())
        + "}";
  }

  private static String act(Act act) {
    String perSecond =
        act.show() instanceof Show.Random random
            ? number(random.perSecond(), SETTING_DECIMALS, 0)
            : "null";
    return "{\"from_s\":"
        + number(act.fromSeconds())
        + ",\"state\":"
        + text(act.state())
        + ",\"rhythm\":"
        + text(phrase(act.show()))
        + ",\"random_per_s\":"
        + perSecond
        + "}";
  }

  private static String clock(Shown.ClockRate rate) {
    return "{\"from_s\":" + number(rate.fromSeconds()) + ",\"ratio\":" + number(rate.ratio()) + "}";
  }

  private static String blink(Blink blink) {
    return "{\"on_s\":"
        + number(blink.onSeconds())
        + ",\"off_s\":"
        + number(blink.offSeconds())
        + "}";
  }

  private static Optional<String> phrase(Show show) {
    return show instanceof Show.Rhythmic rhythmic
        ? Optional.of(Phrase.print(rhythmic.rhythm()))
        : Optional.empty();
  }

  private static void put(StringBuilder json, String key, String value) {
    json.append(",\"").append(key).append("\":").append(value);
  }

  private static String list(List<String> values) {
    return "[" + String.join(",", values) + "]";
  }

  private static String text(Optional<String> value) {
    return value.map(TruthJson::text).orElse("null");
  }

  private static String text(String value) {
    return PageTemplate.quoted(value);
  }

  private static String number(double value) {
    return number(value, DECIMALS, 1);
  }

  private static String number(double value, int most, int least) {
    return Math.abs(value) <= Double.MAX_VALUE ? Fixed.of(value, most, least) : "null";
  }
}

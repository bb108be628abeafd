package lampwise.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.file.LampwiseLog;
import lampwise.light.BlinkLog;
import lampwise.light.Origin;
import lampwise.light.Window;
import lampwise.sim.Chance;
import lampwise.sim.Labelled;
import lampwise.sim.Person;
import lampwise.sim.Scene;
import lampwise.sim.Shown;

/**
 * The cases of a drill as recordings of somebody who watched long enough, did what has to be done
 * and held a key while the lamp was lit; as charts; and what is true of them.
 */
final class DrillRecordings {
  /** The file of what is true of the recordings. */
  static final String TRUTH = "truth.jsonl";

  /** Who watches, by level. */
  private static final List<String> OBSERVERS = List.of("exact", "careful", "careful", "hurried");

  /** What is watched beyond either end of the window, so that a light is not cut there. */
  private static final double BEYOND_SECONDS = 1;

  private DrillRecordings() {}

  /** The name of a case's files, without their endings. */
  static String name(DrillPlan plan, int number) {
    return "case-" + DrillStrip.number(number, plan.cases());
  }

  /** Adds a Lampwise log and an SVG for each case, and the truths. */
  static void addTo(Map<String, String> files, DrillPlan plan) {
    StringBuilder truths = new StringBuilder();
    String observer = OBSERVERS.get(plan.level() - 1);
    Person person = person(observer);
    String invented = plan.sheet().isInvented() ? " (invented sheet)" : "";
    for (DrillCase one : plan.cases()) {
      String name = name(plan, one.number());
      DrillWatch watch = DrillWatch.enough(one);
      Chance chance = Chance.of(plan.seed()).branch("observer").branch(one.number());
      Labelled labelled = person.observe(shown(plan, watch), chance);
      BlinkLog log = (BlinkLog) labelled.recording();
      Origin origin = new Origin(name, Optional.of(name), List.of());
      files.put(
          name + ".log",
          LampwiseLog.write(List.of(new BlinkLog(origin, log.marks(), log.blinks()))));
      files.put(name + ".svg", DrillStrip.svg(watch, name + invented));
      TruthJson.Source source =
          new TruthJson.Source(
              name + ".log",
              plan.seed(),
              one.number(),
              plan.sheet(),
              observer,
              Optional.of("holds"),
              person.settings());
      truths.append(TruthJson.line(source, labelled.truth())).append('\n');
    }
    files.put(TRUTH, truths.toString());
  }

  private static Person person(String name) {
    Person person =
        switch (name) {
          case "exact" -> Person.exact();
          case "careful" -> Person.careful();
          default -> Person.hurried();
        };
    return person.withNotes(Person.Notes.HOLDS);
  }

  private static Shown shown(DrillPlan plan, DrillWatch watch) {
    DrillUnit unit = watch.unit();
    Window window = new Window(0, watch.seconds());
    Scene scene =
        new Scene(
            window,
            unit.acts(watch.acts()),
            watch.hands(),
            watch.events(),
            true,
            new Scene.Clock(plan.sheet().clockTolerance(), 0),
            plan.sheet().blinkSeconds());
    double end = watch.seconds();
    return new Shown(
        scene,
        unit.blinks(watch.acts(), -BEYOND_SECONDS, end + BEYOND_SECONDS).stream()
            .filter(blink -> blink.offSeconds() > 0 && blink.onSeconds() < end)
            .toList(),
        List.of(new Shown.ClockRate(0, unit.clock())));
  }
}

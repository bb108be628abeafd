package lampwise.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.file.LampwiseLog;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Targets;

/** The cases of a drill as recordings of somebody who watched long enough, and as charts. */
final class DrillRecordings {
  private DrillRecordings() {}

  /** The name of a case's files, without their endings. */
  static String name(DrillPlan plan, int number) {
    return "case-" + DrillStrip.number(number, plan.cases());
  }

  /** Adds two files a case: a Lampwise log and an SVG. */
  static void addTo(Map<String, String> files, DrillPlan plan) {
    for (DrillCase one : plan.cases()) {
      String name = name(plan, one.number());
      DrillWatch watch = DrillWatch.enough(one);
      files.put(name + ".log", LampwiseLog.write(List.of(log(watch, name))));
      String invented = plan.sheet().isInvented() ? " (invented sheet)" : "";
      files.put(name + ".svg", DrillStrip.svg(watch, name + invented));
    }
  }

  private static BlinkLog log(DrillWatch watch, String name) {
    Marks marks =
        Marks.watched(0, watch.seconds())
            .withTargets(Targets.during(watch.hands()))
            .withEvents(watch.events());
    List<Blink> blinks = watch.blinks().stream().filter(blink -> blink.onSeconds() > 0).toList();
    return new BlinkLog(new Origin(name, Optional.of(name), List.of()), marks, blinks);
  }
}

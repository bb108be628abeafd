package lampwise.cli;

import java.util.List;
import tools.jackson.databind.JsonNode;

/** Sees the lamp of the drill beside the page's own script, on the page's clock. */
final class DrillWitness {
  /** How late the lamp may be; frames come every 17 ms where the machine is not busy. */
  private static final double LATE_SECONDS = 0.15;

  /** Notes when the watch begins and when the lamp goes on and off, on the page's clock. */
  static final String SCRIPT =
      """
      window.lampSeen = [];
      const watch = document.getElementById('watch');
      const lamp = document.getElementById('lamp');
      new MutationObserver(() => {
        if (!watch.hidden && !window.began) { window.began = performance.now(); }
      }).observe(watch, { attributes: true, attributeFilter: ['hidden'] });
      let before = false;
      new MutationObserver(() => {
        const lit = lamp.classList.contains('lit');
        if (lit !== before) { window.lampSeen.push(performance.now()); }
        before = lit;
      }).observe(lamp, { attributes: true, attributeFilter: ['class'] });
      """;

  private DrillWitness() {}

  /** What is wrong with the first seconds of the first case; empty if nothing is. */
  @SuppressWarnings("unchecked")
  static String lateness(Phone phone, JsonNode unit) {
    double began = ((Number) phone.script("return window.began")).doubleValue();
    List<Number> seen = (List<Number>) phone.script("return window.lampSeen");
    JsonNode light = unit.get("lights").get(0);
    double cycle = light.get("cycleSeconds").asDouble();
    double length = light.get("cycle").get(0).get(1).asDouble();
    double phase = light.get("phase").asDouble();
    double first = light.get("cycle").get(0).get(0).asDouble() - phase;
    StringBuilder wrong = new StringBuilder();
    int i = 0;
    for (double on = first; on < 6.5; on += cycle) {
      for (double change : new double[] {on, on + length}) {
        if (change > 0 && change < 6.5) {
          double found = i < seen.size() ? (seen.get(i).doubleValue() - began) / 1000 : Double.NaN;
          i++;
          if (!(Math.abs(found - change) <= LATE_SECONDS)) {
            wrong.append(" due ").append(change).append(" seen ").append(found).append(';');
          }
        } else if (on < 0 && change <= 0 && on + length > 0) {
          i++; // It was on at the start, which shows as a change.
        }
      }
    }
    return i == 0 ? "nothing was due" : wrong.toString();
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sheet.TellApart;
import lampwise.sim.DrawnRhythm.Pulse;

/** The page that plays a drill: one file without anything outside it. */
final class DrillPage {
  private static final int STRIP_WIDTH = 260;
  private static final int STRIP_HEIGHT = 38;
  private static final int DECIMALS = 4;

  private static final Set<Seen> BUTTON =
      Set.of(Seen.AFTER_BUTTON, Seen.SET_UP, Seen.AFTER_FLUSH, Seen.WHILE_RUNNING);

  private DrillPage() {}

  /** The whole page. */
  static String of(DrillPlan plan) {
    return PageTemplate.filled(
        "drill.html", Map.of("plan", json(plan), "strips", strips(plan.sheet())));
  }

  /** A strip of each state, in the sheet's order. */
  private static String strips(CodeSheet sheet) {
    StringBuilder strips = new StringBuilder();
    for (LampState state : sheet.states()) {
      strips.append(
          RhythmStrip.svg(
              state.rhythm(), sheet.blinkSeconds(), Double.NaN, STRIP_WIDTH, STRIP_HEIGHT));
      strips.append('\n');
    }
    return strips.toString();
  }

  /** What the page's script plays. */
  static String json(DrillPlan plan) {
    CodeSheet sheet = plan.sheet();
    List<String> states = sheet.states().stream().map(DrillPage::state).toList();
    List<String> cases = plan.cases().stream().map(one -> unit(one, sheet)).toList();
    boolean button = sheet.states().stream().anyMatch(state -> BUTTON.contains(state.seen()));
    return "{\"title\":"
        + text(sheet.title())
        + ",\"invented\":"
        + sheet.isInvented()
        + ",\"level\":"
        + plan.level()
        + ",\"levelSays\":"
        + text(DrillPlan.said(plan.level()))
        + ",\"seed\":"
        + text(Long.toString(plan.seed()))
        + ",\"hasButton\":"
        + button
        + ",\"states\":"
        + list(states)
        + ",\"cases\":"
        + list(cases)
        + "}";
  }

  private static String state(LampState state) {
    String when = state.seen() == Seen.ALWAYS ? "" : TellApart.when(state.seen());
    return "{\"name\":"
        + text(state.name())
        + ",\"rhythm\":"
        + text(Phrase.print(state.rhythm()))
        + ",\"when\":"
        + text(when)
        + ",\"means\":"
        + text(state.means())
        + ",\"says\":"
        + text(state.labelSays().orElse(""))
        + "}";
  }

  private static String unit(DrillCase one, CodeSheet sheet) {
    DrillNeed need = one.need();
    List<String> lights = one.unit().lights().stream().map(light -> light(light, sheet)).toList();
    return "{\"lights\":"
        + list(lights)
        + ",\"clock\":"
        + number(one.unit().clock())
        + ",\"fast\":"
        + one.isFast()
        + ",\"need\":{\"rest\":"
        + number(need.restSeconds())
        + ",\"after\":"
        + number(need.afterSeconds())
        + ",\"tells\":"
        + list(need.tells().stream().map(kind -> text(kind.word())).toList())
        + ",\"alike\":"
        + list(need.alike().stream().map(DrillPage::text).toList())
        + ",\"why\":"
        + text(need.why())
        + "}}";
  }

  private static String light(DrillLight light, CodeSheet sheet) {
    return "{\"state\":"
        + sheet.states().indexOf(light.state())
        + ",\"seen\":"
        + text(light.state().seen().word())
        + ",\"prelude\":"
        + pulses(light.rhythm().prelude())
        + ",\"preludeSeconds\":"
        + number(light.rhythm().preludeSeconds())
        + ",\"cycle\":"
        + pulses(light.rhythm().cycle())
        + ",\"cycleSeconds\":"
        + number(light.rhythm().cycleSeconds())
        + ",\"repeats\":"
        + light.goesOn()
        + ",\"phase\":"
        + number(light.phaseSeconds())
        + ",\"delay\":"
        + number(light.delaySeconds())
        + "}";
  }

  private static String pulses(List<Pulse> pulses) {
    List<String> all = new ArrayList<>();
    for (Pulse pulse : pulses) {
      all.add(list(List.of(number(pulse.onSeconds()), number(pulse.lengthSeconds()))));
    }
    return list(all);
  }

  private static String list(List<String> values) {
    return "[" + String.join(",", values) + "]";
  }

  private static String text(String text) {
    return PageTemplate.quoted(Layout.clean(text));
  }

  /** A number with fixed decimals; {@code null} for an endless time. */
  private static String number(double value) {
    return Math.abs(value) <= Double.MAX_VALUE ? Fixed.of(value, DECIMALS, 0) : "null";
  }
}

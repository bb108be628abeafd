package lampwise.sim.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** Sheets and recordings as short text for people; what is long is cut and counted. */
final class SampleText {
  private static final int MOST_LISTED = 24;
  private static final int DECIMALS = 3;

  private SampleText() {}

  static String of(CodeSheet sheet) {
    StringBuilder text = new StringBuilder("clock: ");
    text.append(number(sheet.clockTolerance() * 100)).append(" %");
    sheet.blinkSeconds().ifPresent(blink -> text.append(", blink: ").append(Phrase.shown(blink)));
    for (LampState state : sheet.states()) {
      text.append("\n").append(state.name()).append(": ").append(Phrase.print(state.rhythm()));
      if (state.seen() != Seen.ALWAYS) {
        text.append(" (seen: ").append(state.seen().word()).append(')');
      }
      if (state.weight() != 1) {
        text.append(" (weight: ").append(number(state.weight())).append(')');
      }
    }
    return text.toString();
  }

  static String of(Recording recording) {
    List<String> lines = new ArrayList<>();
    marks(recording.marks(), lines);
    if (recording instanceof BlinkLog log) {
      lines.add("on " + list(log.blinks().stream().map(SampleText::blink).toList()));
    } else if (recording instanceof LightCurve curve) {
      curve(curve, lines);
    } else if (recording instanceof Description description) {
      lines.add("saw: " + description.said());
    }
    return String.join("\n", lines);
  }

  private static String blink(Blink blink) {
    String on = number(blink.onSeconds());
    return blink.hasOff() ? on + " off " + number(blink.offSeconds()) : on;
  }

  private static void marks(Marks marks, List<String> lines) {
    lines.add(
        marks
            .window()
            .map(w -> "window: " + range(w.fromSeconds(), w.toSeconds()))
            .orElse("no window"));
    Targets targets = marks.targets();
    if (targets.knowledge() == Targets.Knowledge.LIKELY) {
      lines.add("target: likely");
    } else if (targets.knowledge() == Targets.Knowledge.KNOWN) {
      if (targets.spans().isEmpty()) {
        lines.add("target: none");
      }
      for (TargetSpan span : targets.spans()) {
        lines.add("target: " + range(span.fromSeconds(), span.toSeconds()));
      }
    }
    for (Event event : marks.events()) {
      lines.add("event: " + event.kind().word() + " at " + number(event.atSeconds()) + " s");
    }
    marks.covered().forEach(w -> lines.add("covered: " + range(w.fromSeconds(), w.toSeconds())));
  }

  private static void curve(LightCurve curve, List<String> lines) {
    int size = curve.size();
    String times = size == 0 ? "" : " " + range(curve.seconds(0), curve.seconds(size - 1));
    String way = curve.lit() == LightCurve.Lit.BRIGHTER ? "" : ", darker is on";
    lines.add("light: " + size + " samples" + times + way);
    List<String> levels = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      levels.add(number(curve.level(i)));
    }
    if (size > 0) {
      lines.add("levels " + list(levels));
    }
  }

  private static String list(List<String> items) {
    if (items.size() <= MOST_LISTED) {
      return items.isEmpty() ? "never" : String.join(", ", items);
    }
    int more = items.size() - MOST_LISTED;
    return String.join(", ", items.subList(0, MOST_LISTED)) + " and " + more + " more";
  }

  private static String range(double from, double to) {
    String start = Double.isInfinite(from) ? "start" : number(from);
    return start + " to " + (Double.isInfinite(to) ? "end" : number(to) + " s");
  }

  /** A number to three decimals; the shortest writing of what is very small or large. */
  static String number(double value) {
    double size = Math.abs(value);
    if (Double.isNaN(value) || size >= 1e9 || (size > 0 && size < 0.001)) {
      return Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sheet.SheetCheck;
import lampwise.sheet.SheetWarning;
import lampwise.sheet.TellApart;

/**
 * The card of a sheet for the wall or the cart: one page of HTML that needs nothing else. Whatever
 * comes from the sheet is escaped, and the page's own policy keeps it from loading or running
 * anything.
 */
final class SheetCard {
  /** This many cycles of the slowest state tell it from the others (chosen, as in decoding). */
  private static final double CYCLES = 3;

  private static final double LEAST_SECONDS = 30;
  private static final int STRIP_WIDTH = 230;
  private static final int STRIP_HEIGHT = 38;

  /** The style of a page of cards. */
  static final String STYLE =
      """
      @page { margin: 8mm 9mm; }
      * { box-sizing: border-box; }
      body { margin: 0 auto; max-width: 192mm; color: #000; background: #fff;
        font: 7.8pt/1.2 "DejaVu Sans", Verdana, Arial, sans-serif;
        print-color-adjust: exact; -webkit-print-color-adjust: exact; }
      h1 { font-size: 13pt; margin: 0 0 0.6mm; overflow-wrap: anywhere; }
      p, ul { margin: 0 0 0.6mm; overflow-wrap: anywhere; }
      ul { padding-left: 3.5mm; }
      .invented { border: 0.6mm solid #000; padding: 0.8mm 1.5mm; font-weight: bold; }
      .stop { border: 0.3mm solid #000; border-left-width: 2mm; padding: 0.6mm 1.5mm; }
      table { border-collapse: collapse; width: 100%; table-layout: fixed; margin: 0.8mm 0; }
      td, th { border-top: 0.2mm solid #555; padding: 0.5mm 1.2mm 0.5mm 0; vertical-align: top;
        text-align: left; overflow-wrap: anywhere; }
      tr { break-inside: avoid; }
      thead { display: table-header-group; }
      .strip { width: 53mm; }
      .lamp { width: 58mm; }
      svg { width: 50mm; height: 8.4mm; display: block; }
      svg [fill="#8a5a00"] { fill: #000; }
      svg [stroke="#8a5a00"] { stroke: #000; }
      .two { display: flex; gap: 4mm; }
      .two > div { flex: 1; }
      h2 { font-size: 8.6pt; margin: 0.8mm 0 0.2mm; }
      """;

  private SheetCard() {}

  /** The whole page. */
  static String page(CodeSheet sheet) {
    StringBuilder page = new StringBuilder();
    String title = RhythmStrip.escaped(Layout.clean(sheet.title()));
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';");
    page.append(" style-src 'unsafe-inline'\">\n");
    page.append("<meta name=\"viewport\" content=\"width=device-width\">\n<title>").append(title);
    page.append("</title>\n<style>\n").append(STYLE).append("</style>\n</head>\n<body>\n");
    content(page, sheet);
    return page.append("</body>\n</html>\n").toString();
  }

  /** What stands on a card, for a page that holds more than one. */
  static void content(StringBuilder page, CodeSheet sheet) {
    page.append("<h1>").append(text(sheet.title())).append("</h1>\n");
    if (sheet.isInvented()) {
      page.append("<p class=\"invented\">INVENTED SHEET, for trying and teaching: no real unit");
      page.append(" blinks like this.</p>\n");
    }
    page.append("<p>").append(head(sheet)).append("</p>\n");
    page.append("<table>\n<thead><tr><th class=\"strip\">Lamp</th><th class=\"lamp\">State and");
    page.append(" rhythm</th><th>Meaning</th></tr></thead>\n<tbody>\n");
    for (LampState state : sheet.states()) {
      row(page, sheet, state);
    }
    page.append("</tbody>\n</table>\n");
    page.append("<div class=\"two\">\n<div>\n");
    section(page, "Watch", watching(sheet));
    page.append("</div>\n<div>\n");
    section(page, "Then provoke", provoking(sheet));
    section(page, "Alike by their light", alike(sheet));
    page.append("</div>\n</div>\n");
    page.append("<p class=\"stop\"><b>Before any work:</b> stand clear when power comes back, it");
    page.append(" can flush by itself. Look into the bowl before any flush, the button's too: a");
    page.append(" blocked bowl overflows. <b>Privacy:</b> never film in an open washroom. Close");
    page.append(" and sign it, make sure that nobody is inside, keep to the site's rules, frame");
    page.append(" only the fixture and delete the film afterwards.</p>\n");
  }

  private static String head(CodeSheet sheet) {
    StringBuilder head = new StringBuilder("Basis: ").append(sheet.basis().word());
    head.append(" &middot; ").append(Words.count(sheet.states().size(), "state"));
    head.append(" &middot; the unit's clock may be off by ");
    head.append(Words.decimal(sheet.clockTolerance() * 100, 1)).append(" %");
    sheet.lamp().ifPresent(lamp -> head.append(" &middot; lamp ").append(text(lamp)));
    sheet.cells().ifPresent(cells -> head.append(" &middot; cells ").append(text(cells)));
    sheet.note().ifPresent(note -> head.append("<br>").append(text(note)));
    return head.toString();
  }

  private static void row(StringBuilder page, CodeSheet sheet, LampState state) {
    page.append("<tr><td>");
    page.append(
        RhythmStrip.svg(
            state.rhythm(), sheet.blinkSeconds(), Double.NaN, STRIP_WIDTH, STRIP_HEIGHT));
    page.append("</td><td><b>").append(text(state.name())).append("</b>");
    state
        .lamp()
        .filter(lamp -> !sheet.lamp().equals(state.lamp()))
        .ifPresent(lamp -> page.append(", lamp ").append(text(lamp)));
    page.append("<br>").append(text(Phrase.print(state.rhythm())));
    if (state.seen() != Seen.ALWAYS) {
      page.append("; only ").append(TellApart.when(state.seen()));
    }
    page.append("</td><td>").append(text(state.means()));
    state
        .labelSays()
        .ifPresent(said -> page.append(" <i>(label: ").append(text(said)).append(")</i>"));
    state.clearedBy().ifPresent(by -> page.append("; cleared by ").append(text(by)));
    page.append("</td></tr>\n");
  }

  private static String text(String text) {
    return RhythmStrip.escaped(Layout.clean(text));
  }

  private static void section(StringBuilder page, String heading, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    page.append("<h2>").append(heading).append("</h2>\n<ul>\n");
    lines.forEach(line -> page.append("<li>").append(text(line)).append("</li>\n"));
    page.append("</ul>\n");
  }

  private static List<String> watching(CodeSheet sheet) {
    return List.of(
        "Side-on and out of the sensor's range; let it be quiet for 30 s first.",
        "Watch "
            + Words.duration(watchSeconds(sheet))
            + " at least: three rounds of the slowest state.",
        "Start before the lamp does. Note each blink as you see it, not as you expect it; hold"
            + " while it is lit.",
        "Shade the lamp. Too fast to tap, over three or four a second: write \"fast blinks\".",
        "Write down what happened just before: a flush, the button, new cells, the door.");
  }

  /** How long to watch for every state to have shown itself. */
  static double watchSeconds(CodeSheet sheet) {
    double longest = LEAST_SECONDS;
    for (LampState state : sheet.states()) {
      RhythmTimes times = RhythmTimes.of(state.rhythm(), sheet.blinkSeconds());
      double rounds = times.repeats() ? CYCLES : 1;
      double slow = times.preludeSeconds() + rounds * times.cycleSeconds();
      longest = Math.max(longest, slow * (1 + sheet.clockTolerance()));
    }
    return Math.ceil(longest / 5) * 5;
  }

  /** Each thing to do once, with the states that it brings about. */
  static List<String> provoking(CodeSheet sheet) {
    Map<String, List<String>> steps = new LinkedHashMap<>();
    for (Seen seen : Seen.values()) {
      List<String> names =
          sheet.states().stream()
              .filter(state -> state.seen() == seen)
              .map(LampState::name)
              .toList();
      Optional<String> step = TellApart.provoke(seen);
      if (!names.isEmpty() && step.isPresent()) {
        steps
            .computeIfAbsent(step.get(), key -> new ArrayList<>())
            .add(String.join(", ", names) + " " + TellApart.when(seen));
      }
    }
    return steps.entrySet().stream()
        .map(step -> upper(step.getKey()) + ": " + String.join("; ", step.getValue()) + ".")
        .toList();
  }

  private static String upper(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  private static List<String> alike(CodeSheet sheet) {
    List<String> lines = new ArrayList<>();
    for (SheetWarning warning : SheetCheck.warnings(sheet)) {
      LampState first = sheet.state(warning.first()).orElseThrow();
      LampState second = sheet.state(warning.second()).orElseThrow();
      lines.add(
          first.name()
              + " and "
              + second.name()
              + ": "
              + TellApart.check(first, second).orElse("see the unit's own papers"));
    }
    return lines;
  }
}

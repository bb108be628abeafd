package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sheet.TellApart;
import lampwise.sim.Chance;

/**
 * The sheets of paper of a drill, for one seat or several, each with cases of its own, and then the
 * keys. Whatever comes from the sheet is escaped, and the page's own policy keeps it from loading
 * or running anything.
 */
final class DrillPaper {
  private static final double CUT_SHORT = 0.4;
  private static final double HALF = 0.5;
  private static final double LEAST_SHOWN = 3;
  private static final int HARDEST = 4;

  private static final String STYLE =
      """
      @page { margin: 10mm 11mm; }
      * { box-sizing: border-box; }
      body { margin: 0 auto; max-width: 188mm; padding: 0 2mm; color: #000; background: #fff;
        font: 9pt/1.3 "DejaVu Sans", Verdana, Arial, sans-serif;
        print-color-adjust: exact; -webkit-print-color-adjust: exact; }
      section + section { break-before: page; margin-top: 12mm; }
      h1 { font-size: 14pt; margin: 0 0 1mm; overflow-wrap: anywhere; }
      p { margin: 0 0 1.5mm; overflow-wrap: anywhere; }
      .invented { border: 0.6mm solid #000; padding: 0.8mm 1.5mm; font-weight: bold; }
      .name { display: flex; gap: 6mm; margin: 3mm 0; }
      .name span { flex: 1; border-bottom: 0.3mm solid #000; }
      table { border-collapse: collapse; width: 100%; margin: 1mm 0 3mm; font-size: 7.8pt; }
      td, th { border-top: 0.2mm solid #555; padding: 0.5mm 2mm 0.5mm 0; vertical-align: top;
        text-align: left; overflow-wrap: anywhere; }
      th { overflow-wrap: normal; }
      tr, .case { break-inside: avoid; }
      thead { display: table-header-group; }
      .case { border-top: 0.3mm solid #000; padding: 1.5mm 0 2.5mm; }
      .case p { display: flex; gap: 5mm; align-items: baseline; margin: 1mm 0 0; }
      .case p i { flex: 1; border-bottom: 0.3mm solid #000; }
      .key td:nth-child(1), .key td:nth-child(3), .key td:nth-child(4) { white-space: nowrap; }
      .key td:nth-child(2) { width: 48mm; }
      svg { display: block; width: 100%; height: auto; }
      @media print { section + section { margin-top: 0; } }
      """;

  private final StringBuilder page = new StringBuilder();
  private final DrillPlan plan;
  private final CodeSheet sheet;

  /** One case on paper: what is shown of it, and the answer. */
  private record Printed(DrillCase one, DrillWatch watch, String answer, String why) {}

  private DrillPaper(DrillPlan plan) {
    this.plan = plan;
    this.sheet = plan.sheet();
  }

  /** The whole page. */
  static String page(DrillPlan plan, int seats) {
    return new DrillPaper(plan).page(seats);
  }

  private String page(int seats) {
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';");
    page.append(" style-src 'unsafe-inline'\">\n");
    page.append("<meta name=\"viewport\" content=\"width=device-width\">\n<title>Lamp drill: ");
    page.append(text(sheet.title())).append("</title>\n<style>\n").append(STYLE);
    page.append("</style>\n</head>\n<body>\n");
    List<List<Printed>> all = new ArrayList<>();
    for (int seat = 1; seat <= seats; seat++) {
      all.add(cases(seat));
      questions(seat, seats, all.get(seat - 1));
    }
    for (int seat = 1; seat <= seats; seat++) {
      key(seat, seats, all.get(seat - 1));
    }
    return page.append("</body>\n</html>\n").toString();
  }

  /** The cases of a seat: those of the page for the first, others for the rest. */
  private List<Printed> cases(int seat) {
    Chance chance = Chance.of(plan.seed());
    DrillPlan own =
        seat == 1
            ? plan
            : DrillPlan.drawn(
                sheet,
                plan.level(),
                plan.cases().size(),
                plan.seed(),
                chance.branch("seats").branch(seat));
    Chance cutting = chance.branch("paper").branch(seat);
    return own.cases().stream().map(one -> printed(one, cutting.branch(one.number()))).toList();
  }

  private Printed printed(DrillCase one, Chance chance) {
    DrillNeed need = one.need();
    DrillWatch enough = DrillWatch.enough(one);
    LampState state = one.unit().asked().state();
    if (!need.alike().isEmpty()) {
      String all = state.name() + " or " + String.join(" or ", need.alike());
      return new Printed(one, enough, "undecided: " + all, need.why());
    }
    boolean dark = one.unit().asked().isDark();
    if (dark && chance.happens(HALF)) {
      DrillWatch watch = enough.onlyWatched(Math.ceil(need.restSeconds()));
      return new Printed(
          one, watch, "undecided (" + darkStates() + "; it is " + state.name() + ")", need.why());
    }
    if (plan.level() == HARDEST && need.tells().isEmpty() && chance.happens(CUT_SHORT)) {
      double open = DrillNeed.openSeconds(sheet, one.unit());
      if (open >= LEAST_SHOWN) {
        String answer = "watch longer (it would be " + state.name() + ")";
        return new Printed(one, enough.onlyWatched(open), answer, need.why());
      }
    }
    return new Printed(one, enough, state.name(), need.why());
  }

  private String darkStates() {
    return sheet.states().stream()
        .filter(state -> !DrillNeed.isLit(state))
        .map(LampState::name)
        .collect(Collectors.joining(" or "));
  }

  private void begin(String title, int seat, int seats) {
    page.append("<section>\n<h1>").append(title);
    if (seats > 1) {
      page.append(", seat ").append(seat).append(" of ").append(seats);
    }
    page.append("</h1>\n");
    if (sheet.isInvented()) {
      page.append("<p class=\"invented\">INVENTED SHEET, for trying and teaching: no real unit");
      page.append(" blinks like this.</p>\n");
    }
    page.append("<p>").append(text(sheet.title())).append(". Level ").append(plan.level());
    page.append(": ").append(DrillPlan.said(plan.level())).append(". Seed ");
    page.append(plan.seed()).append(".</p>\n");
  }

  private void questions(int seat, int seats, List<Printed> cases) {
    begin("Read the lamp", seat, seats);
    page.append("<p class=\"name\">Name<span></span>Date<span></span></p>\n");
    page.append("<p>Each strip is what somebody saw of one lamp, from the moment they began to");
    page.append(" watch: black is light. Write the state's name; or <b>undecided</b>, if");
    page.append(" watching longer would not tell; or <b>watch longer</b>, if it would.</p>\n");
    table();
    for (Printed printed : cases) {
      int number = printed.one().number();
      page.append("<div class=\"case\">\n");
      String seconds = Words.duration(printed.watch().seconds());
      page.append(DrillStrip.svg(printed.watch(), "Case " + number + ", " + seconds));
      page.append("<p><b>").append(number).append("</b> It is<i></i>because<i></i></p>\n</div>\n");
    }
    page.append("</section>\n");
  }

  private void table() {
    page.append("<table>\n<thead><tr><th>State</th><th>Lamp</th><th>Seen</th><th>Meaning</th>");
    page.append("</tr></thead>\n<tbody>\n");
    for (LampState state : sheet.states()) {
      page.append("<tr><td><b>").append(text(state.name())).append("</b></td><td>");
      page.append(text(Phrase.print(state.rhythm()))).append("</td><td>");
      page.append(state.seen() == Seen.ALWAYS ? "" : TellApart.when(state.seen()));
      page.append("</td><td>").append(text(state.means())).append("</td></tr>\n");
    }
    page.append("</tbody>\n</table>\n");
  }

  private void key(int seat, int seats, List<Printed> cases) {
    begin("Answer key", seat, seats);
    page.append(
        "<table class=\"key\">\n<thead><tr><th>Case</th><th>Answer</th><th>Shown</th><th>Needed</th>");
    page.append("<th>Why</th></tr></thead>\n<tbody>\n");
    for (Printed printed : cases) {
      page.append("<tr><td>").append(printed.one().number()).append("</td><td><b>");
      page.append(text(printed.answer())).append("</b></td><td>");
      page.append(Words.duration(printed.watch().seconds())).append("</td><td>");
      page.append(Words.decimal(Math.ceil(printed.one().need().seconds()), 0)).append(" s");
      page.append("</td><td>").append(text(printed.why())).append("</td></tr>\n");
    }
    page.append("</tbody>\n</table>\n</section>\n");
  }

  private static String text(String text) {
    return RhythmStrip.escaped(Layout.clean(text));
  }
}

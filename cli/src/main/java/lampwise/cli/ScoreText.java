package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import lampwise.sim.LightSensor;
import lampwise.sim.score.Calibration;
import lampwise.sim.score.Interval;
import lampwise.sim.score.Tally;

/** The tables of the command score, within 80 columns. Shares are per cent. */
final class ScoreText {
  /** The columns of a cell's name and its number of recordings. */
  private static final int NAME = 19;

  /** The column of what is compared with the reference. */
  private static final int REST = 18;

  private ScoreText() {}

  /** All tables. */
  static List<String> lines(ScoreResult result) {
    List<String> lines = new ArrayList<>();
    String head =
        result.decoder().substring(result.decoder().lastIndexOf('.') + 1)
            + " on "
            + (result.invented() ? "[invented sheet] " : "")
            + result.sheet()
            + ", "
            + result.count()
            + " a cell, seed "
            + result.seed();
    lines.addAll(Layout.wrap(head, Layout.WIDTH, Layout.WIDTH));
    result
        .own()
        .ifPresent(own -> lines.addAll(Layout.wrap("own: " + own, Layout.WIDTH, Layout.WIDTH)));
    lines.add("");
    if (result.unlisted()) {
      lines.addAll(unlisted(result));
    } else {
      lines.addAll(cells(result));
      lines.add("");
      lines.addAll(calibration(result.calibration()));
    }
    return lines;
  }

  private static List<String> unlisted(ScoreResult result) {
    List<String> lines = new ArrayList<>();
    lines.add("Only rhythms that the sheet does not list. In per cent:");
    lines.add(
        named("cell", "n")
            + right("taken for a listed state", 26)
            + right("unlisted", 10)
            + right("undecided", 11)
            + right("unreadable", 12));
    List<String> names = new ArrayList<>();
    List<Tally> tallies = new ArrayList<>();
    for (CellScore cell : result.cells()) {
      names.add(cell.name());
      tallies.add(cell.tally());
    }
    names.add("all");
    tallies.add(result.tally());
    for (int i = 0; i < names.size(); i++) {
      Tally tally = tallies.get(i);
      Interval taken = Interval.share(tally.decoded(), tally.all());
      lines.add(
          named(names.get(i), Integer.toString(tally.all()))
              + right(percent(taken.value()) + " (" + range(taken) + ")", 26)
              + right(share(tally.unlisted(), tally), 10)
              + right(share(tally.undecided(), tally), 11)
              + right(share(tally.unreadable(), tally), 12));
    }
    return lines;
  }

  private static List<String> cells(ScoreResult result) {
    List<String> lines = new ArrayList<>();
    lines.add(
        Layout.padded("in per cent", NAME)
            + right("right", 6)
            + right("95 %", 11)
            + right("refe-", 6)
            + right("diffe-", 7)
            + right("de-", 6)
            + right("mis-", 6)
            + right("unde-", 6)
            + right("unre-", 7)
            + right("log", 6));
    lines.add(
        named("cell", "n")
            + right("", 6)
            + right("interval", 11)
            + right("rence", 6)
            + right("rence", 7)
            + right("coded", 6)
            + right("read", 6)
            + right("cided", 6)
            + right("adable", 7)
            + right("loss", 6));
    for (CellScore cell : result.cells()) {
      lines.add(
          row(
              cell.name(),
              cell.tally(),
              cell.reference()
                  .map(others -> percent(Tally.of(others).rightShare().value()))
                  .orElse("-"),
              cell.difference(cell.reference())
                  .map(difference -> signed(difference.value()))
                  .orElse("-")));
    }
    lines.add(row("all", result.tally(), "", ""));
    lines.addAll(sums(result));
    return lines;
  }

  private static String row(String name, Tally tally, String reference, String difference) {
    Interval right = tally.rightShare();
    return named(name, Integer.toString(tally.all()))
        + right(percent(right.value()), 6)
        + right(range(right), 11)
        + right(reference, 6)
        + right(difference, 7)
        + right(share(tally.decoded(), tally), 6)
        + right(share(tally.misread(), tally), 6)
        + right(share(tally.undecided(), tally), 6)
        + right(share(tally.unreadable(), tally), 7)
        + right(number(tally.logLoss(), 2), 6);
  }

  /** A name, and a number at the right end of its column. */
  private static String named(String name, String number) {
    return name + right(number, NAME - name.length());
  }

  private static List<String> sums(ScoreResult result) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    Tally all = result.tally();
    Interval misread = all.misreadShare();
    lines.add(
        "misread: "
            + all.misread()
            + " of "
            + all.decoded()
            + " decoded"
            + (all.decoded() > 0
                ? ", " + percent(misread.value()) + " % (" + range(misread) + ")"
                : ""));
    lines.add(
        "verdict unlisted: " + all.unlisted() + ", of listed states " + all.listedCalledUnlisted());
    ScoreResult.Compared told = result.compared(CellScore::told);
    ScoreResult.Compared same = result.compared(CellScore::same);
    if (!same.own().isEmpty()) {
      lines.add("");
      lines.addAll(compared("same candidates", same));
      lines.add("This reference knows the noise; its candidates are the decoder's.");
    }
    if (!told.own().isEmpty()) {
      lines.add("");
      lines.addAll(compared("told the unlisted", told));
      lines.add("This one also knows by heart what is shown that the sheet does not list.");
      if (result.cells().stream().anyMatch(c -> c.cell().watching() instanceof LightSensor)) {
        lines.add("Of a light sensor's recording it also knows the light of the room.");
      }
    }
    return lines;
  }

  /** Beside a reference: for listed states, for what the sheet does not list, and for all. */
  private static List<String> compared(String reference, ScoreResult.Compared compared) {
    List<String> lines = new ArrayList<>();
    lines.add("Less the reference, " + reference + ":");
    lines.add(
        Layout.padded("shown", REST)
            + right("n", 7)
            + right("right, points", 25)
            + right("log loss, nat", 29));
    lines.add(line("listed", compared.listed(true)));
    lines.add(line("not listed", compared.listed(false)));
    lines.add(line("all", compared));
    lines.add(
        "log loss of the decoder "
            + number(Tally.of(compared.own()).logLoss(), 3)
            + ", of the reference "
            + number(Tally.of(compared.reference()).logLoss(), 3));
    return lines;
  }

  private static String line(String name, ScoreResult.Compared part) {
    Interval difference = Interval.difference(part.own(), part.reference());
    Interval gap = part.logLossGap();
    String points =
        signed(difference.value())
            + " ("
            + signed(difference.low())
            + " to "
            + signed(difference.high())
            + ")";
    String nat = nat(gap.value()) + " (" + nat(gap.low()) + " to " + nat(gap.high()) + ")";
    return Layout.padded(name, REST)
        + right(Integer.toString(part.own().size()), 7)
        + right(points, 25)
        + right(nat, 29);
  }

  private static String nat(double value) {
    return Double.isInfinite(value) ? "-" : (value > 0 ? "+" : "") + number(value, 3);
  }

  private static List<String> calibration(Calibration calibration) {
    List<String> lines = new ArrayList<>();
    lines.add("How sure the likeliest candidate was, and how often it was right, in per cent:");
    lines.add(right("n", 8) + right("stated", 10) + right("right", 10) + right("95 %", 14));
    for (Calibration.Bin bin : calibration.bins()) {
      lines.add(
          right(Integer.toString(bin.count()), 8)
              + right(percent(bin.stated()), 10)
              + right(percent(bin.right().value()), 10)
              + right(range(bin.right()), 14));
    }
    lines.add(
        "expected calibration error "
            + number(calibration.error(), 4)
            + ", by chance "
            + number(calibration.byChance(), 4)
            + ", left "
            + number(calibration.excess(), 4));
    return lines;
  }

  private static String share(int part, Tally tally) {
    return percent((double) part / tally.all());
  }

  private static String range(Interval interval) {
    return percent(interval.low()) + "-" + percent(interval.high());
  }

  private static String percent(double share) {
    return number(100 * share, 1);
  }

  private static String signed(double share) {
    String said = percent(share);
    return share > 0 && !said.equals("0.0") ? "+" + said : said;
  }

  private static String number(double value, int decimals) {
    return Double.isNaN(value) ? "-" : Fixed.of(value, decimals, decimals);
  }

  private static String right(String text, int width) {
    return Layout.padded("", width - text.length()) + text;
  }
}

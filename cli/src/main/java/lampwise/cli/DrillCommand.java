package lampwise.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Chance;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise drill}: writes the page, the sheets of paper and the recordings of a course. */
final class DrillCommand implements Command {
  private static final int MOST_CASES = 200;
  private static final int MOST_SEATS = 100;

  @Override
  public String name() {
    return "drill";
  }

  @Override
  public String summary() {
    return "write a page and sheets of paper to learn reading a lamp with";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    SheetOption.addTo(spec);
    ReadingFlags.one(spec, "--count", "N", "how many cases; 12 if not given");
    ReadingFlags.one(
        spec,
        "--level",
        "1..4",
        "how hard, 1 if not given: 1 single blinks, slow and clean;"
            + " 2 groups and counts; 3 lights that show only with a hand, after power or the"
            + " button; 4 long waits, look-alikes, and dark that is normal");
    ReadingFlags.one(spec, "--seed", "N", "the same seed gives the same drill; 1 if not given");
    ReadingFlags.one(
        spec, "--seats", "K", "how many versions of the sheet of paper; 1 if not given");
    ReadingFlags.one(spec, "--out", "DIR", "the folder to write; made if it is not there");
    ReadingFlags.flag(spec, "--force", "write even over files that are there");
    spec.usageMessage()
        .description(
            "Writes a folder for a course: drill.html plays the cases on a drawn lamp, in real"
                + " time, on a phone or a projector, without a network; sheet.html is printed,"
                + " with the answer key on pages of its own; each case is there as a recording"
                + " that lampwise decode reads, and as a chart. truth.jsonl holds the answers.")
        .footer(
            "",
            "Exit status: 0 written, 1 it could not be written, 2 wrong use.",
            "",
            "Example: lampwise drill --sheet unit.sheet.yaml --level 2 --out course")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    Optional<CodeSheet> sheet = SheetOption.read(parsed, here);
    if (sheet.isEmpty()) {
      throw new UsageException("which sheet is not said; give --sheet FILE or --sheet demo");
    }
    Optional<String> out = ReadingFlags.text(parsed, "--out");
    if (out.isEmpty()) {
      throw new UsageException("where to write is not said; give --out DIR");
    }
    int count = (int) whole(parsed, "--count", 12, 1, MOST_CASES);
    int level = (int) whole(parsed, "--level", 1, 1, DrillPlan.LEVELS);
    int seats = (int) whole(parsed, "--seats", 1, 1, MOST_SEATS);
    long seed = whole(parsed, "--seed", 1, Long.MIN_VALUE, Long.MAX_VALUE);
    DrillPlan plan = DrillPlan.drawn(sheet.get(), level, count, seed, Chance.of(seed));
    Map<String, String> files = new LinkedHashMap<>();
    files.put("drill.html", DrillPage.of(plan));
    files.put("sheet.html", DrillPaper.page(plan, seats));
    DrillRecordings.addTo(files, plan);
    boolean force = parsed.hasMatchedOption("--force");
    if (!DrillFolder.write(here, out.get(), files, force)) {
      return Main.REFUSED;
    }
    say(here, out.get(), plan, seats);
    return Main.DONE;
  }

  private static long whole(ParseResult parsed, String option, long usual, long least, long most)
      throws UsageException {
    Optional<String> text = ReadingFlags.text(parsed, option);
    return text.isEmpty() ? usual : NumberOption.whole(option, text.get(), least, most);
  }

  private static void say(Surroundings here, String out, DrillPlan plan, int seats) {
    String path = Layout.clean(out.endsWith("/") ? out : out + "/");
    String invented = plan.sheet().isInvented() ? "  [invented sheet]" : "";
    here.out()
        .println(
            Words.count(plan.cases().size(), "case")
                + " of level "
                + plan.level()
                + ", "
                + DrillPlan.said(plan.level())
                + invented);
    here.out().println("  " + path + "drill.html  open it on a phone or a projector");
    here.out()
        .println(
            "  "
                + path
                + "sheet.html  print it"
                + (seats > 1 ? ": " + Words.count(seats, "version") + ", then the keys" : ""));
    here.out()
        .println("  " + path + DrillRecordings.name(plan, 1) + ".log  and so on, with charts");
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.decode.RecordingPlan;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.TellApart;

/** A plan as a technician reads it, in 80 columns. */
final class PlanText {
  private static final int GAP = 2;
  private static final int TIME = 9;

  private PlanText() {}

  /**
   * All lines: how long to watch for each state, what to provoke, and what watching cannot tell.
   */
  static List<String> lines(CodeSheet sheet, String by, List<RecordingPlan.Pair> pairs) {
    List<String> lines = new ArrayList<>();
    String invented = sheet.isInvented() ? " [invented sheet]" : "";
    lines.addAll(wrapped("", sheet.title() + invented));
    lines.addAll(wrapped("", "By " + by + ": told apart in 99 of 100 cases after"));
    lines.add("");
    int width = 5;
    for (LampState state : sheet.states()) {
      width = Math.max(width, state.name().length());
    }
    width = Math.min(width, 30) + GAP;
    lines.add(
        Layout.padded("state", width) + Layout.padded("watch", TIME) + "hardest to tell from");
    List<Hardest> rows = new ArrayList<>();
    sheet.states().forEach(state -> rows.add(hardest(state, pairs)));
    rows.sort(Comparator.comparingDouble(Hardest::seconds).reversed());
    for (Hardest row : rows) {
      lines.add(row(row, width));
    }
    shows(sheet, lines);
    apart(pairs, lines);
    return lines;
  }

  /** The state that takes longest to tell from another; 0 s if nothing tells it from any. */
  private record Hardest(String state, double seconds, String other) {}

  private static Hardest hardest(LampState state, List<RecordingPlan.Pair> pairs) {
    double longest = 0;
    String hardest = "";
    for (RecordingPlan.Pair pair : pairs) {
      boolean first = pair.first().equals(state.name());
      if ((first || pair.second().equals(state.name())) && pair.seconds().orElse(0) > longest) {
        longest = pair.seconds().getAsDouble();
        hardest = first ? pair.second() : pair.first();
      }
    }
    return new Hardest(state.name(), longest, hardest);
  }

  private static String row(Hardest row, int width) {
    String time = row.seconds() > 0 ? Words.duration(row.seconds()) : "-";
    return (Layout.padded(row.state(), width) + Layout.padded(time, TIME) + row.other())
        .stripTrailing();
  }

  private static void shows(CodeSheet sheet, List<String> lines) {
    Map<String, List<String>> ways = new LinkedHashMap<>();
    for (LampState state : sheet.states()) {
      Optional<String> way = TellApart.provoke(state.seen());
      way.ifPresent(w -> ways.computeIfAbsent(w, none -> new ArrayList<>()).add(state.name()));
    }
    if (!ways.isEmpty()) {
      lines.add("");
      lines.add("Seen only at times; to bring it about, keeping clear of water and leads:");
      ways.forEach(
          (way, names) -> lines.addAll(wrapped("  ", String.join(", ", names) + ": " + way)));
    }
  }

  private static void apart(List<RecordingPlan.Pair> pairs, List<String> lines) {
    Map<String, List<String>> reasons = new LinkedHashMap<>();
    for (RecordingPlan.Pair pair : pairs) {
      pair.otherwise()
          .ifPresent(
              why ->
                  reasons
                      .computeIfAbsent(why, none -> new ArrayList<>())
                      .add(pair.first() + " and " + pair.second()));
    }
    if (!reasons.isEmpty()) {
      lines.add("");
      lines.add("Not told apart by one such recording:");
      reasons.forEach(
          (why, names) -> lines.addAll(wrapped("  ", String.join("; ", names) + ": " + why)));
    }
  }

  private static List<String> wrapped(String indent, String text) {
    List<String> lines = new ArrayList<>();
    int first = Layout.WIDTH - indent.length();
    int rest = first - GAP;
    for (String line : Layout.wrap(text, first, rest)) {
      lines.add(indent + (lines.isEmpty() ? "" : "  ") + line);
    }
    return lines;
  }
}
